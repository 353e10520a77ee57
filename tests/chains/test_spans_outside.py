"""Lengths new and worn against figures published outside the project."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.spans import card_document, customary_spans, shop_card, span_card
from mastwright.chains.standard import find_chain

INCH = Fraction("25.4")


@pytest.mark.parametrize(("name", "pitches"), [("BL834", 12), ("BL634", 16)])
def test_a_foot_is_discarded_at_12_36_inches(name: str, pitches: int) -> None:
    """Telehandler manual (read): 13 pins of 1 in or 17 of 3/4 in, 12.00 in new, discard at 12.36 in."""
    span = span_card(find_chain(name), pitches)
    assert (span.new / INCH, span.at_3 / INCH) == (Fraction(12), Fraction("12.36"))
    assert customary_spans(find_chain(name))[0] == pitches


def test_the_army_figure_is_past_three_percent() -> None:
    """US Army TM 10-3930-671-24 (read): 12.375 in over 12 pitches of 1 in, which is 3.125 %."""
    span = span_card(find_chain("BL834"), 12)
    army = Fraction("12.375") * INCH
    assert army > span.at_3
    assert army / span.new - 1 == Fraction("0.03125")


def test_the_printed_inch_limit_stays_below_the_army_figure() -> None:
    """Rounded down, 12.36 in prints as 12 23/64 in and never as 12 3/8 in."""
    document = card_document(shop_card(find_chain("BL834")))
    spans = document["spans"]
    assert isinstance(spans, list)
    assert spans[0]["at_3_percent_in"] == "12 23/64"


def test_twenty_pitches_of_three_quarters() -> None:
    """A truck maker's manual (read): 20 pitches of 3/4 in, 15 in new, limit 15.45 in."""
    span = span_card(find_chain("BL634"), 20)
    assert (span.new / INCH, span.at_3 / INCH) == (Fraction(15), Fraction("15.45"))


def test_twenty_pitches_of_three_quarters_in_millimetres() -> None:
    """An answer page on chain wear (read): 381 mm new; 2 % is 7.62 mm and 3 % is 11.43 mm."""
    span = span_card(find_chain("BL634"), 20)
    assert span.new == Fraction(381)
    assert (span.at_2 - span.new, span.at_3 - span.new) == (Fraction("7.62"), Fraction("11.43"))


@pytest.mark.parametrize(
    ("name", "pitches", "new", "at_1", "at_2", "at_3"),
    [
        # Worked by hand from n p (1 + e), as 20 x 15.875 x 1.03 = 327.025; foot rows: telehandler manual.
        ("AL322", 32, "304.8", "307.8", "310.9", "313.9"),
        ("BL422", 24, "304.8", "307.8", "310.9", "313.9"),
        ("BL522", 20, "317.5", "320.7", "323.9", "327.0"),
        ("BL622", 16, "304.8", "307.8", "310.9", "313.9"),
        ("BL822", 12, "304.8", "307.8", "310.9", "313.9"),
        ("BL1022", 10, "317.5", "320.7", "323.9", "327.0"),
        ("BL1222", 8, "304.8", "307.8", "310.9", "313.9"),
        ("BL1622", 6, "304.8", "307.8", "310.9", "313.9"),
    ],
)
def test_the_table_of_customary_lengths(
    name: str, pitches: int, new: str, at_1: str, at_2: str, at_3: str
) -> None:
    """Customary lengths of each pitch, to 0.1 mm."""
    chain = find_chain(name)
    assert customary_spans(chain)[0] == pitches
    span = span_card(chain, pitches)
    for exact, printed in ((span.new, new), (span.at_1, at_1), (span.at_2, at_2), (span.at_3, at_3)):
        assert abs(exact - Fraction(printed)) <= Fraction("0.05")


def test_seven_pitches_are_never_customary() -> None:
    """1 3/4 in: 7 pitches come nearest to a foot, but manuals (telehandler, read) use even counts."""
    assert customary_spans(find_chain("BL1434")) == (6, 14, 20)


@pytest.mark.parametrize(("name", "limit"), [("BL634", "0.677"), ("BL834", "0.902")])
def test_edge_wear_limits_of_machine_manuals(name: str, limit: str) -> None:
    """Machine manuals (read): 0.713 to 0.677 in, 0.950 to 0.902 in."""
    at = shop_card(find_chain(name)).edge_wear.limit.at / INCH
    assert abs(at - Fraction(limit)) < Fraction("0.001")


def test_new_tolerance_of_a_foot() -> None:
    """ASME B29.8 cl. 1.6 (read): 0.031 in per ft, 0.79 mm."""
    spans = card_document(shop_card(find_chain("BL834")))["spans"]
    assert isinstance(spans, list)
    assert spans[0]["new_tolerance_mm"] == pytest.approx(0.031 * 25.4, rel=1e-3)
