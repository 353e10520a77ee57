"""What the moment balance says of a capacity plate: it can raise a doubt, it never grants capacity.

Only forward tipping is in these figures, not side stability, mast deflection, tilt, lift height, tyres
or the strength of forks and attachment. The plate governs; the truck's maker changes it.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from mastwright.checks.figures import refuse_negative, refuse_unless_positive
from mastwright.quantity import read_table


def at_load_centre(
    rated: Fraction, centre: Fraction, new_centre: Fraction, axle_to_fork_face: Fraction
) -> Fraction:
    """Return what a truck could balance with the load further out or nearer than on its plate.

    Parameters
    ----------
    rated
        Capacity on the plate, kg, more than 0.
    centre, new_centre
        Load centre on the plate and asked for, from the front face of the forks, mm, more than 0.
    axle_to_fork_face
        From the centre of the front axle forward to the front face of the forks, mm, 0 or more.

    Returns
    -------
    Fraction
        kg, never above the plate.

    Raises
    ------
    BadInput
        If a measure is impossible.

    **Source**: moments about the front axle, Q₂ = Q₁ (x + c₁) / (x + c₂) (computed).

    Examples
    --------
    >>> round(at_load_centre(Fraction(2000), Fraction(500), Fraction(600), Fraction(450)))
    1810
    """
    _refuse_impossible(rated, centre, new_centre)
    refuse_negative("front axle to fork face", axle_to_fork_face, "mm")
    return min(rated, rated * (axle_to_fork_face + centre) / (axle_to_fork_face + new_centre))


def short_form(rated: Fraction, centre: Fraction, new_centre: Fraction) -> Fraction:
    """Return the same by the trade's short form, which leaves the distance to the axle out.

    Further out it gives less than the full balance, hence on the safe side; nearer it would give too
    much and stays at the plate.

    Parameters
    ----------
    rated
        Capacity on the plate, kg, more than 0.
    centre, new_centre
        Load centre on the plate and asked for, mm, more than 0.

    Returns
    -------
    Fraction
        kg, never above the plate.

    Raises
    ------
    BadInput
        If a measure is impossible.

    **Source**: trade pages on load centres, Q₂ = Q₁ c₁ / c₂ (read).

    Examples
    --------
    >>> short_form(Fraction(5000), Fraction(24), Fraction(30))
    Fraction(4000, 1)
    """
    _refuse_impossible(rated, centre, new_centre)
    return min(rated, rated * centre / new_centre)


def with_attachment(
    rated: Fraction,
    centre: Fraction,
    axle_to_fork_face: Fraction,
    attachment_mass: Fraction,
    attachment_centre: Fraction,
    thrust_out: Fraction,
    new_centre: Fraction,
) -> Fraction:
    """Return what a truck could balance with an attachment on; only the maker's plate for it counts.

    Parameters
    ----------
    rated
        Capacity on the plate without attachment, kg, more than 0.
    centre, new_centre
        Load centre on the plate, and of the load from the attachment's own face, mm, more than 0.
    axle_to_fork_face
        From the centre of the front axle forward to the front face of the forks, mm, 0 or more.
    attachment_mass
        kg, 0 or more.
    attachment_centre
        Its own centre of mass in front of the fork face, mm; 0 for one behind it, which is safe.
    thrust_out
        By how much it pushes the load outwards, mm, 0 or more.

    Returns
    -------
    Fraction
        kg, never above the plate and never below 0.

    Raises
    ------
    BadInput
        If a measure is impossible.

    **Source**: moments about the front axle, Qₙ = (Q₁ (x + c₁) - Wₐ (x + cₐ)) / (x + t + c₂) (computed).

    Examples
    --------
    >>> round(
    ...     with_attachment(
    ...         rated=Fraction(2000),
    ...         centre=Fraction(500),
    ...         axle_to_fork_face=Fraction(450),
    ...         attachment_mass=Fraction(300),
    ...         attachment_centre=Fraction(150),
    ...         thrust_out=Fraction(100),
    ...         new_centre=Fraction(500),
    ...     )
    ... )
    1638
    """
    _refuse_impossible(rated, centre, new_centre)
    refuse_negative("front axle to fork face", axle_to_fork_face, "mm")
    refuse_negative("attachment mass", attachment_mass, "kg")
    refuse_negative("attachment centre", attachment_centre, "mm")
    refuse_negative("thrust out", thrust_out, "mm")
    moment = rated * (axle_to_fork_face + centre) - attachment_mass * (axle_to_fork_face + attachment_centre)
    left = moment / (axle_to_fork_face + thrust_out + new_centre)
    return max(Fraction(0), min(rated, left))


def _refuse_impossible(rated: Fraction, centre: Fraction, new_centre: Fraction) -> None:
    refuse_unless_positive("rated capacity", rated, "kg")
    refuse_unless_positive("load centre", centre, "mm")
    refuse_unless_positive("new load centre", new_centre, "mm")


@dataclass(frozen=True)
class _Band:
    includes_least: bool
    least_kg: Fraction
    centres: tuple[Fraction, ...]

    def reached_by(self, rated: Fraction) -> bool:
        return rated > self.least_kg or (self.includes_least and rated == self.least_kg)


@cache
def _bands() -> tuple[_Band, ...]:
    return tuple(
        _Band(
            includes_least=row["starts"] == "from",
            least_kg=Fraction(row["least_kg"]),
            centres=tuple(Fraction(text) for text in row["centres_mm"].split()),
        )
        for row in read_table("mastwright.checks", "load_centres.csv")
    )


def standard_load_centres(rated: Fraction) -> tuple[Fraction, ...]:
    """Return the load centres, in mm, that the standard gives for this rated capacity.

    Parameters
    ----------
    rated
        Capacity on the plate, kg, more than 0.

    Returns
    -------
    tuple of Fraction
        mm, the usual one first, then those it allows beside it.

    Raises
    ------
    BadInput
        If the capacity is impossible.

    **Source**: a national standards body's abstract of the rated-capacity standard (read); the rows
    above 10 000 kg are not clear in the copy, the steps above 900 mm from memory.

    Examples
    --------
    >>> [int(centre) for centre in standard_load_centres(Fraction(2500))]
    [500, 600]
    """
    refuse_unless_positive("rated capacity", rated, "kg")
    return [band for band in _bands() if band.reached_by(rated)][-1].centres
