"""The drawn chain path: valid, the same twice, wear darker and thicker, spans where they stand."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest

from mastwright.mast.path_drawing import MarkedSpan, WornPiece, draw_path, stacked

WORDS = {
    "lowered": "mast lowered",
    "raised": "raised",
    "anchor": "anchor",
    "carried": "carriage",
    "worn": "darker",
}
PITCH, WRAP, LONGEST = 19.05, 180.0, 1500.0


def drawn(raised_by: float = 700.0, spans: tuple[MarkedSpan, ...] = (MarkedSpan(1, 16, "pins 1-17"),)) -> str:
    """Return a drawing with two pieces of wear."""
    pieces = [WornPiece(0, 300, 1.0), WornPiece(300, 900, 0.25), WornPiece(900, 1200, 0.0)]
    return draw_path("main <chains>", PITCH, WRAP, LONGEST, raised_by, pieces, spans, WORDS)


def brackets(svg: str) -> list[list[float]]:
    """Return the numbers of each span's bracket."""
    return [
        [float(n) for n in re.findall(r"-?\d+\.?\d*", path)] for path in re.findall(r'<path d="([^"]+)"', svg)
    ]


def test_the_drawing_is_valid_xml_with_a_title() -> None:
    """Texts are escaped and the drawing says what it shows."""
    root = ET.fromstring(drawn())  # noqa: S314  our own drawing
    assert root[0].text == "main <chains>: darker"


def test_the_drawing_is_the_same_twice() -> None:
    """Nothing in it depends on more than its arguments."""
    assert drawn() == drawn()


def test_more_wear_is_thicker_and_darker() -> None:
    """Wear reads without colour; a piece without wear is not drawn over the chain."""
    lines = re.findall(r'stroke="rgb\((\d+),\d+,\d+\)" stroke-width="([\d.]+)"', drawn())
    unworn, worn, little = ((int(grey), float(width)) for grey, width in lines[:3])
    assert len(lines) == 2 * 3
    assert worn[0] < little[0] < unworn[0]
    assert worn[1] > little[1] > unworn[1]


def test_a_span_below_the_sheave_stands_on_the_anchor_side_once_raised() -> None:
    """Raised by more than span and wrap, the links of the span have run over the sheave."""
    lowered, raised = brackets(drawn())
    assert lowered[0] > 34
    assert raised[0] < 96
    assert "stroke-dasharray" not in drawn()


def test_a_span_across_the_sheave_is_dashed() -> None:
    """Raised by less, the span lies partly on the sheave and cannot be read there."""
    assert "stroke-dasharray" in drawn(raised_by=150.0)


@pytest.mark.parametrize("span", [(1, 4), (40, 60)])
def test_every_span_stays_on_the_sheet(span: tuple[int, int]) -> None:
    """The scale makes room for the longest run."""
    svg = drawn(spans=(MarkedSpan(*span, "pins"),))
    heights = [path[1] for path in brackets(svg)]
    assert all(0 <= y <= 112 for y in heights)


def test_without_spans_the_chain_alone_is_drawn() -> None:
    """Nothing to measure leaves no bracket."""
    assert brackets(drawn(spans=())) == []


def test_several_sets_stand_one_below_the_other() -> None:
    """A mast with two sets gives one valid drawing of twice the height."""
    root = ET.fromstring(stacked([drawn(), drawn()]))  # noqa: S314  our own drawing
    assert root.attrib["viewBox"] == "0 0 136 224"
    assert [part.attrib["y"] for part in root] == ["0", "112"]
