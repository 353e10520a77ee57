"""The sentences of the remarks that the chains room makes, one column a language."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import resources

from mastwright.quantity import Note


@cache
def note_sentences(table: str) -> dict[str, dict[str, str]]:
    """Return the sentences of a table of notes, by code and language."""
    text = resources.files("mastwright.chains").joinpath("tables", table).read_text(encoding="utf-8")
    return {code: dict(languages) for code, languages in tomllib.loads(text).items()}


def note_text(note: Note, table: str, language: str = "en") -> str:
    """Say a note in a language.

    Examples
    --------
    >>> note_text(Note("odd-pitches", {"pitches": "7"}), "identify_notes.toml")
    'An odd number of pitches (7) will do to name the chain; measure an even number for wear.'
    """
    return note_sentences(table)[note.code][language].format(**note.params)
