"""What has to be ordered after a visit: chains by the set, anchor pins with them, and other parts."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction

from mastwright.quantity import Note
from mastwright.verdict.chain_verdict import JudgedSet
from mastwright.verdict.item import JudgedItem
from mastwright.verdict.verdicts import Verdict

_PINS_A_STRAND = 2


@dataclass(frozen=True)
class OrderLine:
    """One line of the parts order.

    Parameters
    ----------
    what
        ``leaf-chain``, ``anchor-pins`` or ``part``.
    name
        The chain's designation; of a part its key.
    quantity
        Pieces.
    pitches, length
        Of each chain, mm; None where nobody has counted, or it is no chain.
    ends
        Of each chain, as written down.
    because
        The items that ask for it.
    by
        None: before the truck works.
    """

    what: str
    name: str
    quantity: int
    pitches: int | None
    length: Fraction | None
    ends: str
    because: tuple[JudgedItem, ...]
    by: date | None
    notes: tuple[Note, ...]


def order_lines(sets: Iterable[JudgedSet], items: Iterable[JudgedItem]) -> tuple[OrderLine, ...]:
    """Return the parts order of a visit; what the customer refused is left out.

    Source
    ------
    Whole chains only, all strands of the set together, new anchor pins with every chain: US Army TM
    10-3930-671-24 and truck makers' manuals (read).
    """
    return (*(line for judged in sets for line in _chain_lines(judged)), *_part_lines(items))


def _chain_lines(judged: JudgedSet) -> list[OrderLine]:
    whole = judged.items[0]
    if whole.refused or not (judged.condemned or judged.planned):
        return []
    chain_set = judged.chain_set
    strands = len(chain_set.strands)
    by = None if judged.condemned else whole.by
    pitches = chain_set.pitches_total
    length = None if pitches is None else pitches * chain_set.chain.pitch
    notes = (
        Note("order-certificate", {}),
        *((Note("count-before-ordering", {}),) if pitches is None else ()),
    )
    name = chain_set.chain.name
    chain = OrderLine("leaf-chain", name, strands, pitches, length, chain_set.ends, (whole,), by, notes)
    pins = OrderLine("anchor-pins", name, strands * _PINS_A_STRAND, None, None, "", (whole,), by, ())
    return [chain, pins]


def _part_lines(items: Iterable[JudgedItem]) -> Iterable[OrderLine]:
    """Return one line for each part: two worn forks ask for one pair."""
    lines: dict[str, OrderLine] = {}
    for item in items:
        if not item.order_part or item.refused or item.verdict not in {Verdict.WITHDRAW, Verdict.REPLACE}:
            continue
        line = lines.get(item.order_part)
        if line is None:
            lines[item.order_part] = OrderLine(
                "part", item.order_part, 1, None, None, "", (item,), item.by, ()
            )
        else:
            sooner = None if item.by is None or line.by is None else min(item.by, line.by)
            lines[item.order_part] = replace(line, because=(*line.because, item), by=sooner)
    return lines.values()
