"""Figures as a technician writes them: a sensible number of digits, in the reader's units."""

from __future__ import annotations

from fractions import Fraction

from mastwright.quantity import Amount, UnitSystem, canonical_unit, decimal_text, inch_text, shown_unit

# Digits after the point, by the unit in which a figure is shown.
_DIGITS = {
    "mm": 1, "kg": 0, "lb": 0, "N": 0, "lbf": 0, "deg": 1, "°C": 1, "°F": 1, "kPa": 0, "psi": 1, "N·m": 0,
    "lbf·ft": 0, "km/h": 1, "mph": 1, "m/s": 2, "s": 1, "h": 0, "months": 0, "V": 2, "ohm": 0, "kg/l": 3,
    "%": 2, "1": 2, "rpm": 0, "ppm": 0, "Ah": 0,
}  # fmt: skip


def amount_text(amount: Amount, system: UnitSystem) -> str:
    """Return a figure with its unit, trailing zeros cut.

    Examples
    --------
    >>> amount_text(Amount(Fraction("313.944"), "length"), UnitSystem.METRIC)
    '313.9 mm'
    >>> amount_text(Amount(Fraction("313.944"), "length"), UnitSystem.INCH)
    '12.36 in (12 23/64)'
    """
    unit = shown_unit(amount.dimension, system)
    value = unit.from_canonical(amount.value)
    if unit.name == "in":
        decimal, fraction = _cut(decimal_text(value, 3)), inch_text(value)
        return f"{decimal} in" if decimal == fraction else f"{decimal} in ({fraction})"
    text = _cut(decimal_text(value, _DIGITS[unit.name]))
    return text if unit.name == "1" else f"{text} {unit.name}"


def doubt_text(standard_uncertainty: float, dimension: str, system: UnitSystem) -> str:
    """Return a standard uncertainty with its unit, two significant digits."""
    unit = shown_unit(dimension, system)
    value = standard_uncertainty / float(unit.factor)
    text = f"{value:.2g}"
    return f"u = {text}" if unit.name == "1" else f"u = {text} {unit.name}"


def percent_text(probability: float) -> str:
    """Return a probability in percent, never rounded to nothing or to certainty.

    Examples
    --------
    >>> percent_text(0.0621), percent_text(0.00001), percent_text(1.0)
    ('6.2 %', '< 0.1 %', '> 99.9 %')
    """
    percent = 100 * probability
    lowest, highest = 0.1, 99.9
    if percent < lowest:
        return "< 0.1 %"
    return "> 99.9 %" if percent > highest else f"{percent:.1f} %"


def canonical_name(dimension: str) -> str:
    """Return the name of the unit in which figures of this dimension are kept."""
    return canonical_unit(dimension).name


def _cut(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text


def fraction_to_float(value: Fraction | None) -> float | None:
    """Return a JSON number, or None."""
    return None if value is None else float(value)
