"""The mast at one fork height: stroke of each chain set, which links lie on its sheave, what pulls."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import TYPE_CHECKING

from mastwright.mast.elements import MastElements
from mastwright.quantity import BadInput, Problem

if TYPE_CHECKING:
    from collections.abc import Mapping


class Side(StrEnum):
    """Where a link stands."""

    CARRIED = "carried side"
    SHEAVE = "on the sheave"
    ANCHOR = "anchor side"


@dataclass(frozen=True)
class Place:
    """Where a link stands, and how far below the point where the chain leaves the sheave, mm."""

    side: Side
    below: float


def set_stroke(elements: MastElements, name: str, height: Fraction, free_lift: Fraction) -> Fraction:
    """Return how far the sheave of a set has moved from its anchor, mm.

    Parameters
    ----------
    elements
        The mast.
    name
        The set.
    height, free_lift
        Fork lift from lowered, and how far the carriage lifts before the frames move, mm.

    **Source**: a chain of constant length over one moving sheave (computed).

    Examples
    --------
    >>> from mastwright.mast.elements import mast_elements
    >>> set_stroke(mast_elements("C"), "main", Fraction(3000), Fraction(1500))
    Fraction(750, 1)
    """
    below, above = elements.stroke_rates(name)
    return below * min(height, free_lift) + above * max(Fraction(0), height - free_lift)


def on_sheave(stroke: float, wrap: float) -> tuple[float, float]:
    """Return the range of links on the sheave, mm below its lowered tangent point.

    Counted along the chain from the point where the carried side leaves the sheave with the mast lowered,
    down the carried side; links already on the sheave then are negative.

    Examples
    --------
    >>> on_sheave(75, 180)
    (-105, 75)
    """
    return stroke - wrap, stroke


def place_of(d: float, stroke: float, wrap: float) -> Place:
    """Return where the link at `d` mm (as in `on_sheave`) stands once its set has moved by a stroke, mm.

    Examples
    --------
    >>> place_of(100, 500, 180)
    Place(side=<Side.ANCHOR: 'anchor side'>, below=220)
    """
    first, last = on_sheave(stroke, wrap)
    if d > last:
        return Place(Side.CARRIED, d - last)
    if d < first:
        return Place(Side.ANCHOR, first - d)
    return Place(Side.SHEAVE, 0)


def body_masses(
    load: Fraction,
    carriage: Fraction,
    inner: Fraction | None,
    middle: Fraction | None,
    first: Fraction | None,
) -> dict[str, Fraction | None]:
    """Return the mass of each moving body, kg; the crosshead of a free lift is taken as weightless."""
    return {
        "carriage": load + carriage,
        "inner": inner,
        "middle": middle,
        "first": first,
        "crosshead": Fraction(0),
    }


def hung_on(elements: MastElements, name: str, masses: Mapping[str, Fraction | None]) -> Fraction:
    """Return what mass hangs on all strands of a set together, kg, at rest, without friction.

    Raises
    ------
    BadInput
        If the mass of a body that hangs on it is not known.
    """
    total = _total(elements.hangs[name], masses)
    if isinstance(total, Fraction):
        return total
    raise BadInput(
        [
            Problem(f"{body} mass", "", f"its mass in kg: the {body} frame hangs on the {name} chains")
            for body in total
        ]
    )


def lifted_by(elements: MastElements, ram: str, masses: Mapping[str, Fraction | None]) -> Fraction | None:
    """Return what mass a lift cylinder holds up, kg; None without that cylinder or without a mass.

    **Source**: force balance of every body of the mast (computed).

    Examples
    --------
    >>> from mastwright.mast.elements import mast_elements
    >>> masses = body_masses(Fraction(2000), Fraction(300), Fraction(250), None, None)
    >>> lifted_by(mast_elements("A"), "main", masses)
    Fraction(4850, 1)
    """
    if ram not in elements.rises:
        return None
    total = _total(elements.rises[ram], masses)
    return total if isinstance(total, Fraction) else None


def _total(
    counts: Mapping[str, Fraction], masses: Mapping[str, Fraction | None]
) -> Fraction | tuple[str, ...]:
    """Return the sum, or the bodies whose mass is missing."""
    missing = tuple(body for body in counts if masses.get(body) is None)
    return missing or sum((count * (masses[body] or 0) for body, count in counts.items()), Fraction(0))


def lift_for_stroke(elements: MastElements, name: str, stroke: float, free_lift: float) -> float | None:
    """Return the least fork height at which a set has moved by a stroke, mm; None if it never does.

    Examples
    --------
    >>> from mastwright.mast.elements import mast_elements
    >>> lift_for_stroke(mast_elements("C"), "main", 500, 1500)
    2500.0
    """
    below, above = (float(rate) for rate in elements.stroke_rates(name))
    if stroke <= below * free_lift:
        return stroke / below if below else 0.0
    return free_lift + (stroke - below * free_lift) / above if above else None
