"""When the truck must be seen again."""

from __future__ import annotations

from datetime import date, timedelta
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.verdict import NextVisit, judge_visit
from mastwright.verdict.next_visit import hours_per_day
from mastwright.visits import Visit
from verdict.made import DAY
from visits.written import chain, check, read

PREVIOUS = '[previous]\ndate = 2026-08-22\nhours = "9 362 h"\n'
PLANNED = '[[chain.span]]\nstrand = "left"\npitches = 16\nlength = "311.5 mm"\ninstrument = "calliper"\n'


def due(visit: Visit) -> NextVisit:
    """Return when the truck of a visit is due."""
    return judge_visit(visit).next_visit


def bounds(found: NextVisit) -> dict[str, date]:
    """Return each bound by its reason."""
    return {b.why.code: b.by for b in found.bounds}


def assumed(found: NextVisit) -> list[str]:
    """Return what had to be assumed."""
    return [n.code for n in found.assumptions]


def test_the_schedule_that_ships() -> None:
    """US Army TM 10-3930-671-24 (read): 500 h or 3 months, where nobody has said otherwise."""
    found = due(read(chain(), customer='country = "US"'))
    assert found.service_hours == 500
    assert bounds(found) == {"due-calendar": DAY + timedelta(days=91)}
    assert "default-schedule" in assumed(found)


def test_the_shops_own_schedule() -> None:
    """What the maker or the shop has said stands, and nothing is assumed."""
    found = due(read(chain(), truck='service_hours = "250 h"\nservice_months = 1', customer='country = "US"'))
    assert found.service_hours == 250
    assert found.by == DAY + timedelta(days=30)
    assert "default-schedule" not in assumed(found)


@pytest.mark.parametrize("given_field", ['service_hours = "250 h"', "service_months = 1"])
def test_half_a_schedule_is_filled_up(given_field: str) -> None:
    """Where only one of the two was said, the other is the default, and that is told."""
    assert "default-schedule" in assumed(due(read(chain(), truck=given_field)))


@pytest.mark.parametrize("duty", ["severe", "extreme"])
def test_severe_duty_halves_the_schedule(duty: str) -> None:
    """Half of hours and months, as common practice has it, and that is told."""
    found = due(read(chain(), truck=f'service_hours = "250 h"\nservice_months = 2\nduty = "{duty}"'))
    assert found.service_hours == 125
    assert found.by == DAY + timedelta(days=30)
    assert "severe-duty" in assumed(found)


def test_hours_are_projected() -> None:
    """By hand: 450 h in 90 days are 5 h a day, so that 500 h are done in 100 days."""
    visit = read(chain(), PREVIOUS, truck="service_months = 12")
    assert hours_per_day(visit) == 5
    assert bounds(due(visit))["due-hours"] == DAY + timedelta(days=100)


def test_the_earlier_of_hours_and_calendar_sets_the_date() -> None:
    """With a year by the calendar the meter is first, and it is named."""
    found = due(read(chain(), PREVIOUS, truck="service_months = 12"))
    assert (found.by, found.because.code) == (DAY + timedelta(days=100), "due-hours")


@pytest.mark.parametrize(
    "previous",
    [
        "",
        "[previous]\ndate = 2026-08-22\n",
        '[previous]\nhours = "9 000 h"\n',
        '[previous]\ndate = 2026-08-22\nhours = "9 812 h"\n',
        '[previous]\ndate = 1990-01-01\nhours = "9 811.9 h"\n',
    ],
)
def test_hours_that_cannot_be_projected(previous: str) -> None:
    """Without an earlier meter, or where it has hardly moved, the calendar alone counts, and that is told."""
    found = due(read(chain(), previous))
    assert "due-hours" not in bounds(found)
    assert "hours-not-projected" in assumed(found)


@pytest.mark.parametrize(
    ("country", "people", "by"),
    [
        ("GB", "false", date(2026, 12, 1)),
        ("GB", "true", date(2026, 6, 1)),
        ("DE", "true", date(2026, 12, 1)),
        ("FR", "false", date(2026, 6, 1)),
    ],
)
def test_the_law_bounds_the_next_visit(country: str, people: str, by: date) -> None:
    """LOLER 1998 reg. 9(3) and DGUV Vorschrift 68 § 37: 12 months; 6 for persons, and in France."""
    found = due(
        read(
            chain(),
            customer=f'country = "{country}"',
            truck=f"last_examination = 2025-12-01\nlifts_people = {people}",
        )
    )
    assert (found.by, found.because.code) == (by, "due-law")


def test_an_examination_that_nobody_noted_is_told() -> None:
    """Where the law asks for one and no date is known, that is said."""
    found = due(read(chain(), customer='country = "GB"'))
    assert "due-law" not in bounds(found)
    assert "examination-unknown" in assumed(found)


def test_a_law_without_interval_bounds_nothing() -> None:
    """29 CFR 1910.178 sets no statutory interval: no date, and nothing to be assumed."""
    found = due(read(chain(), customer='country = "US"', truck="last_examination = 2020-01-01"))
    assert "due-law" not in bounds(found)
    assert "examination-unknown" not in assumed(found)


def test_a_planned_replacement_bounds_the_next_visit() -> None:
    """What is to be replaced by a date brings the truck back by that date."""
    found = due(read(chain(spans=PLANNED), truck="service_months = 12"))
    assert (found.by, found.because.code) == (date(2027, 2, 20), "due-item")
    assert found.because.params == {"item": "main"}


def test_a_repair_bounds_the_next_visit() -> None:
    """A repair by a date does so too, under the check's own name."""
    found = due(read(check("FRK-15", "ok = false", "by = 2026-12-01")))
    assert (found.by, found.because.params) == (date(2026, 12, 1), {"item": "FRK-15"})


def test_what_stops_the_truck_is_told_to_be_first() -> None:
    """A date for a truck that stands is only for after it was put right."""
    assert assumed(due(read(check("CAP-01", "ok = false"))))[-1] == "before-it-works"


def test_a_sound_truck_is_not_told_to_wait() -> None:
    """Nothing has to be done before a sound truck works."""
    assert "before-it-works" not in assumed(due(read(check("CAP-01", "ok = true"))))


@given(st.integers(1, 5000), st.integers(0, 20_000), st.integers(1, 5000))
def test_the_next_visit_is_its_earliest_bound(ago: int, ran: int, every: int) -> None:
    """Whatever the meter and the schedule, the date is the first of all, and never past the calendar."""
    previous = (DAY - timedelta(days=ago)).isoformat()
    found = due(
        read(
            chain(),
            f'[previous]\ndate = {previous}\nhours = "{9812 - min(ran, 9812)} h"\n',
            truck=f'service_hours = "{every} h"\nservice_months = 3',
        )
    )
    assert [b.by for b in found.bounds] == sorted(b.by for b in found.bounds)
    assert found.by == found.bounds[0].by <= DAY + timedelta(days=91)


@given(st.integers(0, 9812), st.integers(0, 9812))
def test_a_truck_that_runs_more_is_seen_no_later(one: int, other: int) -> None:
    """More hours since the previous visit never push the next one away."""
    dates = [
        due(read(chain(), f'[previous]\ndate = 2026-08-22\nhours = "{9812 - ran} h"\n')).by
        for ran in sorted((one, other))
    ]
    assert dates == sorted(dates, reverse=True)


def test_a_day_begun_is_not_given_away() -> None:
    """500 h at 3 h a day are done in 166.7 days: the 166th day is taken."""
    visit = read(chain(), '[previous]\ndate = 2026-11-10\nhours = "9 782 h"\n', truck="service_months = 12")
    assert hours_per_day(visit) == Fraction(3)
    assert bounds(due(visit))["due-hours"] == DAY + timedelta(days=166)
