"""Quantities for people: millimetres to a digit, inches to the nearest 64th, never a hidden rounding."""

from __future__ import annotations

from fractions import Fraction
from math import floor
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from mastwright.quantity.units import Unit

_SIXTY_FOURTHS = 64


def decimal_text(value: Fraction | float, digits: int) -> str:
    """Return the value rounded to so many decimal places, with a point; a half goes away from zero.

    Examples
    --------
    >>> decimal_text(Fraction(12573, 40), 1)
    '314.3'
    """
    scaled = Fraction(value) * 10**digits
    whole = floor(abs(scaled) + Fraction(1, 2))
    sign = "-" if scaled < 0 and whole else ""
    text = str(whole).rjust(digits + 1, "0")
    return f"{sign}{text[:-digits]}.{text[-digits:]}" if digits else f"{sign}{text}"


def exact_text(value: Fraction) -> str | None:
    """Return the value as a finite decimal without rounding, or None where there is none."""
    rest, digits = value.denominator, 0
    for prime in (2, 5):
        count = 0
        while rest % prime == 0:
            rest //= prime
            count += 1
        digits = max(digits, count)
    if rest != 1:
        return None
    return decimal_text(value, digits)


def inch_text(value: Fraction, *, down: bool = False) -> str:
    """Return inches as a whole number and a fraction in lowest terms, to 1/64.

    Parameters
    ----------
    value
        In inches.
    down
        Round towards zero instead of to the nearest 64th: a limit shown to a technician must not
        stand above the true one.

    Examples
    --------
    >>> inch_text(Fraction("12.36"), down=True)
    '12 23/64'
    """
    scaled = abs(value) * _SIXTY_FOURTHS
    count = floor(scaled) if down else floor(scaled + Fraction(1, 2))
    whole, rest = divmod(count, _SIXTY_FOURTHS)
    sign = "-" if value < 0 and count else ""
    if rest == 0:
        return f"{sign}{whole}"
    part = Fraction(rest, _SIXTY_FOURTHS)
    body = f"{part.numerator}/{part.denominator}"
    return f"{sign}{whole} {body}" if whole else f"{sign}{body}"


def written_text(value: Fraction, unit: Unit) -> str:
    """Return a value with its unit so that reading it again gives the same value.

    Parameters
    ----------
    value
        In `unit`. What somebody wrote always has a finite decimal in the unit it was written in; in
        another unit it may have none (50 °F is 10 °C, but 51 °F has no end in °C).

    Raises
    ------
    ValueError
        If the value has no finite decimal.
    """
    text = exact_text(value)
    if text is None:
        raise ValueError(f"{value} has no finite decimal")
    return text if unit.name == "1" else f"{text} {unit.name}"
