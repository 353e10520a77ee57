"""The drawing of a strand."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from typing import Any

import pytest
from samples import condemned_truck, span

from mastwright.paperwork.chain_drawing import draw_strand, last_pitch, span_label
from mastwright.paperwork.judgement import VERDICTS
from mastwright.paperwork.labels import labels

SVG = "{http://www.w3.org/2000/svg}"


def strand(*spans: dict[str, Any]) -> dict[str, Any]:
    """Return a strand with these spans."""
    return {"spans": list(spans)}


def drawn(one: dict[str, Any], last: int | None = None) -> ET.Element:
    """Return the parsed drawing of a strand."""
    return ET.fromstring(draw_strand(one, labels("en"), last or last_pitch([one])))  # noqa: S314  our own drawing


def bars(svg: ET.Element) -> list[ET.Element]:
    """Return the outlines of the spans, in order."""
    return [r for r in svg.iter(f"{SVG}rect") if r.get("fill") == "none"]


def texts(svg: ET.Element) -> list[str]:
    """Return the words of a drawing, the white rims left out."""
    return [t.text or "" for t in svg.iter(f"{SVG}text") if t.get("stroke") is None]


def test_lengths_are_to_scale_of_pitches() -> None:
    """A span of twice the pitches is twice as long, and starts where it was measured."""
    one, two = bars(drawn(strand(span(0, 1.0, "fit"), span(20, 1.0, "fit", pitches=32))))
    assert float(two.get("width", 0)) == pytest.approx(2 * float(one.get("width", 0)), abs=0.02)
    per_pitch = float(one.get("width", 0)) / 16
    assert float(two.get("x", 0)) - float(one.get("x", 0)) == pytest.approx(20 * per_pitch, abs=0.02)


def test_ticks_stand_at_their_pitch() -> None:
    """The scale below and the bars above agree."""
    svg = drawn(strand(span(10, 1.0, "fit", pitches=20)))
    (bar,) = bars(svg)
    ticks = {t.text: float(t.get("x", 0)) for t in svg.iter(f"{SVG}text") if (t.text or "").isdigit()}
    assert ticks["10"] == pytest.approx(float(bar.get("x", 0)), abs=0.02)
    assert ticks["30"] == pytest.approx(float(bar.get("x", 0)) + float(bar.get("width", 0)), abs=0.02)


def test_strands_of_a_set_share_a_scale() -> None:
    """With the same reach, equal spans of two strands are equally long."""
    short, long = strand(span(0, 1.0, "fit")), strand(span(0, 1.0, "fit"), span(90, 1.0, "fit"))
    last = last_pitch([short, long])
    assert last == 110
    assert bars(drawn(short, last))[0].get("width") == bars(drawn(long, last))[0].get("width")


def test_worst_is_marked_by_word_and_edge() -> None:
    """The worst span says so in bold and has a thicker edge."""
    svg = drawn(strand(span(0, 1.0, "fit"), span(20, 2.5, "replace", worst=True)))
    plain, worst = bars(svg)
    assert float(worst.get("stroke-width", 0)) > float(plain.get("stroke-width", 0))
    (bold,) = [
        t for t in svg.iter(f"{SVG}text") if t.get("font-weight") == "bold" and t.get("stroke") is None
    ]
    assert bold.text == "2.50 ± 0.08 % · replace · worst"


def test_verdicts_are_told_without_colour() -> None:
    """Each verdict but fit has a hatch of its own, and each has its word."""
    spans = [span(20 * n, 1.0, verdict) for n, verdict in enumerate(VERDICTS)]
    text = draw_strand(strand(*spans), labels("en"), 140)
    used = re.findall(r'fill="url\(#([a-z-]+)\)"', text)
    assert sorted(used) == sorted(v.replace(" ", "-") for v in VERDICTS if v != "fit")
    patterns = re.findall(r'<pattern id="[a-z-]+"[^>]*>(.*?)</pattern>', text)
    assert len(set(patterns)) == len(VERDICTS) - 1
    for verdict in VERDICTS:
        assert labels("en")["verdict"][verdict] in text


def test_spans_and_words_never_overlap() -> None:
    """Spans that share pitches stand in lanes of their own; neighbours share one."""
    close = bars(drawn(strand(span(0, 1.0, "fit", pitches=24), span(24, 1.0, "fit", pitches=24))))
    assert close[0].get("y") == close[1].get("y")
    crowd = bars(drawn(strand(*(span(2 * n, 1.0, "withdraw") for n in range(6)))))
    places = [(float(b.get("y", 0)), float(b.get("x", 0)), float(b.get("width", 0))) for b in crowd]
    for n, (y, x, width) in enumerate(places):
        for other_y, other_x, other_width in places[n + 1 :]:
            assert y != other_y or x + width <= other_x or other_x + other_width <= x


def test_words_stay_on_the_sheet() -> None:
    """The label of a short span at the edge is moved in, not cut off."""
    svg = drawn(
        strand(span(0, 1.0, "remeasure", pitches=2, worst=True), span(398, 1.0, "remeasure", pitches=2))
    )
    width = float(svg.get("viewBox", "").split()[2])
    for text in svg.iter(f"{SVG}text"):
        half = len(text.text or "") * 2.7 * 0.5 / 2
        if text.get("text-anchor") == "middle" and not (text.text or "").lstrip("-").isdigit():
            assert half <= float(text.get("x", 0)) <= width - half


def test_negative_start_is_on_the_sheet() -> None:
    """A span that begins before the tangent is drawn there."""
    (bar,) = bars(drawn(strand(span(-12, 1.0, "fit"))))
    assert float(bar.get("x", 0)) > 0


def test_empty_strand_is_a_bare_chain() -> None:
    """Without spans there are no bars, and the scale is still named."""
    svg = drawn(strand())
    assert bars(svg) == []
    assert labels("en")["drawing"]["axis"] in texts(svg)


def test_endless_chain_still_has_a_scale() -> None:
    """Even a span of an absurd start gets ticks."""
    assert any(t.isdigit() for t in texts(drawn(strand(span(900_0, 1.0, "fit")))))


def test_label_in_spanish() -> None:
    """The words over a span follow the language."""
    assert span_label(span(0, 3.2, "withdraw", worst=True), labels("es")) == "3.20 ± 0.08 % · retirar · peor"


def test_same_drawing_twice() -> None:
    """Equal input gives equal drawings."""
    one = condemned_truck()["chains"][0]["strands"][0]
    assert draw_strand(one, labels("en"), 70) == draw_strand(one, labels("en"), 70)
