"""Instrument doubts against the rules for stating uncertainty."""

from fractions import Fraction
from math import hypot, sqrt

import pytest

from mastwright.quantity import Instrument, common_instruments, dimensions

MEASURING = [
    item
    for dimension in dimensions()
    for item in common_instruments().of(dimension)
    if item.standard_uncertainty or item.relative_uncertainty
]


@pytest.mark.parametrize("item", MEASURING, ids=lambda i: i.name)
def test_no_reading_is_surer_than_its_graduation(item: Instrument) -> None:
    """A step alone gives 0.29 of itself, at zero too.

    Source: JCGM 100:2008 (GUM), F.2.2.1: u = 0.29 δx for a resolution δx; from memory. The table
    gives two digits at most, so 2 % of rounding is allowed.
    """
    assert item.uncertainty_at(Fraction(0)) >= 0.98 * 0.29 * float(item.step)


def test_graduated_gauge_is_its_divisions_and_its_seating() -> None:
    """0.25 % divisions give 0.25/√12 = 0.072 (GUM 4.3.7, rectangular; from memory), 0.05 the seating.

    The 0.05 is judgement: common practice, no source.
    """
    gauge = common_instruments().find("graduated-gauge", "percent")
    divisions = float(gauge.step) / sqrt(12)
    assert divisions == pytest.approx(0.0722, abs=5e-5)
    assert gauge.standard_uncertainty == pytest.approx(hypot(divisions, 0.05), abs=5e-4)


def test_torque_wrench_follows_its_permitted_error() -> None:
    """±4 % taken as rectangular is 4/√3 = 2.3 % (ISO 6789-1 and GUM 4.3.7; from memory)."""
    wrench = common_instruments().find("torque-wrench", "torque")
    assert wrench.relative_uncertainty == pytest.approx(0.04 / sqrt(3), abs=5e-4)
    assert wrench.uncertainty_at(Fraction(100)) == pytest.approx(2.32, abs=0.01)
