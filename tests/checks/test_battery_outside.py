"""Batteries against published examples."""

from fractions import Fraction

import pytest

from mastwright.checks.battery import (
    density_at_30,
    density_at_80f,
    mean_cell_voltage,
    needed_insulation,
    open_circuit_voltage,
)
from mastwright.quantity import unit


def test_the_european_example() -> None:
    """1.28 at 45 °C is 1.29 at 30 °C: a traction-battery maker's instructions, read; 1.2905 unrounded."""
    corrected = density_at_30(Fraction("1.28"), Fraction(45))
    assert corrected == Fraction("1.2905")
    assert round(corrected, 2) == Fraction("1.29")


# 90 °F: an electric-vehicle repair manual; 20 °F: US Army TM 5-3820-256-24-4; both read. 70 °F: by the
# rule of an aerial-platform maker's manual, 0.004 per 10 °F, read.
@pytest.mark.parametrize(("fahrenheit", "at_80"), [(20, "1.226"), (70, "1.246"), (90, "1.254")])
def test_the_american_examples(fahrenheit: int, at_80: str) -> None:
    """1.250 at these temperatures is corrected to the printed specific gravity, to the last digit."""
    celsius = unit("°F").to_canonical(Fraction(fahrenheit))
    assert density_at_80f(Fraction("1.250"), celsius) == Fraction(at_80)


def test_the_two_references_differ() -> None:
    """80 °F is 3.3 °C below 30 °C, so acid read there is 0.0023 less dense at 30 °C (computed)."""
    density, temperature = Fraction("1.28"), unit("°F").to_canonical(Fraction(80))
    apart = density_at_80f(density, temperature) - density_at_30(density, temperature)
    assert round(apart, 4) == Fraction("0.0023")


# EN 62485-3, EN 1987-1 and EN 1175-1 as quoted by a battery maker: 50 ohm per volt, at least 1 kohm.
@pytest.mark.parametrize(
    ("volts", "kilohms"), [(12, "1"), (24, "1.2"), (36, "1.8"), (48, "2.4"), (80, "4.0")]
)
def test_insulation_by_nominal_voltage(volts: int, kilohms: str) -> None:
    """Each usual battery has to show the resistance that follows from the quoted rule."""
    assert needed_insulation(Fraction(volts)) == unit("kohm").to_canonical(Fraction(kilohms))


def test_a_charged_cell_is_above_the_repair_mark() -> None:
    """Full charge, 1.29 kg/l, is above 2.08 V a cell (battery makers, read): 2.13 V (from memory)."""
    volts = open_circuit_voltage(Fraction("1.29"))
    assert volts == Fraction("2.13")
    assert volts > Fraction("2.08")


def test_the_repair_mark_of_a_whole_battery() -> None:
    """24 cells at the mark of 2.08 V (a battery maker's manual, read) are 49.92 V."""
    assert mean_cell_voltage(Fraction("49.92"), 24) == Fraction("2.08")
