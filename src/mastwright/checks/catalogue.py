"""Every check of the truck but the lift chains, as data, in walking order."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from enum import StrEnum
from fractions import Fraction
from functools import cache
from types import MappingProxyType

from mastwright.checks.truck import TruckFacts
from mastwright.quantity import BadInput, Problem, Source, read_table, source_of


class Severity(StrEnum):
    """What a check that is not in order means for the truck."""

    OUT_OF_SERVICE = "out-of-service"
    REPAIR = "repair"
    MONITOR = "monitor"


class CheckKind(StrEnum):
    """Who sets the limit of a check, or that there is none."""

    LAW = "law"
    STANDARD = "standard"
    MAKER = "maker"
    OBSERVATION = "observation"
    INFORMATION = "information"


@dataclass(frozen=True)
class Check:
    """One check: where it stands in the walk, how it is done, what its limit is and who says so.

    Parameters
    ----------
    id
        Such as ``FRK-09``.
    system, stage
        Of the truck; the stage of the walk, 0 to 7.
    trucks, needs, countries
        Which trucks it applies to; equipment that must be fitted; countries, empty for all.
    title, how, action, worse_case, if_ignored
        English texts; other languages stand beside them in ``wording``.
    reads
        Dimension of the main reading.
    instrument
        What it is read with unless the entry says otherwise.
    rule, reference
        How it is judged, and the second answer that a share is taken of.
    limit, limit_high
        In the dimension's own unit, or a share; None where only the maker knows.
    mark_allowed
        Whether a reading exactly at the limit still passes.
    order_part
        What is ordered when it is not in order; '' if nothing.
    """

    id: str
    system: str
    stage: int
    trucks: frozenset[str]
    needs: frozenset[str]
    countries: frozenset[str]
    title: str
    how: str
    reads: str
    instrument: str
    kind: CheckKind
    rule: str
    reference: str
    limit: Fraction | None
    limit_high: Fraction | None
    mark_allowed: bool
    severity: Severity
    worse_case: str
    if_ignored: str
    action: str
    order_part: str
    source: Source

    def applies_to(self, facts: TruckFacts) -> bool:
        """Tell whether this check is part of the walk round such a truck."""
        here = not self.countries or facts.country in self.countries
        return facts.group in self.trucks and self.needs <= facts.equipment and here


def _number(cell: str) -> Fraction | None:
    return Fraction(cell) if cell.strip() else None


def check_from(row: Mapping[str, str]) -> Check:
    """Build a check from a row of the table.

    Raises
    ------
    TableError
        If it has no source.
    """
    rule, _, reference = row["rule"].partition(":")
    return Check(
        id=row["id"],
        system=row["system"],
        stage=int(row["stage"]),
        trucks=frozenset(row["trucks"].split()),
        needs=frozenset(row["needs"].split()),
        countries=frozenset(row["country"].split()),
        title=row["title"],
        how=row["how"],
        reads=row["dimension"],
        instrument=row["instrument"],
        kind=CheckKind(row["kind"]),
        rule=rule,
        reference=reference,
        limit=_number(row["limit"]),
        limit_high=_number(row["limit_high"]),
        mark_allowed=row["mark_allowed"] == "yes",
        severity=Severity(row["severity"]),
        worse_case=row["worse_case"],
        if_ignored=row["if_ignored"],
        action=row["action"],
        order_part=row["order_part"],
        source=source_of(row["source"], row["evidence"], f"checks.csv {row['id']}"),
    )


@cache
def catalogue() -> Mapping[str, Check]:
    """Return every check by id, in walking order."""
    checks = [check_from(row) for row in read_table("mastwright.checks", "checks.csv")]
    return MappingProxyType({check.id: check for check in checks})


def find_check(text: str, field: str = "id") -> Check:
    """Return the check of this id.

    Raises
    ------
    BadInput
        If there is none; the nearest ids are in the message.
    """
    key = text.strip().upper()
    known = catalogue()
    if key in known:
        return known[key]
    titles = {check.title.lower(): check.id for check in known.values()}
    near = [
        *get_close_matches(key, known, n=3),
        *(titles[t] for t in get_close_matches(text.lower(), titles, n=2)),
    ]
    hint = (
        ", ".join(f"{i} ({known[i].title})" for i in dict.fromkeys(near))
        or "such as FRK-09 (see docs/checks.md)"
    )
    raise BadInput(Problem(field, text, f"the id of a check: {hint}"))


def equipment_tags() -> tuple[str, ...]:
    """Return the equipment that a truck may be said to have, as far as any check depends on it."""
    return tuple(sorted({tag for check in catalogue().values() for tag in check.needs}))


def applicable(facts: TruckFacts) -> tuple[Check, ...]:
    """Return the checks that apply to a truck, in walking order."""
    return tuple(check for check in catalogue().values() if check.applies_to(facts))
