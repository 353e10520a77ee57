"""Capacity by moments: at another load centre, with an attachment, usual load centres."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from mastwright.checks.capacity import at_load_centre, short_form, standard_load_centres, with_attachment
from mastwright.quantity import BadInput

RATED, CENTRE, AXLE = Fraction(2000), Fraction(500), Fraction(450)


def attached(
    mass: int = 300, own_centre: int = 150, out: int = 100, new_centre: int = 500, axle: int = 450
) -> Fraction:
    """Return the balance of the demo truck with an attachment (demo data)."""
    return with_attachment(
        RATED,
        CENTRE,
        Fraction(axle),
        Fraction(mass),
        Fraction(own_centre),
        Fraction(out),
        Fraction(new_centre),
    )


def test_further_out_carries_less() -> None:
    """The moment about the front axle stays the same."""
    left = at_load_centre(RATED, CENTRE, Fraction(600), AXLE)
    assert left * (AXLE + 600) == RATED * (AXLE + CENTRE)
    assert left < RATED


def test_nearer_never_carries_more_than_the_plate() -> None:
    """Both forms stop at the plate."""
    assert at_load_centre(RATED, CENTRE, Fraction(400), AXLE) == RATED
    assert short_form(RATED, CENTRE, Fraction(400)) == RATED


def test_without_the_axle_the_balance_is_the_short_form() -> None:
    """The short form is the balance with no distance to the axle."""
    assert at_load_centre(RATED, CENTRE, Fraction(600), Fraction(0)) == short_form(
        RATED, CENTRE, Fraction(600)
    )


def test_an_attachment_balances_to_the_last_moment() -> None:
    """Load and attachment together have the moment of the plate's load."""
    assert attached() * (450 + 100 + 500) + 300 * (450 + 150) == RATED * (AXLE + CENTRE)


def test_an_attachment_of_no_mass_leaves_the_plate() -> None:
    """Nothing attached changes nothing."""
    assert attached(mass=0, own_centre=0, out=0) == RATED


def test_an_attachment_never_carries_more_than_the_plate() -> None:
    """A nearer load under a light attachment stops at the plate."""
    assert attached(mass=1, new_centre=100) == RATED


def test_an_attachment_can_leave_nothing() -> None:
    """An attachment heavier than the balance leaves 0, not less."""
    assert attached(mass=5000) == 0


@pytest.mark.parametrize(
    ("rated", "centres"),
    [
        ("999.9", [400, 500, 600]),
        ("1000", [500, 600]),
        ("4999.9", [500, 600]),
        ("5000", [600]),
        ("10000", [600]),
        ("10000.1", [600, 900, 1200]),
        ("19999.9", [600, 900, 1200]),
        ("20000", [900, 1200, 1500]),
    ],
)
def test_load_centres_change_at_their_edges(rated: str, centres: list[int]) -> None:
    """Each band begins and ends where the standard says."""
    assert list(standard_load_centres(Fraction(rated))) == centres


ONE = Fraction(1)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: at_load_centre(Fraction(0), ONE, ONE, ONE), "rated capacity: '0 kg'"),
        (lambda: at_load_centre(ONE, Fraction(0), ONE, ONE), "load centre: '0 mm'"),
        (lambda: at_load_centre(ONE, ONE, Fraction(0), ONE), "new load centre: '0 mm'"),
        (lambda: at_load_centre(ONE, ONE, ONE, -ONE), "front axle to fork face: '-1 mm'"),
        (lambda: short_form(-ONE, ONE, ONE), "rated capacity: '-1 kg'"),
        (lambda: attached(axle=-1), "front axle to fork face: '-1 mm'"),
        (lambda: attached(mass=-1), "attachment mass: '-1 kg'"),
        (lambda: attached(own_centre=-1), "attachment centre: '-1 mm'"),
        (lambda: attached(out=-1), "thrust out: '-1 mm'"),
        (lambda: attached(new_centre=0), "new load centre: '0 mm'"),
        (lambda: standard_load_centres(Fraction(0)), "rated capacity: '0 kg'"),
    ],
)
def test_impossible_measures_are_refused(call: Callable[[], object], says: str) -> None:
    """A measure that no truck can have is named with its value."""
    with pytest.raises(BadInput, match=f"^{says} given; "):
        call()
