"""The chain path of a mast: which body each chain end, sheave and cylinder is on, and what follows from it.

A chain keeps its length, so its carried end rises twice what its sheave rises, less what its anchor rises;
a cylinder adds its stroke. These equations give how far every body rises, and the same numbers give how
many times every weight pulls on every chain set and cylinder: any mast of such parts is data.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from importlib import resources
from types import MappingProxyType
from typing import TYPE_CHECKING

from mastwright.mast.hung_mass import arrangement
from mastwright.quantity import TableError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

FIXED = "fixed"
CARRIAGE = "carriage"
FREE_LIFT = "free-lift"
MAIN = "main"

_Row = dict[str, Fraction]


@dataclass(frozen=True)
class ChainPath:
    """One chain set: from its anchor over its sheave to its carried end.

    Parameters
    ----------
    name
        As in `Arrangement`.
    anchor, sheave, carried
        The body that each is on.
    """

    name: str
    anchor: str
    sheave: str
    carried: str


@dataclass(frozen=True)
class Ram:
    """One lift cylinder (or a pair working as one): the body it stands on and the body it pushes."""

    name: str
    stands: str
    pushes: str


@dataclass(frozen=True)
class MastElements:
    """A mast as its parts, solved.

    Parameters
    ----------
    paths, rams
        Its chain sets and its lift cylinders.
    rises
        By cylinder, how far each body rises per unit of its stroke; the same number is how many times
        the weight of that body counts in its force.
    hangs
        By chain set, how many times the weight of each body counts in the pull on all its strands.
    """

    paths: tuple[ChainPath, ...]
    rams: tuple[Ram, ...]
    rises: Mapping[str, Mapping[str, Fraction]]
    hangs: Mapping[str, Mapping[str, Fraction]]

    @property
    def has_free_lift(self) -> bool:
        """Whether the carriage has a cylinder of its own that works before the frames move."""
        return FREE_LIFT in self.rises

    def stroke_rates(self, name: str) -> tuple[Fraction, Fraction]:
        """Return a set's stroke per unit of fork lift, below the free lift and above it.

        The stroke is the way of the sheave relative to the anchor, the only motion that wears the chain.
        """
        path = next(p for p in self.paths if p.name == name)
        above = self._stroke_rate(path, MAIN)
        return (self._stroke_rate(path, FREE_LIFT) if self.has_free_lift else above), above

    def _stroke_rate(self, path: ChainPath, ram: str) -> Fraction:
        rise = self.rises[ram]
        zero = Fraction(0)
        return (rise.get(path.sheave, zero) - rise.get(path.anchor, zero)) / rise[CARRIAGE]


def solve_elements(paths: Sequence[ChainPath], rams: Sequence[Ram], where: str) -> MastElements:
    """Return a mast with its equations solved.

    Raises
    ------
    TableError
        If the parts do not hold each other: a body that nothing moves, or more constraints than bodies.

    **Source**: a chain of constant length over one moving sheave; virtual work (computed).

    Examples
    --------
    >>> simple = solve_elements(
    ...     [ChainPath("carriage", "fixed", "inner", "carriage")], [Ram("main", "fixed", "inner")], "example"
    ... )
    >>> simple.rises["main"]["carriage"], simple.stroke_rates("carriage")[1]
    (Fraction(2, 1), Fraction(1, 2))
    """
    rows = [_row((p.carried, 1), (p.sheave, -2), (p.anchor, 1)) for p in paths]
    rows += [_row((r.pushes, 1), (r.stands, -1)) for r in rams]
    bodies = sorted({body for row in rows for body in row})
    names = [r.name for r in rams]
    if CARRIAGE not in bodies or MAIN not in names or not {*names} <= {MAIN, FREE_LIFT}:
        raise TableError(f"{where}: a mast has a carriage, a main cylinder and at most a free-lift cylinder")
    columns = _inverse([[row.get(b, Fraction(0)) for b in bodies] for row in rows], where)
    answers = [
        MappingProxyType({b: columns[i][j] for i, b in enumerate(bodies) if columns[i][j]})
        for j in range(len(rows))
    ]
    return MastElements(
        paths=tuple(paths),
        rams=tuple(rams),
        rises=MappingProxyType(dict(zip(names, answers[len(paths) :], strict=True))),
        hangs=MappingProxyType(dict(zip((p.name for p in paths), answers, strict=False))),
    )


def _row(*terms: tuple[str, int]) -> _Row:
    row: _Row = {}
    for body, factor in terms:
        if body != FIXED:
            row[body] = row.get(body, Fraction(0)) + factor
    return row


def _inverse(matrix: list[list[Fraction]], where: str) -> list[list[Fraction]]:
    """Return the inverse of a square matrix, exactly, by elimination."""
    size = len(matrix)
    if any(len(row) != size for row in matrix):
        raise TableError(f"{where}: {size} chain sets and cylinders for {len(matrix[0])} moving bodies")
    work = [[*row, *(Fraction(i == j) for j in range(size))] for i, row in enumerate(matrix)]
    for column in range(size):
        pivot = next((i for i in range(column, size) if work[i][column]), None)
        if pivot is None:
            raise TableError(f"{where}: the parts do not hold each other")
        work[column], work[pivot] = work[pivot], work[column]
        lead = work[column][column]
        work[column] = [value / lead for value in work[column]]
        for i in range(size):
            factor = work[i][column]
            if i != column and factor:
                work[i] = [a - factor * b for a, b in zip(work[i], work[column], strict=True)]
    return [row[size:] for row in work]


def elements_from(text: str, where: str) -> Mapping[str, MastElements]:
    """Read the chain paths and cylinders out of a table of mast arrangements, by letter."""
    return MappingProxyType(
        {
            letter: solve_elements(
                [ChainPath(name=entry["name"], **entry["path"]) for entry in row["sets"]],
                [Ram(**entry) for entry in row["rams"]],
                f"{where} {letter}",
            )
            for letter, row in tomllib.loads(text).items()
        }
    )


@cache
def _shipped() -> Mapping[str, MastElements]:
    name = "arrangements.toml"
    text = resources.files("mastwright.mast").joinpath("tables", name).read_text(encoding="utf-8")
    return elements_from(text, name)


def mast_elements(letter: str, field: str = "mast arrangement") -> MastElements:
    """Return the parts of the arrangement of this letter.

    Raises
    ------
    BadInput
        If there is none.

    Examples
    --------
    >>> mast_elements("D").rises["main"]["carriage"]
    Fraction(3, 1)
    """
    return _shipped()[arrangement(letter, field).letter]
