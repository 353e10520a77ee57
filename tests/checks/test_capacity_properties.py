"""What holds for any capacity plate."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.checks.capacity import at_load_centre, short_form, with_attachment

masses = st.integers(1, 50_000).map(Fraction)
lengths = st.integers(1, 3_000).map(Fraction)


@given(rated=masses, centre=lengths, new_centre=lengths, axle=lengths)
def test_no_form_grants_more_than_the_plate(
    rated: Fraction, centre: Fraction, new_centre: Fraction, axle: Fraction
) -> None:
    """The short form is never above the full balance, and that never above the plate."""
    full = at_load_centre(rated, centre, new_centre, axle)
    assert 0 < short_form(rated, centre, new_centre) <= full <= rated


@given(rated=masses, centre=lengths, new_centre=lengths, axle=lengths, mass=masses, own=lengths, out=lengths)
def test_an_attachment_never_adds_capacity(
    rated: Fraction,
    centre: Fraction,
    new_centre: Fraction,
    axle: Fraction,
    mass: Fraction,
    own: Fraction,
    out: Fraction,
) -> None:
    """With an attachment there is never more than without, and never less than nothing."""
    left = with_attachment(rated, centre, axle, mass, own, out, new_centre)
    assert 0 <= left <= at_load_centre(rated, centre, new_centre, axle)
