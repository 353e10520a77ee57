"""Fork arms: angle, what is left of them, forecast, mounting classes."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from mastwright.checks.forks import (
    angle_from_gap,
    forecast_thickness,
    hours_to_limit,
    mounting_class,
    stiffness_left,
    strength_left,
)
from mastwright.quantity import BadInput

NOW, EARLIER, HOURS = Fraction(38), Fraction(39), Fraction(1000)


def test_no_gap_is_no_angle() -> None:
    """A fork that lies against the square has not opened."""
    assert angle_from_gap(Fraction(0), Fraction(500)) == 0.0


def test_a_gap_as_high_as_wide_is_half_a_right_angle() -> None:
    """The gap stands square to the height, not along the shank."""
    assert angle_from_gap(Fraction(500), Fraction(500)) == pytest.approx(45)


def test_the_forecast_is_a_straight_line() -> None:
    """A millimetre in 1000 h is half a millimetre in 500 h."""
    assert forecast_thickness(NOW, EARLIER, HOURS, Fraction(500)) == Fraction("37.5")


def test_a_fork_does_not_grow() -> None:
    """A thinner earlier reading is forecast as no wear."""
    assert forecast_thickness(EARLIER, NOW, HOURS, Fraction(500)) == EARLIER


def test_a_forecast_stops_at_nothing() -> None:
    """However far ahead, no fork is thinner than nothing."""
    assert forecast_thickness(NOW, EARLIER, HOURS, Fraction(10**6)) == 0


def test_hours_to_the_limit() -> None:
    """Two millimetres at a millimetre in 1000 h last 2000 h."""
    assert hours_to_limit(NOW, EARLIER, HOURS, Fraction(36)) == 2000


@pytest.mark.parametrize("limit", [NOW, NOW + 1])
def test_a_fork_at_its_limit_has_no_hours_left(limit: Fraction) -> None:
    """At the limit or below it nothing is left, worn since or not."""
    assert hours_to_limit(NOW, EARLIER, HOURS, limit) == 0
    assert hours_to_limit(NOW, NOW, HOURS, limit) == 0


def test_no_wear_gives_no_hours() -> None:
    """Without wear between the readings nothing can be said."""
    assert hours_to_limit(NOW, NOW, HOURS, Fraction(36)) is None
    assert hours_to_limit(EARLIER, NOW, HOURS, Fraction(36)) is None


@pytest.mark.parametrize(
    ("capacity", "classes"),
    [
        ("0.5", (1,)),
        ("999.7", (1,)),
        ("1000", (2,)),
        ("2500.5", (2,)),
        ("2501", (3,)),
        ("4999.9", (3,)),
        ("5000", (4,)),
        ("8000", (4,)),
        ("8001", (4, 5)),
        ("10000", (4, 5)),
        ("10999", (5,)),
        ("11000", ()),
    ],
)
def test_mounting_classes_meet_without_a_gap(capacity: str, classes: tuple[int, ...]) -> None:
    """Every capacity up to the largest class has one, also between two whole kilograms."""
    assert mounting_class(Fraction(capacity)) == classes


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: angle_from_gap(Fraction(-1), Fraction(500)), "gap at the square: '-1 mm'"),
        (lambda: angle_from_gap(Fraction(1), Fraction(0)), "height of the gap: '0 mm'"),
        (lambda: strength_left(Fraction(0), Fraction(40)), "thickness: '0 mm'"),
        (lambda: strength_left(Fraction(40), Fraction(0)), "original thickness: '0 mm'"),
        (lambda: stiffness_left(Fraction(-1), Fraction(40)), "thickness: '-1 mm'"),
        (lambda: stiffness_left(Fraction(40), Fraction(0)), "original thickness: '0 mm'"),
        (lambda: forecast_thickness(NOW, EARLIER, HOURS, Fraction(-1)), "hours ahead: '-1 h'"),
        (lambda: forecast_thickness(Fraction(0), EARLIER, HOURS, HOURS), "thickness now: '0 mm'"),
        (lambda: forecast_thickness(NOW, Fraction(0), HOURS, HOURS), "earlier thickness: '0 mm'"),
        (
            lambda: hours_to_limit(NOW, EARLIER, Fraction(0), Fraction(36)),
            "hours between the readings: '0 h'",
        ),
        (lambda: hours_to_limit(NOW, EARLIER, HOURS, Fraction(-1)), "limit: '-1 mm'"),
        (lambda: mounting_class(Fraction(0)), "rated capacity: '0 kg'"),
    ],
)
def test_impossible_readings_are_refused(call: Callable[[], object], says: str) -> None:
    """A reading that no fork can give is named with its value."""
    with pytest.raises(BadInput, match=f"^{says} given; "):
        call()
