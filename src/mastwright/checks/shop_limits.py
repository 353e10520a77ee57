"""The maker's and the shop's own limits, from the files of a ``limits`` folder.

Each file is TOML with one table a limit::

    [[limit]]
    check = "MST-08"                     # which check; chains are set by the visit's policy
    model = "Ormel 16"                   # the truck's model as written in the visit; left out = all trucks
    at_most = "1.0 mm"                   # or at_least, or both for a range
    kind = "maker"                       # maker or shop
    governs = true                       # optional: this maker's limit is used even where another is tighter;
                                         # a limit of the law stays beside it
    source = "service manual, section 4" # needed
    evidence = "read"                    # read, as quoted, from memory, "common practice, no source", ...
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from mastwright.checks.catalogue import Check, CheckKind, find_check
from mastwright.quantity import (
    BadInput,
    Evidence,
    Field,
    Limit,
    LimitKind,
    Problem,
    Source,
    Worse,
    parse_quantity,
)

_KNOWN = {"check", "model", "at_most", "at_least", "kind", "governs", "source", "evidence"}
_SIDES = {"at_most": Worse.HIGHER, "at_least": Worse.LOWER}


@dataclass(frozen=True)
class ShopLimit:
    """One limit of a shop's file: for which check and model, and whether it governs over a tighter one."""

    check_id: str
    model: str
    limit: Limit
    governs: bool


class ShopLimits:
    """All limits that a shop holds."""

    def __init__(self, limits: Iterable[ShopLimit] = ()) -> None:
        self._limits = tuple(limits)

    def for_check(self, check_id: str, model: str) -> tuple[ShopLimit, ...]:
        """Return the limits on a check that hold for this model of truck."""
        return tuple(s for s in self._limits if s.check_id == check_id and s.model in {"", model})

    def __len__(self) -> int:
        """Return how many limits there are."""
        return len(self._limits)


NO_LIMITS = ShopLimits()


def read_shop_limits(files: Mapping[str, str]) -> ShopLimits:
    """Read the limits of a shop.

    Parameters
    ----------
    files
        Text of each file by its name.

    Raises
    ------
    BadInput
        With every problem in all files.
    """
    limits: list[ShopLimit] = []
    problems: list[Problem] = []
    for name, text in files.items():
        try:
            whole = tomllib.loads(text)
        except ValueError as error:  # a number of thousands of digits is one too
            problems.append(Problem(name, "", f"valid TOML: {error}"))
            continue
        except RecursionError:
            problems.append(Problem(name, "", "valid TOML, not nested so deeply"))
            continue
        problems += [
            Problem(f"{name} {key}", "", "only tables begun with [[limit]] belong here")
            for key in whole
            if key != "limit"
        ]
        rows = whole.get("limit", [])
        if not isinstance(rows, list) or not all(isinstance(r, dict) for r in rows):
            problems.append(Problem(name, "", "tables, each begun with [[limit]]"))
            continue
        for number, row in enumerate(rows, 1):
            limits += _row(row, f"{name} limit[{number}]", problems)
    if problems:
        raise BadInput(problems)
    return ShopLimits(limits)


def _row(row: Mapping[str, object], where: str, problems: list[Problem]) -> list[ShopLimit]:
    before = len(problems)
    problems += [
        Problem(f"{where}.{key}", str(key), f"a known field: {', '.join(sorted(_KNOWN))}")
        for key in row
        if key not in _KNOWN
    ]
    check = _check(row, where, problems)
    source = _source(row, where, problems)
    kind = str(row.get("kind", "maker"))
    if kind not in {LimitKind.MAKER, LimitKind.SHOP}:
        problems.append(Problem(f"{where}.kind", kind, "maker or shop"))
    governs = row.get("governs", False)
    if not isinstance(governs, bool):
        problems.append(Problem(f"{where}.governs", str(governs), "true or false"))
    elif governs and kind == LimitKind.SHOP:
        problems.append(Problem(f"{where}.governs", "true", "only a maker's limit can govern"))
    if not _SIDES.keys() & row.keys():
        problems.append(Problem(f"{where}.at_most", "", "at_most or at_least is needed"))
    if check is None or source is None or len(problems) > before:
        return []
    sides = [_side(row, side, worse, check, where, problems) for side, worse in _SIDES.items() if side in row]
    found = [side for side in sides if side is not None]
    if len(found) == len(_SIDES) and found[0][0] < found[1][0]:
        given = f"{row['at_least']} to {row['at_most']}"
        problems.append(Problem(f"{where}.at_least", given, "no more than at_most"))
    return [
        ShopLimit(
            check.id,
            str(row.get("model", "")),
            Limit(at, check.reads, worse, LimitKind(kind), source, reached_is_over=False),
            governs is True,
        )
        for at, worse in found
    ]


def _side(
    row: Mapping[str, object], side: str, worse: Worse, check: Check, where: str, problems: list[Problem]
) -> tuple[Fraction, Worse] | None:
    field = Field(f"{where}.{side}", check.reads, minimum=None)
    try:
        return parse_quantity(row[side], field).canonical, worse
    except BadInput as bad:
        problems += bad.problems
        return None


def _check(row: Mapping[str, object], where: str, problems: list[Problem]) -> Check | None:
    try:
        check = find_check(str(row.get("check", "")), f"{where}.check")
    except BadInput as bad:
        problems += bad.problems
        return None
    if check.reads == "ratio" or check.kind is CheckKind.INFORMATION:
        wanted = "a check that is measured: this one is seen or informs, and takes no limit"
        problems.append(Problem(f"{where}.check", check.id, wanted))
    return check


def _source(row: Mapping[str, object], where: str, problems: list[Problem]) -> Source | None:
    text, word = str(row.get("source", "")).strip(), str(row.get("evidence", "read"))
    if not text:
        problems.append(
            Problem(
                f"{where}.source", "", "where the limit is written: a limit without a source is not taken"
            )
        )
    if word not in list(Evidence):
        problems.append(Problem(f"{where}.evidence", word, f"one of {', '.join(Evidence)}"))
    return Source(text, Evidence(word)) if text and word in list(Evidence) else None
