"""A quantity from what somebody wrote: number, unit, or feet and inches."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from mastwright.quantity.number import read_number, tidy
from mastwright.quantity.problem import BadInput, Problem
from mastwright.quantity.units import Unit, UnitSystem, find_unit, shown_unit, unit, units_of

_SPLIT = re.compile(r"(?P<number>[-+]?\d[\d.,/ -]*|[-+]?[.,]\d+ ?)(?P<unit>[^\d .,/-].*)?")
_FEET = re.compile(
    r"(?P<feet>[0-9]+) ?(?:ft|feet|foot|['′])[ -]?(?P<inches>[0-9][0-9.,/ -]*)(?:in|inch|inches|[\"″]|'')",
    re.IGNORECASE,
)
_TON = {"ton", "tons"}
_LONGEST = 60
# Beyond these nothing is measured on a truck, and within them every quantity is written in fewer than
# _LONGEST characters, so that what we write can be read again.
_LARGEST = 10**12
_FINEST = Fraction(1, 10**30)


@dataclass(frozen=True)
class Field:
    """One thing to be read: its name, dimension and plausible range.

    Parameters
    ----------
    name
        As the user knows it; stands first in every message.
    dimension
        A dimension of `mastwright.quantity.units`.
    system
        Decides the unit that a bare number takes.
    shown
        The unit that a bare number takes, where it is not the dimension's usual one.
    minimum, maximum
        Bounds in the dimension's own unit, beyond which the value is impossible; None for open.
    """

    name: str
    dimension: str
    system: UnitSystem = UnitSystem.METRIC
    shown: str | None = None
    minimum: Fraction | None = Fraction(0)
    maximum: Fraction | None = None

    @property
    def unit(self) -> Unit:
        """The unit that a bare number takes."""
        return unit(self.shown) if self.shown else shown_unit(self.dimension, self.system)


@dataclass(frozen=True)
class Quantity:
    """A value as written, kept exactly.

    Parameters
    ----------
    value
        In `unit`.
    unit
        As written, or the field's shown unit.
    step
        Size of the last written digit, in `unit`.
    """

    value: Fraction
    unit: Unit
    step: Fraction

    @property
    def canonical(self) -> Fraction:
        """The value in the dimension's own unit, exactly."""
        return self.unit.to_canonical(self.value)

    @property
    def canonical_step(self) -> Fraction:
        """The size of the last written digit in the dimension's own unit."""
        return self.step * self.unit.factor


def parse_quantity(given: object, field: Field) -> Quantity:
    """Read a quantity as somebody wrote it.

    Parameters
    ----------
    given
        Text such as ``12 3/8 in``, ``314,3 mm``, ``7' 2 1/2"`` or ``3 000 kg``; or a plain int or
        float, which takes the field's shown unit.
    field
        What it is for.

    Raises
    ------
    BadInput
        If it is no number, its unit is not one of the field's, it could mean two things, or it lies
        outside what is possible.

    Examples
    --------
    >>> parse_quantity("12 3/8 in", Field("length", "length")).canonical
    Fraction(12573, 40)
    """
    if isinstance(given, bool) or not isinstance(given, (str, int, float)):
        raise BadInput(_problem(field, given, f"{_wanted(field)}, as text or a number"))
    text = tidy(given) if isinstance(given, str) else _number_text(given)
    if not text or len(text) > _LONGEST:
        raise BadInput(_problem(field, given, f"a quantity such as {_example(field)}"))
    quantity = _read(text, field, given)
    _check_range(quantity, field, given)
    return quantity


def _number_text(given: float) -> str:
    """Return a number in digits, without exponent: 1e-07 would read as a number and a unit."""
    if isinstance(given, int):
        return str(given) if abs(given) < _LARGEST else ""
    return format(Decimal(repr(given)), "f")


def _read(text: str, field: Field, given: object) -> Quantity:
    feet = _FEET.fullmatch(text)
    if feet and field.dimension == "length":
        return _feet_and_inches(feet, field, given)
    match = _SPLIT.fullmatch(text)
    if not match:
        raise BadInput(_problem(field, given, f"a number and a unit, such as {_example(field)}"))
    written = read_number(match["number"].strip())
    if isinstance(written, str):
        raise BadInput(_problem(field, given, written))
    chosen = _unit_of(match["unit"], field, given)
    if written.is_fraction and not chosen.fractions:
        wanted = f"a decimal: fractions are for inches, feet and pounds, not {chosen.name}"
        raise BadInput(_problem(field, given, wanted))
    return Quantity(written.value, chosen, written.step)


def _unit_of(word: str | None, field: Field, given: object) -> Unit:
    if word is None:
        return field.unit
    if field.dimension == "mass" and word.lower() in _TON:
        raise BadInput(_problem(field, given, "t or kg, or lb: a ton may be 1000 kg, 2000 lb or 2240 lb"))
    chosen = find_unit(word)
    if chosen is None:
        raise BadInput(_problem(field, given, f"{_wanted(field)}: the unit {word!r} is not known"))
    if chosen.dimension != field.dimension:
        wanted = f"{_wanted(field)}: {chosen.name} measures {chosen.dimension}"
        raise BadInput(_problem(field, given, wanted))
    return chosen


def _feet_and_inches(match: re.Match[str], field: Field, given: object) -> Quantity:
    inches = read_number(match["inches"].strip())
    if isinstance(inches, str):
        raise BadInput(_problem(field, given, inches))
    if inches.value >= 12:  # noqa: PLR2004  inches in a foot
        raise BadInput(_problem(field, given, "fewer than 12 inches after the feet, as in 7 ft 2 1/2 in"))
    return Quantity(int(match["feet"]) * 12 + inches.value, unit("in"), inches.step)


def _check_range(quantity: Quantity, field: Field, given: object) -> None:
    value = quantity.canonical
    if abs(quantity.value) >= _LARGEST or quantity.step < _FINEST:
        raise BadInput(_problem(field, given, f"a quantity such as {_example(field)}"))
    if field.minimum is not None and value < field.minimum:
        raise BadInput(_problem(field, given, f"at least {_bound(field.minimum, field)}"))
    if field.maximum is not None and value > field.maximum:
        raise BadInput(_problem(field, given, f"at most {_bound(field.maximum, field)}"))


def _problem(field: Field, given: object, expected: str) -> Problem:
    """Return the problem; a whole number of thousands of digits could not even be printed."""
    if isinstance(given, int) and abs(given) >= _LARGEST:
        text = "a number of more than 12 digits"
    elif given is None or isinstance(given, (str, int, float)):
        text = str(given)
    else:
        text = f"a {type(given).__name__}"
    return Problem(field.name, text, expected)


def _wanted(field: Field) -> str:
    if field.dimension == "ratio":
        return "a plain number without a unit"
    return f"{field.dimension} in {', '.join(u.name for u in units_of(field.dimension))}"


def _bound(value: Fraction, field: Field) -> str:
    """Return a bound in the unit that a bare number takes: to ten digits, and no more of them than needed."""
    text = f"{float(field.unit.from_canonical(value)):.10g}"
    return text if field.dimension == "ratio" else f"{text} {field.unit.name}"


def _example(field: Field) -> str:
    if field.unit.name == "in":
        return "12 3/8 in"
    return f"31.5 {field.unit.name}" if field.dimension != "ratio" else "31.5"
