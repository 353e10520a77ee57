"""Calendar months between two days, and the day so many months later."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from dateutil.relativedelta import relativedelta

from mastwright.checks.figures import constant
from mastwright.quantity import BadInput, Problem

if TYPE_CHECKING:
    from datetime import date

_MONTHS_PER_YEAR = 12


def months_between(earlier: date, later: date) -> Fraction:
    """Return how many calendar months have passed, whole months exactly and days as a share of one.

    Parameters
    ----------
    earlier
        Such as the day of the last inspection.
    later
        Such as the day of the visit; the same day or after.

    Raises
    ------
    BadInput
        If the first day comes after the second.

    **Source**: calendar months; a day is 1/30.4375 of one, the mean month of a Julian year (computed).

    Examples
    --------
    >>> from datetime import date
    >>> months_between(date(2024, 1, 31), date(2024, 2, 29))
    Fraction(1, 1)
    """
    if earlier > later:
        raise BadInput(Problem("date", earlier.isoformat(), f"a day not after {later.isoformat()}"))
    gap = relativedelta(later, earlier)
    return gap.years * _MONTHS_PER_YEAR + gap.months + gap.days / constant("days_per_month")


def add_months(day: date, months: int) -> date:
    """Return the day so many calendar months later, or the last day of that month if it is shorter.

    Parameters
    ----------
    day
        From which to count.
    months
        Whole months; below 0 counts back.

    Raises
    ------
    BadInput
        If the calendar does not reach that far.

    **Source**: calendar months (common practice, no source).

    Examples
    --------
    >>> from datetime import date
    >>> add_months(date(2024, 1, 31), 1)
    datetime.date(2024, 2, 29)
    """
    try:
        return day + relativedelta(months=months)
    except (ValueError, OverflowError):
        raise BadInput(
            Problem(
                "months", str(months), f"months that lead from {day.isoformat()} to a year from 1 to 9999"
            )
        ) from None
