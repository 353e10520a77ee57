"""How many pitches a strand needs, and which ends that gives it."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from mastwright.quantity import BadInput, Problem


@dataclass(frozen=True)
class StrandLength:
    """A strand as it is ordered.

    Parameters
    ----------
    nominal
        Length that the path asks for, mm.
    pitches
        Whole number of pitches, with the parity that its ends ask for.
    spare
        What the anchor bolts take up when it is new, mm.
    """

    nominal: float
    pitches: int
    spare: float


def strand_length(
    anchor_run: float,
    carried_run: float,
    wrap: float,
    pitch: float,
    largest_stroke: float,
    *,
    same_ends: bool,
) -> StrandLength:
    """Return the pitches of a strand.

    Parameters
    ----------
    anchor_run, carried_run
        Chain from the sheave's height to the anchor bolt's end and to the carried bolt's end with the
        mast lowered, mm.
    wrap, pitch
        Chain on the sheave, and pitch, mm.
    largest_stroke
        Of the set, mm.
    same_ends
        Whether both ends have the same kind of link (an odd number of pitches) or one of each (even).

    Raises
    ------
    BadInput
        If the carried end would reach the sheave.

    **Source**: a chain of constant length; parity from the alternation of links (computed).

    Examples
    --------
    >>> strand_length(1200, 1750, 179.71, 19.05, 1500, same_ends=True).pitches
    165
    """
    if carried_run <= largest_stroke:
        raise BadInput(
            Problem(
                "carried run",
                f"{carried_run:g} mm",
                f"more than the largest stroke, {largest_stroke:g} mm: the end would reach the sheave",
            )
        )
    nominal = anchor_run + wrap + carried_run
    pitches = ceil(nominal / pitch)
    if pitches % 2 != same_ends:
        pitches += 1
    return StrandLength(nominal, pitches, pitches * pitch - nominal)
