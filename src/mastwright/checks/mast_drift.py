"""How fast a load sinks or a mast leans when nobody touches a lever, and how fast it is lowered.

Drift is read with the rated load secured, the mast vertical and the oil warm, nobody under the forks.
"""

from __future__ import annotations

from math import asin, degrees
from typing import TYPE_CHECKING

from mastwright.checks.figures import constant, given_text, refuse_negative, refuse_unless_positive
from mastwright.quantity import BadInput, Problem, unit

if TYPE_CHECKING:
    from fractions import Fraction

_FACTOR_NAMES = {
    "carriage": "drift_at_carriage",
    "fork": "drift_at_fork",
    "mast-stages": "drift_between_stages",
}


def per_ten_minutes(drift: Fraction, minutes: Fraction) -> Fraction:
    """Return the drift in ten minutes, from what was read over another time.

    Parameters
    ----------
    drift
        Over that time, mm or deg, 0 or more.
    minutes
        How long it was watched, more than 0.

    Returns
    -------
    Fraction
        In the unit of `drift`.

    Raises
    ------
    BadInput
        If drift or time is impossible.

    **Source**: proportion; a truck maker's service manual states drift in 10 min (read).

    Examples
    --------
    >>> from fractions import Fraction
    >>> per_ten_minutes(Fraction(30), Fraction(5))
    Fraction(60, 1)
    """
    refuse_negative("drift", drift, "mm or deg")
    refuse_unless_positive("time of the drift test", minutes, "min")
    return drift * constant("drift_minutes") / minutes


def at_fork(drift: Fraction, measured_at: str) -> Fraction:
    """Return how far the forks sank, from a drift read there, at the carriage or between mast stages.

    Parameters
    ----------
    drift
        mm, 0 or more.
    measured_at
        ``carriage``, ``fork`` or ``mast-stages``.

    Returns
    -------
    Fraction
        mm.

    Raises
    ------
    BadInput
        If the drift is impossible or the place unknown.

    **Source**: a truck maker's service manual: the fork moves twice as far as the stages (read).

    Examples
    --------
    >>> from fractions import Fraction
    >>> at_fork(Fraction(40), "mast-stages")
    Fraction(80, 1)
    """
    refuse_negative("drift", drift, "mm")
    if measured_at not in _FACTOR_NAMES:
        raise BadInput(Problem("where drift was measured", measured_at, f"one of {', '.join(_FACTOR_NAMES)}"))
    return drift * constant(_FACTOR_NAMES[measured_at])


def tilt_from_stroke(stroke: Fraction, arm: Fraction) -> float:
    """Return by how many degrees a mast leaned, from how far the tilt cylinder's rod moved.

    Parameters
    ----------
    stroke
        Of the rod, mm, 0 or more and no longer than the arm.
    arm
        Perpendicular distance from the mast's pivot to the line of the cylinder, mm, more than 0.

    Raises
    ------
    BadInput
        If a measure is impossible.

    **Source**: right triangle, sin(angle) = stroke / arm (computed).

    Examples
    --------
    >>> from fractions import Fraction
    >>> round(tilt_from_stroke(Fraction("35.5"), Fraction(406)), 1)
    5.0
    """
    refuse_negative("tilt cylinder stroke", stroke, "mm")
    refuse_unless_positive("arm of the tilt cylinder", arm, "mm")
    if stroke > arm:
        most = f"no more than the arm of the cylinder, {given_text(arm, 'mm')}"
        raise BadInput(Problem("tilt cylinder stroke", given_text(stroke, "mm"), most))
    return degrees(asin(stroke / arm))


def mean_speed(distance_mm: Fraction, seconds: Fraction) -> Fraction:
    """Return the mean speed over a timed distance, in m/s.

    Parameters
    ----------
    distance_mm
        Travelled, mm, 0 or more.
    seconds
        Taken, s, more than 0.

    Raises
    ------
    BadInput
        If distance or time is impossible.

    **Source**: speed is distance over time (computed).

    Examples
    --------
    >>> from fractions import Fraction
    >>> mean_speed(Fraction(2000), Fraction(4))
    Fraction(1, 2)
    """
    refuse_negative("distance", distance_mm, "mm")
    refuse_unless_positive("time", seconds, "s")
    return unit("m").from_canonical(distance_mm) / seconds
