"""The shape of a judgement and what it means for the papers."""

from __future__ import annotations

import json
from typing import Any

import pytest
from samples import condemned_truck, sound_truck, spanish_inch_truck

from mastwright.paperwork import check_judgement
from mastwright.paperwork.judgement import judgement_bytes, signal_word, verdict_of, visit_day
from mastwright.quantity import BadInput


def changed(path: str, value: Any) -> dict[str, Any]:
    """Return the condemned truck with one field changed."""
    document = condemned_truck()
    place: Any = document
    *steps, last = path.split(".")
    for step in steps:
        place = place[int(step)] if step.isdigit() else place[step]
    place[last] = value
    return document


@pytest.mark.parametrize("make", [sound_truck, condemned_truck, spanish_inch_truck])
def test_samples_are_whole(make: Any) -> None:
    """A whole judgement passes, also with fields beyond the shape."""
    document = make()
    document["later"] = {"anything": 1}
    check_judgement(document)
    assert document["later"] == {"anything": 1}


@pytest.mark.parametrize(
    ("path", "value", "field", "right"),
    [
        ("format", "other-1", "format", "mastwright-judgement-1"),
        ("units", "yards", "units", "one of metric, inch"),
        ("verdict", "fine", "verdict", "one of fit, watch"),
        ("may_work", "no", "may_work", "true or false"),
        ("may_work_until", "soon", "may_work_until", "a day such as 2026-12-24 or null"),
        ("visit.date", "2026-02-30", "visit.date", "a day such as"),
        ("visit.date", "12.3.2026", "visit.date", "a day such as"),
        ("visit.date", 20260312, "visit.date", "a day such as"),
        ("truck.id", 9, "truck.id", "text"),
        ("truck.id", "broken \ud800", "truck.id", "text"),
        ("reasons.0.rank", 1.5, "reasons[0].rank", "a whole number"),
        ("reasons.0.rank", True, "reasons[0].rank", "a whole number"),
        ("items", {}, "items", "a list"),
        ("items.3.notes", [None], "items[3].notes[0]", "text"),
        (
            "items.0.probability_over_limit",
            "many",
            "items[0].probability_over_limit",
            "a finite number or null",
        ),
        ("chains.0.pitch_mm", float("nan"), "chains[0].pitch_mm", "a finite number"),
        ("chains.0.strands.1.spans.0.worst", 1, "chains[0].strands[1].spans[0].worst", "true or false"),
        ("next_visit", [], "next_visit", "a table of fields"),
        ("book_head", 7, "book_head", "text or null"),
        ("language", "xx", "language", "one of en, es"),
    ],
)
def test_wrong_field_is_named(path: str, value: Any, field: str, right: str) -> None:
    """A wrong field is refused by its name, with what would be right."""
    with pytest.raises(BadInput) as caught:
        check_judgement(changed(path, value))
    (problem,) = caught.value.problems
    assert problem.field == field
    assert right in problem.expected


def test_every_wrong_field_is_named_at_once() -> None:
    """Missing and wrong fields come together, so that one round mends them all."""
    document = condemned_truck()
    del document["truck"]["serial"], document["cautions"], document["legal"][0]["reference"]
    document["visit"]["note"] = None
    with pytest.raises(BadInput) as caught:
        check_judgement(document)
    assert {p.field for p in caught.value.problems} == {
        "truck.serial",
        "cautions",
        "legal[0].reference",
        "visit.note",
    }
    assert "missing; text" in str(caught.value)


def test_what_is_no_table_is_refused() -> None:
    """Something that is no table of fields is refused as a judgement."""
    nothing: Any = ["format"]
    with pytest.raises(BadInput, match=r"judgement: .*a table of fields"):
        check_judgement(nothing)


@pytest.mark.parametrize(
    ("may_work", "verdict", "word"),
    [
        (False, "withdraw", "danger"),
        (False, "remeasure", "danger"),
        (True, "replace", "warning"),
        (True, "remeasure", "warning"),
        (True, "not judged", "warning"),
        (True, "watch", "caution"),
        (True, "fit", None),
    ],
)
def test_signal_word(may_work: bool, verdict: str, word: str | None) -> None:
    """The signal word follows from whether the truck may work, then from the verdict."""
    assert signal_word({"may_work": may_work, "verdict": verdict}) == word


def test_verdict_of_item_or_reason() -> None:
    """An item's verdict is found among items, then among reasons; an unknown one has none."""
    document = condemned_truck()
    assert verdict_of(document, document["items"][44]["item"]) == "replace"
    assert verdict_of(document, "main-left-turned-pin") == "withdraw"
    assert verdict_of(document, "unheard-of") is None


def test_attached_bytes_hold_the_document() -> None:
    """The bytes for the attachment read back as the document, whatever order its keys came in."""
    document = spanish_inch_truck()
    backwards = dict(reversed(document.items()))
    assert json.loads(judgement_bytes(document)) == document
    assert judgement_bytes(document) == judgement_bytes(backwards)


def test_day_of_the_visit() -> None:
    """The papers carry the day of the visit."""
    assert visit_day(sound_truck()).isoformat() == "2026-03-12"
