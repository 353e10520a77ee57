"""Readings of the chains of a mast: what they say of how fast they wear."""

from __future__ import annotations

import argparse
import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import hypot, sqrt

from mastwright.chains.elongation import elongation_figures
from mastwright.cli.mast_options import Options
from mastwright.mast.best_span import span_at
from mastwright.mast.wear_map import WearMap
from mastwright.mast.wear_rate import (
    WearCoefficient,
    WearReading,
    elongation_percent,
    prior_coefficient,
    updated_coefficient,
)
from mastwright.quantity import BadInput, Field, Instrument, Problem, UnitSystem, parse_quantity

_READING = re.compile(r"^([A-Za-z-]+):([0-9]{1,4}):([0-9]{1,4}):(.+)$")
_READING_AS = "SET:FIRST-PIN:PITCHES:LENGTH, as carriage:1:16:'306.5 mm'"


@dataclass(frozen=True)
class ReadSpan:
    """A reading of one strand: set, span, and the length over it, mm."""

    name: str
    first_pin: int
    pitches: int
    length: Fraction


def read_spans(chosen: argparse.Namespace, options: Options) -> list[ReadSpan]:
    """Return the readings given, with every problem in them noted."""
    found = []
    system = UnitSystem(chosen.units or "metric")
    for text in chosen.reading:
        match = _READING.match(text)
        if match is None or int(match[2]) < 1 or int(match[3]) < 2 or int(match[3]) % 2:  # noqa: PLR2004  a pair
            options.problems.append(Problem("--reading", text, f"{_READING_AS}, an even number of pitches"))
            continue
        try:
            length = parse_quantity(match[4], Field("--reading", "length", system)).canonical
        except BadInput as bad:
            options.problems += bad.problems
            continue
        found.append(ReadSpan(match[1].lower(), int(match[2]), int(match[3]), length))
    if found and (chosen.lacing is None or chosen.plate_thickness is None):
        options.problems.append(
            Problem("--reading", chosen.reading[0], "only with --lacing and --plate-thickness")
        )
    return found


def coefficient_of(
    chart: WearMap, angle: float, width: float, readings: Sequence[ReadSpan], instrument: Instrument
) -> WearCoefficient:
    """Return the usual wear coefficient, corrected by what the chains of the set were read to have grown.

    The length of the chain when new is not known better than its tolerance, taken as rectangular.
    """
    peak = elongation_percent(float(chart.weighted.max()), angle, chart.pitch, width, 1)
    tolerance = float(elongation_figures().new_tolerance.at) / sqrt(3)
    found = []
    for reading in readings:
        span = span_at(chart, reading.first_pin, reading.pitches)
        new = reading.pitches * chart.pitch
        if span is None:
            continue
        found.append(
            WearReading(
                100 * (float(reading.length) / new - 1),
                hypot(100 * instrument.uncertainty_at(reading.length) / new, tolerance),
                span.dilution * peak,
            )
        )
    return updated_coefficient(prior_coefficient(), found) if found else prior_coefficient()
