"""The legal frame of a site's country: words and dates, never a looser limit."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from datetime import date
from functools import cache
from importlib import resources
from typing import Any

from dateutil.relativedelta import relativedelta

from mastwright.quantity import Source, source_of


@dataclass(frozen=True)
class Duty:
    """One duty: when it applies (``always``, ``out-of-service``, ``planned``), its words, where it stands."""

    when: str
    english: str
    spanish: str
    source: Source


@dataclass(frozen=True)
class LegalFrame:
    """What a country asks for.

    Parameters
    ----------
    country
        Two letters, or ``other``.
    months, months_people
        Statutory examination interval, and where persons are lifted; 0 where the law sets none.
    source
        Of the interval.
    duties
        In the table's order.
    """

    country: str
    months: int
    months_people: int
    source: Source
    duties: tuple[Duty, ...]

    def duties_for(self, *, out_of_service: bool, planned: bool) -> tuple[Duty, ...]:
        """Return the duties that apply to this outcome."""
        wanted = (
            {"always"}
            | ({"out-of-service"} if out_of_service else set())
            | ({"planned"} if planned else set())
        )
        return tuple(d for d in self.duties if d.when in wanted)

    def examination_due(self, last: date, *, lifts_people: bool) -> date | None:
        """Return when the next statutory examination is due, or None where the law sets no interval."""
        months = self.months_people if lifts_people else self.months
        return last + relativedelta(months=months) if months else None


@cache
def _frames() -> dict[str, LegalFrame]:
    text = resources.files("mastwright.verdict").joinpath("tables", "legal.toml").read_text(encoding="utf-8")
    return {country: _frame(country, row) for country, row in tomllib.loads(text).items()}


def _frame(country: str, row: dict[str, Any]) -> LegalFrame:  # Any: a parsed file
    where = f"legal.toml {country}"
    duties = tuple(
        Duty(d["when"], d["en"], d["es"], source_of(d["reference"], d["evidence"], where))
        for d in row["duty"]
    )
    months = int(row["months"])
    people = int(row.get("months_people", months))
    return LegalFrame(country, months, people, source_of(row["source"], row["evidence"], where), duties)


def legal_frame(country: str) -> LegalFrame:
    """Return the frame of a country, the general one where mastwright holds none."""
    frames = _frames()
    return frames.get(country, frames["other"])
