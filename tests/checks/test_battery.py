"""Density, cells, insulation and temperature of a traction battery."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from mastwright.checks.battery import (
    density_at_30,
    density_at_80f,
    mean_cell_voltage,
    needed_insulation,
    open_circuit_voltage,
    spread,
    temperature_limits,
)
from mastwright.quantity import BadInput, Evidence

D = Fraction("1.280")


def test_at_its_reference_a_density_stays() -> None:
    """At 30 °C and at 80 °F there is nothing to correct."""
    assert density_at_30(D, Fraction(30)) == D
    assert density_at_80f(D, Fraction(80, 3)) == D


def test_cold_acid_reads_too_dense() -> None:
    """Below the reference the corrected density is the smaller."""
    assert density_at_30(D, Fraction(0)) == Fraction("1.259")


def test_the_strongest_acid_is_still_a_density() -> None:
    """The bound itself is accepted."""
    assert density_at_30(Fraction("1.84"), Fraction(30)) == Fraction("1.84")


def test_spread_is_highest_less_lowest() -> None:
    """The order of the cells does not count."""
    assert spread((Fraction("1.265"), D, Fraction("1.270"))) == Fraction("0.015")
    assert spread((D, D)) == 0


@pytest.mark.parametrize(("volts", "expected"), [("12", 1000), ("20", 1000), ("20.1", 1005)])
def test_insulation_has_a_floor(volts: str, expected: int) -> None:
    """Up to 20 V the floor of 1 kohm is asked, above it 50 ohm per volt."""
    assert needed_insulation(Fraction(volts)) == expected


def test_mean_cell_voltage() -> None:
    """A battery's voltage is shared by its cells, exactly."""
    assert mean_cell_voltage(Fraction("50.4"), 24) == Fraction("2.1")


def test_temperature_limits_carry_their_sources() -> None:
    """Each of the three limits is in °C and was read."""
    limits = temperature_limits()
    assert {when: limit.value for when, limit in limits.items()} == {
        "in-use": 55,
        "before-charge": 45,
        "coldest": 10,
    }
    assert {(limit.unit, limit.source.evidence) for limit in limits.values()} == {("°C", Evidence.READ)}


ONE, ZERO = Fraction(1), Fraction(0)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: density_at_30(Fraction(1280), ONE), "density: '1280 kg/l'"),
        (lambda: density_at_30(ZERO, ONE), "density: '0 kg/l'"),
        (lambda: density_at_30(D, Fraction(-274)), "temperature: '-274 °C'"),
        (lambda: density_at_80f(Fraction("1.85"), ONE), "density: '1.85 kg/l'"),
        (lambda: density_at_80f(D, Fraction(-300)), "temperature: '-300 °C'"),
        (lambda: open_circuit_voltage(Fraction(1280)), "density: '1280 kg/l'"),
        (lambda: spread([D]), "cells: '1'"),
        (lambda: spread([]), "cells: '0'"),
        (lambda: mean_cell_voltage(-ONE, 24), "battery voltage: '-1 V'"),
        (lambda: mean_cell_voltage(ONE, 0), "number of cells: '0'"),
        (lambda: needed_insulation(ZERO), "nominal voltage: '0 V'"),
    ],
)
def test_impossible_readings_are_refused(call: Callable[[], object], says: str) -> None:
    """A reading that no battery can give is named with its value."""
    with pytest.raises(BadInput, match=f"^{says} given; "):
        call()


def test_points_are_told_from_kilograms_a_litre() -> None:
    """Who writes 1280 points learns how to write them."""
    with pytest.raises(BadInput, match=r"at most 1.84 kg/l; 1280 points are 1.280 kg/l"):
        density_at_30(Fraction(1280), Fraction(30))
