"""Drawings of what can be seen on the links of a chain: pins, joints, cracks, plates, rust, edges."""

from __future__ import annotations

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
    EdgeView,
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
    curve,
    drop,
    ellipse,
    hatched,
    level_run,
    lines,
    pin_head,
    plate,
    sparkle,
    specks,
    strike,
    turning_arrow,
)

_PULL = 4.5
_A: Point = (66, 72)
_B: Point = (174, 72)
_BIG = 44.0
_HEAD = 19.0


# ---- pins


def turned_pin() -> Parts:
    """Draw one head whose flats are out of line, with the way it turned."""
    pins = level_run(84, 64, -8)
    found = [*chain(pins, 28), circle(pins[2], 13, Look(line=PAPER))]
    found += pin_head(pins[2], 12.5, 55, Look(fill=PAPER, line=ACCENT, width=2.6))
    return [*found, *turning_arrow(pins[2], 21, 205, 300), *arrow((76, 12), (104, 60))]


def protruding_pin() -> Parts:
    """Draw the chain along its edge, one head far out, its neighbours level."""
    view = EdgeView()
    stem = box(view.pin(2) - 5, view.level(0) - 20, 10, 20, Look(fill=SHADE))
    head = box(view.pin(2) - 8, view.level(0) - 26, 16, 7, Look(fill=ACCENT, line=INK), 2)
    level = lines([(16, view.level(0) - 6), (224, view.level(0) - 6)], GHOST)
    found = [
        *view.plates(),
        *view.heads(upper=False),
        *view.heads(upper=True, leave_out=2),
        level,
        stem,
        head,
    ]
    return [*found, *arrow((178, 8), (134, 17))]


def worn_pin_heads() -> Parts:
    """Draw the chain along its edge: heads on one side gone, the outer plate ground thin."""
    view = EdgeView(middle=80)
    top = view.level(0)
    found = [*view.plates(), *view.heads(upper=False), view.head(0), view.head(4)]
    for index in (1, 2, 3):
        found += [box(view.pin(index) - 8, top - 6, 16, 6, FAULT_GHOST, 2)]
    worn = [(44, top), (60, top + 4), (120, top + 5.5), (180, top + 4), (196, top)]
    found.append(area([*worn, (196, top - 1.5), (44, top - 1.5)], Look(fill=PAPER, line=PAPER, width=1)))
    found.append(lines(worn, FAULT))
    return [*found, *arrow((120, 4), (120, top - 3))]


def side_wear() -> Parts:
    """Draw the chain along its edge rubs on a flange; heads bright but whole."""
    view = EdgeView(middle=84)
    top = view.level(0)
    found = [*view.run(), *hatched(30, 12, 180, top - 6 - 12)]
    for index in (1, 2, 3):
        found += [box(view.pin(index) - 8, top - 6, 16, 3, FAULT_SOLID)]
    return [*found, *arrow((228, 132), (196, top))]


# ---- joints


def _kink() -> list[Point]:
    return [(-14, 44), (48, 52), (110, 60), (158, 100), (218, 92), (280, 84)]


def tight_joint_dirt() -> Parts:
    """Draw a kink that stays, the joint packed with dirt, and oil to try it."""
    pins = _kink()
    found = chain(pins, 27)
    found += specks(pins[2], 31, 27, 46, 2.4, SOLID)
    return [*found, *arrow((150, 10), (124, 38)), drop((206, 14), 16, Look(fill=SHADE))]


def tight_joint_rust() -> Parts:
    """Draw a kink that stays, rust in the joint, and the bent pin beside it."""
    pins = _kink()
    found = chain(pins, 27)
    found += specks(pins[2], 30, 26, 40, 2.2, FAULT_SOLID)
    bent = Look(fill="none", width=11)
    core = Look(fill="none", line=SHADE, width=7.5)
    shape = "M178 24 C194 24 202 28 208 38 S222 50 230 50"
    return [*found, *arrow((148, 8), (122, 38)), curve(shape, bent), curve(shape, core)]


def fretting_powder() -> Parts:
    """Draw powder that comes out of a joint and trickles down."""
    pins = level_run(58, 64, -8)
    found = chain(pins, 28)
    ring = [circle(around(pins[2], 16, 15 * i), 1.6, FAULT_SOLID) for i in range(24)]
    fall = specks((120, 104), 17, 26, 60, 1.3, FAULT_SOLID)
    heap = [curve("M92 136 Q120 116 148 136 Z", FAULT_SOLID)]
    return [*found, *ring, *fall, *heap, *arrow((186, 122), (146, 104))]


def dry_chain() -> Parts:
    """Draw a bent run with no oil: the drop is struck out, the joints grind."""
    pins = level_run(98, 64, -8)
    grind = Look(fill="none", line=ACCENT, width=2)
    found = chain(pins, 28)
    for pin in pins[1:4]:
        for angle in (-120, -90, -60):
            found.append(lines([around(pin, 15, angle), around(pin, 23, angle)], grind))
    return [*found, drop((120, 4), 30, Look(fill=SHADE)), *strike((94, 56), (146, 10))]


# ---- cracks, on one large plate


def _large_plate() -> Parts:
    found = [plate((174, 72), (282, 72), 41, BACK), plate((-42, 72), (66, 72), 41, BACK), plate(_A, _B, _BIG)]
    for pin in (_A, _B):
        found += pin_head(pin, _HEAD)
    return found


def _pull_arrows() -> Parts:
    black = Look(fill=INK, line=INK, width=0.5)
    return [*arrow((24, 14), (4, 14), black, _PULL), *arrow((216, 14), (236, 14), black, _PULL)]


def fatigue_crack() -> Parts:
    """Draw a straight crack from the hole to the edge, square to the pull."""
    return [*_large_plate(), *crack([(174, 54), (174, 29)]), *_pull_arrows(), *arrow((132, 6), (168, 36))]


def stress_corrosion_crack() -> Parts:
    """Draw arcs between the holes of an outer plate."""
    found = _large_plate()
    for left, bow in ((102, -14), (134, 14)):
        found += crack([(left + bow * (1 - (k / 3) ** 2), 72 + 9 * k) for k in range(-3, 4)])
    found += crack([(118 + 6 * (1 - (k / 2) ** 2), 72 + 9 * k) for k in range(-2, 3)])
    return [*found, *arrow((120, 4), (120, 44))]


def corrosion_fatigue_crack() -> Parts:
    """Draw a crack from the hole to the edge on a rusty plate."""
    found = _large_plate()
    found += specks((120, 74), 88, 33, 90, 1.5, FAULT_SOLID)
    for pin in (_A, _B):
        found += pin_head(pin, _HEAD)
    return [*found, *crack([(174, 54), (174, 29)]), *_pull_arrows(), *arrow((132, 6), (168, 36))]


def fretting_crack() -> Parts:
    """Draw powder round a pin and a crack that starts under it."""
    found = _large_plate()
    found += [circle(around(_B, 22.5 + i % 3, 10 * i), 1.7, FAULT_SOLID) for i in range(36)]
    found += specks((174, 124), 12, 12, 26, 1.4, FAULT_SOLID)
    return [*found, *crack([(160, 60), (146, 48), (136, 40)]), *arrow((104, 6), (136, 42))]


# ---- plates


def necked_plate() -> Parts:
    """Draw a plate drawn thin and torn, its old outline dashed."""
    a, b = (52.0, 72.0), (188.0, 72.0)
    found = [plate(a, b, _BIG, FRONT, 0.32), *pin_head(a, _HEAD), *pin_head(b, _HEAD)]
    found.append(plate((64, 72), (176, 72), _BIG, GHOST))
    tear = [(118, 58), (123, 64), (116, 70), (124, 76), (117, 82), (122, 87)]
    found += [
        lines(tear, Look(fill="none", line=PAPER, width=8)),
        lines([(x - 4, y) for x, y in tear], FAULT),
    ]
    found.append(lines([(x + 4, y) for x, y in tear], FAULT))
    return [*found, *_pull_arrows(), *arrow((120, 6), (120, 52))]


def oval_hole() -> Parts:
    """Draw a hole drawn long beside a pin that no longer fills it."""
    found = [plate(_A, _B, _BIG)]
    found += [circle(_A, _HEAD, Look(fill=SHADE)), circle(_A, 1.5, SOLID)]
    found.append(ellipse((182, 72), 29, 19, Look(fill=PAPER, line=ACCENT, width=3)))
    found += [circle((172, 72), _HEAD - 0.8, Look(fill=SHADE)), circle((172, 72), 1.5, SOLID)]
    return [*found, *_pull_arrows(), *arrow((224, 124), (204, 80))]


def bent_plate() -> Parts:
    """Draw the chain along its edge, an outer plate bowed out of line."""
    view = EdgeView(middle=84)
    top = view.level(0)
    left, right = view.pin(2) - 24, view.pin(3) + 24
    found = [*view.plates(leave_out=(2, 0)), *view.heads(upper=False), *view.heads(upper=True)]
    rise = Look(fill=PAPER, line=ACCENT, width=2.4)
    found.append(
        curve(
            f"M{left} {top + 9} Q{(left + right) / 2} {top - 43} {right} {top + 9} "
            f"L{right} {top} Q{(left + right) / 2} {top - 63} {left} {top} Z",
            rise,
        )
    )
    found.append(box(left, top, right - left, 9, GHOST))
    return [*found, *arrow((64, 10), (124, 24))]


def missing_plate() -> Parts:
    """Draw the chain along its edge with a gap where a plate belongs."""
    view = EdgeView(middle=84)
    gap = (2, 0)
    found = [*view.plates(leave_out=gap), *view.heads(upper=False), *view.heads(upper=True)]
    stems = [box(view.pin(i) - 5, view.level(0), 10, 9, Look(fill=SHADE)) for i in (2, 3)]
    return [*found, *stems, view.bar(*gap, FAULT_GHOST), *arrow((152, 6), (152, view.level(0) - 1))]


# ---- surface


def _section(notches: tuple[float, ...]) -> Parts:
    """Draw a cut through the surface of a plate, with notches as deep as given."""
    points: list[Point] = [(20, 112)]
    for i, depth in enumerate(notches):
        middle = 40 + 160 * i / max(1, len(notches) - 1)
        points += [
            (middle - 9, 112),
            (middle - 4, 112 + depth),
            (middle + 3, 112 + depth * 0.8),
            (middle + 9, 112),
        ]
    points += [(220, 112), (220, 134), (20, 134)]
    return [area(points, Look(fill=SHADE))]


def surface_rust() -> Parts:
    """Draw a thin film on the outside; the cut below shows smooth metal under it."""
    pins = level_run(52, 64, -8)
    found = chain(pins, 28)
    found += specks((120, 52), 116, 24, 110, 0.9, FAULT_SOLID)
    found += [*_section(()), box(20, 108, 200, 3.5, FAULT_SOLID)]
    return [*found, *arrow((120, 88), (120, 107))]


def pitting_rust() -> Parts:
    """Draw pits in the plates; the cut below shows how deep they go."""
    pins = level_run(52, 64, -8)
    found = chain(pins, 28)
    pits = [
        (74, 42),
        (96, 62),
        (84, 66),
        (140, 38),
        (152, 66),
        (166, 48),
        (208, 60),
        (30, 66),
        (24, 42),
        (146, 54),
    ]
    for i, (x, y) in enumerate(pits):
        found.append(ellipse((x, y), 6 + i % 3, 4 + i % 2, Look(fill=INK, line=ACCENT, width=2.4)))
    found += _section((11, 7, 14, 8, 12))
    return [*found, *arrow((120, 86), (120, 118))]


def heat_or_weld_marks() -> Parts:
    """Draw a weld bead across two plates, heat rings and spatter."""
    pins = level_run(84, 64, -8)
    found = chain(pins, 28)
    spot = (152.0, 84.0)
    for radius in (21, 28, 35):
        found.append(circle(spot, radius, Look(fill="none", line=ACCENT, width=1.6, dash="3 3")))
    for i in range(7):
        found.append(ellipse((131 + 7 * i, 84), 5, 9, Look(fill=INK, line=PAPER, width=1)))
    for x, y in ((98, 70), (106, 98), (204, 72), (196, 102), (70, 82), (224, 90)):
        found.append(circle((x, y), 3.2, SOLID))
    flash = area([around((152, 28), (20, 8)[i % 2], 22.5 * i) for i in range(16)], FAULT_SOLID)
    electrode = lines([(204, 4), (164, 22)], Look(fill="none", width=6))
    return [*found, electrode, flash, *arrow((82, 20), (126, 66))]


def plated_chain() -> Parts:
    """Draw a chain in the bath with its two poles, bright where it comes out."""
    bath = [box(30, 44, 180, 90, FRONT, 4), box(32, 60, 176, 72, Look(fill="#ececec", line="none"))]
    wave = curve("M32 60 Q50 54 68 60 T104 60 T140 60 T176 60 T208 60", Look(fill="none", width=1.4))
    pins: list[Point] = [(92, 8 + 26 * i) for i in range(5)]
    found = [*bath, wave, *chain(pins, 12), box(160, 22, 16, 88, BACK)]
    sign = Look(fill="none", width=3)
    found += [
        lines([(116, 20), (128, 20)], sign),
        lines([(184, 22), (196, 22)], sign),
        lines([(190, 16), (190, 28)], sign),
    ]
    found += [sparkle((72, 20), 11), sparkle((112, 44), 8), sparkle((64, 76), 8)]
    coat = [box(78, 62, 28, 68, Look(fill="none", line=ACCENT, width=2.4), 12)]
    return [*found, *coat, *arrow((150, 122), (110, 100))]


def painted_chain() -> Parts:
    """Draw a brush that has laid paint over plates, heads and joints."""
    pins = level_run(90, 64, -8)
    found = chain(pins, 28)
    paint = (
        "M-4 60 L132 60 Q140 70 132 78 T134 98 T130 120 L118 120 Q114 134 110 120 L70 120 "
        "Q66 138 61 120 L30 120 Q26 132 22 120 L-4 120 Z"
    )
    found.append(curve(paint, Look(fill=ACCENT, line=INK)))
    for pin in pins[:3]:
        found.append(circle(pin, 12, Look(fill="none", line=PAPER, width=1.4, dash="3 3")))
    bristles = area([(126, 58), (152, 40), (164, 58), (140, 78)], Look(fill=ACCENT, line=INK))
    ferrule = area([(150, 38), (166, 60), (180, 50), (164, 28)], Look(fill=SHADE))
    handle = area([(168, 30), (178, 46), (230, 8), (224, 0)], FRONT)
    return [*found, bristles, ferrule, handle, *arrow((58, 10), (84, 54))]


# ---- edges


def _worn_edge(loss: float, y: float) -> Parts:
    """Draw a run whose lower edge has been worn away by so much, the old edge dashed."""
    pins = level_run(y, 64, -8)
    found = chain(pins, 30)
    low = y + 30
    scallop = f"M-8 {low - loss} " + " ".join(f"q16 {loss * 0.45} 32 0 t32 0" for _ in range(4))
    found.append(curve(f"{scallop} L248 {low + 4} L-8 {low + 4} Z", Look(fill=PAPER, line=PAPER, width=0.5)))
    found.append(curve(scallop, FAULT))
    found += [plate(a, b, 30, GHOST) for a, b in zip(pins[::2], pins[1::2], strict=False)]
    return found


def worn_plate_edge() -> Parts:
    """Draw the edge that runs on the sheave, scalloped, over the sheave that did it."""
    rim = curve("M-10 146 Q120 92 250 146 Z", BACK)
    return [rim, *_worn_edge(9, 68), *arrow((204, 134), (168, 97))]


def plate_edge_past_limit() -> Parts:
    """Draw the edge worn deep, between the jaws of a calliper that show the loss."""
    found = _worn_edge(14, 74)
    jaw = Look(fill=SHADE)
    found.append(
        area([(98, 44), (98, 38), (228, 38), (228, 30), (204, 30), (204, 20), (90, 20), (90, 44)], jaw)
    )
    found.append(area([(98, 92), (98, 110), (204, 110), (204, 124), (90, 124), (90, 92)], jaw))
    found.append(box(204, 14, 12, 122, jaw, 2))
    return [*found, *arrow((40, 134), (56, 98))]


# ---- history


def joined_chain() -> Parts:
    """Draw one link unlike the others, held by cotters instead of heads."""
    pins = level_run(80, 64, -8)
    found = chain(pins, 28)
    odd = Look(fill=PAPER, line=ACCENT, width=2.6)
    found.append(plate(pins[2], pins[3], 23, odd, 1))
    for x, y in pins[2:4]:
        found.append(circle((x, y), 12, Look(fill=SHADE)))
        found.append(lines([(x - 18, y - 7), (x, y), (x + 12, y - 13)], Look(fill="none", width=2.4)))
        found.append(lines([(x, y), (x + 13, y + 10)], Look(fill="none", width=2.4)))
        found.append(circle((x - 19, y - 8), 4, Look(fill=PAPER, width=2)))
    return [*found, *arrow((152, 6), (152, 54))]
