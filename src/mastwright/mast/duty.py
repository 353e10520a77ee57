"""Duty: what a truck does all day, turned into moves of the forks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from mastwright.mast.figures import mast_figure, mast_figures
from mastwright.mast.moves import Moves
from mastwright.quantity import BadInput, Problem, Source, read_table, source_of

if TYPE_CHECKING:
    from collections.abc import Mapping


@dataclass(frozen=True)
class Duty:
    """Moves, and what was assumed to get them.

    Parameters
    ----------
    moves
        Of the forks.
    assumed
        Sources of the figures that nobody gave.
    """

    moves: Moves
    assumed: tuple[Source, ...] = ()


@dataclass(frozen=True)
class RackLevel:
    """Where pallets go: fork height in mm, and what share of the storage cycles."""

    height: float
    share: float


def rack_duty(
    levels: Sequence[RackLevel], cycles: float, load: float, travel_height: float | None = None
) -> Duty:
    """Return the moves of storage cycles: each pallet travels loaded one way, and the forks empty the other.

    Parameters
    ----------
    levels
        Their shares add up to at most 1; what is left over are pallets only carried at travel height.
    cycles
        How many, 0 or more.
    load
        On the forks, kg.
    travel_height
        Fork height when travelling, mm; the figure of the table if None.

    Raises
    ------
    BadInput
        If a height or share cannot be.

    Examples
    --------
    >>> duty = rack_duty([RackLevel(3000, 0.75)], cycles=100, load=1000)
    >>> duty.moves.end.tolist(), duty.moves.count.tolist()
    ([3000.0, 0.0, 150.0, 0.0], [75.0, 75.0, 25.0, 25.0])
    """
    for number, level in enumerate(levels, 1):
        if not 0 <= level.height <= mast_figure("highest_lift"):
            raise BadInput(
                Problem(f"rack level {number}, height", f"{level.height:g}", "mm above lowered, 0 or more")
            )
        if not 0 <= level.share <= 1:
            raise BadInput(Problem(f"rack level {number}, share", f"{level.share:g}", "a share from 0 to 1"))
    rest = 1 - sum(level.share for level in levels)
    if rest < -1e-9:  # noqa: PLR2004  decimal shares do not add up to exactly 1
        raise BadInput(Problem("rack levels, share", f"{1 - rest:g}", "shares that add up to at most 1"))
    travel = mast_figure("travel_height") if travel_height is None else travel_height
    rows: list[tuple[float, float, float, float]] = []
    for level in (*levels, RackLevel(travel, max(rest, 0.0))):
        if level.share:
            rows += [
                (0, level.height, load, cycles * level.share),
                (level.height, 0, 0, cycles * level.share),
            ]
    assumed = () if travel_height is not None else (mast_figures()["travel_height"].source,)
    return Duty(Moves.of(rows), assumed)


def counter_duty(histogram: Sequence[tuple[float, float]], load: float) -> Duty:
    """Return the moves of a lift counter: how many lifts went to each height, up loaded and down empty.

    Parameters
    ----------
    histogram
        Height in mm (the upper edge of a class) and number of lifts.
    load
        kg; what the lifts carried on average.

    Raises
    ------
    BadInput
        If a height or a count cannot be.
    """
    for height, lifts in histogram:
        if not 0 <= height <= mast_figure("highest_lift"):
            raise BadInput(Problem("lift counter, height", f"{height:g}", "mm above lowered, 0 or more"))
        if lifts < 0:
            raise BadInput(Problem("lift counter, lifts", f"{lifts:g}", "0 lifts or more"))
    rows = [
        row for height, lifts in histogram for row in ((0.0, height, load, lifts), (height, 0.0, 0.0, lifts))
    ]
    return Duty(Moves.of(rows))


@cache
def described_duties() -> Mapping[str, tuple[tuple[float, float, Source], ...]]:
    """Return the duties known by a plain description: share of the lift height, share of the cycles, source.

    Examples
    --------
    >>> list(described_duties())
    ['floor work', 'mixed', 'high racking']
    """
    found: dict[str, tuple[tuple[float, float, Source], ...]] = {}
    for row in read_table("mastwright.mast", "duties.csv"):
        source = source_of(row["source"], row["evidence"], f"duties.csv {row['duty']}")
        found[row["duty"]] = (
            *found.get(row["duty"], ()),
            (float(row["level"]), float(row["cycles"]), source),
        )
    return MappingProxyType(found)


def described_duty(words: str, cycles: float, load: float, lift_height: float, field: str = "duty") -> Duty:
    """Return the moves of a duty given in plain words; its shares are assumed, and it says so.

    Raises
    ------
    BadInput
        If there is no duty of these words.
    """
    known = described_duties()
    rows = known.get(words.strip().lower())
    if rows is None:
        raise BadInput(Problem(field, words, f"one of {', '.join(known)}"))
    levels = [RackLevel(level * lift_height, share) for level, share, _ in rows if level]
    duty = rack_duty(levels, cycles, load)
    return Duty(duty.moves, (*duty.assumed, *dict.fromkeys(source for _, _, source in rows)))
