"""Drift and speed against published figures."""

from fractions import Fraction

import pytest

from mastwright.checks.mast_drift import at_fork, mean_speed, per_ten_minutes, tilt_from_stroke
from mastwright.quantity import unit


def test_the_makers_stroke_is_the_remembered_angle() -> None:
    """A truck maker's 35.5 mm in 10 min (read) on a 406 mm arm is 5.0 deg, as EN 1726-1 (from memory)."""
    assert tilt_from_stroke(Fraction("35.5"), Fraction(406)) == pytest.approx(5.0, abs=0.05)


# Truck maker's service manual, read: per 10 min, between mast stages, and twice that at the fork.
@pytest.mark.parametrize(("between_stages", "at_the_fork"), [(25, 50), (40, 80), (50, 100), (65, 130)])
def test_drift_between_stages_counts_twice(between_stages: int, at_the_fork: int) -> None:
    """The maker's figures between the stages are doubled at the fork."""
    assert at_fork(Fraction(between_stages), "mast-stages") == at_the_fork


# Truck maker's service manual, read: 5 to 10 mm of tilt cylinder stroke in 5 min.
@pytest.mark.parametrize(("in_five", "in_ten"), [(5, 10), (10, 20)])
def test_a_five_minute_figure_doubles(in_five: int, in_ten: int) -> None:
    """A maker's figure for 5 min is comparable with one for 10 min."""
    assert per_ten_minutes(Fraction(in_five), Fraction(5)) == in_ten


def test_a_military_lowering_speed() -> None:
    """80 ft in a minute is 0.41 m/s: a military truck specification, read."""
    speed = mean_speed(unit("ft").to_canonical(Fraction(80)), Fraction(60))
    assert float(speed) == pytest.approx(0.41, abs=0.005)
