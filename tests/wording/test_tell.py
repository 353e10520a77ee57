"""The judgement document: whole in both languages and units, and the same verdicts in all four."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from mastwright.chains import conditions
from mastwright.paperwork import check_judgement
from mastwright.quantity import UnitSystem
from mastwright.wording import LANGUAGES, tell

from .visits import NAMES, example, judged

SCHEMAS = Path(__file__).parents[2] / "docs" / "schema"
FOUR = [(language, system) for language in LANGUAGES for system in UnitSystem]
# What a document may hold that is only for show, or worked out from what is shown.
PLAIN = {"verdict", "own_verdict", "probability_over_limit", "limit_value", "reading_value", "by", "may_work",
         "may_work_until", "elongation_percent", "uncertainty_percent", "key", "check", "quantity", "pitches",
         "length_mm", "rank", "stops_the_truck", "refused", "strand", "set", "worst"}  # fmt: skip


@cache
def validator() -> jsonschema.Draft202012Validator:
    """Return the published schema of the document, dates checked."""
    schema = json.loads((SCHEMAS / "judgement.json").read_text("utf-8"))
    checker = jsonschema.FormatChecker()
    return jsonschema.Draft202012Validator(schema, format_checker=checker)


def told(name: str, language: str = "en", system: UnitSystem = UnitSystem.METRIC) -> dict[str, Any]:
    """Return the document of an example."""
    return tell(example(name), language, system)


def of(body: str, language: str = "en") -> dict[str, Any]:
    """Return the document of a visit of this body."""
    return tell(judged(body), language)


def facts(node: Any) -> Any:  # Any: a document of any depth
    """Return what does not depend on language or units."""
    if isinstance(node, dict):
        return {
            k: v if k in PLAIN else facts(v)
            for k, v in node.items()
            if k in PLAIN or isinstance(v, dict | list)
        }
    return [facts(v) for v in node if isinstance(v, dict | list)]


def test_the_examples_are_there() -> None:
    """The tests below walk six visits."""
    assert [name[0] for name in NAMES] == list("123456")


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("language", "system"), FOUR)
def test_the_document_is_as_the_schema_says(name: str, language: str, system: UnitSystem) -> None:
    """Every example, told four ways, is of the published shape, without a field beyond it."""
    document = json.loads(json.dumps(told(name, language, system), allow_nan=False))
    assert [f"{e.json_path}: {e.message}" for e in validator().iter_errors(document)] == []


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("language", "system"), FOUR)
def test_the_papers_take_the_document(name: str, language: str, system: UnitSystem) -> None:
    """The papers refuse a document that is not whole; these are not refused."""
    document = told(name, language, system)
    check_judgement(document)
    del document["verdict"]
    with pytest.raises(ValueError, match="verdict"):
        check_judgement(document)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("language", "system"), FOUR[1:])
def test_verdicts_do_not_depend_on_language_or_units(name: str, language: str, system: UnitSystem) -> None:
    """Verdicts, figures, order and days are the same to the last digit however they are told."""
    assert facts(told(name, language, system)) == facts(told(name))


@pytest.mark.parametrize("name", NAMES)
def test_texts_depend_on_the_language(name: str) -> None:
    """Outcome, cautions and names are in the language asked for."""
    english, spanish = told(name, "en"), told(name, "es")
    assert english["outcome_text"] != spanish["outcome_text"]
    assert not set(english["cautions"]) & set(spanish["cautions"])
    assert not {i["title"] for i in english["items"]} & {i["title"] for i in spanish["items"]}


@pytest.mark.parametrize(("system", "unit"), [(UnitSystem.METRIC, " mm"), (UnitSystem.INCH, " in")])
def test_figures_are_in_the_units_asked_for(system: UnitSystem, unit: str) -> None:
    """Every length limit of every example is in mm or in inches, as asked."""
    items = [i for name in NAMES for i in told(name, system=system)["items"] if i["unit"] == "length"]
    limits = [i["limit"] for i in items if i["limit"]]
    assert limits
    assert all(unit in limit for limit in limits)


@pytest.mark.parametrize("name", NAMES)
def test_every_limit_has_its_source(name: str) -> None:
    """Where a limit is shown, so is where it is written and how that is known."""
    limited = [i for i in told(name)["items"] if i["limit"]]
    assert limited
    assert all(i["limit_source"] and i["limit_evidence"] for i in limited)


@pytest.mark.parametrize("name", NAMES)
def test_the_cautions_are_always_there(name: str) -> None:
    """Whatever the verdict: secure the mast, never under forks, the maker and the law first."""
    cautions = " ".join(told(name)["cautions"])
    assert all(part in cautions for part in ("secure the mast", "under raised forks", "manual, local law"))


OUTCOMES = [
    ("1", True, []),
    ("2", False, ["chain-elongation"]),
    ("3", False, ["turned-pin"]),
    ("4", False, ["FRK-09", "BRK-01", "HYD-02"]),
    ("5", False, ["chain-elongation", "FRK-09"]),
    ("6", False, ["FRK-09"]),
]


@pytest.mark.parametrize(("number", "may_work", "stopping"), OUTCOMES)
def test_the_outcome_of_the_examples(number: str, may_work: bool, stopping: list[str]) -> None:
    """What each example was made to show, and what stops its truck, in order of danger. demo data."""
    document = told(next(name for name in NAMES if name.startswith(number)))
    assert document["may_work"] is may_work
    assert [r["check"] for r in document["reasons"] if r["stops_the_truck"]] == stopping


CHAIN = """
[[chain]]
set = "main"
designation = "BL634"
pitches_total = {total}
[[chain.span]]
strand = "left"
start = 1
pitches = 16
length = "{left} mm"
instrument = "calliper"
[[chain.span]]
strand = "right"
start = 1
pitches = 16
length = "{right} mm"
instrument = "calliper"
"""


def chain(left: float, right: float, total: int = 100, more: str = "") -> dict[str, Any]:
    """Return the document of a visit of one chain set: 16 pitches of 19.05 mm are 304.8 mm new."""
    return of(CHAIN.format(left=left, right=right, total=total) + more)


ACTIONS = [
    (305.0, "fit", ""),
    (310.4, "watch", "Measure the same links"),
    (311.5, "replace", "Order the set now"),
    (313.8, "remeasure", "Measure again"),
    (314.0, "withdraw", "Tag out"),
]


@pytest.mark.parametrize(("length", "verdict", "action"), ACTIONS)
def test_the_action_follows_the_verdict(length: float, verdict: str, action: str) -> None:
    """Marks at 1.5 or so, 2 and 3 % of 304.8 mm: 310.896 and 313.944 mm."""
    item = next(i for i in chain(length, length)["items"] if i["check"] == "chain-elongation")
    assert item["verdict"] == verdict
    assert item["action"].startswith(action)
    assert bool(item["action"]) == bool(action)


def test_a_reading_past_the_limit_is_said_to_be() -> None:
    """Of a reading at or past the limit no probability is shown: it is over."""
    item = next(i for i in chain(314.0, 305.0)["items"] if i["check"] == "chain-elongation")
    assert item["probability_text"] == "at or past the limit"


def test_a_gauge_that_passes_gives_an_upper_bound() -> None:
    """A pass/fail gauge says only how high the wear may be."""
    body = """
[[chain]]
set = "main"
designation = "BL634"
strands = ["left"]
[[chain.span]]
strand = "left"
start = 1
passes = "2 %"
"""
    document = of(body)
    item = next(i for i in document["items"] if i["check"] == "chain-elongation")
    assert item["probability_text"].startswith("at most ")
    assert document["chains"][0]["strands"][0]["spans"][0]["bounds_text"] == "< 2 %"


def test_a_strand_without_reading_is_shown_without_figures() -> None:
    """A strand that was not measured has neither reading nor doubt, and is to be measured."""
    body = CHAIN.format(left=305, right=305, total=100).rpartition("[[chain.span]]")[0]
    item = next(i for i in of(body)["items"] if i["item"] == "main chains, right strand")
    assert (item["reading_value"], item["uncertainty"], item["probability_text"]) == (None, "", "")
    assert item["action"] == "Measure this strand."


def test_uncounted_pitches_are_to_be_counted_before_ordering() -> None:
    """An order never guesses a length."""
    body = CHAIN.format(left=314, right=305, total=100).replace("pitches_total = 100\n", "")
    line = of(body)["order"][0]
    assert line["length_text"] == "count before ordering"


def test_an_order_gives_pitches_and_length() -> None:
    """100 pitches of 19.05 mm are 1905 mm."""
    line = chain(314, 305)["order"][0]
    assert (line["quantity"], line["pitches"], line["length_mm"]) == (2, 100, 1905.0)
    assert line["length_text"] == "100 pitches = 1905 mm"


FINDING = """
[[chain.finding]]
condition = "{condition}"
strand = "left"
where = "9 pitches below the sheave"
note = "Seen in good light."
"""


def test_a_finding_carries_what_the_technician_noted() -> None:
    """The technician's own words are the last note; the condition gives title, source and action."""
    document = chain(305, 305, more=FINDING.format(condition="turned-pin"))
    item = next(i for i in document["items"] if i["check"] == "turned-pin")
    assert item["notes"][-1].endswith("Seen in good light.")
    assert item["limit_source"]
    assert item["action"].startswith("Replace every chain of the set.")


def test_a_set_is_not_named_where_its_finding_already_is() -> None:
    """The list of dangers names the turned pin, not the set beside it."""
    reasons = chain(305, 305, more=FINDING.format(condition="turned-pin"))["reasons"]
    assert next(r["check"] for r in reasons if r["key"] == "main") == "turned-pin"
    assert "chain-set" not in [r["check"] for r in reasons]


REFUSAL = """
[[refusal]]
item = "{item}"
reason = "Next month."
by = "Odell Marsh"
initials = "OM"
"""


def test_a_refused_withdrawal_never_becomes_fit() -> None:
    """The customer's no changes neither verdict nor outcome, and says what the truck may not do."""
    document = chain(314, 305, more=REFUSAL.format(item="main"))
    refusal = document["refusals"][0]
    assert (document["may_work"], refusal["verdict"]) == (False, "withdraw")
    assert "must not be used" in refusal["may_not_do"]
    assert document["order"] == []


def test_a_refused_replacement_keeps_its_day() -> None:
    """A planned replacement that was refused ends the work of the truck on its day."""
    document = chain(311.5, 311.5, more=REFUSAL.format(item="main"))
    refusal = document["refusals"][0]
    assert document["may_work_until"] == "2027-02-20"
    assert "2027-02-20" in refusal["may_not_do"]


def test_a_check_in_doubt_asks_for_a_better_instrument() -> None:
    """Only doubt about a measured check asks to measure again; the check's own action stays out."""
    body = """
[[check]]
id = "FRK-09"
value = "36.02 mm"
original = "40 mm"
original_from = "marking"
instrument = "calliper"
"""
    item = of(body)["items"][0]
    assert item["verdict"] == "remeasure"
    assert item["action"].startswith("Measure again with a better instrument")


def test_strength_is_told_with_its_evidence() -> None:
    """A factor of safety says that the table's strengths are from memory and that it is information."""
    body = '[truck.mast]\narrangement = "C"\ncarriage_mass = "310 kg"\ninner_mass = "260 kg"\n'
    document = of(body + CHAIN.format(left=306, right=306, total=100), "es")
    strength = " ".join(document["chains"][0]["strength"])
    assert "de memoria" in strength
    assert "informativa" in strength


def test_the_document_is_made_anew_each_time() -> None:
    """Changing one document leaves the next untouched."""
    first = told(NAMES[0])
    first["items"].clear()
    assert told(NAMES[0])["items"]


def test_a_part_that_a_finding_asks_for_is_ordered_by_its_name() -> None:
    """A condition that asks for a part gives the order its name, in the reader's language."""
    body = CHAIN.format(left=305, right=305, total=100) + FINDING.format(condition="anchor-damaged")
    lines = of(body, "es")["order"]
    assert [line["what"] for line in lines] == [conditions()["anchor-damaged"].order_part.es]


def test_strength_of_an_unread_chain_says_nothing_of_what_is_left() -> None:
    """Without a reading only the factor of the new chain is told."""
    mast = '[truck.mast]\narrangement = "C"\ncarriage_mass = "310 kg"\ninner_mass = "260 kg"\n'
    unread = of(mast + '[[chain]]\nset = "main"\ndesignation = "BL634"\n')["chains"][0]["strength"]
    read = of(mast + CHAIN.format(left=306, right=306, total=100))["chains"][0]["strength"]
    assert len(unread) < len(read)
