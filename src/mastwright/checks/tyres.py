"""Tyres: what a cushion tyre has lost, and how far a pneumatic one is from its plate.

A tyre far below its plate is not pumped up on the truck; the table of checks says what to do.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from mastwright.checks.figures import refuse_negative, refuse_unless_positive

if TYPE_CHECKING:
    from fractions import Fraction


def diameter_lost(original: Fraction, now: Fraction) -> Fraction:
    """Return how much a tyre's outside diameter has worn, in mm.

    Parameters
    ----------
    original, now
        Outside diameter when new and now, mm, more than 0. A loss below 0 means that the original is
        doubtful.

    Raises
    ------
    BadInput
        If a diameter is impossible.

    **Source**: difference of two readings (computed).

    Examples
    --------
    >>> from fractions import Fraction
    >>> diameter_lost(Fraction(533), Fraction(508))
    Fraction(25, 1)
    """
    refuse_unless_positive("original diameter", original, "mm")
    refuse_unless_positive("diameter now", now, "mm")
    return original - now


def pressure_share(pressure: Fraction, plate: Fraction) -> Fraction:
    """Return what share of its plate pressure a cold tyre has.

    Parameters
    ----------
    pressure
        Read cold, above the air outside, kPa, 0 or more.
    plate
        On the truck's plate, kPa, more than 0.

    Raises
    ------
    BadInput
        If a pressure is impossible.

    **Source**: ratio of two readings (computed).

    Examples
    --------
    >>> from fractions import Fraction
    >>> pressure_share(Fraction(560), Fraction(700))
    Fraction(4, 5)
    """
    refuse_negative("tyre pressure", pressure, "kPa")
    refuse_unless_positive("plate pressure", plate, "kPa")
    return pressure / plate
