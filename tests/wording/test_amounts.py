"""Figures as they are shown: digits by unit, both systems, no minus zero, doubts never in powers of ten."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.quantity import Amount, UnitSystem, dimensions
from mastwright.wording import amount_text, percent_text
from mastwright.wording.amounts import doubt_text

METRIC, INCH = UnitSystem.METRIC, UnitSystem.INCH

SHOWN = [
    # Lengths: 25.4 mm to the inch exactly (NIST SP 811 App. B, from memory).
    ("313.944", "length", METRIC, "313.9 mm"),
    ("313.944", "length", INCH, "12.36 in"),
    ("314.325", "length", INCH, "12.375 in (12 3/8)"),
    ("304.8", "length", INCH, "12 in"),
    ("0", "length", INCH, "0 in"),
    ("-0.04", "length", METRIC, "0 mm"),
    ("-0.001", "length", INCH, "0 in"),
    ("-3.175", "length", INCH, "-0.125 in (-1/8)"),
    ("40", "length", METRIC, "40 mm"),
    # 0.45359237 kg to the pound exactly (NIST SP 811 App. B, from memory).
    ("1000", "mass", METRIC, "1000 kg"),
    ("2267.96185", "mass", INCH, "5000 lb"),
    ("37", "temperature", METRIC, "37 °C"),
    ("37", "temperature", INCH, "98.6 °F"),
    ("-0.01", "temperature", METRIC, "0 °C"),
    ("3", "percent", METRIC, "3 %"),
    ("2.375", "percent", INCH, "2.38 %"),
    ("-0.004", "percent", METRIC, "0 %"),
    ("-0.26", "percent", METRIC, "-0.26 %"),
    ("12", "age", INCH, "12 months"),
    ("250", "hours", METRIC, "250 h"),
    ("1.285", "density", METRIC, "1.285 kg/l"),
    ("0.75", "ratio", METRIC, "0.75"),
    ("50000", "resistance", METRIC, "50000 ohm"),
]


@pytest.mark.parametrize(("value", "dimension", "system", "text"), SHOWN)
def test_a_figure_is_shown_with_its_unit(value: str, dimension: str, system: UnitSystem, text: str) -> None:
    """Digits fit the unit, zeros at the end go, inches that stand on a rule are a fraction too."""
    assert amount_text(Amount(Fraction(value), dimension), system) == text


@given(
    st.sampled_from(dimensions()),
    st.sampled_from(UnitSystem),
    st.fractions(min_value=-(10**6), max_value=10**6),
)
def test_no_figure_is_minus_zero(dimension: str, system: UnitSystem, value: Fraction) -> None:
    """Whatever is rounded to nothing has no sign."""
    assert not re.match(r"-0(?:\.0*)?(?:\s|$)", amount_text(Amount(value, dimension), system))


@given(
    st.sampled_from(dimensions()),
    st.sampled_from(UnitSystem),
    st.fractions(min_value=-(10**6), max_value=10**6),
)
def test_every_dimension_can_be_shown(dimension: str, system: UnitSystem, value: Fraction) -> None:
    """Any dimension of the table is shown as a plain decimal first."""
    assert re.match(r"-?\d+(?:\.\d+)?(?:\s|$)", amount_text(Amount(value, dimension), system))


DOUBTS = [
    (0.4, "length", METRIC, "0.4 mm"),
    (0.0144, "length", METRIC, "0.014 mm"),
    (0.4, "length", INCH, "0.016 in"),
    (0.00005, "length", METRIC, "0.00005 mm"),
    (12.6, "force", METRIC, "13 N"),
    (130.0, "force", METRIC, "130 N"),
    (1500.0, "resistance", METRIC, "1500 ohm"),
    (0.0996, "percent", METRIC, "0.1 %"),
    (1.0, "temperature", INCH, "1.8 °F"),
    (0.29, "ratio", METRIC, "0.29"),
]


@pytest.mark.parametrize(("value", "dimension", "system", "text"), DOUBTS)
def test_a_doubt_has_two_digits(value: float, dimension: str, system: UnitSystem, text: str) -> None:
    """A standard uncertainty is a plain decimal of about two digits; in °F it has no offset."""
    assert doubt_text(value, dimension, system) == text


PERCENTS = [
    (0.0, "< 0.1 %"),
    (0.00099, "< 0.1 %"),
    (0.001, "0.1 %"),
    (0.025, "2.5 %"),
    (0.5, "50.0 %"),
    (0.999, "99.9 %"),
    (0.99901, "> 99.9 %"),
    (1.0, "> 99.9 %"),
]


@pytest.mark.parametrize(("probability", "text"), PERCENTS)
def test_a_probability_in_percent(probability: float, text: str) -> None:
    """One digit after the point between the bounds."""
    assert percent_text(probability) == text


@given(st.floats(0, 1))
def test_a_probability_is_never_nothing_or_certain(probability: float) -> None:
    """Rounding never says that something cannot be or must be."""
    assert percent_text(probability) not in {"0.0 %", "100.0 %"}


@pytest.mark.parametrize(
    ("percent", "text"),
    [("2.996", "2.996 %"), ("2.9999", "2.9999 %"), ("3", "3 %"), ("2.994", "2.99 %"), ("0.0000001", "0 %")],
)
def test_a_percentage_just_below_a_whole_one_is_not_shown_as_it(percent: str, text: str) -> None:
    """A reading of 2.996 % beside a limit of 3 % is told apart."""
    assert amount_text(Amount(Fraction(percent), "percent"), UnitSystem.METRIC) == text
