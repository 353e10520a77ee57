"""Months between days, and days so many months later."""

from datetime import date
from fractions import Fraction

import pytest

from mastwright.checks.dates import add_months, months_between
from mastwright.quantity import BadInput

MONTH = Fraction("30.4375")


@pytest.mark.parametrize(
    ("earlier", "later", "months"),
    [
        (date(2024, 3, 5), date(2024, 3, 5), 0),
        (date(2024, 3, 5), date(2024, 4, 5), 1),
        (date(2023, 3, 5), date(2024, 3, 5), 12),
        (date(2023, 12, 31), date(2024, 2, 29), 2),
        (date(2024, 2, 29), date(2025, 2, 28), 12),
    ],
)
def test_whole_months_are_whole(earlier: date, later: date, months: int) -> None:
    """The same day of another month, or its last, is a whole number of months."""
    assert months_between(earlier, later) == months


def test_days_are_a_share_of_a_month() -> None:
    """Ten days past two months are ten mean days."""
    assert months_between(date(2024, 1, 1), date(2024, 3, 11)) == 2 + 10 / MONTH


def test_a_day_past_twelve_months_is_more_than_twelve() -> None:
    """An inspection due after twelve months is overdue the day after."""
    assert months_between(date(2023, 6, 1), date(2024, 6, 2)) > 12


def test_a_date_in_the_future_is_refused() -> None:
    """What is said to be done lies on the day of the visit or before."""
    with pytest.raises(BadInput, match=r"^date: '2024-06-02' given; a day not after 2024-06-01$"):
        months_between(date(2024, 6, 2), date(2024, 6, 1))


@pytest.mark.parametrize(
    ("months", "expected"),
    [(0, date(2024, 1, 31)), (1, date(2024, 2, 29)), (13, date(2025, 2, 28)), (-2, date(2023, 11, 30))],
)
def test_a_shorter_month_ends_earlier(months: int, expected: date) -> None:
    """Where the month has no such day, its last day is taken."""
    assert add_months(date(2024, 1, 31), months) == expected


@pytest.mark.parametrize("months", [10**6, 10**30, -(10**6)])
def test_past_the_calendar_is_refused(months: int) -> None:
    """Months that leave the calendar are named, with the day they were counted from."""
    with pytest.raises(BadInput, match=rf"^months: '{months}' given; months that lead from 2024-01-31"):
        add_months(date(2024, 1, 31), months)
