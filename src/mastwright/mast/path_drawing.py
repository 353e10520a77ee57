"""The path of a chain set drawn with the mast lowered and raised, its wear shaded along it.

Wear is drawn as thickness and darkness together, so that it reads in black and white; the spans to
measure are bracketed with their pins counted from the sheave.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from html import escape
from math import ceil, cos, pi, sin

_WIDTH, _HEIGHT = 136.0, 112.0
_TOP, _BOTTOM = 16.0, 102.0
_PANELS = (34.0, 96.0)
_LEAST_RADIUS = 7.0
_THIN, _THICK = 0.7, 4.2
_SPARE = 1.12
_ANCHOR_SHARE = 0.3


@dataclass(frozen=True)
class WornPiece:
    """A piece of chain and its wear.

    Parameters
    ----------
    start, end
        mm below the sheave tangent with the mast lowered; negative on the sheave and beyond it.
    wear
        Relative to the most worn piece, 0 to 1.
    """

    start: float
    end: float
    wear: float


@dataclass(frozen=True)
class MarkedSpan:
    """A span to measure: its first pin and its number of pitches below the sheave, and its label."""

    first_pitch: int
    pitches: int
    label: str


@dataclass(frozen=True)
class _Panel:
    """One of the two drawings: where its sheave stands, and the stroke at which it is drawn."""

    middle: float
    top: float
    radius: float
    scale: float
    stroke: float
    wrap: float

    def at(self, d: float) -> tuple[float, float]:
        """Return where the joint `d` mm below the lowered tangent stands on the sheet."""
        along = d - self.stroke
        if along >= 0:
            return self.middle + self.radius, self.top + along * self.scale
        if along <= -self.wrap:
            return self.middle - self.radius, self.top + (-along - self.wrap) * self.scale
        angle = pi * -along / self.wrap
        return self.middle + self.radius * cos(angle), self.top - self.radius * sin(angle)


def draw_path(
    title: str,
    pitch: float,
    wrap: float,
    longest_stroke: float,
    shown_stroke: float,
    pieces: Sequence[WornPiece],
    spans: Sequence[MarkedSpan],
    words: Mapping[str, str],
) -> str:
    """Return the path of one chain set as SVG, lowered beside raised.

    Parameters
    ----------
    title
        What the set is called.
    pitch, wrap
        Of the chain and of its length on the sheave, mm.
    longest_stroke, shown_stroke
        Largest stroke of the set, and the one at which it is drawn raised, mm.
    pieces
        Of the chain with their wear.
    spans
        To be measured.
    words
        ``lowered``, ``raised``, ``anchor``, ``carried``, ``worn``.

    Returns
    -------
    str
        SVG with a title for readers of the page that cannot see it.
    """
    run = max(longest_stroke * _SPARE, *(s.first_pitch * pitch + s.pitches * pitch for s in spans), 1.0)
    scale = (_BOTTOM - _TOP - 2 * _LEAST_RADIUS) / (shown_stroke + run)
    radius = max(_LEAST_RADIUS, wrap / pi * scale)
    low = _TOP + radius + shown_stroke * scale
    body: list[str] = []
    for middle, stroke, word in zip(_PANELS, (0.0, shown_stroke), ("lowered", "raised"), strict=True):
        panel = _Panel(middle, low - stroke * scale, radius, scale, stroke, wrap)
        body += _panel(panel, run, pitch, pieces, spans, words, word)
    spoken = escape(f"{title}: {words['worn']}")
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_n(_WIDTH)} {_n(_HEIGHT)}" role="img" '
        f'font-family="Atkinson Hyperlegible, sans-serif" font-size="4">'
        f"<title>{spoken}</title>"
        f'<text x="2" y="5.5" font-size="5" font-weight="bold">{escape(title)}</text>{"".join(body)}</svg>'
    )


def stacked(drawings: Sequence[str]) -> str:
    """Return several drawn paths in one SVG, one below the other."""
    width = _n(_WIDTH)
    size = f'width="{width}" height="{_n(_HEIGHT)}"'
    parts = [d.replace("<svg ", f'<svg y="{_n(i * _HEIGHT)}" {size} ', 1) for i, d in enumerate(drawings)]
    box = f'viewBox="0 0 {width} {_n(_HEIGHT * len(drawings))}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {box}>{"".join(parts)}</svg>\n'


def _panel(
    panel: _Panel,
    run: float,
    pitch: float,
    pieces: Sequence[WornPiece],
    spans: Sequence[MarkedSpan],
    words: Mapping[str, str],
    word: str,
) -> list[str]:
    anchor_end = -panel.wrap - run * _ANCHOR_SHARE
    whole = WornPiece(anchor_end, run, 0.0)
    anchor, carried = panel.at(anchor_end), panel.at(run)
    return [
        f'<text x="{_n(panel.middle)}" y="12" text-anchor="middle">{escape(words[word])}</text>',
        _sheave(panel),
        _stroke(panel, whole),
        *(_stroke(panel, piece) for piece in pieces if piece.wear > 0),
        _end(anchor, words["anchor"], "end"),
        _end(carried, words["carried"], "start"),
        *(_bracket(panel, span, pitch) for span in spans),
    ]


def _sheave(panel: _Panel) -> str:
    rim = panel.radius - _THICK / 2
    place = f'cx="{_n(panel.middle)}" cy="{_n(panel.top)}" r="{_n(rim)}"'
    return f'<circle {place} fill="#fff" stroke="#000" stroke-width=".5"/>'


def _stroke(panel: _Panel, piece: WornPiece) -> str:
    steps = max(2, ceil((piece.end - piece.start) * panel.scale / 1.5) + 1)
    along = [piece.start + (piece.end - piece.start) * i / (steps - 1) for i in range(steps)]
    bends = sorted(
        {*along, *(b for b in (panel.stroke, panel.stroke - panel.wrap) if piece.start < b < piece.end)}
    )
    points = " ".join(f"{_n(x)},{_n(y)}" for x, y in map(panel.at, bends))
    width = _THIN + (_THICK - _THIN) * piece.wear
    grey = round(170 * (1 - piece.wear))
    ink = f'stroke="rgb({grey},{grey},{grey})" stroke-width="{_n(width)}"'
    return f'<polyline points="{points}" fill="none" {ink}/>'


def _end(at: tuple[float, float], words: str, side: str) -> str:
    x, y = at
    shift = -3.0 if side == "end" else 3.0
    return (
        f'<rect x="{_n(x - 1.6)}" y="{_n(y)}" width="3.2" height="3" '
        f'fill="#fff" stroke="#000" stroke-width=".5"/>'
        f'<text x="{_n(x + shift)}" y="{_n(y + 3)}" text-anchor="{side}">{escape(words)}</text>'
    )


def _bracket(panel: _Panel, span: MarkedSpan, pitch: float) -> str:
    """Mark a span beside the chain, on whichever side its links stand; across the sheave it is dashed."""
    first, last = span.first_pitch * pitch, (span.first_pitch + span.pitches) * pitch
    (x1, y1), (x2, y2) = panel.at(first), panel.at(last)
    bent = "" if x1 == x2 else ' stroke-dasharray="1.5 1"'
    out = 5.0 if x1 >= panel.middle else -5.0
    side = "start" if out > 0 else "end"
    return (
        f'<path d="M{_n(x1 + out / 2)} {_n(y1)}H{_n(x1 + out)}L{_n(x2 + out)} {_n(y2)}H{_n(x2 + out / 2)}" '
        f'fill="none" stroke="#d55e00" stroke-width=".9"{bent}/>'
        f'<text x="{_n(x1 + out * 1.3)}" y="{_n((y1 + y2) / 2 + 1.4)}" text-anchor="{side}">'
        f"{escape(span.label)}</text>"
    )


def _n(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
