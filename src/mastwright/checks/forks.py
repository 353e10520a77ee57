"""Fork arms: angle, what wear leaves of them, when they reach their limit, which mounting they need.

How to measure and when to withdraw a fork stands in the table of checks; nothing here passes one.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from math import atan2, degrees, floor

from mastwright.checks.figures import refuse_negative, refuse_unless_positive
from mastwright.quantity import read_table


def angle_from_gap(gap: Fraction, height: Fraction) -> float:
    """Return by how many degrees a fork has opened, from the gap between its shank and a square.

    Parameters
    ----------
    gap
        Between square and shank at that height, mm, 0 or more.
    height
        Above the blade, mm, more than 0.

    Raises
    ------
    BadInput
        If a measure is impossible.

    **Source**: right triangle, tan(angle) = gap / height (computed); a truck maker's
    planned-maintenance manual takes 25 mm at 500 mm as the limit (read).

    Examples
    --------
    >>> round(angle_from_gap(Fraction(25), Fraction(500)), 2)
    2.86
    """
    refuse_negative("gap at the square", gap, "mm")
    refuse_unless_positive("height of the gap", height, "mm")
    return degrees(atan2(gap, height))


def strength_left(thickness: Fraction, original: Fraction) -> Fraction:
    """Return what share of its bending strength a worn fork has left: information, no licence to go on.

    Parameters
    ----------
    thickness, original
        Of the blade now and when new, mm, more than 0. A share above 1 means that the original is doubtful.

    Raises
    ------
    BadInput
        If a thickness is impossible.

    **Source**: section modulus of a rectangle, W = b t² / 6 (computed); trade pages on fork wear agree:
    10 % wear leaves 80 % (read).

    Examples
    --------
    >>> strength_left(Fraction(36), Fraction(40))
    Fraction(81, 100)
    """
    return _thickness_ratio(thickness, original) ** 2


def stiffness_left(thickness: Fraction, original: Fraction) -> Fraction:
    """Return what share of its bending stiffness a worn fork has left; the tip sags by its inverse.

    Parameters
    ----------
    thickness, original
        Of the blade now and when new, mm, more than 0.

    Raises
    ------
    BadInput
        If a thickness is impossible.

    **Source**: second moment of a rectangle, I = b t³ / 12 (computed).

    Examples
    --------
    >>> stiffness_left(Fraction(36), Fraction(40))
    Fraction(729, 1000)
    """
    return _thickness_ratio(thickness, original) ** 3


def _thickness_ratio(thickness: Fraction, original: Fraction) -> Fraction:
    refuse_unless_positive("thickness", thickness, "mm")
    refuse_unless_positive("original thickness", original, "mm")
    return thickness / original


def forecast_thickness(
    now: Fraction, earlier: Fraction, hours_between: Fraction, hours_ahead: Fraction
) -> Fraction:
    """Return how thick a fork will be after so many more hours of work, if it goes on wearing as it did.

    A fork does not grow: where the earlier reading is the thinner one, it stays at the present one.

    Parameters
    ----------
    now, earlier
        Thickness at the last and at an earlier reading, mm, more than 0.
    hours_between
        On the hour meter between the two, h, more than 0.
    hours_ahead
        From the last reading on, h, 0 or more.

    Returns
    -------
    Fraction
        mm, never below 0.

    Raises
    ------
    BadInput
        If a reading is impossible.

    **Source**: straight line through two readings against hours (common practice, no source).

    Examples
    --------
    >>> forecast_thickness(Fraction(38), Fraction(39), Fraction(1000), Fraction(500))
    Fraction(75, 2)
    """
    refuse_negative("hours ahead", hours_ahead, "h")
    wear = _wear_per_hour(now, earlier, hours_between)
    return max(now - wear * hours_ahead, Fraction(0))


def hours_to_limit(
    now: Fraction, earlier: Fraction, hours_between: Fraction, limit: Fraction
) -> Fraction | None:
    """Return after how many more hours of work a fork will be down to its limit.

    Parameters
    ----------
    now, earlier
        Thickness at the last and at an earlier reading, mm, more than 0.
    hours_between
        On the hour meter between the two, h, more than 0.
    limit
        Thickness at which the fork goes, mm, 0 or more.

    Returns
    -------
    Fraction or None
        h; 0 where the fork is at its limit or below; None where no wear shows between the readings.

    Raises
    ------
    BadInput
        If a reading is impossible.

    **Source**: straight line through two readings against hours (common practice, no source).

    Examples
    --------
    >>> hours_to_limit(Fraction(38), Fraction(39), Fraction(1000), Fraction(36))
    Fraction(2000, 1)
    """
    refuse_negative("limit", limit, "mm")
    wear = _wear_per_hour(now, earlier, hours_between)
    if now <= limit:
        return Fraction(0)
    return (now - limit) / wear if wear else None


def _wear_per_hour(now: Fraction, earlier: Fraction, hours_between: Fraction) -> Fraction:
    refuse_unless_positive("thickness now", now, "mm")
    refuse_unless_positive("earlier thickness", earlier, "mm")
    refuse_unless_positive("hours between the readings", hours_between, "h")
    return max(earlier - now, Fraction(0)) / hours_between


@cache
def _mounting_classes() -> tuple[tuple[int, int, int], ...]:
    rows = read_table("mastwright.checks", "mounting_classes.csv")
    return tuple((int(row["class"]), int(row["from_kg"]), int(row["to_kg"])) for row in rows)


def mounting_class(capacity_kg: Fraction) -> tuple[int, ...]:
    """Return the mounting classes a truck of this rated capacity can have on its carriage.

    The ranges are tabulated in whole kilograms, so a part of a kilogram is dropped.

    Parameters
    ----------
    capacity_kg
        Rated capacity on the plate, kg, more than 0.

    Returns
    -------
    tuple of int
        Two where the ranges overlap, none above the largest class.

    Raises
    ------
    BadInput
        If the capacity is impossible.

    **Source**: ISO 2328 as tabulated by a fork maker (read); the bounds differ a little between sources.

    Examples
    --------
    >>> mounting_class(Fraction(2500)), mounting_class(Fraction(9000))
    ((2,), (4, 5))
    """
    refuse_unless_positive("rated capacity", capacity_kg, "kg")
    return tuple(number for number, least, most in _mounting_classes() if least <= floor(capacity_kg) <= most)
