"""What holds for any days."""

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from mastwright.checks.dates import add_months, months_between

days = st.dates(date(1900, 1, 1), date(2200, 1, 1))


@given(day=days, months=st.integers(0, 600))
def test_months_added_are_the_months_between(day: date, months: int) -> None:
    """Counting on and counting back agree, exactly."""
    assert months_between(day, add_months(day, months)) == months


@given(day=days, on=st.integers(0, 20_000))
def test_another_day_is_more(day: date, on: int) -> None:
    """A day later is more months, never less and never the same."""
    later = day + timedelta(days=on)
    assert 0 <= months_between(day, later) < months_between(day, later + timedelta(days=1))
