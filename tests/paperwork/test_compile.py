"""Templates and data made into PDF; what people write cannot break it."""

from __future__ import annotations

from typing import Any

import pytest
from pdf_text import open_pdf, page_text
from samples import condemned_photos, condemned_truck

from mastwright.paperwork import papers, report_pdf
from mastwright.paperwork.compile import SUBSTITUTE, shown_text

HOSTILE = [
    '#panic("x") #import "@preview/x:1.0.0" $x^2$ *b* _i_ `r` <l> @ref // /* */ \\ = h - l + n',
    "]] }} )) [[ {{ (( #{ #[ ",
    "\"quotes\" 'single' “curly” ‹angle› <b>&amp;</b> ]]>",
    "line\nbreak\r\nand\ttab\x00\x07\x7f\x85\u2028",
    "emoji 🔩🚜 and 日本語 and \ue000 and \U0010ffff",
    "\u202eturned\u202c \u200bzero\ufeff soft\u00adhyphen",
    "x" * 500,
    "https://" + "long.example/" * 30,
    "é̂̃ combining \u0301\u0302",
    "مرحبا Ж Ω ą שלום",
]


def filled(given: Any, text: str) -> Any:
    """Return the document with every free text replaced by one."""
    fixed = {
        "format",
        "language",
        "units",
        "verdict",
        "own_verdict",
        "date",
        "by",
        "may_work_until",
        "key",
        "file",
    }
    if isinstance(given, dict):
        return {
            k: v if k in fixed and isinstance(v, str | None) else filled(v, text) for k, v in given.items()
        }
    if isinstance(given, list):
        return [filled(one, text) for one in given]
    return text if isinstance(given, str) else given


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_texts_are_printed_not_obeyed(text: str) -> None:
    """Markup, brackets, quotes, controls, strange scripts and endless words give whole papers."""
    document = filled(condemned_truck(), text)
    document["visit"]["id"] = "V-1"
    made = papers(document, condemned_photos())
    assert len(made) == 4
    for data in made.values():
        assert len(open_pdf(data).pages) >= 1


def test_markup_is_shown_as_written() -> None:
    """Signs that mean something to the typesetter come out as they went in."""
    document = condemned_truck()
    document["truck"]["id"] = "#T[1]*_$<9>@x\\`~"
    assert "#T[1]*_$<9>@x\\`~" in page_text(report_pdf(document), 1)


def test_unknown_characters_give_way_visibly() -> None:
    """What no typeface has is shown as a box, and a line says so."""
    document = condemned_truck()
    assert "□standsfor" not in page_text(report_pdf(document))
    document["visit"]["customer"] = "日本 Stores"
    text = page_text(report_pdf(document))
    assert f"{SUBSTITUTE * 2}Stores" in text
    assert "□standsforacharacter" in text


def test_other_scripts_at_hand_are_kept() -> None:
    """Letters that a typeface at hand has are printed as they are."""
    assert shown_text({"a": ["Жук, Ωmega, Łódź ≤ ½"], "n": 3}) == (
        {"a": ["Жук, Ωmega, Łódź ≤ ½"], "n": 3},
        False,
    )


@pytest.mark.parametrize(
    ("given", "shown"),
    [
        ("a\nb\tc", "a b c"),
        ("a\u202eb", "ab"),
        ("3\u00a0mm", "3\u00a0mm"),
        ("3\u202fmm", "3\u00a0mm"),
        ("e\u0301", "é"),
        ("\ue000\U0010ffff", SUBSTITUTE * 2),
        ("", ""),
        ("m" * 20, "m" * 20),
        ("m" * 25, "m" * 10 + "\u200b" + "m" * 10 + "\u200b" + "m" * 5),
    ],
)
def test_texts_made_printable(given: str, shown: str) -> None:
    """Controls become spaces, marks of direction vanish, long words may break."""
    assert shown_text(given)[0] == shown
