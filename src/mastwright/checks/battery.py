"""Traction batteries, lead-acid: density at one temperature, cells against each other, insulation.

Readings are taken before topping up, with no flame or spark near and with eyes and hands protected.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from mastwright.checks.figures import (
    Figure,
    constant,
    figures,
    given_text,
    refuse_negative,
    refuse_unless_positive,
)
from mastwright.quantity import BadInput, Problem, unit

if TYPE_CHECKING:
    from collections.abc import Collection


def density_at_30(density: Fraction, temperature: Fraction) -> Fraction:
    """Return the acid's density as it would read at 30 °C, the European reference.

    Parameters
    ----------
    density
        As read, kg/l.
    temperature
        Of the acid, °C.

    Returns
    -------
    Fraction
        kg/l.

    Raises
    ------
    BadInput
        If density or temperature is impossible.

    **Source**: a traction-battery maker's instructions, d₃₀ = d + 0.0007 (T - 30) (read).

    Examples
    --------
    >>> float(density_at_30(Fraction("1.28"), Fraction(45)))
    1.2905
    """
    _refuse_impossible(density, temperature)
    warmer = temperature - constant("density_reference_celsius")
    return density + constant("density_per_celsius") * warmer


def density_at_80f(density: Fraction, temperature_c: Fraction) -> Fraction:
    """Return the acid's specific gravity as it would read at 80 °F, the US reference.

    It is about 0.0023 more than the density at 30 °C: say which of the two a figure is.

    Parameters
    ----------
    density
        As read, kg/l.
    temperature_c
        Of the acid, °C.

    Returns
    -------
    Fraction
        kg/l.

    Raises
    ------
    BadInput
        If density or temperature is impossible.

    **Source**: an aerial-platform maker's manual, 0.004 for each 10 °F (read).

    Examples
    --------
    >>> float(density_at_80f(Fraction("1.250"), Fraction(290, 9)))  # 90 °F
    1.254
    """
    _refuse_impossible(density, temperature_c)
    warmer = unit("°F").from_canonical(temperature_c) - constant("density_reference_fahrenheit")
    return density + constant("density_per_ten_fahrenheit") * warmer / constant("density_step_fahrenheit")


def _refuse_impossible(density: Fraction, temperature: Fraction) -> None:
    _refuse_density(density)
    coldest = constant("absolute_zero")
    if temperature < coldest:
        expected = f"{given_text(coldest, '°C')} or more"
        raise BadInput(Problem("temperature", given_text(temperature, "°C"), expected))


def _refuse_density(density: Fraction) -> None:
    most = constant("density_most")
    if not 0 < density <= most:
        expected = f"more than 0 and at most {given_text(most, 'kg/l')}; 1280 points are 1.280 kg/l"
        raise BadInput(Problem("density", given_text(density, "kg/l"), expected))


def spread(values: Collection[Fraction]) -> Fraction:
    """Return how far the highest cell stands above the lowest.

    Parameters
    ----------
    values
        One for each cell, all in one unit, two cells or more.

    Returns
    -------
    Fraction
        In the unit of `values`.

    Raises
    ------
    BadInput
        If there are fewer than two cells.

    **Source**: definition of a range (computed).

    Examples
    --------
    >>> spread([Fraction("1.280"), Fraction("1.265"), Fraction("1.275")])
    Fraction(3, 200)
    """
    if len(values) < 2:  # noqa: PLR2004  one cell has nothing to differ from
        raise BadInput(Problem("cells", f"{len(values)}", "readings of two cells or more"))
    return max(values) - min(values)


def mean_cell_voltage(voltage: Fraction, cells: int) -> Fraction:
    """Return the mean voltage of a cell, in V, from that of the battery.

    Parameters
    ----------
    voltage
        Of the battery, V, 0 or more.
    cells
        In series, 1 or more.

    Raises
    ------
    BadInput
        If the voltage or the number of cells is impossible.

    **Source**: voltages in series add (computed).

    Examples
    --------
    >>> float(mean_cell_voltage(Fraction("50.4"), 24))
    2.1
    """
    refuse_negative("battery voltage", voltage, "V")
    if cells < 1:
        raise BadInput(Problem("number of cells", f"{cells}", "a whole number, 1 or more"))
    return voltage / cells


def open_circuit_voltage(density: Fraction) -> Fraction:
    """Return the voltage, in V, that a rested cell with acid of this density should show.

    Parameters
    ----------
    density
        kg/l.

    Raises
    ------
    BadInput
        If the density is impossible.

    **Source**: textbook rule of thumb, density + 0.84 (from memory).

    Examples
    --------
    >>> float(open_circuit_voltage(Fraction("1.28")))
    2.12
    """
    _refuse_density(density)
    return density + constant("open_circuit_offset")


def needed_insulation(nominal_voltage: Fraction) -> Fraction:
    """Return the least resistance, in ohm, that a battery has to show against its tray.

    Parameters
    ----------
    nominal_voltage
        On the battery plate, V, more than 0.

    Raises
    ------
    BadInput
        If the voltage is impossible.

    **Source**: EN 1175-1, EN 1987-1 and EN 62485-3 as quoted by a battery maker: 50 ohm per volt and
    never under 1000 ohm (as quoted).

    Examples
    --------
    >>> needed_insulation(Fraction(48))
    Fraction(2400, 1)
    """
    refuse_unless_positive("nominal voltage", nominal_voltage, "V")
    return max(constant("insulation_per_volt") * nominal_voltage, constant("insulation_least"))


def temperature_limits() -> dict[str, Figure]:
    """Return the temperatures, in °C, between which the acid has to be, each with its source.

    Returns
    -------
    dict
        ``in-use`` and ``before-charge``: the acid stays below; ``coldest``: at least this before a charge.

    **Source**: traction-battery makers' instructions (read).

    Examples
    --------
    >>> {when: int(limit.value) for when, limit in temperature_limits().items()}
    {'in-use': 55, 'before-charge': 45, 'coldest': 10}
    """
    known = figures()
    return {
        "in-use": known["acid_in_use"],
        "before-charge": known["acid_before_charge"],
        "coldest": known["acid_coldest"],
    }
