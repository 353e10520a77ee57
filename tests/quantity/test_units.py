"""Units: found by any spelling a technician uses, never by a spelling that could mean another."""

import csv
from fractions import Fraction
from importlib import resources

import pytest
from hypothesis import given

from mastwright.quantity import (
    Field,
    Unit,
    UnitSystem,
    canonical_unit,
    dimensions,
    find_unit,
    parse_quantity,
    shown_unit,
    unit,
    units_of,
)
from strategies import decimals, measured_units

ROWS = list(
    csv.DictReader(
        resources.files("mastwright.quantity").joinpath("tables", "units.csv").read_text("utf-8").splitlines()
    )
)
WORDS = [(row["unit"], word) for row in ROWS for word in (row["unit"], *row["aliases"].split())]


@pytest.mark.parametrize(("name", "word"), [(n, w) for n, w in WORDS if n != "1"])
def test_every_word_of_the_table_can_be_written(name: str, word: str) -> None:
    """Each unit and each other spelling of it is read after a number."""
    read = parse_quantity(f"5 {word}", Field("reading", unit(name).dimension, minimum=None))
    assert (read.value, read.unit) == (Fraction(5), unit(name))


def test_no_word_means_two_units() -> None:
    """A spelling stands once in the table."""
    words = [word for _, word in WORDS]
    assert len(words) == len(set(words))


@pytest.mark.parametrize("dimension", dimensions())
def test_first_unit_of_a_dimension_is_its_own(dimension: str) -> None:
    """Values are kept in the first unit, whose factor is one."""
    home = canonical_unit(dimension)
    assert home == units_of(dimension)[0]
    assert (home.factor, home.offset) == (Fraction(1), Fraction(0))


def test_every_dimension_is_listed_once() -> None:
    """The list of dimensions is that of the table."""
    assert sorted(dimensions()) == sorted({row["dimension"] for row in ROWS})


@given(measured_units, decimals)
def test_there_and_back_is_exact(chosen: Unit, value: Fraction) -> None:
    """Into the dimension's own unit and back gives the same value to the last digit."""
    assert chosen.from_canonical(chosen.to_canonical(value)) == value


@pytest.mark.parametrize(
    ("word", "name"),
    [
        ("MM", "mm"),
        ("Inch", "in"),
        ("KG", "kg"),
        ("Lbs", "lb"),
        ("kn", "kN"),
        ("PSI", "psi"),
        ("f", "°F"),
        ("MPH", "mph"),
        ("nm", "N·m"),
        ("MΩ", "Mohm"),
    ],
)
def test_case_does_not_count(word: str, name: str) -> None:
    """Upper and lower case are taken as typed on a phone."""
    assert find_unit(word) == unit(name)


@pytest.mark.parametrize("word", ["mohm", "mΩ", "megΩ", "furlong", "", "m m", "1/min"])
def test_unknown_words_find_nothing(word: str) -> None:
    """A milliohm is no megohm, and what is not in the table is not guessed."""
    assert find_unit(word) is None


def test_a_name_not_in_the_table_is_a_fault_of_ours() -> None:
    """Only the table's own spelling names a unit in code."""
    with pytest.raises(KeyError, match="inch"):
        unit("inch")


@pytest.mark.parametrize(
    ("dimension", "metric", "inch"),
    [
        ("length", "mm", "in"),
        ("mass", "kg", "lb"),
        ("force", "N", "lbf"),
        ("temperature", "°C", "°F"),
        ("pressure", "kPa", "psi"),
        ("torque", "N·m", "lbf·ft"),
        ("speed", "km/h", "mph"),
        ("percent", "%", "%"),
    ],
)
def test_shown_unit_of_each_system(dimension: str, metric: str, inch: str) -> None:
    """Each system shows its own unit; a dimension with one unit shows that in both."""
    shown = (shown_unit(dimension, UnitSystem.METRIC).name, shown_unit(dimension, UnitSystem.INCH).name)
    assert shown == (metric, inch)


def test_fractions_are_for_inches_feet_and_pounds() -> None:
    """The units that take fractions are those that the message names."""
    assert [row["unit"] for row in ROWS if row["fractions"] == "yes"] == ["in", "ft", "lb", "lbf"]
