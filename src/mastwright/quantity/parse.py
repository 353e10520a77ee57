"""A quantity from what somebody wrote: number, unit, or feet and inches."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from mastwright.quantity.number import read_number, tidy
from mastwright.quantity.problem import BadInput, Problem
from mastwright.quantity.units import Unit, UnitSystem, canonical_unit, find_unit, shown_unit, unit, units_of

_SPLIT = re.compile(r"^(?P<number>[-+]?[\d][\d.,/ -]*?|[-+]?[.,]\d+)\s*(?P<unit>[^\d\s.,/-].*)?$")
_FEET = re.compile(r"^(?P<feet>\d+)\s*(?:ft|feet|foot|'|′)[\s-]*(?P<inches>\d[\d./ -]*?)\s*(?:in|inch|inches|\"|″|'')$")
_TON = {"ton", "tons"}
_LONGEST = 60


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
        raise BadInput(_problem(field, given, f"a quantity in {_names(field)}, as text or a number"))
    text = tidy(str(given) if isinstance(given, str) else format(given, "f") if isinstance(given, float) else str(given))
    if isinstance(given, float):
        text = repr(given)
    if not text or len(text) > _LONGEST:
        raise BadInput(_problem(field, given, f"a quantity such as {_example(field)}"))
    quantity = _read(text, field, given)
    _check_range(quantity, field, given)
    return quantity


def _read(text: str, field: Field, given: object) -> Quantity:
    feet = _FEET.match(text)
    if feet and field.dimension == "length":
        return _feet_and_inches(feet, field, given)
    match = _SPLIT.match(text)
    if not match:
        raise BadInput(_problem(field, given, f"a number and a unit, such as {_example(field)}"))
    chosen = _unit_of(match["unit"], field, given)
    written = read_number(match["number"].strip())
    if isinstance(written, str):
        raise BadInput(_problem(field, given, written))
    if written.is_fraction and not chosen.fractions:
        raise BadInput(_problem(field, given, f"a decimal: fractions are read in inches, feet and pounds, not in {chosen.name}"))
    return Quantity(written.value, chosen, written.step)


def _unit_of(word: str | None, field: Field, given: object) -> Unit:
    if word is None:
        return field.unit
    word = word.strip()
    if word.lower() in _TON:
        raise BadInput(_problem(field, given, "t or kg, or lb: a ton may be 1000 kg, 2000 lb or 2240 lb"))
    chosen = find_unit(word)
    if chosen is None and field.dimension == "ratio":
        raise BadInput(_problem(field, given, "a plain number without a unit"))
    if chosen is None:
        raise BadInput(_problem(field, given, f"one of the units {_names(field)}: {word!r} is not known"))
    if chosen.dimension != field.dimension:
        raise BadInput(
            _problem(field, given, f"a {field.dimension} in {_names(field)}: {chosen.name} measures {chosen.dimension}")
        )
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
    home = canonical_unit(field.dimension)
    if field.minimum is not None and value < field.minimum:
        raise BadInput(_problem(field, given, f"at least {float(field.minimum):g} {home.name}"))
    if field.maximum is not None and value > field.maximum:
        raise BadInput(_problem(field, given, f"at most {float(field.maximum):g} {home.name}"))


def _problem(field: Field, given: object, expected: str) -> Problem:
    return Problem(field.name, str(given), expected)


def _names(field: Field) -> str:
    return ", ".join(u.name for u in units_of(field.dimension))


def _example(field: Field) -> str:
    if field.unit.name == "in":
        return "12 3/8 in"
    return f"31.5 {field.unit.name}" if field.dimension != "ratio" else "31.5"
