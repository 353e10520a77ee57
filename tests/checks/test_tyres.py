"""What tyres have lost."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from mastwright.checks.tyres import diameter_lost, pressure_share
from mastwright.quantity import BadInput


def test_a_new_tyre_has_lost_nothing() -> None:
    """Equal diameters are no loss."""
    assert diameter_lost(Fraction(533), Fraction(533)) == 0


def test_a_tyre_larger_than_new_shows_the_doubt() -> None:
    """A loss below 0 is kept, since it doubts the original."""
    assert diameter_lost(Fraction(533), Fraction(534)) == -1


def test_an_empty_tyre_has_no_share() -> None:
    """No pressure is a share of 0."""
    assert pressure_share(Fraction(0), Fraction(700)) == 0


ONE, ZERO = Fraction(1), Fraction(0)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: diameter_lost(ZERO, ONE), "original diameter: '0 mm'"),
        (lambda: diameter_lost(ONE, ZERO), "diameter now: '0 mm'"),
        (lambda: pressure_share(-ONE, ONE), "tyre pressure: '-1 kPa'"),
        (lambda: pressure_share(ONE, ZERO), "plate pressure: '0 kPa'"),
    ],
)
def test_impossible_readings_are_refused(call: Callable[[], object], says: str) -> None:
    """A reading that no tyre can give is named with its value."""
    with pytest.raises(BadInput, match=f"^{says} given; "):
        call()
