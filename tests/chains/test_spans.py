"""Customary stretches and the shop card."""

from __future__ import annotations

import json
import string
from dataclasses import replace
from fractions import Fraction

import pytest

from mastwright.chains.elongation import elongation_figures
from mastwright.chains.note import note_sentences, note_text
from mastwright.chains.spans import card_document, customary_spans, shop_card, span_card, span_figures
from mastwright.chains.standard import LeafChain, find_chain, leaf_chains
from mastwright.quantity import Note

ROWS = pytest.mark.parametrize("chain", leaf_chains(), ids=lambda chain: chain.short_name)


@ROWS
def test_spans_are_even_distinct_and_rising(chain: LeafChain) -> None:
    """Growth shows only over an even count; shorter stretches come first."""
    spans = customary_spans(chain)
    assert all(n % 2 == 0 and n >= 2 for n in spans)
    assert list(spans) == sorted(set(spans))


@ROWS
def test_no_other_even_count_is_nearer(chain: LeafChain) -> None:
    """Each span is the even number nearest 1, 2 or 3 ft: it misses by no more than one pitch."""
    for n, feet in zip(customary_spans(chain), (1, 2, 3), strict=True):
        assert abs(n * chain.pitch - feet * Fraction("304.8")) <= chain.pitch


@ROWS
def test_marks_are_exact_growth(chain: LeafChain) -> None:
    """1, 2 and 3 % of the nominal length, without rounding."""
    for span in shop_card(chain).spans:
        growth = [100 * (at / span.new - 1) for at in (span.at_1, span.at_2, span.at_3)]
        assert span.new == span.pitches * chain.pitch
        assert growth == [Fraction(1), Fraction(2), Fraction(3)]


@ROWS
def test_printed_limits_stand_on_the_safe_side(chain: LeafChain) -> None:
    """A printed length limit is never above the exact one, a printed plate height never below it."""
    document = json.loads(json.dumps(card_document(shop_card(chain))))
    for span in document["spans"]:
        for n in (1, 2, 3):
            exact = Fraction(span["pitches"]) * chain.pitch * (100 + n) / 100
            inches = sum(Fraction(part) for part in span[f"at_{n}_percent_in"].split())
            assert exact / Fraction("25.4") - Fraction(1, 64) < inches <= exact / Fraction("25.4")
            assert exact - Fraction("0.1") < Fraction(span[f"at_{n}_percent_mm_text"]) <= exact
    limit = chain.plate_height_max * Fraction("0.95")
    assert limit <= Fraction(document["edge_wear"]["limit_mm_text"]) < limit + Fraction("0.01")
    assert (
        limit <= Fraction(document["edge_wear"]["limit_in"]) * Fraction("25.4") < limit + Fraction("0.0254")
    )


def test_a_very_long_pitch_still_has_two_pitches() -> None:
    """At least 2 pitches, whatever the pitch."""
    chain = find_chain("LL4822")
    longer = replace(chain, pitch=Fraction(2000))
    assert customary_spans(longer) == (2,)


def test_the_tie_goes_to_the_longer_stretch() -> None:
    """Halfway between 2 and 4 pitches, 4: the longer stretch is read more surely."""
    chain = find_chain("LL4822")
    odd = replace(chain, pitch=Fraction("101.6"))
    assert customary_spans(odd)[0] == 4


def test_the_document_has_the_agreed_names() -> None:
    """Names and unrounded numbers that others read."""
    document = card_document(shop_card(find_chain("BL534")))
    assert document["designation"] == "LH1034 / BL534"
    assert (document["pitch_mm"], document["evidence"]) == (15.875, "read")
    spans = document["spans"]
    assert isinstance(spans, list)
    wanted = {"pitches": 20, "new_mm": 317.5, "at_1_percent_mm": 320.675, "at_2_percent_mm": 323.85}
    assert wanted.items() <= spans[0].items()
    assert spans[0]["at_3_percent_mm"] == 327.025


def test_the_strength_says_how_it_is_known() -> None:
    """From memory, so the card asks for the certificate."""
    document = card_document(shop_card(find_chain("BL634")))
    assert document["strength"] == {
        "min_tensile_kN": 75.6,
        "min_tensile_lbf": 17000.0,
        "evidence": "from memory",
        "source": "minimum of ISO 4347:2015 / ASME B29.8",
    }
    assert any("from memory" in text and "certificate" in text for text in _warnings("BL634"))


@pytest.mark.parametrize("name", ["BL534", "BL1034", "BL1434", "BL2034"])
def test_pitches_that_do_not_divide_a_foot_are_warned_of(name: str) -> None:
    """5/8, 1 1/4, 1 3/4 and 2 1/2 in do not divide 12 in."""
    assert any("does not divide 12 in" in text for text in _warnings(name))


@pytest.mark.parametrize("name", ["BL434", "BL634", "BL834", "BL1234", "BL1634", "LL4822", "AL322"])
def test_pitches_that_divide_a_foot_are_not(name: str) -> None:
    """1/2, 3/4, 1, 1 1/2, 2, 3 and 3/8 in divide 12 in."""
    assert not any("does not divide" in text for text in _warnings(name))


def test_pitches_not_pins() -> None:
    """The card says how many pins stand at so many pitches."""
    assert "Count pitches, not pins: 16 pitches lie between 17 pins." in _warnings("BL634")


def test_a_doubtful_row_says_so() -> None:
    """The flag of a row reaches the card, and a sound row has none."""
    assert any("thickness doubtful" in text for text in _warnings("BL534"))
    assert not any("Doubtful" in text for text in _warnings("BL634"))


def test_cautions_close_the_card() -> None:
    """Maker's manual, local law and competent persons come first, in both languages."""
    assert "manual and local law come first" in _warnings("BL634")[-1]
    assert "ley local" in _warnings("BL634", "es")[-1]


def test_marks_agree_with_the_limits_of_elongation() -> None:
    """The card's 2 and 3 % are the planned and the discard mark."""
    figures = elongation_figures()
    assert span_figures()["mark_2"].value == figures.planned.at
    assert span_figures()["mark_3"].value == figures.discard.at


def test_any_even_count_can_be_asked_for() -> None:
    """A span of the technician's own choice."""
    assert span_card(find_chain("BL834"), 2).at_3 == Fraction("52.324")


@pytest.mark.parametrize("table", ["card_notes.toml", "identify_notes.toml"])
def test_notes_say_the_same_in_both_languages(table: str) -> None:
    """Each note stands in English and Spanish with the same braces."""
    for code, languages in note_sentences(table).items():
        braces = [
            sorted(f for _, f, _, _ in string.Formatter().parse(languages[x]) if f) for x in ("en", "es")
        ]
        assert set(languages) == {"en", "es"}, code
        assert braces[0] == braces[1], code


def test_a_note_is_said_with_its_figures() -> None:
    """What stands in braces is filled in."""
    assert note_text(Note("odd-pitches", {"pitches": "7"}), "identify_notes.toml").startswith(
        "An odd number of pitches (7)"
    )


def _warnings(name: str, language: str = "en") -> list[str]:
    warnings = card_document(shop_card(find_chain(name)), language)["warnings"]
    assert isinstance(warnings, list)
    return warnings
