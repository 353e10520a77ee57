"""Oil of a lift chain: which, how and how often, where the truck's manual says nothing."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

from mastwright.chains.toml_table import (
    Figure,
    Words,
    figure_of,
    read_rows_of,
    row_source,
    rows_in,
    text_of,
    words_of,
)
from mastwright.quantity import Field, Source, parse_quantity

if TYPE_CHECKING:
    from collections.abc import Mapping

_TABLE = "lubrication.toml"
_AMBIENT = Field("ambient temperature", "temperature", minimum=None)


@dataclass(frozen=True)
class Oil:
    """An oil and the temperatures of the place for which it is meant, in °C; None for open."""

    grade: Words
    lowest: Fraction | None
    below: Fraction | None
    source: Source

    def suits(self, ambient: Fraction) -> bool:
        """Tell whether the oil is meant for a place of this temperature, in °C."""
        warm_enough = self.lowest is None or ambient >= self.lowest
        return warm_enough and (self.below is None or ambient < self.below)


@dataclass(frozen=True)
class OilingStep:
    """One step of oiling a chain."""

    key: str
    text: Words
    source: Source


@dataclass(frozen=True)
class OilingInterval:
    """How often somebody says to oil, in working hours and, where said, at the latest in months."""

    hours: Fraction
    months: Fraction | None
    source: Source


@cache
def oils() -> tuple[Oil, ...]:
    """Return every oil of the table, coldest first within each practice."""
    return tuple(_oil(row, f"{_TABLE} {key}") for key, row in _group("oil"))


def oils_for(ambient: Fraction) -> tuple[Oil, ...]:
    """Return the oils that practice names for a place of this temperature.

    Parameters
    ----------
    ambient
        Temperature of the place, °C.

    Returns
    -------
    tuple of Oil
        One for each practice that has one; empty where it is too hot for all of them: ask the maker.

    **Source**: usual chain practice in the manner of DIN 8195, and American chain practice (from memory).

    Examples
    --------
    >>> [oil.grade.en for oil in oils_for(Fraction(20))]
    ['ISO VG 100 (SAE 30)', 'SAE 30']
    """
    return tuple(oil for oil in oils() if oil.suits(ambient))


@cache
def oiling_steps() -> tuple[OilingStep, ...]:
    """Return how a chain is oiled, in order, the caution first."""
    return tuple(
        OilingStep(key, words_of(row, "text", f"{_TABLE} {key}"), row_source(row, f"{_TABLE} {key}"))
        for key, row in _group("step")
    )


@cache
def oiling_intervals() -> tuple[OilingInterval, ...]:
    """Return how often to oil as published, shortest first; the truck's manual comes before them."""
    found = [_interval(row, f"{_TABLE} {key}") for key, row in _group("interval")]
    return tuple(sorted(found, key=lambda interval: interval.hours))


@cache
def oiled_life_ratio() -> Figure:
    """Return how many times longer an oiled chain is said to last than a dry one."""
    return figure_of(read_rows_of(_TABLE)["life-ratio"], f"{_TABLE} life-ratio")


def _group(name: str) -> list[tuple[str, dict[str, object]]]:
    return list(rows_in(read_rows_of(_TABLE), name, _TABLE).items())


def _oil(row: Mapping[str, object], where: str) -> Oil:
    lowest, below = (_celsius(row, name, where) for name in ("from", "below"))
    return Oil(words_of(row, "grade", where), lowest, below, row_source(row, where))


def _celsius(row: Mapping[str, object], name: str, where: str) -> Fraction | None:
    return parse_quantity(text_of(row, name, where), _AMBIENT).canonical if name in row else None


def _interval(row: Mapping[str, object], where: str) -> OilingInterval:
    months = Fraction(text_of(row, "months", where)) if "months" in row else None
    return OilingInterval(Fraction(text_of(row, "hours", where)), months, row_source(row, where))
