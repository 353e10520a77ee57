"""Fork arms against published figures."""

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


# Limit thickness: a fork maker's page on ISO 5057 (40 -> 36 mm) and a marine surveyor's fork inspection
# notes (50 -> 45 mm), both read. The strength at that wear: trade page on fork wear, 20 % less, read.
@pytest.mark.parametrize(("original", "limit"), [(40, 36), (50, 45)])
def test_a_fork_at_its_printed_limit_has_four_fifths_left(original: int, limit: int) -> None:
    """The thickness printed as the limit leaves 81 % of the strength."""
    assert strength_left(Fraction(limit), Fraction(original)) == Fraction("0.81")


@pytest.mark.parametrize(("original", "limit"), [(40, 36), (50, 45)])
def test_the_line_reaches_the_printed_limit(original: int, limit: int) -> None:
    """A fork that wore half the way to the printed limit needs the same hours again."""
    new, at, half = Fraction(original), Fraction(limit), Fraction(original + limit, 2)
    assert hours_to_limit(half, new, Fraction(1500), at) == 1500
    assert forecast_thickness(half, new, Fraction(1500), Fraction(1500)) == at


# Section modulus b t² / 6 of a rectangle, any strength-of-materials handbook (computed).
@pytest.mark.parametrize(("wear", "left"), [(5, "0.9025"), (10, "0.81"), (20, "0.64"), (30, "0.49")])
def test_strength_left_follows_the_section_modulus(wear: int, left: str) -> None:
    """Strength falls with the square of the thickness."""
    assert strength_left(Fraction(100 - wear), Fraction(100)) == Fraction(left)


# Trade pages on fork wear, read: 20 % wear leaves below 70 %, 30 % wear less than half.
@pytest.mark.parametrize(("wear", "below"), [(20, "0.70"), (30, "0.50")])
def test_trade_pages_agree_on_heavier_wear(wear: int, below: str) -> None:
    """What is left at heavier wear is below what the trade prints."""
    assert strength_left(Fraction(100 - wear), Fraction(100)) < Fraction(below)


def test_a_fork_at_its_limit_sags_a_third_more() -> None:
    """At 10 % wear the tip sags 37 % more: second moment b t³ / 12 of a rectangle (computed)."""
    assert float(1 / stiffness_left(Fraction(90), Fraction(100))) == pytest.approx(1.37, abs=0.005)


def test_the_shop_gap_is_just_inside_three_degrees() -> None:
    """25 mm at 500 mm is 2.86 deg: a truck maker's planned-maintenance manual, read."""
    angle = angle_from_gap(Fraction(25), Fraction(500))
    assert angle == pytest.approx(2.86, abs=0.005)
    assert angle < 3  # the limit of ISO 5057:1993, as quoted


# A fork maker's table of ISO 2328 mountings, read; class 4 ends at 8000 kg elsewhere, so 9000 kg has two.
@pytest.mark.parametrize(
    ("capacity", "classes"), [(500, (1,)), (1500, (2,)), (3500, (3,)), (6000, (4,)), (9000, (4, 5))]
)
def test_mounting_classes_are_those_of_the_table(capacity: int, classes: tuple[int, ...]) -> None:
    """A truck of this capacity has the class that the table prints."""
    assert mounting_class(Fraction(capacity)) == classes
