"""A shop's own instruments, read from TOML text: what it has studied itself goes before judgement of ours."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from math import sqrt
from typing import Any  # a parsed file holds anything until it is read

from mastwright.quantity.instruments import Instrument
from mastwright.quantity.parse import Field, Quantity, parse_quantity
from mastwright.quantity.problem import BadInput, Problem
from mastwright.quantity.source import Evidence, Source
from mastwright.quantity.units import UnitSystem, canonical_unit, dimensions

_KEYS = ("name", "dimension", "standard_uncertainty", "relative", "step", "source", "evidence")


def own_instruments(text: str) -> tuple[Instrument, ...]:
    """Read the instruments that a shop has studied itself, to put before the common ones.

    Parameters
    ----------
    text
        TOML, one ``[[instrument]]`` each: ``name``; ``dimension``; ``standard_uncertainty`` of one
        reading, with its unit, or ``relative`` as a percentage of the reading, or both (they add in
        quadrature); ``step``, its graduation, with its unit; ``source``, the study or certificate;
        ``evidence``, one of the `Evidence` words.

    Returns
    -------
    tuple of Instrument
        For `Instruments.replaced_by`. One with ``relative`` alone still has the doubt of its
        graduation, step/√12.

    Raises
    ------
    BadInput
        With every problem of the text.

    **Source** A graduation alone gives a standard uncertainty of step/√12 (JCGM 100:2008, F.2.2.1), so
    that a smaller figure is refused.

    Examples
    --------
    >>> own_instruments('''
    ... [[instrument]]
    ... name = "long rule"
    ... dimension = "length"
    ... standard_uncertainty = "0.3 mm"
    ... step = "0.5 mm"
    ... source = "study of 10 spans by 3 people"
    ... evidence = "demo data"
    ... ''')[0].name
    'long-rule'
    """
    problems: list[Problem] = []
    found: dict[tuple[str, str], Instrument] = {}
    for number, row in enumerate(_rows(text), 1):
        reader = _Reader(row, f"instrument {number}", problems)
        item = reader.instrument()
        if item is None:
            continue
        if (item.name, item.dimension) in found:
            reader.wrong("name", f"a name of its own: another instrument that reads {item.dimension} has it")
        found[item.name, item.dimension] = item
    if problems:
        raise BadInput(problems)
    return tuple(found.values())


def _rows(text: str) -> list[Any]:
    try:
        table = tomllib.loads(text)
    except ValueError as fault:
        raise BadInput(Problem("own instruments", "", f"TOML text: {fault}")) from None
    except RecursionError:
        raise BadInput(Problem("own instruments", "", "TOML text, not nested so deeply")) from None
    rows = table.pop("instrument", [])
    if table or not isinstance(rows, list):
        given = ", ".join(table) or "instrument"
        raise BadInput(Problem("own instruments", given, "only [[instrument]] tables"))
    return rows


class _Reader:
    """One ``[[instrument]]`` table; what is wrong with it goes to the shared list."""

    def __init__(self, row: Any, where: str, problems: list[Problem]) -> None:
        self._row: dict[str, Any] = row if isinstance(row, dict) else {}
        self._where = where
        self._problems = problems
        if not isinstance(row, dict):
            self._add("", row, "a table of name, dimension and so on")

    def instrument(self) -> Instrument | None:
        """Return the instrument, or None when anything is wrong with it."""
        before = len(self._problems)
        for key in sorted(self._row.keys() - set(_KEYS)):
            self._add("", key, f"only the keys {', '.join(_KEYS)}")
        name = "-".join(self._text("name").lower().split())
        source = self._text("source")
        evidence = self._one_of("evidence", [str(word) for word in Evidence])
        dimension = self._one_of("dimension", dimensions())
        if dimension is None:
            return None
        step = self._difference("step", dimension)
        absolute, relative = self._doubt(dimension, step)
        if len(self._problems) > before or evidence is None:
            return None
        return Instrument(
            name=name,
            aliases=(),
            dimension=dimension,
            standard_uncertainty=absolute,
            relative_uncertainty=relative,
            step=step,
            source=Source(source, Evidence(evidence)),
        )

    def wrong(self, key: str, expected: str) -> None:
        """Note a problem with what stands under this key."""
        self._add(key, self._row.get(key, ""), expected)

    def _add(self, key: str, given: object, expected: str) -> None:
        self._problems.append(Problem(f"{self._where} {key}".rstrip(), str(given), expected))

    def _text(self, key: str) -> str:
        value = self._row.get(key)
        if not isinstance(value, str) or not value.strip() or not value.isprintable():
            self.wrong(key, "words on one line")
            return ""
        return value.strip()

    def _one_of(self, key: str, words: tuple[str, ...] | list[str]) -> str | None:
        value = self._row.get(key)
        if isinstance(value, str) and value in words:
            return value
        self.wrong(key, f"one of {', '.join(repr(word) for word in words)}")
        return None

    def _doubt(self, dimension: str, step: Fraction) -> tuple[float, float]:
        """Return the absolute and the relative standard uncertainty."""
        graduation = float(step) / sqrt(12)
        if "standard_uncertainty" not in self._row and "relative" not in self._row:
            self.wrong("standard_uncertainty", "a quantity with its unit; or relative as a percentage")
        relative = self._quantity("relative", "percent") if "relative" in self._row else None
        share = float(relative.canonical / 100) if relative else 0.0
        if "standard_uncertainty" not in self._row:
            return graduation, share
        absolute = float(self._difference("standard_uncertainty", dimension))
        if 0 < absolute < graduation:
            home = canonical_unit(dimension).name
            self.wrong("standard_uncertainty", f"at least step/√12 = {graduation:.3g} {home}, from its step")
        return absolute, share

    def _difference(self, key: str, dimension: str) -> Fraction:
        """Return a difference of two readings in the dimension's own unit: 1 °F is 5/9 °C."""
        quantity = self._quantity(key, dimension)
        return quantity.value * quantity.unit.factor if quantity else Fraction(0)

    def _quantity(self, key: str, dimension: str) -> Quantity | None:
        given = self._row.get(key, "")
        field = f"{self._where} {key}"
        try:
            metric, inch = (
                parse_quantity(given, Field(field, dimension, system, minimum=None)) for system in UnitSystem
            )
        except BadInput as fault:
            self._problems.extend(fault.problems)
            return None
        if metric.unit != inch.unit:
            self.wrong(key, f"its unit too, as in {given} {metric.unit.name}")
        elif metric.value <= 0:
            self.wrong(key, "more than 0")
        return metric
