"""Verdicts on chains against what is published outside the project."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.elongation import elongation_from_length
from mastwright.quantity import Field, common_instruments, parse_quantity
from mastwright.verdict import Verdict, judge_elongation, judge_set, shop_policy
from verdict.made import DAY, chain_set, finding, percent

INCH = Fraction("25.4")
POLICY = shop_policy()


def verdict(text: str, pitches: int, pitch: Fraction, instrument: str) -> Verdict:
    """Return the verdict on a length as written."""
    found = common_instruments().find(instrument, "length")
    length = parse_quantity(text, Field("length", "length"))
    return judge_elongation(elongation_from_length(length, pitches, pitch, found), POLICY)[0]


@pytest.mark.parametrize("instrument", ["rule", "tape", "calliper"])
def test_the_army_figure_is_withdrawn(instrument: str) -> None:
    """US Army TM 10-3930-671-24 (read): 12.375 in over 12 pitches of 1 in is to be replaced."""
    assert verdict("12.375 in", 12, INCH, instrument) is Verdict.WITHDRAW


@pytest.mark.parametrize("pitches", [12, 16])
def test_the_telehandler_figure_is_withdrawn(pitches: int) -> None:
    """A telehandler manual (read): discard at 12.36 in where 12.00 in is new; exactly 3 % counts."""
    assert verdict("12.36 in", pitches, Fraction(12, pitches) * INCH, "calliper") is Verdict.WITHDRAW


def test_a_little_worn_chain_of_five_eighths_is_fit() -> None:
    """A page on leaf-chain wear (read): 286.7 mm over 18 pitches of 15.875 mm, 0.33 %, is hardly worn."""
    assert verdict("286.7 mm", 18, Fraction("15.875"), "rule") is Verdict.FIT


@pytest.mark.parametrize(("read", "instrument"), [("2.8", 0.131), ("2.95", 0.033)])
def test_a_reading_too_near_the_limit_is_measured_again(read: str, instrument: float) -> None:
    """ISO 14253-1:2017 (from memory): between the zones of proof neither is proven; u as computed."""
    assert judge_elongation(percent(read, instrument), POLICY)[0] is Verdict.REMEASURE


def test_a_calliper_settles_what_a_rule_cannot() -> None:
    """2.8 % read: 6.2 % in doubt with u 0.13, 0.003 % with u 0.05 (computed), so that one is settled."""
    found = [judge_elongation(percent("2.8", u), POLICY) for u in (0.13, 0.05)]
    assert [str(v) for v, _, _ in found] == ["remeasure", "replace"]
    assert [round(100 * p, 1) for _, p, _ in found] == [6.2, 0.0]


def test_between_two_and_three_percent_there_is_a_date() -> None:
    """UK chain guidance for examiners (read): a date of replacement, at the latest 3 months after."""
    found = judge_set(chain_set({"left": [percent("2.4")], "right": [percent("2.4")]}), POLICY, DAY)
    by = found.items[0].by
    assert by is not None
    assert (by.year, by.month, by.day) == (2027, 2, 20)


@pytest.mark.parametrize(
    "key", ["turned-pin", "protruding-pin", "fatigue-crack", "missing-plate", "bent-plate"]
)
def test_what_condemns_a_chain_at_sight(key: str) -> None:
    """US Army TM 10-3930-671-24 and truck makers' manuals (read): replaced in pairs, whatever its length."""
    sound = {"left": [percent("0.2")], "right": [percent("0.2")]}
    found = judge_set(chain_set(sound, findings=[finding(key, "left")]), POLICY, DAY)
    assert {i.verdict for i in found.items} == {Verdict.WITHDRAW}
