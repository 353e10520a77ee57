"""Tyres against figures printed by the trade."""

from fractions import Fraction

from mastwright.checks.tyres import diameter_lost, pressure_share
from mastwright.quantity import unit


def test_a_suppliers_replacement_mark() -> None:
    """A tyre supplier replaces at 1.5 in less diameter, printed as 38 mm (read)."""
    inch = unit("in")
    lost = diameter_lost(inch.to_canonical(Fraction(21)), inch.to_canonical(Fraction("19.5")))
    assert round(lost) == 38


def test_a_makers_mark_for_a_low_tyre() -> None:
    """Below 80 % of the plate a truck maker has the tyre taken off (read): of 100 psi that is 80 psi."""
    psi = unit("psi")
    at_mark = pressure_share(psi.to_canonical(Fraction(80)), psi.to_canonical(Fraction(100)))
    assert at_mark == Fraction("0.80")
