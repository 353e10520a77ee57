"""The chain table against figures published outside the project."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.standard import find_chain, leaf_chains

INCH = Fraction("25.4")


@pytest.mark.parametrize(
    ("name", "height"),
    [
        ("BL634", "0.713"),  # telehandler manual (read)
        ("BL834", "0.950"),  # telehandler manual (read)
    ],
)
def test_plate_heights_of_machine_manuals(name: str, height: str) -> None:
    """New plate heights printed in machine manuals, in inches, are the table's to the last digit printed."""
    assert abs(find_chain(name).plate_height_max / INCH - Fraction(height)) <= Fraction("0.0005")


@pytest.mark.parametrize(
    ("name", "pin"),
    [("BL422", "0.200"), ("BL522", "0.234"), ("BL622", "0.312"), ("BL822", "0.375")],
)
def test_pin_diameters_of_an_inch_table(name: str, pin: str) -> None:
    """Pins of a chain maker's inch table (read) are the table's within 0.02 mm."""
    assert abs(find_chain(name).pin_diameter_max - Fraction(pin) * INCH) <= Fraction("0.02")


def test_bl634_minimum_is_17000_pounds() -> None:
    """17,000 lbf (from memory); the average in a chain maker's BL table (read) is 22,000 lbf."""
    assert find_chain("BL634").min_tensile_lbf == 17000


def test_bl422_minimum_is_below_the_published_average() -> None:
    """A chain maker's BL table (read) prints an average of 5,720 lbf: the minimum must stand below it."""
    assert find_chain("BL422").min_tensile_lbf < 5720


@pytest.mark.parametrize(
    ("name", "pin", "height", "strength"),
    [("LL0822", "4.45", "10.92", 18000), ("AL422", "3.96", "10.4", 14700)],
)
def test_half_inch_chains_of_makers_tables(name: str, pin: str, height: str, strength: int) -> None:
    """The near-twins of 1/2 in pitch as chain makers' tables print them (as quoted)."""
    chain = find_chain(name)
    assert (chain.pin_diameter_max, chain.plate_height_max) == (Fraction(pin), Fraction(height))
    assert chain.min_tensile == strength


def test_size_60_has_a_pitch_a_little_over_19_mm() -> None:
    """A size-60 chain has a pitch a little over 19 mm (common practice, no source); 60 is BL6."""
    assert 19 < find_chain("BL634").pitch < Fraction("19.1")


@pytest.mark.parametrize(
    ("series", "low", "high"),
    [("LH", "0.9499", "0.951"), ("LL", "0.829", "0.88"), ("AL", "0.80", "0.82")],
)
def test_height_over_pitch_tells_the_series(series: str, low: str, high: str) -> None:
    """0.95 for LH by ASME B29.8-2002 (read); 0.83-0.88 for LL and 0.80-0.82 for AL (computed)."""
    ratios = [chain.plate_height_max / chain.pitch for chain in leaf_chains() if chain.series == series]
    assert Fraction(low) <= min(ratios)
    assert max(ratios) <= Fraction(high)


def test_two_by_three_is_no_stronger_than_two_by_two() -> None:
    """The weaker pitch governs: 2x3 as 2x2 and 4x6 as 4x4 (pattern of a chain maker's BL table, read)."""
    by_name = {name: chain for chain in leaf_chains() for name in chain.designations}
    for size in (4, 5, 6, 8, 10, 12, 14, 16, 20):
        assert by_name[f"BL{size}23"].min_tensile == by_name[f"BL{size}22"].min_tensile
        assert by_name[f"BL{size}46"].min_tensile == by_name[f"BL{size}44"].min_tensile
