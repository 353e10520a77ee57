"""Visual conditions: the table, and finding one by name."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from mastwright.chains.conditions import Consequence, conditions, conditions_from, find_condition
from mastwright.quantity import BadInput, Evidence, TableError

if TYPE_CHECKING:
    from mastwright.chains.toml_table import Rows

_BOTH = ("title", "look_for", "cause", "if_ignored", "action", "order_part")


def _row(**changes: object) -> Rows:
    row: dict[str, object] = {
        f"{name}_{language}": f"{name} words" for name in _BOTH for language in ("en", "es")
    }
    row |= {"consequence": "correct", "source": "a page", "evidence": "read", **changes}
    return {"some-key": row}


def test_table_loads() -> None:
    """The table that ships has every condition under a kebab-case key."""
    found = conditions()
    assert len(found) == 34
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", key) and c.key == key for key, c in found.items())


def test_every_consequence_is_used() -> None:
    """No consequence stands in the list without a condition that has it."""
    assert {c.consequence for c in conditions().values()} == set(Consequence)


@pytest.mark.parametrize("key", conditions())
def test_texts_are_sentences_in_both_languages(key: str) -> None:
    """What to look for, what it leads to and what to do are sentences, different in the two languages."""
    condition = conditions()[key]
    for words in (condition.look_for, condition.cause, condition.if_ignored, condition.action):
        assert words.en.endswith(".")
        assert words.es.endswith(".")
        assert words.en != words.es
    assert condition.title.en != condition.title.es


@pytest.mark.parametrize(
    "key", [k for k, c in conditions().items() if c.consequence is Consequence.CONDEMN_SET]
)
def test_condemned_set_brings_new_anchor_pins(key: str) -> None:
    """A condemned set is ordered with new anchor pins (a truck maker's manual; read)."""
    part = conditions()[key].order_part
    assert "anchor pins" in part.en
    assert "pasadores de anclaje" in part.es
    assert "every chain" in conditions()[key].action.en


@pytest.mark.parametrize("key", [k for k in conditions() if "crack" in k or "pin" in k.split("-")])
def test_crack_or_lost_pin_condemns_the_set(key: str) -> None:
    """Any crack, turned, protruding or headless pin condemns the set; an anchor pin is a part of its own."""
    expected = Consequence.REPLACE_PART if key.startswith("anchor") else Consequence.CONDEMN_SET
    assert conditions()[key].consequence is expected


def test_dirt_and_rust_part_ways() -> None:
    """A tight joint with dirt is cleaned, with rust it condemns (a leaf-chain defect table; read)."""
    assert conditions()["tight-joint-dirt"].consequence is Consequence.CLEAN_AND_LOOK_AGAIN
    assert conditions()["tight-joint-rust"].consequence is Consequence.CONDEMN_SET
    assert conditions()["surface-rust"].consequence is Consequence.CLEAN_AND_LOOK_AGAIN
    assert conditions()["pitting-rust"].consequence is Consequence.CONDEMN_SET


def test_pin_is_never_driven_back() -> None:
    """The advice for a turned or protruding pin forbids driving it back or welding (read)."""
    for key in ("turned-pin", "protruding-pin"):
        assert "Never drive the pin back or weld it" in conditions()[key].action.en


def test_slack_chain_stops_the_truck() -> None:
    """A slack chain is put right before work, and the danger of a hanging carriage is said first."""
    slack = conditions()["slack-chain"]
    assert slack.consequence is Consequence.REPLACE_PART
    assert slack.action.en.startswith("Keep clear of mast and forks")
    assert slack.source.evidence is Evidence.AS_QUOTED


@pytest.mark.parametrize(
    "given", ["turned-pin", "Turned pin", "  TURNED  PIN ", "turned_pin", "Pasador girado", "pasador-girado"]
)
def test_found_by_key_and_by_title(given: str) -> None:
    """A condition is found by key or title, in either language, whatever the spacing."""
    assert find_condition(given).key == "turned-pin"


def test_near_name_is_offered() -> None:
    """A mistyped key is refused with the field, what was given and the nearest keys."""
    with pytest.raises(BadInput) as caught:
        find_condition("turnd-pin", "finding 3, condition")
    (problem,) = caught.value.problems
    assert (problem.field, problem.given) == ("finding 3, condition", "turnd-pin")
    assert "nearest: turned-pin" in problem.expected


def test_strange_name_gets_the_whole_list() -> None:
    """A name like none is refused with every key."""
    with pytest.raises(BadInput, match=r"one of turned-pin, .*harsh-duty"):
        find_condition("zzzz")


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"source": " "}, "no source"),
        ({"evidence": "heard"}, "evidence 'heard'"),
        ({"consequence": "shrug"}, "consequence 'shrug'; use one of condemn-set"),
        ({"look_for_es": 5}, "look_for_es is missing or no text"),
        ({"look_for_es": ""}, "one language only"),
        ({"title_en": "", "title_es": ""}, "title is empty"),
    ],
)
def test_bad_row_does_not_load(changes: dict[str, object], message: str) -> None:
    """A row without source, with an unknown word or a missing text does not load."""
    assert conditions_from(_row(), "t")["some-key"].title.en == "title words"
    with pytest.raises(TableError, match=message):
        conditions_from(_row(**changes), "t")
