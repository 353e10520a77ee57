"""Figures as a technician writes them: a sensible number of digits, in the reader's units."""

from __future__ import annotations

from mastwright.quantity import Amount, UnitSystem, decimal_text, inch_text, shown_unit

# Digits after the point, by the unit in which a figure is shown.
_DIGITS = {
    "mm": 1, "kg": 0, "lb": 0, "N": 0, "lbf": 0, "deg": 1, "°C": 1, "°F": 1, "kPa": 0, "psi": 1, "N·m": 0,
    "lbf·ft": 0, "km/h": 1, "mph": 1, "m/s": 2, "s": 1, "h": 0, "months": 0, "V": 2, "ohm": 0, "kg/l": 3,
    "%": 2, "1": 2, "rpm": 0, "ppm": 0, "Ah": 0,
}  # fmt: skip

# Inches that stand on a rule are shown as a fraction too.
_RULE_PARTS = 64
_MOST_DIGITS = 6


def amount_text(amount: Amount, system: UnitSystem) -> str:
    """Return a figure with its unit, trailing zeros cut.

    Examples
    --------
    >>> amount_text(Amount(Fraction("313.944"), "length"), UnitSystem.METRIC)
    '313.9 mm'
    >>> amount_text(Amount(Fraction("313.944"), "length"), UnitSystem.INCH)
    '12.36 in'
    >>> amount_text(Amount(Fraction("314.325"), "length"), UnitSystem.INCH)
    '12.375 in (12 3/8)'
    >>> amount_text(Amount(Fraction("2.996"), "percent"), UnitSystem.METRIC)
    '2.996 %'
    """
    unit = shown_unit(amount.dimension, system)
    value = unit.from_canonical(amount.value)
    if unit.name == "in":
        decimal, on_the_rule = _cut(decimal_text(value, 3)), (value * _RULE_PARTS).denominator == 1
        return (
            f"{decimal} in ({inch_text(value)})" if on_the_rule and value.denominator > 1 else f"{decimal} in"
        )
    digits = _DIGITS[unit.name]
    text = _cut(decimal_text(value, digits))
    # 2.996 % is not 3 %, least of all beside a limit of 3 %.
    near_whole = unit.name == "%" and text != "0"
    while near_whole and "." not in text and value.denominator > 1 and digits < _MOST_DIGITS:
        digits += 1
        text = _cut(decimal_text(value, digits))
    return text if unit.name == "1" else f"{text} {unit.name}"


def doubt_text(standard_uncertainty: float, dimension: str, system: UnitSystem) -> str:
    """Return a standard uncertainty with its unit, two significant digits."""
    unit = shown_unit(dimension, system)
    value = standard_uncertainty / float(unit.factor)
    text = _cut(decimal_text(value, max(0, 1 - _magnitude(value))))
    return text if unit.name == "1" else f"{text} {unit.name}"


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


def _cut(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text


def _magnitude(value: float) -> int:
    """Return the power of ten of the first digit, of a half rounded up."""
    return int(f"{value:.1e}".partition("e")[2])
