"""What holds for every elongation, whatever is measured."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.chains.elongation import elongation_from_length
from mastwright.quantity import Quantity, common_instruments, unit
from strategies import inches

RULE = common_instruments().find("rule", "length")

even = st.integers(1, 60).map(lambda half: 2 * half)
pitch = st.sampled_from([Fraction(p) for p in ("9.525", "12.7", "15.875", "19.05", "25.4", "50.8")])
millimetres = st.integers(0, 10**6).map(lambda n: Quantity(Fraction(n, 100), unit("mm"), Fraction(1, 100)))


@given(inches, even, pitch)
def test_inches_and_millimetres_read_the_same(length: Quantity, pitches: int, of: Fraction) -> None:
    """The same length in either unit is the same elongation, to the last digit."""
    metric = Quantity(length.canonical, unit("mm"), length.canonical_step)
    first = elongation_from_length(length, pitches, of, RULE)
    second = elongation_from_length(metric, pitches, of, RULE)
    assert (first.value, first.low, first.high) == (second.value, second.low, second.high)


@given(millimetres, even, pitch)
def test_length_comes_back(length: Quantity, pitches: int, of: Fraction) -> None:
    """Nominal length times one and the elongation is the length again."""
    read = elongation_from_length(length, pitches, of, RULE)
    assert pitches * of * (1 + read.value / 100) == length.canonical


@given(millimetres, even, pitch)
def test_a_longer_span_is_surer(length: Quantity, pitches: int, of: Fraction) -> None:
    """Twice the pitches halve the doubt."""
    short = elongation_from_length(length, pitches, of, RULE)
    long = elongation_from_length(length, 2 * pitches, of, RULE)
    assert (
        abs(2 * long.standard_uncertainty - short.standard_uncertainty) < 1e-12 * short.standard_uncertainty
    )
