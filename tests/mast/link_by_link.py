"""The slow truth: every joint's angle followed step by step over every move."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise


def ramp(s: float) -> float:
    """Return how far a joint has turned whose place is s pitches past the tangent point."""
    return min(max(s + 0.5, 0.0), 1.0)


def angle(d: float, stroke: float, pitch: float, wrap: float) -> float:
    """Return the angle of a joint as a share of the full articulation."""
    return ramp((stroke - d) / pitch) - ramp((stroke - d - wrap) / pitch)


def bends(
    joints: Sequence[float],
    moves: Iterable[tuple[float, float, float]],
    pitch: float,
    wrap: float,
    step: float = 4.0,
) -> list[float]:
    """Return for each joint the sum of |change of angle| x weight over moves of (start, end, weight).

    A joint opens and closes a wrap less a pitch apart, so a step far below that misses no turning point.
    """
    totals = [0.0] * len(joints)
    for start, end, weight in moves:
        parts = max(int(abs(end - start) / step) + 1, 1)
        strokes = [start + (end - start) * i / parts for i in range(parts + 1)]
        for j, d in enumerate(joints):
            angles = [angle(d, x, pitch, wrap) for x in strokes]
            totals[j] += weight * sum(abs(b - a) for a, b in pairwise(angles))
    return totals
