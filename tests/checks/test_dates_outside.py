"""Months against the calendar of the standard library."""

from calendar import monthrange
from datetime import date, timedelta

import pytest

from mastwright.checks.dates import add_months, months_between


@pytest.mark.parametrize("months", range(0, 49, 5))
def test_a_month_later_is_that_day_in_the_calendar(months: int) -> None:
    """The day is kept, or cut to the month's length in Python's `calendar` (reference library)."""
    for offset in range(0, 366, 10):
        day = date(2023, 3, 1) + timedelta(days=offset)
        year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
        last = monthrange(year, month + 1)[1]
        assert add_months(day, months) == date(year, month + 1, min(day.day, last))


def test_four_hundred_years_are_as_many_days_as_the_calendar_has() -> None:
    """4800 months are 146 097 days: the cycle of the Gregorian calendar (from memory)."""
    day = date(2000, 1, 1)
    assert (add_months(day, 4800) - day).days == 146_097
    assert months_between(day, day + timedelta(days=146_097)) == 4800
