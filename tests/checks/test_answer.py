"""The answers to a check, asked for by name and kind."""

from collections.abc import Callable
from datetime import date
from fractions import Fraction

import pytest

from mastwright.checks import Answers
from mastwright.quantity import BadInput, Field, Quantity, parse_quantity


def mm(text: str) -> Quantity:
    """Return a length."""
    return parse_quantity(text, Field("value", "length", minimum=None))


GIVEN = Answers(
    {
        "value": mm("1 in"),
        "cells": (mm("1 mm"), mm("2 in")),
        "zero": mm("0 mm"),
        "below": mm("-3 mm"),
        "word": "shank",
        "ok": True,
        "no": False,
        "count": 24,
        "day": date(2026, 1, 31),
    }
)


def test_a_quantity_comes_in_its_own_unit() -> None:
    """An inch is 25.4 mm exactly."""
    assert GIVEN.value("value") == Fraction("25.4")


def test_a_list_comes_in_its_own_unit() -> None:
    """Each cell is converted by itself."""
    assert GIVEN.values("cells") == (Fraction(1), Fraction("50.8"))


def test_a_whole_of_which_a_share_is_taken_is_returned() -> None:
    """A length above 0 can have a share."""
    assert GIVEN.positive("value") == Fraction("25.4")


@pytest.mark.parametrize(("name", "given"), [("zero", "0 mm"), ("below", "-3 mm")])
def test_there_is_no_share_of_nothing(name: str, given: str) -> None:
    """A limit that is a share of 0 would pass anything."""
    with pytest.raises(BadInput) as bad:
        GIVEN.positive(name)
    (problem,) = bad.value.problems
    assert (problem.field, problem.given, problem.expected) == (name, given, "more than 0 mm")


def test_an_optional_quantity_may_be_left_out() -> None:
    """What was not written is None, what was written is its value."""
    assert GIVEN.optional("other") is None
    assert GIVEN.optional("zero") == 0


def test_a_text_left_out_has_a_stand_in() -> None:
    """The rule says what an unsaid word means."""
    assert (GIVEN.text("word"), GIVEN.text("other", "carriage")) == ("shank", "carriage")


@pytest.mark.parametrize(("name", "yes"), [("ok", True), ("no", False), ("other", False), ("word", False)])
def test_only_yes_is_yes(name: str, yes: bool) -> None:
    """No, nothing and anything else are not yes."""
    assert GIVEN.yes(name) is yes


def test_a_date_and_a_whole_number_come_as_they_are() -> None:
    """They need no unit."""
    assert (GIVEN.day("day"), GIVEN.whole("count")) == (date(2026, 1, 31), 24)


@pytest.mark.parametrize(
    ("ask", "name"),
    [
        (GIVEN.quantity, "other"),
        (GIVEN.quantity, "word"),
        (GIVEN.value, "count"),
        (GIVEN.positive, "other"),
        (GIVEN.values, "other"),
        (GIVEN.values, "value"),
        (GIVEN.day, "other"),
        (GIVEN.day, "word"),
        (GIVEN.whole, "other"),
        (GIVEN.whole, "ok"),
    ],
)
def test_a_missing_answer_is_named(ask: Callable[[str], object], name: str) -> None:
    """The message names the field; true is no whole number."""
    with pytest.raises(BadInput) as bad:
        ask(name)
    assert bad.value.problems[0].field == name
