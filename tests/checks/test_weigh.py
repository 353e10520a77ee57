"""Every check of the catalogue weighed: in order, not in order, without the maker's limit."""

from datetime import date

import pytest

from mastwright.checks import Check, CheckKind, Information, NotJudged, Seen, catalogue, weigh
from mastwright.checks.rules import RULES
from mastwright.quantity import BadInput, common_instruments

from .answers import FACTS, PAIRS, SIDES
from .weighing import codes, entry, limits, measured, passes

ALL = tuple(catalogue().values())
INFORMS = [c for c in ALL if c.kind is CheckKind.INFORMATION]
JUDGED = [c for c in ALL if c.kind is not CheckKind.INFORMATION]
# Not in the table, and not asked in the entry: without a file of limits these stay open.
ASKED_IN_ENTRY = {"plate_range", "pressure_deviation", "density_full", "density_low", "cleanliness"}
FROM_PHYSICS = {"stopping_distance", "brake_drag", "electrolyte_temperature", "battery_insulation"}
OPEN = [c for c in JUDGED if c.limit is None and c.rule not in {"observe", *ASKED_IN_ENTRY, *FROM_PHYSICS}]


def named(checks: list[Check]) -> pytest.MarkDecorator:
    """Return the checks as cases with their ids."""
    return pytest.mark.parametrize("check", checks, ids=lambda check: check.id)


def test_every_rule_has_its_entries() -> None:
    """There is an entry in order and one that is not for each rule."""
    assert set(PAIRS) == set(RULES)


@named(JUDGED)
def test_a_check_tells_good_from_bad(check: Check) -> None:
    """Within its limit a check is in order, past it it is not."""
    own = limits(check.id, **SIDES.get(check.rule, {"at_most": "10"})) if check in OPEN else ()
    good, bad = PAIRS[check.rule](check)
    outcomes = [entry(check.id, given, FACTS, own) for given in (good, bad)]
    assert [passes(outcome) for outcome in outcomes] == [True, False]


@named(OPEN)
def test_without_the_makers_limit_nothing_is_passed(check: Check) -> None:
    """The reading is kept, and no verdict is made up."""
    good, _ = PAIRS[check.rule](check)
    outcome = entry(check.id, good, FACTS)
    assert isinstance(outcome, NotJudged)
    assert outcome.why.code == "makers-limit-missing"
    assert outcome.reading is not None


@named(INFORMS)
def test_information_is_no_verdict(check: Check) -> None:
    """A check that informs says something, and judges neither way."""
    for given in PAIRS[check.rule](check):
        outcome = entry(check.id, given, FACTS)
        assert isinstance(outcome, Information)
        assert outcome.notes


@named([c for c in ALL if c.worse_case])
def test_the_worse_case_is_never_passed(check: Check) -> None:
    """Where the technician saw the worse case, a good reading does not help, nor a missing limit."""
    good, _ = PAIRS[check.rule](check)
    outcome = entry(check.id, {**good, "worse_case": True}, FACTS)
    assert not passes(outcome)
    assert not isinstance(outcome, (NotJudged, Information))
    assert outcome.worse_case


def test_the_worse_case_keeps_why_there_was_no_limit() -> None:
    """A crack in the reach mechanism stands, and the missing limit is still said."""
    outcome = entry("MST-16", {"value": "1 mm", "worse_case": True})
    assert isinstance(outcome, Seen)
    assert codes(outcome) == ["makers-limit-missing"]


def test_no_worse_case_changes_nothing() -> None:
    """Answering no is the same as not answering."""
    given = {"value": "50 mm"}
    assert measured("MST-01", {**given, "worse_case": False}) == measured("MST-01", given)


def test_every_missing_answer_is_named_at_once() -> None:
    """Three fields left out are three problems."""
    with pytest.raises(BadInput) as bad:
        entry("FRK-09", {})
    assert [p.field for p in bad.value.problems] == ["value", "original", "original_from"]


@named([c for c in ALL if PAIRS[c.rule](c)[0]])
def test_an_empty_entry_is_refused(check: Check) -> None:
    """No check comes to anything without an answer."""
    with pytest.raises(BadInput):
        entry(check.id, {}, FACTS)


def test_a_choice_is_one_of_its_words() -> None:
    """The message lists what may stand there."""
    with pytest.raises(BadInput) as bad:
        entry("BAT-10", {"value": "30 °C", "state": "parked"})
    (problem,) = bad.value.problems
    assert (problem.field, problem.given) == ("state", "parked")
    assert problem.expected == "one of in-use, before-charge"


def test_an_answer_of_another_kind_is_refused() -> None:
    """A word is no reading."""
    check = catalogue()["BRK-04"]
    tool = common_instruments().find(check.instrument, check.reads)
    with pytest.raises(BadInput, match="value: is needed"):
        weigh(check, {"value": "strong"}, FACTS, (), tool, date(2026, 11, 10))
