"""Rules for hydraulics, as an entry meets them: leak class by fluid, oil cleanliness."""

import pytest

from mastwright.checks import NotJudged, Seen
from mastwright.quantity import BadInput

from .weighing import codes, entry


def leak(check: str, **given: object) -> tuple[bool, bool]:
    """Return whether a leak is in order, and whether it is the worse case."""
    outcome = entry(check, given)
    assert isinstance(outcome, Seen)
    return outcome.ok, outcome.worse_case


@pytest.mark.parametrize(
    ("found", "ok", "worse"),
    [("none", True, False), ("I", True, False), ("II", True, False), ("III", False, True)],
)
@pytest.mark.parametrize("fluid", [{}, {"fluid": "hydraulic"}])
def test_hydraulic_oil_may_sweat_but_not_drip(
    found: str, ok: bool, worse: bool, fluid: dict[str, object]
) -> None:
    """Drops that fall are the worse case; oil is meant where nothing else is said."""
    assert leak("HYD-01", value=found, **fluid) == (ok, worse)


@pytest.mark.parametrize("fluid", ["brake", "steering", "fuel"])
def test_other_fluids_may_not_leak_at_all(fluid: str) -> None:
    """The first wetness is the worse case; a dry one is in order."""
    assert leak("HYD-01", value="I", fluid=fluid) == (False, True)
    assert leak("HYD-01", value="none", fluid=fluid) == (True, False)


def test_a_leak_is_told_by_class_and_fluid() -> None:
    """What is seen is said in words, and why no class of it is run with."""
    assert codes(entry("HYD-01", {"value": "I", "fluid": "brake"})) == ["leak-1", "leak-of-this-fluid"]
    assert codes(entry("HYD-01", {"value": "II"})) == ["leak-2"]


@pytest.mark.parametrize("found", ["none", "I", "II", "III"])
def test_the_worse_case_of_a_leak_is_never_in_order(found: str) -> None:
    """What the technician saw outweighs the class that was written."""
    assert leak("HYD-01", value=found, worse_case=True) == (False, True)


@pytest.mark.parametrize(("found", "ok"), [("none", True), ("I", False), ("II", False)])
def test_fuel_may_not_leak(found: str, ok: bool) -> None:
    """No class is allowed: the limit is none."""
    assert leak("ENG-02", value=found)[0] is ok


@pytest.mark.parametrize(("found", "ok"), [("none", True), ("I", True), ("II", False), ("III", False)])
def test_steering_may_seep_and_no_more(found: str, ok: bool) -> None:
    """A drop that forms is more than seepage."""
    assert leak("STR-05", value=found)[0] is ok


def test_an_unknown_class_is_refused() -> None:
    """The message lists the classes."""
    with pytest.raises(BadInput, match="one of none, I, II, III"):
        entry("HYD-01", {"value": "IV"})


@pytest.mark.parametrize(
    ("value", "ok"),
    [("18/16/13", True), ("17/15/12", True), ("19/16/13", False), ("18/17/13", False), ("18/16/14", False)],
)
def test_oil_is_as_clean_as_asked_in_each_size(value: str, ok: bool) -> None:
    """One size over its number is enough."""
    assert entry("HYD-06", {"value": value, "target": "18/16/13"}) == Seen(ok)


def test_oil_without_a_target_is_not_judged() -> None:
    """Only the maker knows how clean is clean enough."""
    outcome = entry("HYD-06", {"value": "18/16/13"})
    assert isinstance(outcome, NotJudged)
    assert outcome.why.code == "makers-limit-missing"


@pytest.mark.parametrize(
    ("given", "field"),
    [({"value": "18/16"}, "value"), ({"value": "18/16/13", "target": "13/16/18"}, "target")],
)
def test_a_code_is_three_numbers(given: dict[str, object], field: str) -> None:
    """The message says which of the two is none."""
    with pytest.raises(BadInput) as bad:
        entry("HYD-06", given)
    assert bad.value.problems[0].field == field
