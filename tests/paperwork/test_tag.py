"""The out-of-service tag."""

from __future__ import annotations

from typing import Any

import pytest
from pdf_text import open_pdf, page_text, runs
from samples import condemned_truck, sound_truck

from mastwright.paperwork import tag_pdf
from mastwright.paperwork.tag import main_words_cap_height_mm
from mastwright.quantity import BadInput


def spanish() -> dict[str, Any]:
    """Return the condemned truck with the fixed words in Spanish."""
    return {**condemned_truck(), "language": "es"}


@pytest.mark.parametrize(
    ("document", "words"),
    [
        (condemned_truck(), ("DANGER", "OUTOF", "SERVICE", "Onlyanauthorisedpersonremovesthistag")),
        (spanish(), ("PELIGRO", "FUERADE", "SERVICIO", "Solounapersonaautorizadaretiraestaetiqueta")),
    ],
)
def test_tag_says_what_it_must(document: dict[str, Any], words: tuple[str, ...]) -> None:
    """Signal word, out of service, truck, first reason, date, who, and who may remove it."""
    text = page_text(tag_pdf(document))
    for word in (
        *words,
        "Truck9",
        "Mainliftchains:leftstrandstretched3.12%",
        "2026-03-12",
        "InesHalvorsen",
        "V-2026-0108",
    ):
        assert word in text


@pytest.mark.parametrize("document", [condemned_truck(), spanish()])
def test_main_words_can_be_read_from_afar(document: dict[str, Any]) -> None:
    """Capitals of the main words are as high as the table of letters asks, by the font's own measure."""
    least = main_words_cap_height_mm()
    heights = {}
    for run in runs(open_pdf(tag_pdf(document))):
        cap = float(run.font["/DescendantFonts"][0]["/FontDescriptor"]["/CapHeight"]) / 1000
        heights[run.text.strip()] = run.size * cap * 25.4 / 72
    for word in (
        ("DANGER", "OUT OF", "SERVICE")
        if document["language"] == "en"
        else ("PELIGRO", "FUERA DE", "SERVICIO")
    ):
        assert heights[word] >= least - 0.001


@pytest.mark.parametrize("word", ["Truck with a rather long name of its own " * 8, "W" * 400])
def test_long_words_stay_on_one_tag(word: str) -> None:
    """However long id, reason and name are, the tag is one page and keeps its main words."""
    document = condemned_truck()
    document["truck"]["id"] = document["visit"]["technician"] = document["visit"]["id"] = word
    document["reasons"][0]["text"] = word
    data = tag_pdf(document)
    assert len(open_pdf(data).pages) == 1
    assert "…" in page_text(data)


def test_only_reason_needs_no_pointer_to_others() -> None:
    """A single reason is not followed by a hint at more."""
    document = condemned_truck()
    assert "Allreasons" in page_text(tag_pdf(document))
    document["reasons"] = document["reasons"][:1]
    assert "Allreasons" not in page_text(tag_pdf(document))


def test_without_reasons_the_outcome_stands() -> None:
    """A truck out of service without listed reasons carries the outcome as its reason."""
    document = condemned_truck()
    document["reasons"] = []
    document["outcome_text"] = "Out of service by the supervisor"
    assert "Outofservicebythesupervisor" in page_text(tag_pdf(document))


def test_no_tag_for_a_truck_that_may_work() -> None:
    """Asking for the tag of a working truck is refused."""
    with pytest.raises(BadInput, match="may_work: 'true' given; false"):
        tag_pdf(sound_truck())


def test_same_bytes_twice() -> None:
    """The tag is the same bytes each time."""
    assert tag_pdf(condemned_truck()) == tag_pdf(condemned_truck())
