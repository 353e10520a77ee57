"""Our tables in TOML: sentences in both languages, figures with their sources."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from fractions import Fraction
from importlib import resources
from typing import TYPE_CHECKING

from mastwright.quantity import Source, TableError, source_of

if TYPE_CHECKING:
    from collections.abc import Mapping

LANGUAGES = ("en", "es")

Rows = dict[str, dict[str, object]]


@dataclass(frozen=True)
class Words:
    """The same words in each language.

    Parameters
    ----------
    en, es
        English and Spanish; both empty where there is nothing to say.
    """

    en: str
    es: str

    def __post_init__(self) -> None:
        """Refuse words that are there in one language only.

        Raises
        ------
        TableError
            If one of the two is missing.
        """
        if bool(self.en.strip()) != bool(self.es.strip()):
            raise TableError(f"words in one language only: {(self.en or self.es)!r}")

    def of(self, language: str) -> str:
        """Return the words in this language, ``en`` or ``es``."""
        return {"en": self.en, "es": self.es}[language]


@dataclass(frozen=True)
class Figure:
    """A figure of a table, in the unit that the table names, with its source."""

    value: Fraction
    source: Source


def read_rows_of(name: str) -> Rows:
    """Return the rows of a TOML table that ships with the chains room."""
    text = resources.files("mastwright.chains").joinpath("tables", name).read_text(encoding="utf-8")
    return rows_of(text, name)


def rows_of(text: str, where: str) -> Rows:
    """Return the rows of a TOML table, each under its key.

    Raises
    ------
    TableError
        If something stands outside a row.
    """
    rows = tomllib.loads(text)
    for key, row in rows.items():
        if not isinstance(row, dict):
            raise TableError(f"{where}: {key} stands outside a row")
    return rows


def text_of(row: Mapping[str, object], name: str, where: str) -> str:
    """Return a text cell of a row.

    Raises
    ------
    TableError
        If it is missing or is no text.
    """
    cell = row.get(name)
    if not isinstance(cell, str):
        raise TableError(f"{where}: {name} is missing or no text")
    return cell


def words_of(row: Mapping[str, object], name: str, where: str) -> Words:
    """Return the cells ``<name>_en`` and ``<name>_es`` of a row.

    Raises
    ------
    TableError
        If a cell is missing, is no text, or only one of them is filled.
    """
    return Words(*(text_of(row, f"{name}_{language}", where) for language in LANGUAGES))


def row_source(row: Mapping[str, object], where: str) -> Source:
    """Return the source of a row.

    Raises
    ------
    TableError
        If it has none.
    """
    return source_of(text_of(row, "source", where), text_of(row, "evidence", where), where)


def figure_of(row: Mapping[str, object], where: str, name: str = "value") -> Figure:
    """Return a figure of a row with its source.

    Raises
    ------
    TableError
        If the figure or its source is missing.
    """
    return Figure(Fraction(text_of(row, name, where)), row_source(row, where))


def rows_in(rows: Rows, group: str, where: str) -> Rows:
    """Return the rows of a group, ``[group.key]`` in the table, each under its key.

    Raises
    ------
    TableError
        If the group is missing, or something in it stands outside a row.
    """
    found: Rows = {}
    for key, row in rows.get(group, {}).items():
        if not isinstance(row, dict):
            raise TableError(f"{where}: {group}.{key} stands outside a row")
        found[key] = row
    if not found:
        raise TableError(f"{where}: no rows {group}.*")
    return found
