"""Drift of lift and tilt, and speed over a timed distance."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from mastwright.checks.mast_drift import at_fork, mean_speed, per_ten_minutes, tilt_from_stroke
from mastwright.quantity import BadInput


@pytest.mark.parametrize(("minutes", "expected"), [(5, 60), (10, 30), (15, 20)])
def test_drift_is_stated_for_ten_minutes(minutes: int, expected: int) -> None:
    """A drift over another time is brought to ten minutes in proportion."""
    assert per_ten_minutes(Fraction(30), Fraction(minutes)) == expected


@pytest.mark.parametrize(("place", "expected"), [("carriage", 40), ("fork", 40), ("mast-stages", 80)])
def test_drift_counts_at_the_fork(place: str, expected: int) -> None:
    """Between the stages the mast moves half as far as the fork."""
    assert at_fork(Fraction(40), place) == expected


def test_no_stroke_is_no_tilt() -> None:
    """A rod that has not moved has not tilted the mast."""
    assert tilt_from_stroke(Fraction(0), Fraction(400)) == 0.0


def test_a_stroke_as_long_as_the_arm_is_a_right_angle() -> None:
    """The longest possible stroke turns the mast by 90 deg."""
    assert tilt_from_stroke(Fraction(400), Fraction(400)) == pytest.approx(90)


def test_speed_is_distance_over_time() -> None:
    """Two metres in four seconds are half a metre a second, exactly."""
    assert mean_speed(Fraction(2000), Fraction(4)) == Fraction(1, 2)


ONE = Fraction(1)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: per_ten_minutes(-ONE, ONE), "drift: '-1 mm or deg'"),
        (lambda: per_ten_minutes(ONE, Fraction(0)), "time of the drift test: '0 min'"),
        (lambda: at_fork(-ONE, "fork"), "drift: '-1 mm'"),
        (lambda: at_fork(ONE, "roof"), "where drift was measured: 'roof'"),
        (lambda: tilt_from_stroke(-ONE, ONE), "tilt cylinder stroke: '-1 mm'"),
        (lambda: tilt_from_stroke(ONE, Fraction(0)), "arm of the tilt cylinder: '0 mm'"),
        (lambda: tilt_from_stroke(Fraction("1.5"), ONE), "tilt cylinder stroke: '1.5 mm'"),
        (lambda: mean_speed(-ONE, ONE), "distance: '-1 mm'"),
        (lambda: mean_speed(ONE, Fraction(0)), "time: '0 s'"),
    ],
)
def test_impossible_readings_are_refused(call: Callable[[], object], says: str) -> None:
    """A reading that no mast can give is named with its value."""
    with pytest.raises(BadInput, match=f"^{says} given; "):
        call()


def test_an_unknown_place_is_told_the_known_ones() -> None:
    """The message names every place that has a factor."""
    with pytest.raises(BadInput, match="one of carriage, fork, mast-stages"):
        at_fork(ONE, "roof")


def test_too_long_a_stroke_is_told_the_arm() -> None:
    """The message says how long the stroke can be."""
    with pytest.raises(BadInput, match="no more than the arm of the cylinder, 1 mm"):
        tilt_from_stroke(Fraction(2), ONE)
