"""What holds for any fork."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.checks.forks import forecast_thickness, hours_to_limit, stiffness_left, strength_left

thicknesses = st.integers(1, 200_00).map(lambda hundredths: Fraction(hundredths, 100))
hours = st.integers(1, 100_000).map(Fraction)


@given(now=thicknesses, earlier=thicknesses, between=hours, ahead=hours)
def test_a_forecast_is_never_thicker_than_now(
    now: Fraction, earlier: Fraction, between: Fraction, ahead: Fraction
) -> None:
    """No fork is forecast to gain."""
    assert 0 <= forecast_thickness(now, earlier, between, ahead) <= now


@given(now=thicknesses, earlier=thicknesses, between=hours, limit=thicknesses)
def test_forecast_and_hours_meet_at_the_limit(
    now: Fraction, earlier: Fraction, between: Fraction, limit: Fraction
) -> None:
    """After the hours to the limit the forecast is the limit, exactly."""
    left = hours_to_limit(now, earlier, between, limit)
    if left is None:
        assert earlier <= now
        assert now > limit
    else:
        assert forecast_thickness(now, earlier, between, left) == min(now, limit)


@given(now=thicknesses, original=thicknesses)
def test_stiffness_falls_faster_than_strength(now: Fraction, original: Fraction) -> None:
    """Of a worn fork more strength is left than stiffness."""
    strength, stiffness = strength_left(now, original), stiffness_left(now, original)
    assert (stiffness < strength) == (now < original)
