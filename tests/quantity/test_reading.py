"""Readings: an interval, an instrument and a doubt."""

from fractions import Fraction

import pytest

from mastwright.quantity import Field, Reading, common_instruments, parse_quantity, unit

LENGTH = Field("span length", "length")


@pytest.mark.parametrize(("text", "name"), [("314.3 mm", "mm"), ("12 3/8 in", "in")])
def test_a_reading_is_half_a_graduation_either_side(text: str, name: str) -> None:
    """Value and interval are in millimetres, the unit written in is kept beside them."""
    rule = common_instruments().find("rule", "length")
    quantity = parse_quantity(text, LENGTH)
    reading = Reading.of(quantity, rule)
    assert reading.value == quantity.canonical
    assert (reading.low, reading.high) == (reading.value - Fraction(1, 2), reading.value + Fraction(1, 2))
    assert (reading.dimension, reading.unit_name, reading.instrument) == ("length", name, rule)
    assert reading.standard_uncertainty == rule.standard_uncertainty


def test_the_doubt_is_that_at_the_value() -> None:
    """A relative instrument doubts a large reading more."""
    gauge = common_instruments().find("force-gauge", "force")
    reading = Reading.of(parse_quantity("1 kN", Field("drag", "force")), gauge)
    assert reading.standard_uncertainty == gauge.uncertainty_at(Fraction(1000)) > 20


def test_the_value_goes_back_to_what_was_written() -> None:
    """From the value kept and the unit's name comes the figure that was written, exactly."""
    thermometer = common_instruments().find("thermometer", "temperature")
    quantity = parse_quantity("51 °F", Field("oil", "temperature", minimum=None))
    reading = Reading.of(quantity, thermometer)
    assert unit(reading.unit_name).from_canonical(reading.value) == 51


def test_what_is_no_measurement_has_no_doubt() -> None:
    """A count is its own interval."""
    eye = common_instruments().find("eye", "ratio")
    reading = Reading.exact(Fraction(3), "ratio", "1", eye)
    assert reading.low == reading.value == reading.high == 3
    assert reading.standard_uncertainty == 0
