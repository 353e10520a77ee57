"""When the truck must be seen again: the earliest of schedule, law and what was found."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction
from functools import cache
from math import floor

from mastwright.quantity import Amount, Note, Source, read_table, source_of
from mastwright.verdict.item import JudgedItem
from mastwright.verdict.legal import LegalFrame
from mastwright.verdict.verdicts import Verdict
from mastwright.visits.visit import Truck, Visit

_DAYS_A_MONTH = Fraction("365.25") / 12
_FARTHEST = 100 * 366  # days: a meter that hardly moves sets no date


@dataclass(frozen=True)
class Bound:
    """One date by which the truck must be seen, and why."""

    by: date
    why: Note


@dataclass(frozen=True)
class NextVisit:
    """The next visit: its date, what sets it, all bounds in order, and what had to be assumed."""

    by: date
    bounds: tuple[Bound, ...]
    service_hours: Fraction
    assumptions: tuple[Note, ...]

    @property
    def because(self) -> Note:
        """What sets the date."""
        return self.bounds[0].why


@cache
def _schedule() -> dict[str, tuple[Fraction, Source]]:
    rows = read_table("mastwright.verdict", "intervals.csv")
    return {r["name"]: (Fraction(r["value"]), source_of(r["source"], r["evidence"], r["name"])) for r in rows}


def hours_per_day(visit: Visit) -> Fraction | None:
    """Return the truck's running hours per calendar day since the previous visit, or None if not known."""
    if visit.previous_on is None or visit.previous_hours is None:
        return None
    return (visit.truck.hours - visit.previous_hours) / (visit.on - visit.previous_on).days


def next_visit(visit: Visit, items: Iterable[JudgedItem], frame: LegalFrame) -> NextVisit:
    """Tell when the truck must be seen again.

    Parameters
    ----------
    visit
        With the hour meter of this and the previous visit.
    items
        Judged; those with a date bound the next visit.
    frame
        Of the site's country.

    Source
    ------
    US Army TM 10-3930-671-24 for the default schedule; half of it for severe duty is common practice.
    """
    truck, on = visit.truck, visit.on
    hours, months, assumptions = _service(truck)
    bounds = [
        Bound(
            on + timedelta(days=floor(months * _DAYS_A_MONTH)),
            Note("due-calendar", {"months": Amount(months, "ratio")}),
        )
    ]
    rate = hours_per_day(visit)
    if rate is not None and rate > 0 and hours / rate < _FARTHEST:
        bounds.append(
            Bound(
                on + timedelta(days=floor(hours / rate)), Note("due-hours", {"hours": Amount(hours, "hours")})
            )
        )
    else:
        assumptions.append(Note("hours-not-projected", {}))
    bounds += _by_law(truck, frame, assumptions)
    bounds += [
        Bound(i.by, Note("due-item", {"item": i.key}))
        for i in items
        if i.by is not None and i.verdict is Verdict.REPLACE
    ]
    if any(i.blocks for i in items):
        assumptions.append(Note("before-it-works", {}))
    ordered = tuple(sorted(bounds, key=lambda b: b.by))
    return NextVisit(ordered[0].by, ordered, hours, tuple(assumptions))


def _service(truck: Truck) -> tuple[Fraction, Fraction, list[Note]]:
    schedule = _schedule()
    assumptions = []
    hours, months = truck.service_hours, truck.service_months
    if hours is None or months is None:
        assumptions.append(Note("default-schedule", {"source": str(schedule["service_hours"][1])}))
    chosen_hours = hours if hours is not None else schedule["service_hours"][0]
    chosen_months = Fraction(months) if months is not None else schedule["service_months"][0]
    if truck.duty == "normal":
        return chosen_hours, chosen_months, assumptions
    factor = schedule["severe_factor"][0]
    assumptions.append(Note("severe-duty", {"factor": Amount(factor, "ratio")}))
    return chosen_hours * factor, chosen_months * factor, assumptions


def _by_law(truck: Truck, frame: LegalFrame, assumptions: list[Note]) -> list[Bound]:
    if frame.months == 0:
        return []
    if truck.last_examination is None:
        assumptions.append(Note("examination-unknown", {"source": str(frame.source)}))
        return []
    due = frame.examination_due(truck.last_examination, lifts_people=truck.lifts_people)
    return [] if due is None else [Bound(due, Note("due-law", {"source": str(frame.source)}))]
