"""Capacity against worked examples of the trade and the standard's load centres."""

from fractions import Fraction

import pytest

from mastwright.checks.capacity import at_load_centre, short_form, standard_load_centres
from mastwright.quantity import unit

LB, INCH = unit("lb"), unit("in")


def pounds(value: int) -> Fraction:
    """Return pounds in kg."""
    return LB.to_canonical(Fraction(value))


def inches(value: int) -> Fraction:
    """Return inches in mm."""
    return INCH.to_canonical(Fraction(value))


# Trade pages on load centres, read: 5000 lb at 24 in = 120 000 in lb, so 4000 lb at 30 in;
# 6000 lb at 24 in becomes 4800 lb at 30 in.
@pytest.mark.parametrize(("rated", "left"), [(5000, 4000), (6000, 4800)])
def test_the_short_form_is_that_of_the_trade(rated: int, left: int) -> None:
    """The trade's examples come out to the pound."""
    assert short_form(pounds(rated), inches(24), inches(30)) == pounds(left)


def test_the_load_moment_is_kept() -> None:
    """4000 lb at 30 in has the 120 000 in lb that the trade pages print (read)."""
    kept = LB.from_canonical(short_form(pounds(5000), inches(24), inches(30))) * 30
    assert kept == 120_000


def test_the_full_balance_gives_more_than_the_short_form() -> None:
    """With 16 in to the axle 4348 lb are left, 8 % more: moments about the axle (computed by hand)."""
    full = float(LB.from_canonical(at_load_centre(pounds(5000), inches(24), inches(30), inches(16))))
    assert full == pytest.approx(4348, abs=0.5)
    assert 4000 / full == pytest.approx(0.92, abs=0.005)


# A national standards body's abstract of the rated-capacity standard, read.
@pytest.mark.parametrize(("rated", "usual"), [(800, 400), (1600, 500), (3000, 500), (7000, 600)])
def test_the_usual_load_centre_comes_first(rated: int, usual: int) -> None:
    """The first load centre is the one the standard gives for the capacity."""
    assert standard_load_centres(Fraction(rated))[0] == usual
