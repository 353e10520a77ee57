"""Articulation: by what angle a joint bends on the sheave, and how much chain lies on it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import asin, atan, degrees, pi

from mastwright.quantity import BadInput, Problem


class PlateShape(StrEnum):
    """How a plate rides on the rim."""

    STRAIGHT = "straight"
    FIGURE_EIGHT = "figure-eight"


@dataclass(frozen=True)
class Articulation:
    """A chain on its sheave.

    Parameters
    ----------
    angle
        By which a joint bends when it runs on to the sheave, and straightens when it runs off, rad.
    wrap
        Length of chain on half a turn of the sheave, mm.
    """

    angle: float
    wrap: float

    @property
    def angle_deg(self) -> float:
        """The angle in degrees."""
        return degrees(self.angle)


def on_rim(
    pitch: float, rim: float, plate_height: float, shape: PlateShape = PlateShape.STRAIGHT
) -> Articulation:
    """Return how a chain bends whose plates ride on a plain rim.

    Parameters
    ----------
    pitch, rim, plate_height
        Pitch, running diameter of the rim and plate height, mm, all above zero.
    shape
        Straight-edged plates lie on the rim with their middle, figure-eight plates with their eyes.

    Raises
    ------
    BadInput
        If a figure-eight plate is too long for the rim.

    **Source**: geometry of a straight plate on a circle (computed).

    Examples
    --------
    >>> bend = on_rim(19.05, 95.25, 18.0975)
    >>> round(bend.angle_deg, 2), round(bend.wrap, 2)
    (19.08, 179.71)
    """
    ratio = pitch / (rim + plate_height)
    if shape is PlateShape.STRAIGHT:
        return _half_turn(pitch, 2 * atan(ratio))
    if ratio >= 1:
        raise BadInput(
            Problem("sheave", f"{rim:g} mm", f"a rim more than {pitch - plate_height:g} mm in diameter")
        )
    return _half_turn(pitch, 2 * asin(ratio))


def on_pin_circle(pitch: float, circle: float) -> Articulation:
    """Return how a chain bends whose pin centres run on a circle of this diameter, mm.

    Raises
    ------
    BadInput
        If the circle is no larger than the pitch.

    **Source**: chord of a circle (computed).

    Examples
    --------
    >>> round(on_pin_circle(19.05, 95.25).angle_deg, 2)
    23.07
    """
    if circle <= pitch:
        raise BadInput(
            Problem("pin circle", f"{circle:g} mm", f"a diameter larger than the pitch, {pitch:g} mm")
        )
    return _half_turn(pitch, 2 * asin(pitch / circle))


def _half_turn(pitch: float, angle: float) -> Articulation:
    return Articulation(angle, pitch * pi / angle)
