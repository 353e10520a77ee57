"""The wear map: how often each joint of a chain set bends, and under what pull.

A joint bends where the chain runs on to the sheave and straightens where it runs off, one wrap further: the
moves are counted at both levels. On plates that lie flat one after the other the joint turns over one pitch
of travel, so each crossing counts as a ramp of that width.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from mastwright.mast.moves import Floats, SetMoves

_BLOCK = 1 << 14


@dataclass(frozen=True)
class WearMap:
    """One chain set along its length.

    Parameters
    ----------
    d
        Joints, mm along the chain below the point where the carried side leaves the sheave with the mast
        lowered: at half pitches, ..., -p/2, p/2, 3p/2, ...; from one wrap above to the largest stroke.
    articulations
        Full bends and straightenings of each, one of each angle counting one.
    weighted
        The same, each times the pull of its strand, N.
    pitch, wrap
        mm.
    """

    d: Floats
    articulations: Floats
    weighted: Floats
    pitch: float
    wrap: float

    @property
    def worst(self) -> int:
        """The index of the joint that wears most."""
        return int(np.argmax(self.weighted))

    @property
    def take_up(self) -> float:
        """Total lengthening of the strand over the elongation of its worst joint, mm; 0 for no moves.

        What the anchor bolts have taken up should be this times the measured peak: far more, and the
        span was misplaced; far less, and a chain or an anchor was changed.
        """
        peak = float(self.weighted.max())
        return float(self.weighted.sum()) * self.pitch / peak if peak > 0 else 0.0


def wear_map(
    moves: SetMoves, pitch: float, wrap: float, *, sharp: bool = False, efficiency: float = 1.0
) -> WearMap:
    """Return how often each joint of a set bends over the moves.

    Parameters
    ----------
    moves
        Strokes and pulls of the set.
    pitch, wrap
        Pitch, and length of chain on the sheave, mm.
    sharp
        Count a crossing at once instead of over one pitch of travel.
    efficiency
        Of the sheave, 1 for no friction: the anchor side pulls 1/efficiency times as hard when raising
        and efficiency times as hard when lowering.

    **Source**: chain of constant length on a sheave, counted by level crossings; checked against a
    joint-by-joint count (computed).

    Examples
    --------
    >>> import numpy as np
    >>> from mastwright.mast.moves import SetMoves
    >>> one = SetMoves(np.array([0.0]), np.array([500.0]), np.array([1000.0]), np.array([1.0]))
    >>> chart = wear_map(one, pitch=20.0, wrap=200.0)
    >>> [float(chart.articulations[abs(chart.d - d).argmin()]) for d in (-50, 50, 450)]
    [1.0, 2.0, 1.0]
    """
    first = floor(-wrap / pitch)
    last = max(ceil(moves.highest / pitch) - 1, 0)
    d: Floats = (np.arange(first, last + 1, dtype=np.float64) + 0.5) * pitch
    articulations, weighted = np.zeros(len(d)), np.zeros(len(d))
    carried, anchor = (_Level(levels, pitch, sharp=sharp) for levels in (d, d + wrap))
    for block in _blocks(moves):
        up = block.end > block.start
        counted = np.where(up, block.count, -block.count)
        on = block.tension * counted
        off = on * np.where(up, 1 / efficiency, efficiency)
        for level, pulled in ((carried, on), (anchor, off)):
            plain, weights = level.totals(block, (counted, pulled))
            articulations += plain
            weighted += weights
    return WearMap(d, np.maximum(articulations, 0), np.maximum(weighted, 0), pitch, wrap)


def _blocks(moves: SetMoves) -> Iterator[SetMoves]:
    """Yield the moves in blocks that stay in the processor's cache."""
    for first in range(0, len(moves.start), _BLOCK):
        part = slice(first, first + _BLOCK)
        yield replace(
            moves,
            start=moves.start[part],
            end=moves.end[part],
            tension=moves.tension[part],
            count=moves.count[part],
        )


class _Level:
    """How often each joint passes one point of the path, in time linear in moves and joints."""

    def __init__(self, levels: Floats, pitch: float, *, sharp: bool) -> None:
        self._joints = len(levels)
        self._reached = levels > 0 if sharp else levels > -pitch / 2
        self._first = float(levels[0])
        self._pitch = pitch
        self._sharp = sharp

    def _place(self, strokes: Floats) -> tuple[np.typing.NDArray[np.intp], Floats]:
        """Return how many joints a stroke has taken past whole, and the share of the next."""
        passed = (strokes - self._first) / self._pitch
        passed = np.ceil(passed) if self._sharp else passed + 0.5
        passed = np.clip(passed, 0, self._joints)
        whole = passed.astype(np.intp)
        return whole, passed - whole

    def totals(self, moves: SetMoves, weightings: Sequence[Floats]) -> Iterator[Floats]:
        """Yield for each weighting of the moves its sum at each joint."""
        places = self._place(moves.end), self._place(moves.start)
        for weights in weightings:
            passed, partly = np.zeros(self._joints + 1), np.zeros(self._joints + 1)
            for (whole, share), signed in zip(places, (weights, -weights), strict=True):
                passed += np.bincount(whole, signed, self._joints + 1)
                partly += np.bincount(whole, signed * share, self._joints + 1)
            # a joint is passed by every stroke that lies beyond it; what cancels leaves rounding, not wear
            beyond = passed[::-1].cumsum()[::-1][1:] + partly[:-1]
            yield np.where(self._reached, beyond, 0)
