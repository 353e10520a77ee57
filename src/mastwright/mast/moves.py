"""The moves of a mast: from height, to height, load, how often; and what each chain set does in them."""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from mastwright.mast.figures import mast_figure
from mastwright.mast.state import hung_on
from mastwright.quantity import BadInput, Problem

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping
    from fractions import Fraction

    from mastwright.mast.elements import MastElements

Floats = npt.NDArray[np.float64]

COLUMNS = ("from_height_mm", "to_height_mm", "load_kg", "count")
_LARGEST = 1e12
_MOST_PROBLEMS = 10


@dataclass(frozen=True)
class Moves:
    """One-way moves of the forks, all columns of one length.

    Parameters
    ----------
    start, end
        Fork height above lowered, mm.
    load
        On the forks, kg.
    count
        How often.
    """

    start: Floats
    end: Floats
    load: Floats
    count: Floats

    @classmethod
    def of(cls, rows: Iterable[tuple[float, float, float, float]]) -> Moves:
        """Return the moves of rows of start, end, load and count."""
        table = np.array(list(rows), dtype=np.float64).reshape(-1, 4)
        return cls(*(table[:, i].copy() for i in range(4)))


@dataclass(frozen=True)
class SetMoves:
    """What one chain set does in the moves.

    Parameters
    ----------
    start, end
        Its stroke, mm.
    tension
        Of one strand on its carried side, N.
    count
        How often.
    """

    start: Floats
    end: Floats
    tension: Floats
    count: Floats

    @property
    def highest(self) -> float:
        """The largest stroke, mm."""
        return float(max(self.start.max(initial=0), self.end.max(initial=0)))

    @property
    def travelled(self) -> float:
        """All strokes up and down together, mm."""
        return float((np.abs(self.end - self.start) * self.count).sum())


def moves_from_csv(text: str, field: str) -> Moves:
    r"""Read a table of moves with the columns from_height_mm, to_height_mm, load_kg and count.

    Parameters
    ----------
    text
        The whole table, header first.
    field
        Its name, for messages.

    Raises
    ------
    BadInput
        If a column is missing or a cell is not a number that it can be; each with its line.

    Examples
    --------
    >>> moves_from_csv("from_height_mm,to_height_mm,load_kg,count\n0,3000,1200,40\n", "moves").end
    array([3000.])
    """
    reader = csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""))
    rows: list[tuple[float, float, float, float]] = []
    problems: list[Problem] = []
    try:
        header = [name.strip() for name in next(reader, [])]
        if sorted(header) != sorted(COLUMNS):
            raise BadInput(
                Problem(f"{field}, header", ",".join(header), f"the columns {','.join(COLUMNS)}", line=1)
            )
        order = [header.index(name) for name in COLUMNS]
        for row in reader:
            wrong = _read_row(row, order, field, rows) if row else []
            problems += [problem.at(reader.line_num) for problem in wrong]
            if len(problems) >= _MOST_PROBLEMS:
                break
    except csv.Error as error:
        problems.append(Problem(field, "", f"a table of comma-separated cells ({error})", reader.line_num))
    if not rows and not problems:
        problems.append(Problem(field, "", "at least one move below the header"))
    if problems:
        raise BadInput(problems)
    return Moves.of(rows)


def _read_row(
    row: list[str], order: list[int], field: str, rows: list[tuple[float, float, float, float]]
) -> list[Problem]:
    """Add a row's move, or return what is wrong with it."""
    if len(row) != len(COLUMNS):
        return [Problem(f"{field}, row", ",".join(row), f"{len(COLUMNS)} cells: {','.join(COLUMNS)}")]
    a, b, c, d = (_number(row[place]) for place in order)
    highest = mast_figure("highest_lift")
    most = (highest, highest, _LARGEST, _LARGEST)
    wrong = [
        Problem(f"{field}, {name}", row[place], f"a number from 0 to {bound:g}")
        for name, place, value, bound in zip(COLUMNS, order, (a, b, c, d), most, strict=True)
        if not 0 <= value <= bound
    ]
    if not wrong:
        rows.append((a, b, c, d))
    return wrong


def _number(cell: str) -> float:
    """Return the number in a cell, or -1, which no cell may hold."""
    try:
        return -1 if "_" in cell else float(cell)
    except ValueError:
        return -1


def set_moves(
    elements: MastElements,
    name: str,
    moves: Moves,
    free_lift: float,
    masses: Mapping[str, Fraction | None],
    strands: int,
    gravity: float,
) -> SetMoves:
    """Return what a chain set does in the moves.

    Parameters
    ----------
    elements, name
        The mast and the set.
    moves
        Of the forks.
    free_lift
        How far the carriage lifts before the frames move, mm.
    masses
        Of the empty truck's moving bodies, kg (`mastwright.mast.state.body_masses` with no load).
    strands
        How many strands share the pull.
    gravity
        m/s².

    Raises
    ------
    BadInput
        If a mass that hangs on the set is not known.
    """
    below, above = (float(rate) for rate in elements.stroke_rates(name))
    empty = float(hung_on(elements, name, masses))
    times = float(elements.hangs[name]["carriage"])
    return SetMoves(
        start=_strokes(moves.start, free_lift, below, above),
        end=_strokes(moves.end, free_lift, below, above),
        tension=(empty + times * moves.load) * (gravity / strands),
        count=moves.count,
    )


def _strokes(heights: Floats, free_lift: float, below: float, above: float) -> Floats:
    return below * np.minimum(heights, free_lift) + above * np.maximum(heights - free_lift, 0)
