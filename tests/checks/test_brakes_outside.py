"""Brakes against published figures and the mechanics of a stop."""

from fractions import Fraction

import pytest

from mastwright.checks.brakes import (
    allowed_stopping_distance,
    drag_from_distance,
    drawbar_pull,
    needed_drag,
)
from mastwright.quantity import unit


# v² / (2 g D) with the drag rule of ISO 6292 and ANSI/ITSDF B56.1 (from memory), computed by hand.
@pytest.mark.parametrize(
    ("km_h", "metres"), [("5", 1.06), ("10", 2.1), ("13.4", 2.8), ("16", 4.0), ("20", 6.3)]
)
def test_stopping_distance_is_that_of_the_drag_rule(km_h: str, metres: float) -> None:
    """The distance allowed is the one worked out from the drag, within 1 %."""
    allowed = allowed_stopping_distance(unit("km/h").to_canonical(Fraction(km_h)))
    assert float(allowed) / 1000 == pytest.approx(metres, rel=0.01)


def test_a_maker_prints_the_same_distance() -> None:
    """6 mph within 6.6 ft, laden, dry, level: a truck maker's manual, read; ours is within 2 %."""
    allowed = allowed_stopping_distance(unit("mph").to_canonical(Fraction(6)))
    assert float(unit("ft").from_canonical(allowed)) == pytest.approx(6.6, rel=0.02)


@pytest.mark.parametrize("km_h", [3, 5, 10, 13, 16, 20, 30])
def test_stopping_in_the_allowed_distance_takes_the_needed_drag(km_h: int) -> None:
    """Distance and drag are two faces of one rule, by the work of the brake (computed), within 1 %."""
    speed = unit("km/h").to_canonical(Fraction(km_h))
    drag = drag_from_distance(allowed_stopping_distance(speed), speed)
    assert drag == pytest.approx(float(needed_drag(speed)), rel=0.01)


def test_the_makers_distance_is_a_drag_close_to_the_rule() -> None:
    """1.1 ft per mph (a truck maker's manual, read) is 1.89 % per km/h, against 1.86 in the rule."""
    speed = unit("mph").to_canonical(Fraction(6))
    drag = drag_from_distance(unit("ft").to_canonical(Fraction("6.6")), speed)
    assert drag / float(unit("km/h").from_canonical(speed)) == pytest.approx(1.89, abs=0.005)


def test_a_parking_grade_of_fifteen_percent() -> None:
    """15 % pulls with 0.148 of the weight: sin(atan 0.15), a table of functions (computed)."""
    weight = 6000 * 9.80665  # demo data; standard gravity: SI brochure, from memory
    assert drawbar_pull(Fraction(6000), Fraction(15)) / weight == pytest.approx(0.148, abs=0.0005)
