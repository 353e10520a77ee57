"""Stopping distance, drag, and the pull of a grade."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from mastwright.checks.brakes import (
    allowed_stopping_distance,
    drag_downhill,
    drag_from_distance,
    drawbar_pull,
    needed_drag,
)
from mastwright.quantity import BadInput, unit


def km_h(speed: str) -> Fraction:
    """Return km/h in m/s."""
    return unit("km/h").to_canonical(Fraction(speed))


def test_up_to_the_knee_the_distance_grows_with_speed() -> None:
    """At 13.4 km/h the straight rule still holds."""
    assert allowed_stopping_distance(km_h("13.4")) == Fraction("0.21") * Fraction("13.4") * 1000


@pytest.mark.parametrize("speed", ["13.41", "20"])
def test_above_the_knee_the_distance_grows_with_the_square(speed: str) -> None:
    """Past 13.4 km/h the square rule holds."""
    assert allowed_stopping_distance(km_h(speed)) == Fraction("15.7") * Fraction(speed) ** 2


def test_the_distance_does_not_shrink_at_the_knee() -> None:
    """A little more speed never asks for a shorter stop."""
    at, above = km_h("13.4"), km_h("13.41")
    assert allowed_stopping_distance(at) < allowed_stopping_distance(above)


@pytest.mark.parametrize(("speed", "drag"), [("5", "9.3"), ("13.4", "24.924"), ("13.5", "25"), ("20", "25")])
def test_drag_grows_to_its_most(speed: str, drag: str) -> None:
    """Drag grows by 1.86 % per km/h and stays at 25 %."""
    assert needed_drag(km_h(speed)) == Fraction(drag)


def test_drag_from_a_stop() -> None:
    """From 10 m/s in 9.80665 m is a drag of (100 / 2 g / 9.80665) times the weight."""
    assert drag_from_distance(Fraction("9806.65"), Fraction(10)) == pytest.approx(10000 / (2 * 9.80665**2))


def test_no_grade_does_not_pull() -> None:
    """On the level a truck is not pulled."""
    assert drawbar_pull(Fraction(6000), Fraction(0)) == 0.0


def test_a_grade_takes_from_the_drag() -> None:
    """Downhill the grade comes off, and can leave less than nothing."""
    assert drag_downhill(Fraction(25), Fraction(10)) == 15
    assert drag_downhill(Fraction(10), Fraction(12)) == -2


ONE, ZERO = Fraction(1), Fraction(0)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: allowed_stopping_distance(ZERO), "speed: '0 m/s'"),
        (lambda: needed_drag(-ONE), "speed: '-1 m/s'"),
        (lambda: drag_from_distance(ZERO, ONE), "stopping distance: '0 mm'"),
        (lambda: drag_from_distance(ONE, ZERO), "speed: '0 m/s'"),
        (lambda: drawbar_pull(ZERO, ONE), "mass of truck and load: '0 kg'"),
        (lambda: drawbar_pull(ONE, -ONE), "grade: '-1 %'"),
        (lambda: drag_downhill(-ONE, ONE), "drag: '-1 %'"),
        (lambda: drag_downhill(ONE, -ONE), "grade: '-1 %'"),
    ],
)
def test_impossible_readings_are_refused(call: Callable[[], object], says: str) -> None:
    """A reading that no truck can give is named with its value."""
    with pytest.raises(BadInput, match=f"^{says} given; "):
        call()
