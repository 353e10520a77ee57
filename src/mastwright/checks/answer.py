"""What a check asks the technician: the fields of its entry."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from mastwright.checks.figures import refuse_unless_positive
from mastwright.quantity import BadInput, Problem, Quantity, canonical_unit

Answer = Quantity | tuple[Quantity, ...] | str | bool | date | int


@dataclass(frozen=True)
class AnswerField:
    """One field of a check's entry.

    Parameters
    ----------
    name
        As written in the visit file.
    kind
        ``quantity``, ``quantities``, ``choice``, ``yes-no``, ``date`` or ``whole``.
    dimension
        Of a quantity.
    required
        Whether the check cannot be judged without it.
    choices
        Of a choice.
    """

    name: str
    kind: str
    dimension: str = ""
    required: bool = True
    choices: tuple[str, ...] = ()


class Answers:
    """The answers to one check, each asked for by name and kind."""

    def __init__(self, given: Mapping[str, Answer]) -> None:
        self._given = given

    def has(self, name: str) -> bool:
        """Tell whether a field was answered."""
        return name in self._given

    def quantity(self, name: str) -> Quantity:
        """Return a quantity.

        Raises
        ------
        BadInput
            If it is missing.
        """
        value = self._given.get(name)
        if not isinstance(value, Quantity):
            raise BadInput(Problem(name, "", "is needed for this check"))
        return value

    def value(self, name: str) -> Fraction:
        """Return a quantity in its dimension's own unit."""
        return self.quantity(name).canonical

    def positive(self, name: str) -> Fraction:
        """Return a quantity of which a share is taken, in its dimension's own unit: more than 0.

        Raises
        ------
        BadInput
            If it is missing, zero or below.
        """
        given = self.quantity(name)
        refuse_unless_positive(name, given.canonical, canonical_unit(given.unit.dimension).name)
        return given.canonical

    def optional(self, name: str) -> Fraction | None:
        """Return a quantity in its dimension's own unit, or None."""
        return self.value(name) if self.has(name) else None

    def values(self, name: str) -> tuple[Fraction, ...]:
        """Return a list of quantities in their dimension's own unit.

        Raises
        ------
        BadInput
            If it is missing.
        """
        value = self._given.get(name)
        if not isinstance(value, tuple):
            raise BadInput(Problem(name, "", "the reading of each cell, in square brackets"))
        return tuple(q.canonical for q in value)

    def text(self, name: str, otherwise: str = "") -> str:
        """Return a text, or what stands for it where it was left out."""
        value = self._given.get(name)
        return value if isinstance(value, str) else otherwise

    def yes(self, name: str) -> bool:
        """Tell whether a yes-or-no field was answered with yes."""
        return self._given.get(name) is True

    def day(self, name: str) -> date:
        """Return a date.

        Raises
        ------
        BadInput
            If it is missing.
        """
        value = self._given.get(name)
        if not isinstance(value, date):
            raise BadInput(Problem(name, "", "the date is needed for this check"))
        return value

    def whole(self, name: str) -> int:
        """Return a whole number.

        Raises
        ------
        BadInput
            If it is missing.
        """
        value = self._given.get(name)
        if isinstance(value, bool) or not isinstance(value, int):
            raise BadInput(Problem(name, "", "a whole number is needed for this check"))
        return value
