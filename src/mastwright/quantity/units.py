"""Units by name, with exact factors, and the unit each dimension is kept in.

Every length is kept in millimetres, every mass in kilograms and so on (`canonical_unit`), as exact
fractions, so that a value written in inches and read back in inches is the same to the last digit.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from functools import cache

from mastwright.quantity.source import Source, read_table, source_of


class UnitSystem(StrEnum):
    """The two ways a shop shows its figures."""

    METRIC = "metric"
    INCH = "inch"


@dataclass(frozen=True)
class Unit:
    """One unit: its dimension and the exact way to the dimension's own unit.

    ``canonical = factor * value + offset``; only temperatures have an offset.
    """

    name: str
    dimension: str
    factor: Fraction
    offset: Fraction
    system: str
    fractions: bool
    source: Source

    def to_canonical(self, value: Fraction) -> Fraction:
        """Turn a value in this unit into the dimension's own unit, exactly."""
        return self.factor * value + self.offset

    def from_canonical(self, value: Fraction) -> Fraction:
        """Turn a value in the dimension's own unit into this one, exactly."""
        return (value - self.offset) / self.factor


@cache
def _tables() -> tuple[dict[str, Unit], dict[str, Unit]]:
    by_name: dict[str, Unit] = {}
    by_word: dict[str, Unit] = {}
    for row in read_table("mastwright.quantity", "units.csv"):
        unit = Unit(
            name=row["unit"],
            dimension=row["dimension"],
            factor=Fraction(row["factor"]),
            offset=Fraction(row["offset"]),
            system=row["system"],
            fractions=row["fractions"] == "yes",
            source=source_of(row["source"], row["evidence"], f"units.csv {row['unit']}"),
        )
        by_name[unit.name] = unit
        for word in (unit.name, *row["aliases"].split()):
            by_word[word] = unit
    return by_name, by_word


def unit(name: str) -> Unit:
    """Return the unit of this name (the table's own spelling).

    Raises
    ------
    KeyError
        If there is none.
    """
    return _tables()[0][name]


def find_unit(word: str) -> Unit | None:
    """Return the unit somebody meant by this word, or None.

    Upper and lower case do not count, but for the M of mega: ``mohm`` could be a milliohm, which is
    a thousand millionth of a Mohm.
    """
    by_word = _tables()[1]
    if word in by_word:
        return by_word[word]
    lower = word.lower()
    matches = {
        u.name: u
        for w, u in by_word.items()
        if w.lower() == lower and (word.startswith("M") or not w.startswith("M"))
    }
    return next(iter(matches.values())) if len(matches) == 1 else None


def dimensions() -> tuple[str, ...]:
    """Return the name of everything that can be measured here, in the order of the table."""
    return tuple(dict.fromkeys(u.dimension for u in _tables()[0].values()))


def units_of(dimension: str) -> tuple[Unit, ...]:
    """Return every unit of a dimension, its own unit first."""
    return tuple(u for u in _tables()[0].values() if u.dimension == dimension)


def canonical_unit(dimension: str) -> Unit:
    """Return the unit in which values of this dimension are kept and compared."""
    return units_of(dimension)[0]


# What a shop reads in each system; a dimension that is not named here has one unit in both.
_SHOWN = {
    "length": ("mm", "in"),
    "mass": ("kg", "lb"),
    "force": ("N", "lbf"),
    "temperature": ("°C", "°F"),
    "pressure": ("kPa", "psi"),
    "torque": ("N·m", "lbf·ft"),
    "speed": ("km/h", "mph"),
}


def shown_unit(dimension: str, system: UnitSystem) -> Unit:
    """Return the unit in which a bare number of this dimension is taken, and values are shown."""
    if dimension in _SHOWN:
        return unit(_SHOWN[dimension][system is UnitSystem.INCH])
    return canonical_unit(dimension)
