"""Every remark and word in the reader's language, with figures in the reader's units."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from datetime import date
from fractions import Fraction
from functools import cache
from importlib import resources

from mastwright.quantity import Amount, Note, UnitSystem
from mastwright.wording.amounts import amount_text

LANGUAGES = ("en", "es")

# Each room keeps the remarks that it makes; the words for them are gathered here.
_NOTE_TABLES = (
    ("mastwright.wording", "notes.toml"),
    ("mastwright.checks", "notes.toml"),
    ("mastwright.chains", "identify_notes.toml"),
)

# Places that are filled with a word of ours, by the group that it stands in.
_WORDS_IN = {"evidence": "evidence", "item": "set", "origin": "origin", "fluid": "fluid"}


def _table(package: str, name: str) -> dict[str, dict[str, object]]:
    text = resources.files(package).joinpath("tables", name).read_text(encoding="utf-8")
    return tomllib.loads(text)


@cache
def note_texts() -> Mapping[str, Mapping[str, str]]:
    """Return the sentence of every remark, by code and language."""
    texts: dict[str, Mapping[str, str]] = {}
    for package, name in _NOTE_TABLES:
        for code, row in _table(package, name).items():
            texts[code] = {language: str(row[language]) for language in LANGUAGES}
    return texts


@cache
def _words() -> Mapping[str, Mapping[str, Mapping[str, str]]]:
    return _table("mastwright.wording", "words.toml")  # type: ignore[return-value]


def word(group: str, key: str, language: str) -> str:
    """Return a word of the catalogue; the key itself where the shop used a name of its own."""
    row = _words()[group].get(key)
    return row[language] if row else key


def words_of(group: str, language: str) -> tuple[str, ...]:
    """Return all words of a group, in the table's order."""
    return tuple(row[language] for row in _words()[group].values())


def say(note: Note, language: str, system: UnitSystem) -> str:
    """Put a remark into words.

    Parameters
    ----------
    note
        Code and figures.
    language
        ``en`` or ``es``.
    system
        Units of the figures.

    Raises
    ------
    KeyError
        If the catalogue lacks the code or a place: a fault of ours that the tests find.
    """
    places = {name: _filled(name, value, language, system) for name, value in note.params.items()}
    return note_texts()[note.code][language].format(**places)


def _filled(
    name: str, value: str | float | date | Amount | Fraction, language: str, system: UnitSystem
) -> str:
    if isinstance(value, Amount):
        return amount_text(value, system)
    return word(_WORDS_IN[name], str(value), language) if name in _WORDS_IN else str(value)
