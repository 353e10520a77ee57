"""Service and parking brakes: how far a truck may roll, how hard it must brake, how hard a grade pulls.

Braking is tried laden, on a dry level floor, with nobody in the way. The driver's reaction is not in it.
"""

from __future__ import annotations

from math import atan, sin
from typing import TYPE_CHECKING

from mastwright.checks.figures import constant, refuse_negative, refuse_unless_positive
from mastwright.quantity import unit

if TYPE_CHECKING:
    from fractions import Fraction

_HUNDRED_PERCENT = 100


def allowed_stopping_distance(speed_m_s: Fraction) -> Fraction:
    """Return within how many millimetres a truck has to stop from this speed.

    Parameters
    ----------
    speed_m_s
        At the first movement of the pedal, m/s, more than 0.

    Returns
    -------
    Fraction
        mm.

    Raises
    ------
    BadInput
        If the speed is impossible.

    **Source**: 0.21 m per km/h up to 13.4 km/h, then 0.0157 m per (km/h)², computed from the drag rule
    of ISO 6292 and ANSI/ITSDF B56.1 (from memory); a truck maker's manual agrees within 2 % (read).

    Examples
    --------
    >>> from fractions import Fraction
    >>> allowed_stopping_distance(Fraction(25, 9))  # 10 km/h
    Fraction(2100, 1)
    """
    speed = _km_h(speed_m_s)
    if speed <= constant("stopping_knee"):
        metres = constant("stopping_per_kmh") * speed
    else:
        metres = constant("stopping_per_kmh_squared") * speed**2
    return unit("m").to_canonical(metres)


def needed_drag(speed_m_s: Fraction) -> Fraction:
    """Return how hard the service brake has to hold a truck of this top speed.

    Parameters
    ----------
    speed_m_s
        Top speed, m/s, more than 0.

    Returns
    -------
    Fraction
        Drag as % of the weight of truck and load.

    Raises
    ------
    BadInput
        If the speed is impossible.

    **Source**: ISO 6292 and ANSI/ITSDF B56.1 cl. 4.3.2 and 7.16.4: 1.86 % per km/h, at most 25 %
    (from memory).

    Examples
    --------
    >>> from fractions import Fraction
    >>> needed_drag(Fraction(25, 9))  # 10 km/h
    Fraction(93, 5)
    """
    return min(constant("drag_per_kmh") * _km_h(speed_m_s), constant("drag_most"))


def _km_h(speed_m_s: Fraction) -> Fraction:
    refuse_unless_positive("speed", speed_m_s, "m/s")
    return unit("km/h").from_canonical(speed_m_s)


def drag_from_distance(distance_mm: Fraction, speed: Fraction) -> float:
    """Return how hard a truck braked, from the distance in which it stopped on the level.

    Parameters
    ----------
    distance_mm
        From the first movement of the pedal, mm, more than 0.
    speed
        At that moment, m/s, more than 0.

    Returns
    -------
    float
        Drag as % of the weight of truck and load.

    Raises
    ------
    BadInput
        If distance or speed is impossible.

    **Source**: work of the brake and energy of motion, D = v² / (2 g s) (computed).

    Examples
    --------
    >>> from fractions import Fraction
    >>> round(drag_from_distance(Fraction(2100), Fraction(25, 9)), 1)  # 10 km/h
    18.7
    """
    refuse_unless_positive("stopping distance", distance_mm, "mm")
    refuse_unless_positive("speed", speed, "m/s")
    metres = unit("m").from_canonical(distance_mm)
    return float(_HUNDRED_PERCENT * speed**2 / (2 * constant("standard_gravity") * metres))


def drawbar_pull(weight_kg: Fraction, grade_percent: Fraction) -> float:
    """Return the pull on the level, in N, that tries a parking brake as this grade would.

    Parameters
    ----------
    weight_kg
        Mass of truck and load, kg, more than 0.
    grade_percent
        Rise over run, %, 0 or more.

    Raises
    ------
    BadInput
        If mass or grade is impossible.

    **Source**: inclined plane, pull = m g sin(atan(grade)) (computed).

    Examples
    --------
    >>> from fractions import Fraction
    >>> round(drawbar_pull(Fraction(6000), Fraction(15)))
    8728
    """
    refuse_unless_positive("mass of truck and load", weight_kg, "kg")
    refuse_negative("grade", grade_percent, "%")
    return float(weight_kg * constant("standard_gravity")) * sin(atan(grade_percent / _HUNDRED_PERCENT))


def drag_downhill(drag: Fraction, grade: Fraction) -> Fraction:
    """Return what is left of a truck's drag down a grade; at 0 or below it does not stop there.

    Parameters
    ----------
    drag
        On the level, % of the weight of truck and load, 0 or more.
    grade
        Rise over run, %, 0 or more.

    Returns
    -------
    Fraction
        %.

    Raises
    ------
    BadInput
        If drag or grade is impossible.

    **Source**: the grade pulls by its own percentage of the weight, for small grades (computed).

    Examples
    --------
    >>> from fractions import Fraction
    >>> drag_downhill(Fraction(25), Fraction(10))
    Fraction(15, 1)
    """
    refuse_negative("drag", drag, "%")
    refuse_negative("grade", grade, "%")
    return drag - grade
