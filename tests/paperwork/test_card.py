"""The shop card of chain lengths."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from pdf_text import open_pdf, page_text

from mastwright.chains.spans import card_document, shop_card
from mastwright.chains.standard import find_chain, leaf_chains
from mastwright.paperwork import card_pdf
from mastwright.paperwork.card import shared_name
from mastwright.quantity import BadInput

DAY = date(2026, 3, 12)


def card(name: str) -> dict[str, object]:
    """Return the card of one chain."""
    return card_document(shop_card(find_chain(name)))


@pytest.mark.parametrize(("language", "units"), [("en", "metric"), ("es", "inch")])
def test_all_chains_fit_on_one_page(language: str, units: str) -> None:
    """Every chain of the standard table hangs on one page, in both languages and units."""
    cards = [card_document(shop_card(chain)) for chain in leaf_chains()]
    assert len(open_pdf(card_pdf(cards, DAY, language, units)).pages) == 1


def test_metric_lengths() -> None:
    """Pitches, pins, new length and the three marks stand in a row, with the marks' sources below."""
    text = page_text(card_pdf([card("BL634")], DAY))
    assert "1617304.8mm307.8mm310.8mm313.9mm" in text
    assert "LH1234/BL634" in text
    assert "US Army TM 10-3930-671-24".replace(" ", "") in text


def test_inch_lengths_in_spanish() -> None:
    """Inches are written to 1/64, rounded down."""
    text = page_text(card_pdf([card("BL634")], DAY, "es", "inch"))
    assert "161712in127/64in1215/64in1223/64in" in text
    assert "sustituirya" in text


def test_chains_of_one_pitch_share_rows() -> None:
    """Chains of one pitch and plate are named together; another plate has its own height."""
    text = page_text(card_pdf([card("BL622"), card("BL634"), card("LL1222")], DAY))
    assert "LH12../BL6..:2234" in text
    assert "LL1222" in text
    assert text.count("304.8mm") == 1


def test_same_bytes_twice() -> None:
    """The card is the same bytes each time."""
    assert card_pdf([card("BL634")], DAY) == card_pdf([card("BL634")], DAY)


def test_different_stems_are_named_apart() -> None:
    """Names that share no stem stand one after the other."""
    assert shared_name(["AL522", "LL1022", "LL1044"]) == "AL522; LL10..: 22 44"


@pytest.mark.parametrize(
    ("given", "match"),
    [
        ({"cards": []}, "cards: 'none' given; at least one chain"),
        ({"units": "cubits"}, "units: 'cubits' given; one of metric, inch"),
        ({"language": "la"}, "language: 'la' given; one of en, es"),
    ],
)
def test_bad_input_is_named(given: dict[str, Any], match: str) -> None:
    """No chain, unknown units or an unknown language are refused by name."""
    with pytest.raises(BadInput, match=match):
        card_pdf(**{"cards": [card("BL634")], "day": DAY, **given})
