"""Which chain sets a mast has, and what mass hangs on each of them."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, fields
from fractions import Fraction
from functools import cache
from importlib import resources
from types import MappingProxyType
from typing import TYPE_CHECKING

from mastwright.quantity import BadInput, Problem, Source, TableError, source_of

if TYPE_CHECKING:
    from collections.abc import Mapping

_TABLE = "arrangements.toml"


@dataclass(frozen=True)
class MastMasses:
    """The masses that can hang on a chain set, in kg.

    Parameters
    ----------
    load
        On the forks; the rated capacity for a factor of safety.
    carriage
        Carriage with forks and attachment.
    inner, middle
        The innermost mast frame (with a free-lift cylinder mounted on it) and the frame next outside
        it; None where they are not known.
    """

    load: Fraction
    carriage: Fraction
    inner: Fraction | None = None
    middle: Fraction | None = None


MASS_NAMES = tuple(f.name for f in fields(MastMasses))


@dataclass(frozen=True)
class SetLoading:
    """One chain set of an arrangement.

    Parameters
    ----------
    name
        Its name in a visit: ``carriage``, ``free-lift``, ``main``, ``upper-main`` or ``lower-main``.
    title_en, title_es
        What it is called on paper.
    hangs
        How many times each mass counts in the pull on all strands together; a mass not named does not
        hang on the set.
    """

    name: str
    title_en: str
    title_es: str
    hangs: Mapping[str, int]


@dataclass(frozen=True)
class Arrangement:
    """One of the ways in which a mast is built.

    Parameters
    ----------
    letter
        ``A`` to ``E``.
    title_en, title_es
        What it is, in words.
    sets
        Its chain sets, nearest the carriage first.
    source
        How the loading is known.
    """

    letter: str
    title_en: str
    title_es: str
    sets: tuple[SetLoading, ...]
    source: Source

    def chain_set(self, name: str, field: str = "set") -> SetLoading:
        """Return the chain set of this name.

        Raises
        ------
        BadInput
            If the arrangement has none of that name.
        """
        for loading in self.sets:
            if loading.name == name.strip().lower().replace(" ", "-"):
                return loading
        names = ", ".join(loading.name for loading in self.sets)
        raise BadInput(
            Problem(field, name, f"a chain set of mast arrangement {self.letter} ({self.title_en}): {names}")
        )


def arrangements_from(text: str, where: str) -> Mapping[str, Arrangement]:
    """Read a table of mast arrangements.

    Raises
    ------
    TableError
        If an arrangement lacks a source, or a set names a mass that there is not.
    """
    return MappingProxyType(
        {
            letter: _arrangement(letter, row, f"{where} {letter}")
            for letter, row in tomllib.loads(text).items()
        }
    )


def _arrangement(letter: str, row: Mapping[str, object], where: str) -> Arrangement:
    source = source_of(str(row.get("source", "")), str(row.get("evidence", "")), where)
    sets = row["sets"]
    if not isinstance(sets, list) or not sets:
        raise TableError(f"{where}: no chain sets")
    return Arrangement(
        letter=letter,
        title_en=str(row["title_en"]),
        title_es=str(row["title_es"]),
        sets=tuple(_loading(entry, where) for entry in sets),
        source=source,
    )


def _loading(entry: Mapping[str, object], where: str) -> SetLoading:
    hangs = entry["hangs"]
    if not isinstance(hangs, dict) or not set(hangs) <= set(MASS_NAMES):
        raise TableError(f"{where}: hangs {hangs!r}; use the masses {', '.join(MASS_NAMES)}")
    return SetLoading(
        name=str(entry["name"]),
        title_en=str(entry["title_en"]),
        title_es=str(entry["title_es"]),
        hangs=MappingProxyType({name: int(count) for name, count in hangs.items()}),
    )


@cache
def arrangements() -> Mapping[str, Arrangement]:
    """Return the mast arrangements that mastwright knows, by letter."""
    text = resources.files("mastwright.mast").joinpath("tables", _TABLE).read_text(encoding="utf-8")
    return arrangements_from(text, _TABLE)


def arrangement(letter: str, field: str = "mast arrangement") -> Arrangement:
    """Return the arrangement of this letter.

    Raises
    ------
    BadInput
        If there is none; the message says which mast each letter stands for.

    Examples
    --------
    >>> [s.name for s in arrangement("c").sets]
    ['free-lift', 'main']
    """
    known = arrangements()
    given = letter.strip().upper()
    if given not in known:
        meanings = "; ".join(f"{a.letter} = {a.title_en}" for a in known.values())
        raise BadInput(Problem(field, letter, f"the letter of the mast that the truck has: {meanings}"))
    return known[given]


def hung_mass(loading: SetLoading, masses: MastMasses, field: str = "mast masses") -> Fraction:
    """Return what mass hangs on all strands of a chain set together, in kg.

    Static, mast vertical, no friction: the pull on each of n strands is g times it over n.

    Parameters
    ----------
    loading
        The chain set.
    masses
        Of the truck, kg.
    field
        What the masses were given for; stands first in the message.

    Raises
    ------
    BadInput
        If a mass that hangs on this set is missing or negative.

    **Source**: force balance of moving sheaves, checked by virtual work (computed).

    Examples
    --------
    >>> masses = MastMasses(load=Fraction(2000), carriage=Fraction(300), inner=Fraction(250))
    >>> hung_mass(arrangement("D").chain_set("main"), masses)
    Fraction(4850, 1)
    """
    total = Fraction(0)
    problems = []
    for name, count in loading.hangs.items():
        mass: Fraction | None = getattr(masses, name)
        if mass is None:
            problems.append(
                Problem(f"{field}, {name}", "", f"its mass in kg: it hangs on the {loading.name} chains")
            )
        elif mass < 0:
            problems.append(Problem(f"{field}, {name}", str(mass), "a mass of 0 kg or more"))
        else:
            total += count * mass
    if problems:
        raise BadInput(problems)
    return total
