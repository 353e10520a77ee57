"""Hypothesis strategies for duties and chains."""

from __future__ import annotations

import numpy as np
from hypothesis import strategies as st

from mastwright.mast.moves import SetMoves

PITCHES = st.sampled_from([12.7, 15.875, 19.05, 25.4, 31.75])
_STROKE = st.floats(0, 2500)
ONE_MOVE = st.tuples(_STROKE, _STROKE, st.floats(100, 20_000), st.integers(0, 500))
MOVES = st.lists(ONE_MOVE, min_size=1, max_size=12)


def set_moves_of(rows: list[tuple[float, float, float, int]]) -> SetMoves:
    """Return moves of one set: start, end, tension, count."""
    table = np.array(rows, dtype=np.float64).reshape(-1, 4)
    return SetMoves(table[:, 0], table[:, 1], table[:, 2], table[:, 3])


LIFTS = st.lists(st.tuples(st.floats(1, 2500), st.integers(1, 500)), min_size=1, max_size=12)


def lifts_of(rows: list[tuple[float, int]]) -> SetMoves:
    """Return lifts that start from and go back to the bottom: stroke and count, 1 N all the time."""
    moves = [m for stroke, n in rows for m in ((0.0, stroke, 1.0, n), (stroke, 0.0, 1.0, n))]
    return set_moves_of(moves)
