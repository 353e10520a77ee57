"""Elongation and its doubt against figures published outside the project."""

from __future__ import annotations

from fractions import Fraction
from math import hypot, sqrt

import pytest

from mastwright.chains.elongation import elongation_figures, elongation_from_length, growth_since_fitting
from mastwright.quantity import Field, Reading, common_instruments, parse_quantity

INCH = Fraction("25.4")


def read(text: str, pitches: int, pitch: Fraction, instrument: str = "rule") -> Reading:
    """Return the elongation of a length as written."""
    found = common_instruments().find(instrument, "length")
    return elongation_from_length(parse_quantity(text, Field("length", "length")), pitches, pitch, found)


def test_the_army_figure() -> None:
    """US Army TM 10-3930-671-24 (read): 12.375 in over 12 pitches of 1 in is past 3 %: 3.125 %."""
    assert read("12.375 in", 12, INCH).value == Fraction("3.125")


def test_the_telehandler_figure() -> None:
    """A telehandler manual (read): 12.36 in where 12.00 in is new is exactly 3 %."""
    assert read("12.36 in", 12, INCH).value == 3


def test_a_leaf_chain_of_five_eighths() -> None:
    """A page on leaf-chain wear (read): 18 pitches of 15.875 mm, 285.75 mm new, at 286.7 mm: 0.33 %."""
    assert round(float(read("286.7 mm", 18, Fraction("15.875")).value), 2) == 0.33


def test_the_tolerance_of_a_new_chain() -> None:
    """ASME B29.8 cl. 1.6 (read): 0.031 in per ft, which is 0.2583 %."""
    assert round(float(100 * Fraction("0.031") / 12), 4) == float(elongation_figures().new_tolerance.at)


@pytest.mark.parametrize(
    ("instrument", "pitches", "percent", "places"),
    [("rule", 16, 0.131, 3), ("rule", 8, 0.26, 2), ("calliper", 16, 0.033, 3)],
)
def test_doubt_of_an_instrument(instrument: str, pitches: int, percent: float, places: int) -> None:
    """100 u/(n p) by hand for u = 0.4 mm and 0.1 mm over pitches of 3/4 in (computed)."""
    doubt = read("310 mm", pitches, Fraction("19.05"), instrument).standard_uncertainty
    assert round(doubt, places) == percent


def test_doubt_of_a_quarter_percent_gauge() -> None:
    """JCGM 100:2008 F.2.2.1: divisions of 0.25 % alone give 0.25/√12 = 0.072 %; seating comes to it."""
    gauge = common_instruments().find("graduated-gauge", "percent")
    assert gauge.step == Fraction(1, 4)
    assert round(float(gauge.step) / sqrt(12), 3) == 0.072
    assert round(hypot(0.072, 0.05), 3) == pytest.approx(gauge.standard_uncertainty, abs=0.001)


def test_doubt_of_an_unknown_new_length() -> None:
    """JCGM 100:2008 cl. 4.3.7: half width a gives a/√3; 0.2583 % gives 0.149 %, and 0.20 % with a rule."""
    now = read("310 mm", 16, Fraction("19.05"))
    doubt = growth_since_fitting(now, None).standard_uncertainty
    assert round(sqrt(doubt**2 - now.standard_uncertainty**2), 3) == 0.149
    assert round(doubt, 2) == 0.20


def test_doubts_add_as_a_root_sum_of_squares() -> None:
    """JCGM 100:2008 H.1.2 (end gauge): 5.8, 3.9 and 6.7 nm come to 9.7 nm (9.68194 unrounded)."""
    now, first = read("310 mm", 16, Fraction("19.05")), read("305 mm", 16, Fraction("19.05"))
    combined = 0.0
    for part in (5.8, 3.9, 6.7):
        grown = growth_since_fitting(with_doubt(now, combined), with_doubt(first, part))
        combined = grown.standard_uncertainty
    assert combined == pytest.approx(9.68194, abs=5e-6)


def with_doubt(reading: Reading, doubt: float) -> Reading:
    """Return the reading with another standard uncertainty."""
    return Reading(
        reading.value,
        reading.low,
        reading.high,
        reading.dimension,
        reading.unit_name,
        reading.instrument,
        doubt,
    )


def test_a_planned_replacement_is_due_within_three_months() -> None:
    """UK chain guidance for examiners (read): between 2 % and 3 % a date, at the latest 3 months on."""
    marks = elongation_figures()
    assert (marks.planned.at, marks.discard.at) == (Fraction(2), Fraction(3))
    assert marks.planned_months == 3
