"""What can be seen on a lift chain, its anchors and sheaves, and what follows from it."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches
from enum import StrEnum
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from mastwright.chains.toml_table import Rows, Words, read_rows_of, row_source, text_of, words_of
from mastwright.quantity import BadInput, Problem, Source, TableError

if TYPE_CHECKING:
    from collections.abc import Mapping

_TABLE = "conditions.toml"


class Consequence(StrEnum):
    """What a condition asks for, most serious first."""

    CONDEMN_SET = "condemn-set"
    """Every strand of the set is replaced, with new anchor pins, before the truck works."""
    REPLACE_PART = "replace-part"
    """Something other than the chain is replaced or put right before the truck works."""
    CLEAN_AND_LOOK_AGAIN = "clean-and-look-again"
    """Clean, oil and look again at this visit: what shows then decides."""
    CORRECT = "correct"
    """Put right by a date."""
    SHORTEN_INTERVAL = "shorten-interval"
    """Nothing to repair; look more often."""


@dataclass(frozen=True)
class Condition:
    """One thing that a technician can see.

    Parameters
    ----------
    key
        Its name in a visit, in kebab-case.
    title
        What it is called on paper.
    look_for, cause
        How it is recognised, and what usually brings it about.
    consequence
        What follows from it.
    if_ignored, action
        What it can lead to, and what is done about it.
    order_part
        What is ordered, empty where nothing is.
    source
        Where the rule comes from.
    """

    key: str
    title: Words
    look_for: Words
    cause: Words
    consequence: Consequence
    if_ignored: Words
    action: Words
    order_part: Words
    source: Source


def conditions_from(rows: Rows, where: str) -> Mapping[str, Condition]:
    """Build the conditions of a table.

    Parameters
    ----------
    rows
        One per condition, under its key.
    where
        Its name, for messages.

    Raises
    ------
    TableError
        If a condition lacks a source, a text in either language, or a known consequence.
    """
    return MappingProxyType({key: _condition(key, row, f"{where} {key}") for key, row in rows.items()})


def _condition(key: str, row: Mapping[str, object], where: str) -> Condition:
    source = row_source(row, where)
    word = text_of(row, "consequence", where)
    if word not in list(Consequence):
        raise TableError(f"{where}: consequence {word!r}; use one of {', '.join(Consequence)}")
    needed = {
        name: words_of(row, name, where) for name in ("title", "look_for", "cause", "if_ignored", "action")
    }
    for name, words in needed.items():
        if not words.en:
            raise TableError(f"{where}: {name} is empty")
    return Condition(
        key=key,
        consequence=Consequence(word),
        order_part=words_of(row, "order_part", where),
        source=source,
        **needed,
    )


@cache
def conditions() -> Mapping[str, Condition]:
    """Return every condition that mastwright knows, by key.

    Examples
    --------
    >>> conditions()["turned-pin"].consequence
    <Consequence.CONDEMN_SET: 'condemn-set'>
    """
    return conditions_from(read_rows_of(_TABLE), _TABLE)


def find_condition(text: str, field: str = "condition") -> Condition:
    """Return the condition somebody named by its key or its title, in either language.

    Parameters
    ----------
    text
        Such as ``turned-pin``, ``Turned pin`` or ``Pasador girado``.
    field
        What it was given for; stands first in the message.

    Raises
    ------
    BadInput
        If there is none of that name; the nearest names are in the message.

    Examples
    --------
    >>> find_condition("Turned pin").key
    'turned-pin'
    """
    names = {_plain(name): c for c in conditions().values() for name in (c.key, c.title.en, c.title.es)}
    given = _plain(text)
    if given in names:
        return names[given]
    near = dict.fromkeys(names[name].key for name in get_close_matches(given, names, n=5, cutoff=0.4))
    hint = f"nearest: {', '.join(near)}" if near else f"one of {', '.join(conditions())}"
    raise BadInput(Problem(field, text, f"the key of a condition; {hint}"))


def _plain(text: str) -> str:
    return " ".join(text.lower().replace("-", " ").replace("_", " ").split())
