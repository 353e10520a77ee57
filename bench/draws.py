"""Readings drawn at a true value: normal scatter, then written to the instrument's graduation."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from enum import StrEnum
from math import floor, sqrt
from random import Random

_DRIFT = 1.5


class Spread(StrEnum):
    """How the scatter of the hand relates to the standard uncertainty that the product takes.

    The product's figure has the graduation in it, so `WITHIN` is the assumption at its word; `ON_TOP`
    scatters by the whole figure and then rounds, which counts the graduation twice; `DRIFTED` is a
    worn or carelessly used instrument.
    """

    WITHIN = "true u as stated, its graduation in it"
    ON_TOP = "scatter of the whole stated u, rounding on top of it"
    DRIFTED = "true u 1.5 x the stated, rounding on top of it"

    def scatter(self, stated: float, step: float) -> float:
        """Return the standard deviation before rounding."""
        if self is Spread.WITHIN:
            return sqrt(stated**2 - step**2 / 12)
        return stated if self is Spread.ON_TOP else _DRIFT * stated


def normal_draws(count: int, seed: str) -> list[float]:
    """Return so many standard normal draws, sorted."""
    generator = Random(seed)
    return sorted(generator.gauss() for _ in range(count))


def written(draws: list[float], true: float, scatter: float, step: float) -> dict[int, int]:
    """Return how many draws are written as which multiple of the graduation.

    Parameters
    ----------
    draws
        Standard normal, sorted.
    true, scatter, step
        In one unit.
    """
    first = floor((true + draws[0] * scatter) / step + 0.5)
    last = floor((true + draws[-1] * scatter) / step + 0.5)
    edges = [bisect_left(draws, ((k - 0.5) * step - true) / scatter) for k in range(first + 1, last + 1)]
    bounds = [0, *edges, len(draws)]
    counts = {k: bounds[k - first + 1] - bounds[k - first] for k in range(first, last + 1)}
    return {k: count for k, count in counts.items() if count}


def written_pairs(
    count: int, seed: str, true: tuple[float, float], scatter: float, step: float
) -> Counter[tuple[int, int]]:
    """Return how many pairs of readings, each with its own scatter, are written as which multiples."""
    gauss = Random(seed).gauss
    first, second = (value / step + 0.5 for value in true)
    spread = scatter / step
    return Counter((floor(gauss(first, spread)), floor(gauss(second, spread))) for _ in range(count))
