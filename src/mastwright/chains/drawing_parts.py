"""The parts that small drawings of lift chains are put together from, as SVG elements."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from math import atan2, cos, degrees, hypot, pi, radians, sin
from typing import TYPE_CHECKING
from xml.sax.saxutils import quoteattr

if TYPE_CHECKING:
    from collections.abc import Sequence

INK = "#000000"
PAPER = "#ffffff"
SHADE = "#d4d4d4"
ACCENT = "#d55e00"
"""Vermilion of the Okabe-Ito palette; darker than the shade, so it shows in black and white too."""

Point = tuple[float, float]
Parts = list[str]


@dataclass(frozen=True)
class Look:
    """How a part is drawn: fill, line colour, line width and dashes."""

    fill: str = PAPER
    line: str = INK
    width: float = 1.6
    dash: str = ""

    def attributes(self) -> dict[str, str]:
        """Return it as SVG attributes."""
        found = {"fill": self.fill, "stroke": self.line, "stroke-width": number(self.width)}
        if self.dash:
            found["stroke-dasharray"] = self.dash
        return found


FRONT = Look()
BACK = Look(fill=SHADE)
SOLID = Look(fill=INK, line=INK, width=0.5)
OUTLINE = Look(fill="none")
GHOST = Look(fill="none", width=1.2, dash="4 3")
FAULT = Look(fill="none", line=ACCENT, width=2.8)
FAULT_GHOST = Look(fill="none", line=ACCENT, width=2, dash="4 3")
FAULT_SOLID = Look(fill=ACCENT, line=ACCENT, width=0.5)


def number(value: float) -> str:
    """Return a coordinate with at most two decimals, the same on every machine."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def _element(name: str, look: Look, **attributes: str) -> str:
    cells = {**attributes, **look.attributes(), "stroke-linejoin": "round", "stroke-linecap": "round"}
    return f"<{name} {' '.join(f'{key}={quoteattr(value)}' for key, value in cells.items())}/>"


def circle(centre: Point, radius: float, look: Look = FRONT) -> str:
    """Return a circle."""
    return _element("circle", look, cx=number(centre[0]), cy=number(centre[1]), r=number(radius))


def ellipse(centre: Point, half_width: float, half_height: float, look: Look = FRONT) -> str:
    """Return an upright ellipse."""
    x, y = centre
    return _element(
        "ellipse", look, cx=number(x), cy=number(y), rx=number(half_width), ry=number(half_height)
    )


def box(left: float, top: float, width: float, height: float, look: Look = FRONT, corner: float = 0) -> str:
    """Return a rectangle."""
    return _element(
        "rect",
        look,
        x=number(left),
        y=number(top),
        width=number(width),
        height=number(height),
        rx=number(corner),
    )


def lines(points: Sequence[Point], look: Look = OUTLINE) -> str:
    """Return an open line through the points."""
    return _element("polyline", look, points=_points(points))


def area(points: Sequence[Point], look: Look = FRONT) -> str:
    """Return a closed shape through the points."""
    return _element("polygon", look, points=_points(points))


def curve(steps: str, look: Look = OUTLINE) -> str:
    """Return a path of SVG steps."""
    return _element("path", look, d=steps)


def _points(points: Sequence[Point]) -> str:
    return " ".join(f"{number(x)},{number(y)}" for x, y in points)


def arrow(start: Point, tip: Point, look: Look = FAULT_SOLID, width: float = 4) -> Parts:
    """Return a stout arrow with a white rim, so that it reads on any ground."""
    (x0, y0), (x1, y1) = start, tip
    long = hypot(x1 - x0, y1 - y0)
    along = ((x1 - x0) / long, (y1 - y0) / long)
    head = 3.2 * width
    neck = _off(tip, along, -head, 0)
    shape = [
        _off(start, along, 0, width / 2),
        _off(neck, along, 0, width / 2),
        _off(neck, along, 0, head / 2),
        tip,
        _off(neck, along, 0, -head / 2),
        _off(neck, along, 0, -width / 2),
        _off(start, along, 0, -width / 2),
    ]
    return [area(shape, Look(fill=PAPER, line=PAPER, width=4)), area(shape, look)]


def _off(point: Point, along: Point, forward: float, aside: float) -> Point:
    return (
        point[0] + along[0] * forward - along[1] * aside,
        point[1] + along[1] * forward + along[0] * aside,
    )


def around(centre: Point, radius: float, angle: float) -> Point:
    """Return the point at an angle in degrees on a circle, 0 to the right, clockwise as seen."""
    return (centre[0] + radius * cos(radians(angle)), centre[1] + radius * sin(radians(angle)))


def turning_arrow(centre: Point, radius: float, start: float, end: float) -> Parts:
    """Return an arrow bent round a centre, clockwise from one angle to another, in degrees."""
    tip, tail = around(centre, radius, end), around(centre, radius, start)
    big = int(end - start > 180)  # noqa: PLR2004  half a turn: SVG asks which of the two arcs is meant
    steps = f"M{_at(tail)} A{number(radius)} {number(radius)} 0 {big} 1 {_at(tip)}"
    back, out = around(centre, radius, end), radians(end)
    ahead = (back[0] - 9 * sin(out), back[1] + 9 * cos(out))
    inner, outer = around(centre, radius - 5, end), around(centre, radius + 5, end)
    return [curve(steps, FAULT), area([inner, ahead, outer], FAULT_SOLID)]


def _at(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


def plate(first: Point, second: Point, radius: float, look: Look = FRONT, waist: float = 0.78) -> str:
    """Return a link plate in side view between two pin centres, slimmer at its waist.

    Parameters
    ----------
    first, second
        Pin centres.
    radius
        Half the plate height.
    look
        How it is drawn.
    waist
        Height at the middle as a share of the height at the holes; 1 for a straight-edged plate.
    """
    (x0, y0), (x1, y1) = first, second
    long = hypot(x1 - x0, y1 - y0)
    along = ((x1 - x0) / long, (y1 - y0) / long)
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)

    def edge(start: Point, end: Point, side: float) -> str:
        """Go along one edge: level at the holes and at the waist."""
        step = long / 4 if end == second else -long / 4
        slim = side * waist
        return (
            f"C{_at(_off(start, along, step, side))} {_at(_off(middle, along, -step, slim))} "
            f"{_at(_off(middle, along, 0, slim))} C{_at(_off(middle, along, step, slim))} "
            f"{_at(_off(end, along, -step, side))} {_at(_off(end, along, 0, side))}"
        )

    bend = f"A{number(radius)} {number(radius)} 0 0 0"
    steps = (
        f"M{_at(_off(first, along, 0, -radius))} {bend} {_at(_off(first, along, 0, radius))} "
        f"{edge(first, second, radius)} {bend} {_at(_off(second, along, 0, -radius))} "
        f"{edge(second, first, -radius)} Z"
    )
    return curve(steps, look)


def pin_head(centre: Point, radius: float, turned: float = 0, look: Look = FRONT) -> Parts:
    """Return the head of a pin with its two flats and the mark between them, turned by degrees."""
    flat = 38.0
    a, b, c, d = (around(centre, radius, turned + angle) for angle in (-flat, flat, 180 - flat, 180 + flat))
    bend = f"A{number(radius)} {number(radius)} 0 0 1"
    outline = curve(f"M{_at(a)} {bend} {_at(b)} L{_at(c)} {bend} {_at(d)} Z", look)
    ends = [around(centre, radius * 0.75, turned + angle) for angle in (0, 180)]
    return [outline, lines(ends, Look(fill="none", line=look.line, width=max(look.width, 1.6)))]


def chain(pins: Sequence[Point], radius: float, look: Look = FRONT, back: Look = BACK) -> Parts:
    """Return a run of chain in side view: outer plates over inner ones, heads in line with the plates.

    Parameters
    ----------
    pins
        Pin centres; the first two are joined by an outer plate.
    radius
        Half the plate height.
    look, back
        Of the outer and of the inner plates.
    """
    pairs = list(itertools.pairwise(pins))
    found = [plate(a, b, radius * 0.94, back) for a, b in pairs[1::2]]
    for a, b in pairs[::2]:
        lean = degrees(atan2(b[1] - a[1], b[0] - a[0]))
        found.append(plate(a, b, radius, look))
        for pin in (a, b):
            found += pin_head(pin, radius * 0.42, lean, look)
    return found


def level_run(y: float, pitch: float, start: float = 8, count: int = 5) -> list[Point]:
    """Return pin centres of a level run."""
    return [(start + pitch * i, y) for i in range(count)]


@dataclass(frozen=True)
class EdgeView:
    """A run of chain seen along its edge: plates as bars side by side, pins across them.

    Three outer plates and four inner ones, a lacing of 3x4.
    """

    left: float = -8
    pitch: float = 64
    middle: float = 72
    thickness: float = 9
    count: int = 5

    def pin(self, index: int) -> float:
        """Return where a pin stands along the run."""
        return self.left + self.pitch * index

    def level(self, row: int) -> float:
        """Return the upper edge of one of the seven rows of plates."""
        return self.middle + (row - 3.5) * self.thickness

    def bar(self, index: int, row: int, look: Look) -> str:
        """Return the plate between pin `index` and the next, in a row."""
        reach = self.pitch * 0.38
        left, right = self.pin(index) - reach, self.pin(index + 1) + reach
        return box(left, self.level(row), right - left, self.thickness, look, 1.5)

    def rows(self, index: int) -> tuple[int, ...]:
        """Return the rows that hold a plate between pin `index` and the next."""
        return (1, 2, 4, 5) if index % 2 else (0, 3, 6)

    def plates(self, leave_out: tuple[int, int] | None = None) -> Parts:
        """Return all plates but one (pin index, row)."""
        return [
            self.bar(index, row, BACK if index % 2 else FRONT)
            for index in range(self.count - 1)
            for row in self.rows(index)
            if (index, row) != leave_out
        ]

    def head(self, index: int, out: float = 6, look: Look = FRONT, *, upper: bool = True) -> str:
        """Return one head of a pin that stands out of the outer plate by so much."""
        top = self.level(0) - out if upper else self.level(7)
        return box(self.pin(index) - 8, top, 16, out, look, 2)

    def heads(self, *, upper: bool, leave_out: int | None = None) -> Parts:
        """Return the heads of all pins but one on one side."""
        return [self.head(i, upper=upper) for i in range(self.count) if i != leave_out]

    def run(self) -> Parts:
        """Return a sound run."""
        return self.plates() + self.heads(upper=True) + self.heads(upper=False)


def crack(points: Sequence[Point]) -> Parts:
    """Return a crack along the points, jagged, with a white rim."""
    jag: list[Point] = []
    for (x0, y0), (x1, y1) in itertools.pairwise(points):
        long = hypot(x1 - x0, y1 - y0)
        along = ((x1 - x0) / long, (y1 - y0) / long)
        count = max(2, round(long / 5))
        jag += [_off((x0, y0), along, long * i / count, (1.6, -1.6)[i % 2] if i else 0) for i in range(count)]
    jag.append(points[-1])
    return [lines(jag, Look(fill="none", line=PAPER, width=5)), lines(jag, FAULT)]


def specks(
    centre: Point, half_width: float, half_height: float, count: int, size: float, look: Look
) -> Parts:
    """Return specks spread evenly over an ellipse, always the same ones."""
    golden = pi * (3 - 5**0.5)
    found = []
    for i in range(count):
        far, turn = ((i + 0.5) / count) ** 0.5, golden * i
        spot = (centre[0] + half_width * far * cos(turn), centre[1] + half_height * far * sin(turn))
        found.append(circle(spot, size * (0.7 + 0.3 * (i % 3)), look))
    return found


def sparkle(centre: Point, size: float, look: Look = SOLID) -> str:
    """Return a four-pointed star: a bright surface."""
    return area([around(centre, size * (1, 0.25)[i % 2], 45 * i) for i in range(8)], look)


def drop(tip: Point, size: float, look: Look = FRONT) -> str:
    """Return a drop of oil hanging from its tip."""
    x, y = tip
    return curve(
        f"M{_at(tip)} C{_at((x + size * 0.2, y + size * 0.5))} {_at((x + size * 0.6, y + size * 0.8))} "
        f"{_at((x + size * 0.6, y + size * 1.2))} A{number(size * 0.6)} {number(size * 0.6)} 0 0 1 "
        f"{_at((x - size * 0.6, y + size * 1.2))} C{_at((x - size * 0.6, y + size * 0.8))} "
        f"{_at((x - size * 0.2, y + size * 0.5))} {_at(tip)} Z",
        look,
    )


def strike(start: Point, end: Point) -> Parts:
    """Return a bar that strikes something out."""
    rim, fault = Look(fill="none", line=PAPER, width=9), Look(fill="none", line=ACCENT, width=5)
    return [lines([start, end], rim), lines([start, end], fault)]


def cross(centre: Point, size: float) -> Parts:
    """Return a cross that strikes something out."""
    x, y = centre
    return [
        *strike((x - size, y - size), (x + size, y + size)),
        *strike((x - size, y + size), (x + size, y - size)),
    ]


def hatched(left: float, top: float, width: float, height: float, step: float = 6) -> Parts:
    """Return a block of machine part, hatched as if cut."""
    found = [box(left, top, width, height, FRONT)]
    thin = Look(fill="none", width=0.8)
    count = int((width + height) / step)
    for i in range(1, count + 1):
        reach = i * step
        a = (left + min(reach, width), top + max(0.0, reach - width))
        b = (left + max(0.0, reach - height), top + min(reach, height))
        found.append(lines([a, b], thin))
    return found
