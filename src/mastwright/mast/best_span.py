"""Where to measure: which even span comes closest to the worst joint of a strand."""

from __future__ import annotations

from dataclasses import dataclass
from math import erfc, sqrt
from typing import TYPE_CHECKING

import numpy as np

from mastwright.quantity import BadInput, Problem

if TYPE_CHECKING:
    from mastwright.mast.wear_map import WearMap


@dataclass(frozen=True)
class MapSpan:
    """A span on a wear map.

    Parameters
    ----------
    pitches
        Even number.
    first_pin
        Counted down from the sheave on the carried side with the mast lowered, the first clear pin being 1.
    start, end
        Where its first and its last pin are, mm as in `WearMap.d`.
    dilution
        Mean wear of the span over that of the worst joint of the strand, 0 to 1.
    """

    pitches: int
    first_pin: int
    start: float
    end: float
    dilution: float

    @property
    def last_pin(self) -> int:
        """The pin at its other end."""
        return self.first_pin + self.pitches

    @property
    def length(self) -> float:
        """Nominal length, mm."""
        return self.end - self.start

    def stroke_past_sheave(self, wrap: float) -> float:
        """Return by what stroke the whole span has passed over the sheave to the anchor side, mm."""
        return self.end + wrap

    def miss_probability(self, peak: float, limit: float, uncertainty: float) -> float:
        """Return the chance that this span reads below the limit on a strand whose worst joint is at peak.

        Parameters
        ----------
        peak, limit
            Elongation in percent.
        uncertainty
            Standard uncertainty of a length over the span, mm.

        **Source**: normal reading error about the mean of the span (computed).

        Examples
        --------
        >>> round(MapSpan(16, 1, 0, 304.8, 0.8919).miss_probability(3.3, 3, 0.4572), 3)
        0.647
        """
        u = 100 * uncertainty / self.length
        return 0.5 * erfc((self.dilution * peak - limit) / (u * sqrt(2)))


def span_at(chart: WearMap, first_pin: int, pitches: int) -> MapSpan | None:
    """Return a span of the map, or None if no joint of the strand has worn.

    Parameters
    ----------
    chart
        The wear map.
    first_pin
        1 or more, as in `MapSpan`.
    pitches
        Even, 2 or more. It may reach beyond the map, where nothing wears.

    Raises
    ------
    BadInput
        If the number of pitches is odd, or one of the two is too small.
    """
    if pitches < 2 or pitches % 2:  # noqa: PLR2004  a pair of pitches is the least that shows growth
        raise BadInput(
            Problem("pitches", str(pitches), "an even number from 2: growth shows on every other pitch only")
        )
    if first_pin < 1:
        raise BadInput(Problem("first pin", str(first_pin), "1 or more, counted down from the sheave"))
    peak = float(chart.weighted.max())
    if peak <= 0:
        return None
    clear = chart.weighted[chart.d > 0]
    worn = float(clear[first_pin - 1 : first_pin - 1 + pitches].sum()) / pitches
    return _span(chart, first_pin, pitches, worn / peak)


def best_span(chart: WearMap, limit: float, uncertainty: float, hidden_pins: int = 0) -> MapSpan | None:
    """Return the even span that reads the worst joint best at the limit, or None if nothing has worn.

    A longer span reads more finely and mixes in less worn joints; the best one has the least mean
    square of both errors.

    Parameters
    ----------
    chart
        The wear map.
    limit
        Elongation of the worst joint for which to choose, percent.
    uncertainty
        Standard uncertainty of a length over any span, mm.
    hidden_pins
        How many pins below the sheave cannot be reached with the mast lowered: the second best is then
        the best one below them.

    **Source**: least mean square error (computed).
    """
    peak = float(chart.weighted.max())
    clear = chart.weighted[chart.d > 0][hidden_pins:]
    if peak <= 0 or not len(clear):
        return None
    sums = np.concatenate([[0.0], np.cumsum(clear), [float(clear.sum())]])  # past the map nothing wears
    candidates: list[tuple[float, int, int, float]] = []
    for pitches in range(2, len(sums), 2):
        means = (sums[pitches:] - sums[:-pitches]) / pitches
        place = int(means.argmax())
        dilution = min(float(means[place]) / peak, 1.0)
        error = (limit * (1 - dilution)) ** 2 + (100 * uncertainty / (pitches * chart.pitch)) ** 2
        candidates.append((error, place, pitches, dilution))
    _, place, pitches, dilution = min(candidates)
    return _span(chart, hidden_pins + place + 1, pitches, dilution)


def _span(chart: WearMap, first_pin: int, pitches: int, dilution: float) -> MapSpan:
    start = (first_pin - 0.5) * chart.pitch
    return MapSpan(pitches, first_pin, start, start + pitches * chart.pitch, min(dilution, 1.0))
