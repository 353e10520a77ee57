"""How fast wear is counted along a chain: by level crossings, and joint by joint."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from time import perf_counter

import numpy as np
from section import Section, milliseconds, thousands

from mastwright.mast.articulation import on_rim
from mastwright.mast.moves import SetMoves
from mastwright.mast.wear_map import wear_map

sys.path.append(str(Path(__file__).parents[1] / "tests"))
from mast.link_by_link import bends  # the slow count of the tests, never in the product

SIZES = (10_000, 100_000, 1_000_000)
_PITCH = 19.05
_JOINTS = 200
_SLOW_MOVES = 20
_REPEATS = 5
_WRAP = on_rim(_PITCH, 5 * _PITCH, 0.95 * _PITCH).wrap
_HIGHEST = _JOINTS * _PITCH - _WRAP


@dataclass(frozen=True)
class Timed:
    """Seconds for so many moves."""

    moves: int
    seconds: float


def drawn_moves(count: int) -> SetMoves:
    """Return seeded moves between any two strokes of a chain of 200 joints (demo data)."""
    random = np.random.default_rng(count)
    strokes = random.uniform(0, _HIGHEST, (2, count))
    return SetMoves(strokes[0], strokes[1], random.uniform(1000, 12_000, count), np.ones(count))


def fast(count: int) -> Timed:
    """Return the median time of the wear map."""
    moves = drawn_moves(count)
    times = []
    for _ in range(_REPEATS):
        start = perf_counter()
        wear_map(moves, _PITCH, _WRAP)
        times.append(perf_counter() - start)
    return Timed(count, median(times))


def slow(count: int, step: float = 1.0) -> tuple[Timed, float]:
    """Return the time of the joint-by-joint count, and its largest difference relative to the worst joint."""
    moves = drawn_moves(count)
    chart = wear_map(moves, _PITCH, _WRAP)
    rows = list(zip(moves.start.tolist(), moves.end.tolist(), moves.tension.tolist(), strict=True))
    start = perf_counter()
    counted = bends(chart.d.tolist(), rows, _PITCH, _WRAP, step)
    seconds = perf_counter() - start
    return Timed(count, seconds), float(np.abs(chart.weighted - counted).max() / chart.weighted.max())


def section() -> Section:
    """Return the table of times."""
    found = [fast(count) for count in SIZES]
    by_joint, difference = slow(_SLOW_MOVES)
    each = by_joint.seconds / by_joint.moves
    last = found[-1]
    ratio = each * last.moves / last.seconds
    growth = (last.seconds / found[-2].seconds) / (last.moves / found[-2].moves)
    linear = (
        f"From {thousands(found[-2].moves)} to {thousands(last.moves)} moves the time grows {growth:.2f} "
        "times as fast as their number (1 is linear)."
    )
    return Section(
        "Wear map of a chain",
        ".venv/bin/python bench/wear_map.py",
        f"Seeded moves on a chain of {_JOINTS} joints, bends and bends times pull of every joint, smoothed "
        f"over a pitch; median of {_REPEATS}. The joint-by-joint count of the tests follows every angle in "
        f"steps of 1 mm (plain Python, one of the two sums); it ran {by_joint.moves} moves, and its time for "
        "more is that times their number.",
        ("moves", "wear map", "joint by joint", "ratio"),
        tuple(
            (
                thousands(t.moves),
                milliseconds(t.seconds),
                f"{each * t.moves:,.0f} s".replace(",", " "),
                thousands(round(each * t.moves / t.seconds)),
            )
            for t in found
        ),
        (
            f"One million moves: {thousands(round(ratio))} times as fast (bar: at least 1000).",
            linear,
            f"Largest difference of the two counts: {difference:.1e} of the worst joint.",
        ),
    )


if __name__ == "__main__":
    print(section().markdown())
