"""Elongation from lengths and pass/fail gauges, and what is refused."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.elongation import (
    check_pitches,
    check_taut,
    elongation_figures,
    elongation_from_legs,
    elongation_from_length,
    growth_since_fitting,
)
from mastwright.quantity import BadInput, Field, Quantity, Reading, Worse, common_instruments, parse_quantity

PITCH = Fraction("19.05")
RULE = common_instruments().find("rule", "length")
LEGS = common_instruments().find("leg-gauge", "percent")


def length(text: str) -> Quantity:
    """Return a length as written."""
    return parse_quantity(text, Field("length", "length"))


def over_16(text: str) -> Reading:
    """Return the elongation of 16 pitches of 3/4 in."""
    return elongation_from_length(length(text), 16, PITCH, RULE)


def leg(text: str | None) -> Fraction | None:
    """Return a leg of the gauge in percent, or that there is none."""
    return None if text is None else Fraction(text)


@pytest.mark.parametrize("pitches", [2, 12, 16, 24])
def test_an_even_count_is_taken(pitches: int) -> None:
    """An even number of pitches comes back as it is."""
    assert check_pitches(pitches) == pitches


@pytest.mark.parametrize("pitches", [0, -2])
def test_no_pitches_are_refused(pitches: int) -> None:
    """A count of nothing is refused with its field, the count and what would be right."""
    with pytest.raises(BadInput) as refused:
        check_pitches(pitches, field="span.pitches")
    assert str(refused.value) == f"span.pitches: '{pitches}' given; an even number of pitches, 2 or more"


@pytest.mark.parametrize(("pitches", "instead"), [(1, "2 or 2"), (11, "10 or 12"), (17, "16 or 18")])
def test_an_odd_count_is_refused_with_the_reason(pitches: int, instead: str) -> None:
    """An odd count is refused, with the even counts beside it and why."""
    with pytest.raises(BadInput) as refused:
        check_pitches(pitches)
    (problem,) = refused.value.problems
    assert (problem.field, problem.given) == ("pitches", str(pitches))
    assert instead in problem.expected
    assert "growth shows only across the articulating plates" in problem.expected


def test_an_odd_count_never_becomes_a_reading() -> None:
    """A length over an odd number of pitches is refused."""
    with pytest.raises(BadInput, match="articulating"):
        elongation_from_length(length("215 mm"), 11, PITCH, RULE)


def test_a_slack_chain_is_refused_with_the_reason() -> None:
    """A slack chain is refused: it can read new whatever its wear."""
    with pytest.raises(BadInput) as refused:
        check_taut(taut=False, field="span.taut")
    (problem,) = refused.value.problems
    assert (problem.field, problem.given) == ("span.taut", "false")
    assert "a slack chain can read new whatever its wear" in problem.expected


def test_a_taut_chain_is_taken() -> None:
    """A taut chain raises nothing, so that a reading of it goes on."""
    check_taut(taut=True)
    assert over_16("304.8 mm").value == 0


@pytest.mark.parametrize(
    ("text", "percent"),
    [("304.8 mm", "0"), ("313.944 mm", "3"), ("12 in", "0"), ("12.36 in", "3"), ("301.752 mm", "-1")],
)
def test_elongation_is_exact(text: str, percent: str) -> None:
    """Elongation is the share of the nominal length, exactly, in either unit."""
    assert over_16(text).value == Fraction(percent)


def test_half_a_graduation_either_side_is_the_interval() -> None:
    """A rule of 1 mm gives an interval of 1 mm: 0.328 % of 304.8 mm."""
    read = over_16("310 mm")
    assert read.low is not None
    assert read.high is not None
    assert read.high - read.low == 100 / (16 * PITCH)
    assert (read.high + read.low) / 2 == read.value


def test_a_reading_says_how_it_was_taken() -> None:
    """The reading keeps its instrument and the unit it was written in."""
    read = over_16("12 1/4 in")
    assert (read.dimension, read.unit_name, read.instrument) == ("percent", "in", RULE)


@pytest.mark.parametrize(
    ("passed", "stopped", "value", "low", "high"),
    [("2", None, "2", None, "2"), (None, "3", "3", "3", None), ("3", "2", "3", "2", "3")],
)
def test_legs_are_an_interval(
    passed: str | None, stopped: str | None, value: str, low: str | None, high: str | None
) -> None:
    """A leg that the chain passes bounds it above, one that it has reached bounds it below."""
    read = elongation_from_legs(leg(passed), leg(stopped), LEGS)
    assert (read.value, read.low, read.high) == (Fraction(value), leg(low), leg(high))


def test_legs_carry_the_doubt_of_the_gauge() -> None:
    """A pass is no number without doubt: the gauge's own uncertainty goes with it."""
    read = elongation_from_legs(Fraction(2), None, LEGS)
    assert read.standard_uncertainty == LEGS.standard_uncertainty > 0


def test_no_leg_is_refused() -> None:
    """A gauge reading without any leg is refused."""
    with pytest.raises(BadInput, match="the leg that the chain passes, or stops_at"):
        elongation_from_legs(None, None, LEGS)


@pytest.mark.parametrize("stopped", [2, 3])
def test_contradicting_legs_are_refused(stopped: int) -> None:
    """A chain cannot pass a leg at or below one that it has reached."""
    with pytest.raises(BadInput) as refused:
        elongation_from_legs(Fraction(2), Fraction(stopped), LEGS)
    (problem,) = refused.value.problems
    assert problem.given == f"passes 2 %, stops_at {stopped} %"


def test_growth_from_a_first_reading() -> None:
    """With a first reading the growth is the difference and the tolerance of a new chain drops out."""
    grown = growth_since_fitting(over_16("310 mm"), over_16("305 mm"))
    assert grown.percent == 100 * Fraction(5) / (16 * PITCH)
    assert grown.from_first_reading


def test_growth_without_a_first_reading() -> None:
    """Without one the growth is reckoned from nominal, and its doubt is larger."""
    now = over_16("310 mm")
    grown = growth_since_fitting(now, None)
    assert (grown.percent, grown.from_first_reading) == (now.value, False)
    assert grown.standard_uncertainty > now.standard_uncertainty


def test_marks_stand_in_order() -> None:
    """Watch comes before the planned mark, that before discard, that before a miscount."""
    marks = elongation_figures()
    limits = [marks.nearing, marks.planned, marks.discard, marks.miscount]
    assert [m.at for m in limits] == sorted({m.at for m in limits})
    assert {m.worse for m in limits} == {Worse.HIGHER}


@pytest.mark.parametrize("name", ["discard", "planned", "nearing", "new_tolerance", "miscount", "edge_wear"])
def test_every_mark_has_a_source(name: str) -> None:
    """Each mark says where it comes from."""
    assert len(getattr(elongation_figures(), name).source.text) > len(name)
