"""Drawings of what can be seen on anchors, sheaves, the pull of the strands, and the duty."""

from __future__ import annotations

from math import pi, sin

from mastwright.chains.drawing_parts import (
    ACCENT,
    BACK,
    FAULT,
    FAULT_GHOST,
    FAULT_SOLID,
    FRONT,
    GHOST,
    INK,
    PAPER,
    SHADE,
    SOLID,
    Look,
    Parts,
    Point,
    area,
    around,
    arrow,
    box,
    chain,
    circle,
    crack,
    cross,
    curve,
    drop,
    hatched,
    lines,
    sparkle,
    specks,
    turning_arrow,
)

_THIN = Look(fill="none", width=1)


# ---- anchors


def _thread(left: float, top: float, width: float, height: float) -> Parts:
    """Draw a threaded rod with its nut."""
    found = [box(left, top, width, height, BACK)]
    turn = 4.0
    for y in (top + turn * i for i in range(int(height / turn))):
        found += [lines([(left, y + 3), (left + width, y)], _THIN)]
    return [*found, box(left - 9, top + 10, width + 18, 11, FRONT, 2)]


def _fingers(skip: int | None = None) -> Parts:
    """Draw an anchor from the front, its fingers between the plates; one may be left out."""
    found = _thread(108, 108, 24, 40)
    found += [box(92 + 16 * i, -6, 8, 74, BACK) for i in range(4)]
    found += [box(84 + 16 * i, 34, 8, 60, FRONT, 2) for i in range(5) if i != skip]
    return [*found, box(78, 86, 84, 24, FRONT, 3)]


def _pin_across() -> Parts:
    return [box(70, 44, 100, 14, Look(fill=SHADE), 2), box(62, 40, 9, 22, FRONT, 2)]


def anchor_damaged() -> Parts:
    """Draw one finger of the anchor broken off, another cracked at its root."""
    found = [*_fingers(skip=4), *_pin_across()]
    found.append(area([(148, 90), (148, 74), (151, 70), (153, 76), (156, 71), (156, 90)], FRONT))
    found.append(lines([(148, 74), (151, 70), (153, 76), (156, 71)], FAULT))
    found.append(box(148, 34, 8, 32, FAULT_GHOST, 2))
    found += crack([(83, 82), (93, 80)])
    return [*found, *arrow((206, 98), (160, 76)), *arrow((36, 100), (80, 84))]


def anchor_pin_marked() -> Parts:
    """Draw the pin taken out: rings worn in where fingers and plates bear."""
    edge = 48.0
    worn: list[Point] = [(44, edge)]
    for i in range(5):
        left = 56 + 26 * i
        worn += [(left, edge), (left + 1, edge + 6), (left + 13, edge + 6), (left + 14, edge)]
    worn.append((206, edge))
    under = [(x, 140 - y) for x, y in reversed(worn)]
    found = [area([*worn, *under], BACK), box(22, 38, 22, 64, FRONT, 3)]
    for i in range(5):
        left = 57 + 26 * i
        found += [lines([(left, 54), (left, 86)], FAULT), lines([(left + 12, 54), (left + 12, 86)], FAULT)]
    found.append(circle((197, 70), 4.5, FRONT))
    return [*found, *arrow((115, 10), (115, 50)), *arrow((167, 10), (167, 50))]


def anchor_cotter_missing() -> Parts:
    """Draw the end of the anchor pin with an empty hole; the cotter that belongs there dashed."""
    found = [*hatched(24, 26, 26, 100), *hatched(76, 26, 26, 100), box(50, 0, 26, 140, BACK)]
    found += [box(8, 56, 166, 40, FRONT, 3), box(0, 44, 12, 64, FRONT, 3)]
    found.append(circle((146, 76), 7, Look(fill=INK, line=ACCENT, width=3)))
    shape = "M143 50 L143 116 M149 50 L149 116 L156 124 M143 116 L136 124 M143 50 A8 8 0 1 1 149 50"
    found.append(curve(shape, FAULT_GHOST))
    return [*found, *arrow((218, 40), (158, 70))]


# ---- sheaves


def _sheave_cut(face: list[Point], right: list[Point]) -> Parts:
    """Draw a sheave cut through its rim: flanges up at both sides, the running face between."""
    left: list[Point] = [(30, 132), (30, 34), (40, 28), (54, 34), (54, 84)]
    return [area([*left, *face, *right, (210, 132)], Look(fill=SHADE))]


_RIGHT: list[Point] = [(186, 84), (186, 34), (200, 28), (210, 34)]


def _plates_above(lift: float) -> Parts:
    return [box(64 + 17 * i, 30 - lift, 10, 50, FRONT if i % 3 == 0 else BACK, 1) for i in range(7)]


def sheave_grooved() -> Parts:
    """Draw the running face cut into tracks under the plates."""
    face: list[Point] = []
    for i in range(7):
        left = 63 + 17 * i
        face += [(left, 84), (left + 1, 96), (left + 11, 96), (left + 12, 84)]
    found = [*_sheave_cut(face, _RIGHT), *_plates_above(10), lines([(54, 84), *face, (186, 84)], FAULT)]
    found.append(lines([(54, 84), (186, 84)], GHOST))
    return [*found, *arrow((120, 134), (120, 100))]


def sheave_flange_worn() -> Parts:
    """Draw one flange ground thin by the chain, a piece broken out; its old outline dashed."""
    stump: list[Point] = [(186, 84), (196, 74), (200, 66), (203, 70), (206, 60), (210, 64)]
    found = [*_sheave_cut([], stump), lines(stump, FAULT)]
    found.append(area([(186, 84), (186, 34), (200, 28), (210, 34), (210, 64)], FAULT_GHOST))
    found += [box(76 + 17 * i, 34, 10, 50, FRONT if i % 3 == 0 else BACK, 1) for i in range(7)]
    return [*found, *arrow((232, 28), (206, 58))]


def _over_sheave(centre: Point, radius: float) -> Parts:
    """Draw a sheave from the side with the chain over its upper half."""
    pitch = 20.0
    wrap = [around(centre, radius + 9, 180 + angle) for angle in range(0, 181, 20)]
    left = [(wrap[0][0], centre[1] + pitch * (3 - i)) for i in range(3)]
    right = [(wrap[-1][0], centre[1] + pitch * (i + 1)) for i in range(3)]
    return [circle(centre, radius, BACK), *chain([*left, *wrap, *right], 8.5)]


def sheave_seized_or_loose() -> Parts:
    """Draw a sheave under a moving chain that does not turn, its bore worn wider than the axle."""
    centre = (104.0, 74.0)
    black = Look(fill=INK, line=INK, width=0.5)
    found = _over_sheave(centre, 44)
    found += [
        circle(centre, 17, Look(fill=PAPER, line=ACCENT, width=3)),
        circle((104, 79), 11, FRONT),
        circle((104, 79), 2, SOLID),
    ]
    found += [*turning_arrow(centre, 31, 200, 320), *cross((104, 43), 8)]
    return [
        *found,
        *arrow((28, 132), (28, 88), black),
        *arrow((182, 88), (182, 132), black),
        *arrow((208, 40), (122, 66)),
    ]


# ---- pull


def _strand(points: list[Point]) -> Parts:
    return chain(points, 6.5)


def _pressed(y: float, sag: float) -> list[Point]:
    """Return a level strand between two ends that a thumb presses down in the middle."""
    count = 14
    return [(32 + 176 * i / (count - 1), y + sag * (1 - abs(2 * i / (count - 1) - 1))) for i in range(count)]


def unequal_tension() -> Parts:
    """Draw two strands pressed alike: one gives, the other hardly."""
    black = Look(fill=INK, line=INK, width=0.5)
    found = [*hatched(4, 16, 22, 118), *hatched(214, 16, 22, 118)]
    found += [lines([(26, y), (214, y)], GHOST) for y in (46, 96)]
    found += [*_strand(_pressed(46, 3)), *_strand(_pressed(96, 24))]
    found += [*arrow((120, 8), (120, 40), black, 6), *arrow((120, 66), (120, 110), black, 6)]
    found += [lines([(152, 96), (152, 112)], FAULT), lines([(146, 96), (158, 96)], FAULT)]
    return [*found, *arrow((196, 134), (158, 116))]


def slack_chain() -> Parts:
    """Draw one strand carries the carriage, the other hangs in a bow."""
    taut: list[Point] = [(86, 20 + 12 * i) for i in range(6)]
    loose: list[Point] = [(154 + 27 * sin(pi * i / 7), 20 + 60 * i / 7) for i in range(8)]
    carriage = [
        box(66, 82, 108, 26, BACK, 2),
        box(96, 104, 12, 28, FRONT, 1),
        box(132, 104, 12, 28, FRONT, 1),
    ]
    found = [*hatched(60, 2, 120, 14), *_strand(taut), *_strand(loose), *carriage]
    found += [lines([(154, 20), (154, 80)], GHOST)]
    return [*found, *arrow((228, 26), (190, 46))]


def mixed_strands() -> Parts:
    """Draw a bright new strand beside a rusty one that has grown longer."""
    found = [*hatched(4, 12, 18, 116)]
    fresh: list[Point] = [(26 + 25 * i, 42) for i in range(7)]
    old: list[Point] = [(26 + 29 * i, 98) for i in range(7)]
    found += [*chain(fresh, 12), *chain(old, 12, Look(fill=SHADE), Look(fill="#9a9a9a"))]
    found += specks((112, 98), 84, 11, 60, 1.3, FAULT_SOLID)
    found += [sparkle((66, 18), 9), sparkle((140, 20), 8)]
    found += [lines([(176, 24), (176, 122)], GHOST), lines([(200, 24), (200, 122)], GHOST)]
    return [*found, *arrow((176, 130), (200, 130)), *arrow((226, 12), (184, 34))]


# ---- duty


def harsh_duty() -> Parts:
    """Draw a chain between frost and a dripping chemical."""
    pins: list[Point] = [(120, 6 + 32 * i) for i in range(5)]
    found = chain(pins, 15)
    centre = (44.0, 66.0)
    cold = Look(fill="none", width=3.2)
    for angle in range(0, 360, 60):
        tip, fork = around(centre, 34, angle), around(centre, 21, angle)
        found.append(lines([centre, tip], cold))
        found += [lines([fork, around(fork, 12, angle + side)], cold) for side in (-50, 50)]
    flask = (
        "M196 12 L216 12 M200 12 L200 34 L184 66 A5 5 0 0 0 189 72 L223 72 A5 5 0 0 0 228 66 L212 34 L212 12"
    )
    found += [
        curve(flask, Look(fill=PAPER, width=2.4)),
        curve("M193 50 L219 50 L227 68 L185 68 Z", FAULT_SOLID),
    ]
    found += [
        drop((206, 80), 11, Look(fill=ACCENT, line=INK)),
        drop((206, 106), 11, Look(fill=ACCENT, line=INK)),
    ]
    return [*found, *arrow((178, 92), (140, 84)), *arrow((82, 66), (106, 66))]
