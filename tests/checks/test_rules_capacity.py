"""Rules about capacity, as an entry meets them: information beside the plate."""

from fractions import Fraction

import pytest

from mastwright.checks import Information, NotJudged, TruckFacts
from mastwright.quantity import Amount, BadInput

from .weighing import codes, entry

MOMENT: dict[str, object] = {"axle_to_fork_face": "450 mm", "new_load_centre": "600 mm"}
ATTACHMENT: dict[str, object] = {
    "axle_to_fork_face": "450 mm",
    "attachment_mass": "300 kg",
    "attachment_centre": "150 mm",
    "thrust_out": "100 mm",
}
GIVEN = {"CAP-03": MOMENT, "CAP-04": ATTACHMENT, "CAP-05": {}}


def truck(capacity: int | None, centre: int | None) -> TruckFacts:
    """Return a truck with that plate."""
    return TruckFacts(
        "counterbalance",
        "lpg",
        rated_capacity=None if capacity is None else Fraction(capacity),
        load_centre=None if centre is None else Fraction(centre),
    )


def mass(outcome: object) -> Fraction:
    """Return the mass that the first remark tells."""
    assert isinstance(outcome, Information)
    told = outcome.notes[0].params["mass"]
    assert isinstance(told, Amount)
    return told.value


@pytest.mark.parametrize("check", ["CAP-03", "CAP-04", "CAP-05"])
@pytest.mark.parametrize("facts", [truck(None, None), truck(2000, None), truck(None, 500)])
def test_without_a_plate_there_is_no_capacity(check: str, facts: TruckFacts) -> None:
    """Capacity and load centre are both needed."""
    outcome = entry(check, GIVEN[check], facts)
    assert isinstance(outcome, NotJudged)
    assert outcome.why.code == "plate-capacity-missing"


def test_a_longer_load_leaves_less() -> None:
    """The plate's word comes with the figure."""
    outcome = entry("CAP-03", MOMENT, truck(2000, 500))
    assert mass(outcome) == Fraction(2000 * 950, 1050)
    assert codes(outcome) == ["capacity-at", "plate-governs"]


def test_a_shorter_load_allows_no_more_than_the_plate() -> None:
    """The balance grants nothing."""
    assert mass(entry("CAP-03", {**MOMENT, "new_load_centre": "400 mm"}, truck(2000, 500))) == 2000


def test_an_attachment_leaves_less() -> None:
    """Its own moment and the load pushed out both count, at the plate's load centre if none is given."""
    expected = Fraction(2000 * 950 - 300 * 600, 450 + 100 + 500)
    outcome = entry("CAP-04", ATTACHMENT, truck(2000, 500))
    assert mass(outcome) == expected
    assert codes(outcome) == ["capacity-with-attachment", "plate-governs"]


def test_an_attachment_with_its_own_load_centre() -> None:
    """A load further out on the attachment leaves less again."""
    expected = Fraction(2000 * 950 - 300 * 600, 450 + 100 + 600)
    outcome = entry("CAP-04", {**ATTACHMENT, "new_load_centre": "600 mm"}, truck(2000, 500))
    assert mass(outcome) == expected


def test_a_load_centre_of_nothing_is_refused() -> None:
    """A 0 is a mistake, not a load centre left out."""
    with pytest.raises(BadInput, match="new load centre"):
        entry("CAP-04", {**ATTACHMENT, "new_load_centre": "0 mm"}, truck(2000, 500))


@pytest.mark.parametrize(
    ("capacity", "centre", "code", "usual"),
    [
        (2000, 500, "load-centre-usual", "500 / 600 mm"),
        (2000, 610, "load-centre-usual", "500 / 600 mm"),
        (2000, 611, "load-centre-unusual", "500 / 600 mm"),
        (2000, 400, "load-centre-unusual", "500 / 600 mm"),
        (900, 400, "load-centre-usual", "400 / 500 / 600 mm"),
        (6000, 500, "load-centre-unusual", "600 mm"),
    ],
)
def test_the_plates_load_centre_is_usual_or_not(capacity: int, centre: int, code: str, usual: str) -> None:
    """Within 10 mm of a standard pair it was read right; 24 in is 609.6 mm."""
    outcome = entry("CAP-05", {}, truck(capacity, centre))
    assert isinstance(outcome, Information)
    (note,) = outcome.notes
    assert (note.code, note.params["usual"]) == (code, usual)
