"""Quantities for people."""

from fractions import Fraction

import pytest
from hypothesis import given

from mastwright.quantity import decimal_text, exact_text, inch_text, unit, written_text
from strategies import decimals


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (Fraction("314.325"), 2, "314.33"),
        (Fraction("314.325"), 0, "314"),
        (Fraction("-0.25"), 1, "-0.3"),
        (Fraction("-0.04"), 1, "0.0"),
        (Fraction(5, 1000), 2, "0.01"),
        (Fraction(1, 3), 4, "0.3333"),
        (0.5, 0, "1"),
        (12, 3, "12.000"),
    ],
)
def test_decimal_text_rounds_a_half_away_from_zero(value: Fraction | float, digits: int, text: str) -> None:
    """So many places, a half outwards, and no minus on a zero."""
    assert decimal_text(value, digits) == text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ("0", "0"),
        ("1200", "1200"),
        ("-3/8", "-0.375"),
        ("127/128", "0.9921875"),
        ("1/50", "0.02"),
        ("1/3", None),
        ("5/6", None),
    ],
)
def test_exact_text_has_every_digit_or_is_none(value: str, text: str | None) -> None:
    """A finite decimal is written out; where there is none, none is made up."""
    assert exact_text(Fraction(value)) == text


@given(decimals)
def test_exact_text_loses_nothing(value: Fraction) -> None:
    """The text is the value."""
    text = exact_text(value)
    assert text is not None
    assert Fraction(text) == value


@pytest.mark.parametrize(
    ("value", "down", "text"),
    [
        ("12.375", False, "12 3/8"),
        ("12.36", False, "12 23/64"),
        ("12.37", False, "12 3/8"),
        ("12.37", True, "12 23/64"),
        ("0.5", False, "1/2"),
        ("-0.5", False, "-1/2"),
        ("-12.37", True, "-12 23/64"),
        ("3", False, "3"),
        ("12.999", False, "13"),
        ("0.001", False, "0"),
        ("-0.001", False, "0"),
    ],
)
def test_inch_text_is_whole_and_fraction(value: str, down: bool, text: str) -> None:
    """Inches come in lowest terms to 1/64, towards zero when asked."""
    assert inch_text(Fraction(value), down=down) == text


@given(decimals)
def test_inch_text_down_is_never_above(value: Fraction) -> None:
    """A limit rounded down for a technician stands at most a 64th below the true one, never above."""
    whole, _, part = inch_text(abs(value), down=True).rpartition(" ")
    shown = Fraction(whole or 0) + Fraction(part)
    assert 0 <= abs(value) - shown < Fraction(1, 64)


def test_written_text_has_the_unit() -> None:
    """A value is written with its unit, a plain number without."""
    assert written_text(Fraction("12.375"), unit("in")) == "12.375 in"
    assert written_text(Fraction(4), unit("1")) == "4"


def test_written_text_refuses_what_has_no_end() -> None:
    """A value without a finite decimal is not rounded in secret."""
    with pytest.raises(ValueError, match="95/9 has no finite decimal"):
        written_text(unit("°F").to_canonical(Fraction(51)), unit("°C"))
