"""Rules for fork arms, as an entry meets them."""

from fractions import Fraction
from math import hypot

import pytest

from mastwright.checks import Information, NotJudged, TruckFacts
from mastwright.quantity import Amount, BadInput

from .weighing import codes, entry, measured, passes

FORK: dict[str, object] = {"original": "40 mm", "original_from": "marking"}
RATED = TruckFacts("counterbalance", "lpg", rated_capacity=Fraction(2500), load_centre=Fraction(500))


@pytest.mark.parametrize("check", ["FRK-09", "FRK-10"])
@pytest.mark.parametrize(("value", "good"), [("36.02 mm", True), ("36 mm", False), ("35.98 mm", False)])
def test_a_fork_worn_down_to_nine_tenths_goes(check: str, value: str, good: bool) -> None:
    """Sources differ on the mark itself, so reaching it is enough."""
    found = measured(check, {**FORK, "value": value})
    assert (found.limit.at, found.as_new) == (Fraction(36), Fraction(40))
    assert passes(found) is good


def test_the_entry_says_where_the_original_is_from() -> None:
    """Its share of strength left is told beside it, and it is no licence."""
    found = measured("FRK-09", {**FORK, "value": "38 mm"})
    assert codes(found) == ["fork-original-from", "fork-strength-left"]
    assert found.notes[0].params == {"original": Amount(Fraction(40), "length"), "origin": "marking"}
    assert found.notes[1].params == {"share": Amount(Fraction("90.25"), "percent")}


@pytest.mark.parametrize(("origin", "doubt"), [("marking", 0.1), ("maker", 0.1), ("shank", hypot(0.1, 0.09))])
def test_an_original_that_was_measured_adds_its_doubt(origin: str, doubt: float) -> None:
    """A calliper on the shank is a second reading, and nine tenths of its doubt are in the limit."""
    found = measured("FRK-09", {"value": "38 mm", "original": "40 mm", "original_from": origin})
    assert found.reading.standard_uncertainty == pytest.approx(doubt)
    assert found.reading.value == 38


def test_the_shank_of_a_full_taper_fork_is_no_reference() -> None:
    """Its blade was never as thick, so a worn one would be measured against the wrong figure."""
    given = {"value": "38 mm", "original": "40 mm", "original_from": "shank", "full_taper": True}
    with pytest.raises(BadInput) as bad:
        entry("FRK-09", given)
    (problem,) = bad.value.problems
    assert (problem.field, problem.given) == ("original_from", "shank")


@pytest.mark.parametrize(
    "given",
    [
        {"original_from": "maker", "full_taper": True},
        {"original_from": "marking", "full_taper": True},
        {"original_from": "shank", "full_taper": False},
        {"original_from": "shank"},
    ],
)
def test_any_other_original_is_taken(given: dict[str, object]) -> None:
    """A full-taper blade against its marking, and a straight one against its shank."""
    assert passes(measured("FRK-09", {"value": "38 mm", "original": "40 mm", **given}))


def test_a_fork_does_not_grow() -> None:
    """An original thinner than the fork is a mistake in one of the two."""
    with pytest.raises(BadInput) as bad:
        entry("FRK-09", {**FORK, "value": "41 mm"})
    (problem,) = bad.value.problems
    assert (problem.field, problem.given) == ("original", "40 mm")


def test_a_new_fork_may_read_a_graduation_more() -> None:
    """The calliper's last step is no growth."""
    assert passes(measured("FRK-09", {**FORK, "value": "40.02 mm"}))


@pytest.mark.parametrize(
    ("given", "off"),
    [
        ({"value": "92 deg"}, 2),
        ({"value": "88 deg"}, 2),
        ({"value": "92 deg", "original": "91 deg"}, 1),
        ({"value": "90 deg", "original": "93 deg"}, 3),
    ],
)
def test_a_fork_opens_from_its_own_angle(given: dict[str, object], off: int) -> None:
    """From a right angle where none was written, and either way."""
    found = measured("FRK-04", given)
    assert found.reading.value == off
    assert found.limit.at == 3
    assert found.as_new == 0


@pytest.mark.parametrize(
    ("given", "limit"),
    [
        ({"value": "10 mm"}, 25),
        ({"value": "10 mm", "height": "500 mm"}, 25),
        ({"value": "10 mm", "height": "200 mm"}, 10),
    ],
)
def test_a_gap_is_held_at_its_height(given: dict[str, object], limit: int) -> None:
    """Nearer the blade the same angle is a smaller gap."""
    assert measured("FRK-05", given).limit.at == limit


def test_a_gap_is_told_as_an_angle() -> None:
    """The angle of 25 mm at 500 mm."""
    (note,) = measured("FRK-05", {"value": "25 mm"}).notes
    angle = note.params["angle"]
    assert isinstance(angle, Amount)
    assert float(angle.value) == pytest.approx(2.8624, abs=1e-4)


@pytest.mark.parametrize("given", [{"value": "30 mm"}, {"left": "130 mm", "right": "100 mm"}])
def test_tips_are_given_as_a_difference_or_as_heights(given: dict[str, object]) -> None:
    """Three per cent of the blade either way."""
    found = measured("FRK-06", {**given, "blade_length": "1200 mm"})
    assert found.reading.value == 30
    assert found.limit.at == 36
    assert found.as_new == 0


@pytest.mark.parametrize(("value", "good"), [("36 mm", True), ("37 mm", False)])
def test_tips_may_differ_by_three_per_cent(value: str, good: bool) -> None:
    """The mark itself passes."""
    assert passes(measured("FRK-06", {"value": value, "blade_length": "1200 mm"})) is good


def test_strength_left_is_information() -> None:
    """It is shown with the word that nobody goes on with less load."""
    outcome = entry("FRK-12", {"value": "36 mm", "original": "40 mm"})
    assert isinstance(outcome, Information)
    assert codes(outcome) == ["fork-strength-left", "never-derate"]
    assert outcome.notes[0].params == {"share": Amount(Fraction(81), "percent")}


@pytest.mark.parametrize(
    ("ahead", "then", "code"),
    [
        ("500 h", "37.5", "fork-forecast"),
        ("2000 h", "36", "fork-forecast-over"),
        ("3000 h", "35", "fork-forecast-over"),
    ],
)
def test_a_forecast_says_when_the_limit_is_reached(ahead: str, then: str, code: str) -> None:
    """A millimetre in 1000 h goes on; reaching the limit is over it."""
    given = {
        "value": "38 mm",
        "original": "40 mm",
        "earlier": "39 mm",
        "hours_between": "1000 h",
        "hours_ahead": ahead,
    }
    outcome = entry("FRK-11", given)
    assert isinstance(outcome, Information)
    (note,) = outcome.notes
    assert note.code == code
    assert note.params["then"] == Amount(Fraction(then), "length")
    assert note.params["limit"] == Amount(Fraction(36), "length")


@pytest.mark.parametrize(("value", "good"), [("1250 kg", True), ("1249 kg", False)])
def test_each_fork_carries_half_the_truck(value: str, good: bool) -> None:
    """Half of the plate's capacity is enough."""
    assert passes(measured("FRK-16", {"value": value}, RATED)) is good


def test_without_a_plate_the_forks_marking_is_kept() -> None:
    """It is not judged, and the reason is said."""
    outcome = entry("FRK-16", {"value": "1250 kg"})
    assert isinstance(outcome, NotJudged)
    assert outcome.why.code == "plate-capacity-missing"
    assert outcome.reading is not None


@pytest.mark.parametrize(("value", "good"), [("2500 kg", True), ("2499 kg", False)])
def test_a_repaired_fork_was_proved(value: str, good: bool) -> None:
    """Two and a half times its marking, unless its certificate's edition says otherwise."""
    found = measured("FRK-19", {"value": value, "marked_capacity": "1000 kg"})
    assert passes(found) is good
    assert codes(found) == ["proof-load-by-edition"]
