"""A table of a visit file, read field by field; every problem is kept, so that all are told at once."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable, Mapping
from datetime import date, datetime
from typing import TypeVar

from mastwright.quantity import BadInput, Field, Problem, Quantity, UnitSystem, parse_quantity
from mastwright.visits.positions import Path

T = TypeVar("T")

# Outside these a number is a slip of the pen, and reckoning with it would leave the calendar.
_YEARS = range(1950, 2200)
_MOST = 100_000


class Form:
    """One table of the file and the place where problems are gathered.

    Parameters
    ----------
    table
        As the TOML reader gave it.
    path
        Where it stands in the file.
    problems
        Shared by all tables of the file; ``(path, problem)``.
    system
        Decides what a bare number means.
    """

    def __init__(
        self,
        table: Mapping[str, object],
        path: Path,
        problems: list[tuple[Path, Problem]],
        system: UnitSystem = UnitSystem.METRIC,
    ) -> None:
        self._table = table
        self._path = path
        self._problems = problems
        self._asked: set[str] = set()
        self.system = system

    def name(self, key: str) -> str:
        """Return the field's full name as the messages print it, for example ``chain[1].span[2].length``."""
        parts: list[str] = []
        for part in (*self._path, key):
            if isinstance(part, int):
                parts[-1] += f"[{part + 1}]"
            else:
                parts.append(part)
        return ".".join(parts)

    @property
    def faulty(self) -> bool:
        """Whether a problem was found in this table."""
        depth = len(self._path)
        return any(path[:depth] == self._path for path, _ in self._problems)

    def spoilt(self, key: str) -> bool:
        """Tell whether a problem was found with this field or below it."""
        path = (*self._path, key)
        return any(found[: len(path)] == path for found, _ in self._problems)

    def refuse(self, key: str, expected: str, given: object = "") -> None:
        """Keep a problem with one of this table's fields."""
        try:
            text = str(given)
        except ValueError:  # a whole number of thousands of digits could not even be printed
            text = "a number of thousands of digits"
        self._problems.append(((*self._path, key), Problem(self.name(key), text, expected)))

    def has(self, key: str) -> bool:
        """Tell whether the field is there."""
        self._asked.add(key)
        return key in self._table

    def text(self, key: str, *, required: bool = False, choices: Iterable[str] = ()) -> str:
        """Return a text, or '' where it is missing or wrong."""
        value = self._value(key, required=required)
        allowed = tuple(choices)
        if value is None:
            return ""
        if not isinstance(value, str):
            self.refuse(key, "a text in quotes" + (f": {', '.join(allowed)}" if allowed else ""), value)
            return ""
        if allowed and value not in allowed:
            self.refuse(key, f"one of {', '.join(allowed)}", value)
            return ""
        if required and not value.strip():
            self.refuse(key, "a text that is not blank", value)
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        """Return a list of texts, empty where it is missing or wrong."""
        value = self._value(key)
        if value is None:
            return ()
        if not isinstance(value, list) or not all(isinstance(v, str) for v in value):
            self.refuse(key, 'a list of texts, such as ["a", "b"]', value)
            return ()
        return tuple(value)

    def whole(self, key: str, *, required: bool = False, least: int = 0, most: int = _MOST) -> int | None:
        """Return a whole number, or None where it is missing or wrong."""
        value = self._value(key, required=required)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int) or not least <= value <= most:
            self.refuse(key, f"a whole number from {least} to {most}", value)
            return None
        return value

    def yes(self, key: str, *, otherwise: bool) -> bool:
        """Return true or false, or the default where it is missing or wrong."""
        value = self._value(key)
        if value is None:
            return otherwise
        if not isinstance(value, bool):
            self.refuse(key, "true or false, without quotes", value)
            return otherwise
        return value

    def date(self, key: str, *, required: bool = False) -> date | None:
        """Return a date, or None where it is missing or wrong."""
        value = self._value(key, required=required)
        if value is None:
            return None
        if isinstance(value, datetime) or not isinstance(value, date):
            self.refuse(key, "a date without quotes, such as 2026-11-20", value)
            return None
        if value.year not in _YEARS:
            self.refuse(key, f"a date from {_YEARS.start} to {_YEARS.stop - 1}", value)
            return None
        return value

    def quantity(self, key: str, dimension: str, *, required: bool = False) -> Quantity | None:
        """Return a quantity, or None where it is missing or wrong."""
        value = self._value(key, required=required)
        if value is None:
            return None
        lowest = None if dimension in {"temperature", "angle"} else 0
        field = Field(self.name(key), dimension, self.system)
        if lowest is None:
            field = Field(self.name(key), dimension, self.system, minimum=None)
        return self.checked(key, lambda: parse_quantity(value, field))

    def quantities(self, key: str, dimension: str) -> tuple[Quantity, ...]:
        """Return a list of quantities, empty where it is missing or wrong."""
        value = self._value(key)
        if value is None:
            return ()
        if not isinstance(value, list) or not value:
            self.refuse(key, "a list of readings in square brackets", value)
            return ()
        field = Field(self.name(key), dimension, self.system)
        read = [self.checked(key, lambda v=v: parse_quantity(v, field)) for v in value]  # type: ignore[misc]
        return tuple(q for q in read if q is not None)

    def checked(self, key: str, make: Callable[[], T]) -> T | None:
        """Return what `make` makes, or keep the problems that it raises and return None."""
        try:
            return make()
        except BadInput as bad:
            for problem in bad.problems:
                full = Problem(self.name(key), problem.given, problem.expected)
                self._problems.append(((*self._path, key), full))
            return None

    def table(self, key: str, *, required: bool = False) -> Form:
        """Return the table under a key, an empty one where it is missing or wrong."""
        value = self._value(key, required=required)
        if value is not None and not isinstance(value, dict):
            self.refuse(key, f"a table, [{'.'.join(str(p) for p in (*self._path, key))}]", value)
            value = None
        return Form(value or {}, (*self._path, key), self._problems, self.system)

    def tables(self, key: str) -> tuple[Form, ...]:
        """Return the tables of an array, empty where it is missing or wrong."""
        value = self._value(key)
        if value is None:
            return ()
        if not isinstance(value, list) or not all(isinstance(v, dict) for v in value):
            header = ".".join(str(p) for p in (*self._path, key) if isinstance(p, str))
            self.refuse(key, f"tables, each begun with [[{header}]]", value)
            return ()
        return tuple(Form(v, (*self._path, key, i), self._problems, self.system) for i, v in enumerate(value))

    def no_more(self) -> None:
        """Keep a problem for every field that nobody asked for: a misspelt one must not be lost silently."""
        for key in self._table:
            if key not in self._asked:
                near = difflib.get_close_matches(key, self._asked, 1)
                known = ", ".join(sorted(self._asked))
                self.refuse(key, f"did you mean {near[0]!r}?" if near else f"a known field: {known}", key)

    def _value(self, key: str, *, required: bool = False) -> object | None:
        self._asked.add(key)
        if key not in self._table and required:
            self.refuse(key, "is needed")
        return self._table.get(key)
