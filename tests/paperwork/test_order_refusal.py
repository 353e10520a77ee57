"""The parts order and the refusal sheet."""

from __future__ import annotations

import re

from pdf_text import open_pdf, page_text
from samples import condemned_truck, spanish_inch_truck

from mastwright.paperwork import order_pdf, refusal_pdf


def printed(word: str, text: str) -> bool:
    """Tell whether words stand in a text read without spaces."""
    return re.sub(r"\s", "", word) in text


def test_order_says_all_a_supplier_needs() -> None:
    """Quantity, part, designation, length, ends, certificate, reason and date stand in the order."""
    text = page_text(order_pdf(condemned_truck()))
    for word in (
        "2 pieces",
        "Leaf chain LH1234 / BL634",
        "Length: 124 pitches",
        "Ends: one inner, one outer",
        "Truck 9",
        "Certificate: minimum breaking load",
        "new pins go with every new chain",
        "2026-04-12",
        "DEMO-48-0014",
        "Compare every line with the maker's parts list",
        "Supplier",
    ):
        assert printed(word, text), word


def test_order_in_spanish() -> None:
    """The order's own words follow the judgement's language."""
    text = page_text(order_pdf(spanish_inch_truck()))
    assert printed("Pedido de piezas", text)
    assert printed("Par de horquillas", text)


def test_long_order_repeats_its_head() -> None:
    """An order over two pages shows what its columns are on both."""
    document = condemned_truck()
    document["order"] = [{**document["order"][0], "line": n} for n in range(1, 31)]
    data = order_pdf(document)
    assert len(open_pdf(data).pages) >= 2
    assert "Neededby" in page_text(data, 2)


def test_refused_withdrawal_keeps_the_truck_out() -> None:
    """A refused withdrawal says in words that the truck must not be used, refusal or not."""
    text = page_text(refusal_pdf(condemned_truck()))
    assert text.count("Thetruckmustnotbeused.Thisrefusaldoesnotchangethat.") == 1
    assert text.count("Theverdictstands.") == 1
    for word in (
        "Replacement of the main lift chains",
        "A worn chain can part",
        "until both strands are replaced",
        "Peak season",
        "M.O.",
        "Marit Oduya",
        "LOLER 1998, regulation 9",
        "It is no legal advice",
        "For the customer",
        "DANGER",
    ):
        assert printed(word, text), word


def test_refusal_of_an_item_unknown_to_the_judgement() -> None:
    """A refusal of something that is no item shows the verdict it came with."""
    document = condemned_truck()
    document["refusals"] = [{**document["refusals"][0], "item": "none", "verdict_text": "advised only"}]
    document["legal"] = []
    text = page_text(refusal_pdf(document))
    assert printed("advised only", text)
    assert not printed("Law and rules that apply", text)


def test_same_bytes_twice() -> None:
    """Order and refusal sheet are the same bytes each time."""
    document = condemned_truck()
    assert order_pdf(document) == order_pdf(condemned_truck())
    assert refusal_pdf(document) == refusal_pdf(condemned_truck())
