"""What the mast commands are told: the mast, its chains and sheaves, its masses."""

from __future__ import annotations

import argparse
import re
from dataclasses import dataclass
from fractions import Fraction

from mastwright.mast import Arrangement, arrangement
from mastwright.mast.articulation import Articulation, PlateShape, on_pin_circle, on_rim
from mastwright.mast.elements import MAIN, MastElements, mast_elements
from mastwright.mast.figures import mast_figures
from mastwright.mast.state import body_masses
from mastwright.quantity import BadInput, Field, Problem, UnitSystem, parse_quantity

_LACING = re.compile(r"^\s*(\d)\s*[xX×]\s*(\d)\s*$")
_MOST_STRANDS = 8
_LEAST_LENGTH = Fraction(1, 10)
_MOST_MASS = Fraction(10**6)


@dataclass(frozen=True)
class MastGiven:
    """A mast as the options describe it; lengths in mm, masses in kg.

    Parameters
    ----------
    letter, elements
        Arrangement and its parts.
    strands
        Of each set.
    pitch, plate_height, bend
        Of the chain, and how it bends on the sheave.
    free_lift, load
        How far the carriage lifts before the frames move, and what is on the forks.
    loaded, empty
        Masses of the moving bodies with the load and without.
    assumed
        What nobody gave: option, value and source.
    """

    letter: Arrangement
    elements: MastElements
    strands: int
    pitch: Fraction
    bend: Articulation
    free_lift: Fraction
    load: Fraction
    loaded: dict[str, Fraction | None]
    empty: dict[str, Fraction | None]
    assumed: tuple[str, ...]


class Options:
    """Reads the options of one call and gathers every problem in them."""

    def __init__(self, chosen: argparse.Namespace) -> None:
        self._chosen = chosen
        self._system = UnitSystem(chosen.units or "metric")
        self.problems: list[Problem] = []

    def given(self, option: str) -> bool:
        """Return whether an option was written, rightly or wrongly."""
        return getattr(self._chosen, option.replace("-", "_")) is not None

    def value(
        self,
        option: str,
        dimension: str,
        least: Fraction = Fraction(0),
        most: Fraction | None = None,
        needed: str = "",
    ) -> Fraction | None:
        """Return a quantity in its dimension's own unit, or None; `needed` is what it is needed for."""
        text = getattr(self._chosen, option.replace("-", "_"))
        if text is None:
            if needed:
                self.problems.append(Problem(f"--{option}", "", needed))
            return None
        try:
            field = Field(f"--{option}", dimension, self._system, minimum=least, maximum=most)
            return parse_quantity(text, field).canonical
        except BadInput as bad:
            self.problems += bad.problems
            return None

    def length(self, option: str, needed: str = "") -> Fraction | None:
        """Return a length of a chain or a sheave, mm."""
        return self.value(
            option, "length", _LEAST_LENGTH, mast_figures()["largest_sheave"].value, needed=needed
        )

    def count(self, option: str, most: int, needed: str) -> int:
        """Return a whole number from 1, or 1 with a problem noted."""
        text = getattr(self._chosen, option)
        if text is not None and text.isascii() and text.isdecimal() and len(text) <= len(str(most)):
            number = int(text)
            if 1 <= number <= most:
                return number
        self.problems.append(Problem(f"--{option}", text or "", needed))
        return 1

    def lacing(self) -> tuple[int, int] | None:
        """Return plates in the outer and in the inner pitch, or None."""
        text = self._chosen.lacing
        match = _LACING.match(text) if text is not None else None
        if match is not None and int(match[1]) and int(match[2]):
            return int(match[1]), int(match[2])
        if text is not None:
            self.problems.append(
                Problem("--lacing", text, "plates in the outer and in the inner pitch, as 3x4")
            )
        return None

    def done(self) -> None:
        """Refuse the call if there was a problem.

        Raises
        ------
        BadInput
            With every problem found.
        """
        if self.problems:
            raise BadInput(self.problems)


def read_mast(chosen: argparse.Namespace, options: Options) -> MastGiven:
    """Read the mast, with every problem of its options at once.

    Raises
    ------
    BadInput
        If an option is missing or cannot be.
    """
    figures = mast_figures()
    letter = _arrangement(chosen, options)
    strands = options.count("strands", _MOST_STRANDS, f"strands of each chain set, 1 to {_MOST_STRANDS}")
    pitch = options.value(
        "pitch",
        "length",
        figures["least_pitch"].value,
        figures["largest_sheave"].value,
        needed="one pitch of the chain, pin centre to pin centre",
    )
    parts = {name: options.length(name) for name in ("plate-height", "sheave", "pin-circle")}
    if chosen.sheave is not None and chosen.pin_circle is not None:
        options.problems.append(Problem("--pin-circle", chosen.pin_circle, "either --sheave or --pin-circle"))
    free = options.value("free-lift", "length", most=figures["highest_lift"].value) or Fraction(0)
    masses = {
        name: options.value(f"{name}-kg", "mass", most=_MOST_MASS, needed=needed)
        for name, needed in (
            ("load", "mass on the forks in kg"),
            ("carriage", "mass of carriage, forks and attachment in kg"),
            ("inner", ""),
            ("middle", ""),
            ("first", ""),
        )
    }
    if letter is not None:
        _frames(letter, options)
    options.done()
    assert letter is not None  # noqa: S101  else there was a problem
    assert pitch is not None  # noqa: S101
    bend, assumed = _bend(chosen, pitch, parts)
    load, frames = masses["load"] or Fraction(0), (masses["inner"], masses["middle"], masses["first"])
    carriage = masses["carriage"] or Fraction(0)
    return MastGiven(
        letter=letter,
        elements=mast_elements(letter.letter),
        strands=strands,
        pitch=pitch,
        bend=bend,
        free_lift=free,
        load=load,
        loaded=body_masses(load, carriage, *frames),
        empty=body_masses(Fraction(0), carriage, *frames),
        assumed=(*assumed, *_passed_over(letter, masses)),
    )


def _arrangement(chosen: argparse.Namespace, options: Options) -> Arrangement | None:
    try:
        return arrangement(chosen.arrangement or "", "--arrangement")
    except BadInput as bad:
        options.problems += bad.problems
        return None


def _frames(letter: Arrangement, options: Options) -> None:
    """Ask for the mass of every frame that hangs on a chain; what only a cylinder lifts may stay out."""
    elements = mast_elements(letter.letter)
    for body in ("inner", "middle"):
        sets = [name for name, counts in elements.hangs.items() if body in counts]
        if sets and not options.given(f"{body}-kg"):
            options.problems.append(
                Problem(
                    f"--{body}-kg",
                    "",
                    f"mass of the {body} frame in kg: it hangs on {', '.join(sets)} chains",
                )
            )


def _passed_over(letter: Arrangement, masses: dict[str, Fraction | None]) -> tuple[str, ...]:
    """Return what was given of frames that this mast does not have: one sheet of masses may serve several."""
    moving = mast_elements(letter.letter).rises[MAIN]
    return tuple(
        f"--{body}-kg is not used: mast {letter.letter} has no such moving frame"
        for body in ("inner", "middle", "first")
        if masses[body] and body not in moving
    )


def _bend(
    chosen: argparse.Namespace, pitch: Fraction, parts: dict[str, Fraction | None]
) -> tuple[Articulation, tuple[str, ...]]:
    shape = PlateShape.FIGURE_EIGHT if chosen.figure_eight else PlateShape.STRAIGHT
    assumed: list[str] = []

    def usual(option: str, name: str) -> float:
        given = parts[option]
        if given is None:
            figure = mast_figures()[name]
            given = figure.value * pitch
            assumed.append(f"--{option} {float(given):g} mm: {figure.source}")
        return float(given)

    try:
        circle = parts["pin-circle"]
        if circle is not None:
            bend = on_pin_circle(float(pitch), float(circle))
        else:
            rim, height = usual("sheave", "sheave_pitches"), usual("plate-height", "plate_height_pitches")
            bend = on_rim(float(pitch), rim, height, shape)
    except BadInput as bad:
        raise BadInput(
            [Problem(f"--{p.field.replace(' ', '-')}", p.given, p.expected) for p in bad.problems]
        ) from None
    return bend, tuple(assumed)
