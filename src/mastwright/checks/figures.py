"""The constants that the physics of the checks uses, and the first look at what it is given."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from mastwright.quantity import BadInput, Problem, Source, TableError, exact_text, read_table, source_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

_TABLE = "physics.csv"


@dataclass(frozen=True)
class Figure:
    """One constant: what it is worth, what it means and how it is known.

    Parameters
    ----------
    name
        As in the table.
    value
        In `unit`, exact.
    unit
        As it is written beside the value; may be one unit per another.
    meaning
        In one line.
    source
        Where it is from.
    """

    name: str
    value: Fraction
    unit: str
    meaning: str
    source: Source


def figures_from(rows: Iterable[Mapping[str, str]], where: str) -> Mapping[str, Figure]:
    """Build the constants from rows of a table, by name.

    Raises
    ------
    TableError
        If a row has no source, unit or meaning, a value that is no number, or a name already used.
    """
    found: dict[str, Figure] = {}
    for row in rows:
        name = row["name"]
        place = f"{where} {name}"
        if name in found:
            raise TableError(f"{place}: stands there twice")
        for cell in ("unit", "meaning"):
            if not row[cell].strip():
                raise TableError(f"{place}: no {cell}")
        try:
            value = Fraction(row["value"])
        except (ValueError, ZeroDivisionError):
            raise TableError(f"{place}: value {row['value']!r}; use a number with a point") from None
        source = source_of(row["source"], row["evidence"], place)
        found[name] = Figure(name, value, row["unit"], row["meaning"], source)
    return MappingProxyType(found)


@cache
def figures() -> Mapping[str, Figure]:
    """Return every constant of the physics of the checks, by name."""
    return figures_from(read_table("mastwright.checks", _TABLE), _TABLE)


def constant(name: str) -> Fraction:
    """Return the value of one constant, in the unit of its row.

    Raises
    ------
    KeyError
        If there is none of that name.

    Examples
    --------
    >>> constant("drag_most")
    Fraction(25, 1)
    """
    return figures()[name].value


def given_text(value: Fraction, unit: str) -> str:
    """Return a value as it stands in a message, without rounding: ``-5 mm``.

    Examples
    --------
    >>> given_text(Fraction(1, 3), "mm")
    '1/3 mm'
    """
    number = exact_text(value) or str(value)
    return number if unit == "1" else f"{number} {unit}"


def refuse_negative(field: str, value: Fraction, unit: str) -> None:
    """Refuse a value below zero.

    Raises
    ------
    BadInput
        If it is.
    """
    if value < 0:
        raise BadInput(Problem(field, given_text(value, unit), f"{given_text(Fraction(0), unit)} or more"))


def refuse_unless_positive(field: str, value: Fraction, unit: str) -> None:
    """Refuse a value that is zero or below.

    Raises
    ------
    BadInput
        If it is.
    """
    if value <= 0:
        raise BadInput(Problem(field, given_text(value, unit), f"more than {given_text(Fraction(0), unit)}"))
