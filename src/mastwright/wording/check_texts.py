"""The texts of the checks in the reader's language: English from the catalogue, the others beside it."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache
from importlib import resources

from mastwright.checks import catalogue


@cache
def _spanish() -> Mapping[str, Mapping[str, str]]:
    text = (
        resources.files("mastwright.wording").joinpath("tables", "es_checks.csv").read_text(encoding="utf-8")
    )
    return {row["id"]: row for row in csv.DictReader(text.splitlines(), strict=True)}


def check_text(check_id: str, name: str, language: str) -> str:
    """Return a text of a check: its title, how, action, worse_case or if_ignored.

    Raises
    ------
    KeyError
        If there is no such check or text.
    """
    if language == "es":
        return _spanish()[check_id][name]
    text: str = getattr(catalogue()[check_id], name)
    return text
