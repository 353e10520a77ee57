"""Where a figure comes from and how it is known; tables that refuse a row without a source."""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass
from enum import StrEnum
from importlib import resources


class Evidence(StrEnum):
    """How a figure is known, from best to least."""

    READ = "read"
    AS_QUOTED = "as quoted"
    COMPUTED = "computed"
    FROM_MEMORY = "from memory"
    COMMON_PRACTICE = "common practice, no source"
    DEMO_DATA = "demo data"


class TableError(Exception):
    """A table of ours that must not load: a row without a source, or with an unknown evidence word."""


@dataclass(frozen=True)
class Source:
    """A source as it is printed beside a figure, with the evidence word."""

    text: str
    evidence: Evidence

    def __post_init__(self) -> None:
        """Refuse an empty source.

        Raises
        ------
        TableError
            If the text is blank.
        """
        if not self.text.strip():
            raise TableError("a figure without a source cannot be loaded")

    def __str__(self) -> str:
        """Return the source followed by its evidence word in brackets."""
        return f"{self.text} [{self.evidence}]"


def source_of(text: str | None, evidence: str | None, where: str) -> Source:
    """Build a `Source` from two cells of a table, or say which row lacks them.

    Raises
    ------
    TableError
        If the source is blank or the evidence is not one of the `Evidence` words.
    """
    if not (text or "").strip():
        raise TableError(f"{where}: no source; a row without a source does not load")
    try:
        word = Evidence((evidence or "").strip())
    except ValueError:
        words = ", ".join(repr(str(e)) for e in Evidence)
        raise TableError(f"{where}: evidence {evidence!r}; use one of {words}") from None
    return Source((text or "").strip(), word)


def read_rows(text: str, where: str) -> list[dict[str, str]]:
    """Read a CSV table whose every row carries `source` and `evidence`.

    Parameters
    ----------
    text
        The whole table, header first.
    where
        Its name, for messages.

    Raises
    ------
    TableError
        If a row has more or fewer cells than the header, lacks a source or names an unknown evidence word.
    """
    rows = list(csv.DictReader(io.StringIO(text, newline=""), strict=True))
    for number, row in enumerate(rows, 2):
        if None in row or None in row.values():
            raise TableError(
                f"{where} line {number}: not as many cells as the header; quote a cell with a comma"
            )
        source_of(row.get("source"), row.get("evidence"), f"{where} line {number}")
    return rows


def read_table(package: str, name: str) -> list[dict[str, str]]:
    """Read a table that ships beside the code of a package, as in ``("mastwright.chains", "x.csv")``."""
    text = resources.files(package).joinpath("tables", name).read_text(encoding="utf-8")
    return read_rows(text, name)
