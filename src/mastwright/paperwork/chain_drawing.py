"""The strands of a chain set drawn to scale of pitches, each measured span as a bar with its elongation."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from html import escape
from typing import Any

from mastwright.paperwork.palette import BLACK, VERDICT_COLOURS, WHITE
from mastwright.quantity import decimal_text

# The sheet in millimetres: the width of a page's text, and where things stand on it.
_WIDTH = 178.0
_EDGE = 5.0
_PITCH_MOST = 5.0
_SPARE = 4
_LEAST_PITCHES = 24
_LETTER = 2.7
_LETTER_WIDTH = 0.56
_LANE = 7.6
_BAR = 2.6
_BAR_DOWN = _LETTER + 1.2
_APART = 1.0
_TOUCHING = 0.001
_TICK_APART = 9.0
_TICKS = (2, 10, 20, 50, 100, 200, 500, 1000)

_Scale = Callable[[float], float]

# How each verdict is hatched, so that a copy without colour still tells them apart.
_HATCHES = {
    "watch": '<path d="M0 2L2 0" stroke-width=".25"/>',
    "remeasure": '<circle cx=".7" cy=".7" r=".35" stroke="none" fill="#000"/>',
    "replace": '<path d="M0 1L1 0M1 2L2 1" stroke-width=".35"/>',
    "withdraw": '<path d="M0 0L2 2M0 2L2 0" stroke-width=".4"/>',
    "not judged": '<path d="M0 1H2" stroke-width=".25"/>',
}


def drawable(strand: Mapping[str, Any]) -> dict[str, Any]:
    """Return a strand with those spans alone whose place and length were noted: only these can be drawn."""
    spans = [s for s in strand["spans"] if s["from_pitch"] is not None and s["pitches"] is not None]
    return {**strand, "spans": spans}


def last_pitch(strands: Sequence[Mapping[str, Any]]) -> int:
    """Return how many pitches a drawing of these strands must reach, so that all share one scale."""
    ends: list[int] = [span["from_pitch"] + span["pitches"] for strand in strands for span in strand["spans"]]
    return max([_LEAST_PITCHES, *ends]) + _SPARE


def draw_strand(strand: Mapping[str, Any], words: Mapping[str, Any], last: int) -> str:
    """Return one strand as an SVG drawing.

    Parameters
    ----------
    strand
        A strand of the judgement document.
    words
        The labels of the language, with the sections `drawing` and `verdict`.
    last
        The pitch the drawing reaches to, see `last_pitch`.

    Returns
    -------
    str
        SVG, one unit to the millimetre. A bar spans the pitches that were measured, hatched by verdict;
        the worst has a thick edge and the word beside it.
    """
    first: int = min([0, *(span["from_pitch"] for span in strand["spans"])]) - _SPARE
    scale = min(_PITCH_MOST, (_WIDTH - 2 * _EDGE) / (last - first))

    def x(pitch: float) -> float:
        return _EDGE + (pitch - first) * scale

    lanes = _lanes(strand["spans"], words, x)
    count = max((placed.lane for placed in lanes), default=-1) + 1
    chain_y = count * _LANE + 3.0
    tops = [(placed, (count - 1 - placed.lane) * _LANE) for placed in lanes]
    # Words last, each with a white rim, so that no line of another span runs through them.
    body = [
        *(_drops(placed, top, chain_y) for placed, top in tops),
        *(_bar(placed, top) for placed, top in tops),
        *_chain(first, last, x, chain_y, scale),
        *_axis(first, last, x, chain_y, scale, words["drawing"]["axis"]),
        *(_words(placed, top) for placed, top in tops),
    ]
    height = chain_y + 13.0
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_n(_WIDTH)} {_n(height)}" '
        f'font-family="Atkinson Hyperlegible, sans-serif" font-size="{_n(_LETTER)}">'
        f"<defs>{''.join(_pattern(name) for name in _HATCHES)}</defs>{''.join(body)}</svg>"
    )


def span_label(span: Mapping[str, Any], words: Mapping[str, Any]) -> str:
    """Return what stands over a span: elongation, doubt, verdict and whether it is the worst.

    Examples
    --------
    >>> span_label(
    ...     {"elongation_percent": 3.117, "uncertainty_percent": 0.08, "verdict": "withdraw", "worst": True},
    ...     {"verdict": {"withdraw": "withdraw"}, "drawing": {"worst": "worst"}},
    ... )
    '3.12 ± 0.08 % · withdraw · worst'
    """
    parts = [elongation_text(span), words["verdict"][span["verdict"]]]
    if span["worst"]:
        parts.append(words["drawing"]["worst"])
    return " · ".join(parts)


def elongation_text(span: Mapping[str, Any]) -> str:
    """Return the elongation of a span with its standard uncertainty in percent, or a gauge's bounds."""
    bounds: str = span.get("bounds_text", "")
    return (
        bounds
        or f"{decimal_text(span['elongation_percent'], 2)} ± {decimal_text(span['uncertainty_percent'], 2)} %"
    )


@dataclass(frozen=True)
class _Placed:
    """A span on the sheet: its ends in mm, its lane above the chain, its words and their middle."""

    left: float
    right: float
    lane: int
    text: str
    middle: float
    verdict: str
    worst: bool

    @property
    def edge(self) -> str:
        """How thick its outline is."""
        return ".7" if self.worst else ".25"


def _lanes(spans: Sequence[Mapping[str, Any]], words: Mapping[str, Any], x: _Scale) -> list[_Placed]:
    """Give each span the lowest lane where neither its bar nor its words run into another's."""
    ends: list[float] = []
    placed = []
    for span in sorted(spans, key=lambda s: (s["from_pitch"], s["pitches"])):
        text = span_label(span, words)
        half = len(text) * _LETTER * _LETTER_WIDTH / 2
        left, right = x(span["from_pitch"]), x(span["from_pitch"] + span["pitches"])
        middle = min(max((left + right) / 2, half + 1), _WIDTH - half - 1)
        start, end = min(left, middle - half - _APART), max(right, middle + half + _APART)
        lane = next((n for n, taken in enumerate(ends) if taken <= start + _TOUCHING), len(ends))
        ends[lane : lane + 1] = [end]
        placed.append(_Placed(left, right, lane, text, middle, span["verdict"], span["worst"]))
    return placed


def _drops(placed: _Placed, top: float, chain_y: float) -> str:
    path = "".join(
        f"M{_n(at)} {_n(top + _BAR_DOWN)}V{_n(chain_y + 1.8)}" for at in (placed.left, placed.right)
    )
    return f'<path d="{path}" fill="none" stroke="{BLACK}" stroke-width="{placed.edge}"/>'


def _bar(placed: _Placed, top: float) -> str:
    box = (
        f'x="{_n(placed.left)}" y="{_n(top + _BAR_DOWN)}" '
        f'width="{_n(placed.right - placed.left)}" height="{_n(_BAR)}"'
    )
    hatch = f'<rect {box} fill="url(#{_id(placed.verdict)})"/>' if placed.verdict in _HATCHES else ""
    return (
        f'<rect {box} fill="{WHITE}"/>'
        f'<rect {box} fill="{VERDICT_COLOURS[placed.verdict]}" fill-opacity=".45"/>{hatch}'
        f'<rect {box} fill="none" stroke="{BLACK}" stroke-width="{placed.edge}"/>'
    )


def _words(placed: _Placed, top: float) -> str:
    weight = ' font-weight="bold"' if placed.worst else ""
    place = f'x="{_n(placed.middle)}" y="{_n(top + _LETTER)}" text-anchor="middle"{weight}'
    text = escape(placed.text)
    rim = f'fill="{WHITE}" stroke="{WHITE}" stroke-width="1.1" stroke-linejoin="round"'
    return f"<text {place} {rim}>{text}</text><text {place}>{text}</text>"


def _chain(first: int, last: int, x: _Scale, y: float, scale: float) -> list[str]:
    """Draw the plates of every pitch, outer and inner in turn, broken off at both ends."""
    outer: list[str] = []
    inner: list[str] = []
    tall = min(3.4, max(1.8, scale * 0.95))
    small = tall * 0.72
    over = scale * 0.28
    for pitch in range(first, last):
        high, plates = (tall, outer) if pitch % 2 == 0 else (small, inner)
        left, wide = x(pitch) - over, scale + 2 * over
        bend = min(high / 2, wide / 2)
        flat, arc = wide - 2 * bend, f"a{_n(bend)} {_n(high / 2)} 0 0 1 0 "
        start = f"M{_n(left + bend)} {_n(y + 1.8 - high / 2)}"
        plates.append(f"{start}h{_n(flat)}{arc}{_n(high)}h{_n(-flat)}{arc}{_n(-high)}z")
    radius = min(0.7, scale * 0.16)
    pins = [
        f"M{_n(x(p) - radius)} {_n(y + 1.8)}a{_n(radius)} {_n(radius)} 0 1 0 {_n(2 * radius)} 0"
        f"a{_n(radius)} {_n(radius)} 0 1 0 {_n(-2 * radius)} 0z"
        for p in range(first, last + 1)
    ]
    breaks = "".join(
        f"M{_n(x(end) + side * over)} {_n(y - 0.6)}l.8 1.2l-1.6 1.2l1.6 1.2l-.8 1.2"
        for end, side in ((first, -1), (last, 1))
    )
    return [
        f'<path d="{"".join(inner)}" fill="#bbb" stroke="#555" stroke-width=".15"/>',
        f'<path d="{"".join(outer)}" fill="#e8e8e8" stroke="#333" stroke-width=".18"/>',
        f'<path d="{"".join(pins)}" fill="{BLACK}"/>',
        f'<path d="{breaks}" fill="none" stroke="{BLACK}" stroke-width=".4"/>',
    ]


def _axis(first: int, last: int, x: _Scale, y: float, scale: float, name: str) -> list[str]:
    step = next((t for t in _TICKS if t * scale >= _TICK_APART), _TICKS[-1])
    start = -(-first // step) * step
    tangent = f"M{_n(x(0))} {_n(y - 2.4)}V{_n(y + 6)}"
    parts = [f'<path d="{tangent}" stroke="{BLACK}" stroke-width=".3" stroke-dasharray="1.6 .6 .3 .6"/>']
    for pitch in range(start, last + 1, step):
        parts.append(f'<path d="M{_n(x(pitch))} {_n(y + 4.2)}v1.2" stroke="{BLACK}" stroke-width=".2"/>')
        parts.append(f'<text x="{_n(x(pitch))}" y="{_n(y + 8.4)}" text-anchor="middle">{pitch}</text>')
    parts.append(f'<text x="{_n(x(0))}" y="{_n(y + 12)}" fill="#333">{escape(name)}</text>')
    return parts


def _pattern(verdict: str) -> str:
    return (
        f'<pattern id="{_id(verdict)}" width="2" height="2" patternUnits="userSpaceOnUse">'
        f'<g stroke="{BLACK}" fill="none">{_HATCHES[verdict]}</g></pattern>'
    )


def _id(verdict: str) -> str:
    return verdict.replace(" ", "-")


def _n(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
