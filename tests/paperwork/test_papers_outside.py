"""Papers against what lies outside the project: page sizes, PDF standards, contrast, colours."""

from __future__ import annotations

from typing import Any

import pikepdf
import pytest
from pdf_text import open_pdf
from samples import condemned_photos, condemned_truck, sound_truck

from mastwright.paperwork import palette as colours
from mastwright.paperwork import papers, report_pdf, tag_pdf
from mastwright.paperwork.tag import main_words_cap_height_mm

POINTS = 72 / 25.4


def metadata(pdf: pikepdf.Pdf, name: str) -> str | None:
    """Return one property of the XMP metadata."""
    with pdf.open_metadata() as meta:
        value = meta.get(name)
    return None if value is None else str(value)


@pytest.mark.parametrize("name", ["report", "order", "tag", "refusal"])
def test_papers_claim_pdf_a_3a_and_ua_1(name: str) -> None:
    """Each paper claims PDF/A-3a (ISO 19005-3) and PDF/UA-1 (ISO 14289-1) and has what both ask for.

    What the file claims; no validator has been run.
    """
    pdf = open_pdf(papers(condemned_truck(), condemned_photos())[f"V-2026-0108-{name}.pdf"])
    assert metadata(pdf, "pdfaid:part") == "3"
    assert metadata(pdf, "pdfaid:conformance") == "A"
    assert metadata(pdf, "pdfuaid:part") == "1"
    assert metadata(pdf, "dc:title")
    assert pdf.Root.MarkInfo.Marked
    assert "/StructTreeRoot" in pdf.Root
    assert str(pdf.Root.Lang) == "en"
    assert len(pdf.Root.OutputIntents) == 1
    assert pdf.Root.ViewerPreferences.DisplayDocTitle


def test_attachment_is_declared_as_data() -> None:
    """The attached file is the document's data, with its media type (ISO 19005-3, 6.8)."""
    pdf = open_pdf(report_pdf(sound_truck()))
    (spec,) = list(pdf.Root.AF)
    assert str(spec.AFRelationship) == "/Data"
    assert str(spec.EF.F.Subtype) == "/application/json"
    assert str(spec.UF) == "judgement.json"


def test_no_clock_in_the_file() -> None:
    """Dates in the file are the visit's day, not the day of printing."""
    pdf = open_pdf(report_pdf(sound_truck()))
    for name in ("xmp:CreateDate", "xmp:ModifyDate"):
        assert (metadata(pdf, name) or "2026-03-12").startswith("2026-03-12")
    assert "20260312" in str(pdf.docinfo["/CreationDate"])


@pytest.mark.parametrize(
    ("made", "width", "height"),
    [
        (tag_pdf(condemned_truck()), 105, 148),  # A6, ISO 216 (read: 105 mm x 148 mm)
        (report_pdf(sound_truck()), 210, 297),  # A4, ISO 216
    ],
)
def test_page_sizes_of_iso_216(made: bytes, width: float, height: float) -> None:
    """The tag is A6 and the report A4, every page of it."""
    for page in open_pdf(made).pages:
        size: list[Any] = [float(v) for v in page.mediabox]
        assert size == pytest.approx([0, 0, width * POINTS, height * POINTS], abs=0.1)


def test_letters_of_the_tag_by_the_rule_of_thumb() -> None:
    """Letters for 2 m lie between 1/300 and 1/200 of the distance (common practice, no source)."""
    assert 2000 / 300 <= main_words_cap_height_mm() <= 2000 / 200


def luminance(colour: str) -> float:
    """Return the relative luminance of WCAG 2.2 (from memory)."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize("word", ["danger", "warning", "caution"])
def test_signal_words_have_contrast(word: str) -> None:
    """Letters of a signal word, large and bold, stand 3:1 against their ground (WCAG 2.2, 1.4.3)."""
    ground, letters = sorted(map(luminance, colours.SIGNAL_COLOURS[word]))
    assert (letters + 0.05) / (ground + 0.05) >= 3


def test_colours_are_those_of_okabe_and_ito() -> None:
    """The palette is the published one (M. Okabe, K. Ito; RGB values from memory)."""
    published = {
        "BLACK": (0, 0, 0),
        "ORANGE": (230, 159, 0),
        "GREEN": (0, 158, 115),
        "YELLOW": (240, 228, 66),
        "BLUE": (0, 114, 178),
        "VERMILLION": (213, 94, 0),
        "PURPLE": (204, 121, 167),
    }
    for name, (red, green, blue) in published.items():
        assert getattr(colours, name) == f"#{red:02X}{green:02X}{blue:02X}"
