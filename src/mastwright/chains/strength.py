"""How strong a chain set is against what hangs on it: information, never a reason to keep a worn chain."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from functools import cache
from math import pi

from mastwright.chains.toml_table import Figure, Words, figure_of, read_rows_of, rows_in, text_of, words_of
from mastwright.quantity import BadInput, Evidence, Problem, Source

_TABLE = "strength.toml"
_KPA_PER_N_PER_MM2 = 1000


class Lifts(StrEnum):
    """What the chain lifts."""

    LOADS = "loads"
    OPERATOR = "operator"


@dataclass(frozen=True)
class ResidualBand:
    """What published points leave of the tensile strength of a worn chain.

    Parameters
    ----------
    elongation
        As a ratio, 0.02 for 2 %.
    low, high
        Share of the strength when new.
    beyond_published
        Whether the elongation is past the last published point.
    sources
        Of the points, low first.
    assumption, caution
        What is assumed, and that it is information only.
    """

    elongation: Fraction
    low: Fraction
    high: Fraction
    beyond_published: bool
    sources: tuple[Source, Source]
    assumption: Words
    caution: Words


@dataclass(frozen=True)
class ResidualModes:
    """What wear leaves of each part of a joint, as a share of its strength when new (computed)."""

    pin_bending: Fraction
    pin_shear: Fraction
    eye_crown: Fraction

    @property
    def weakest(self) -> Fraction:
        """The smallest share; taking it assumes that all parts are equally strong when new."""
        return min(self.pin_bending, self.pin_shear, self.eye_crown)


@dataclass(frozen=True)
class StrengthResult:
    """The static factor of safety of a chain set, and how far it can be trusted.

    Parameters
    ----------
    factor
        Minimum breaking force of all strands over the weight hung on them; no friction.
    with_friction
        The same when mast friction adds to the weight: (share added, factor).
    required
        Every requirement that applies to what the chain lifts.
    unmet
        Those that the factor does not reach; any of them is a finding.
    worn
        Factor when new times the low and high end of the residual band; None without an elongation.
    residual
        The band itself; None without an elongation.
    min_tensile_source
        How the minimum breaking force is known.
    certificate
        The request for the chain's certificate; None where the force was read off it.
    caution
        That this is information only.
    """

    factor: Fraction
    with_friction: tuple[tuple[Figure, Fraction], ...]
    required: tuple[Figure, ...]
    unmet: tuple[Figure, ...]
    worn: tuple[Fraction, Fraction] | None
    residual: ResidualBand | None
    min_tensile_source: Source
    certificate: Words | None
    caution: Words


@dataclass(frozen=True)
class _Point:
    elongation: Fraction
    figure: Figure


@dataclass(frozen=True)
class _Figures:
    gravity: Figure
    required: dict[Lifts, tuple[Figure, ...]]
    friction: tuple[Figure, ...]
    less: _Point
    more: _Point
    pin_share: Figure
    says: dict[str, Words]


@cache
def _figures() -> _Figures:
    rows = read_rows_of(_TABLE)
    required = rows_in(rows, "required", _TABLE)
    points = {
        key: _Point(Fraction(text_of(row, "elongation", key)), figure_of(row, f"{_TABLE} {key}"))
        for key, row in rows_in(rows, "residual", _TABLE).items()
    }
    return _Figures(
        gravity=figure_of(rows["standard-gravity"], f"{_TABLE} standard-gravity"),
        required={
            lifts: tuple(
                figure_of(r, f"{_TABLE} {k}")
                for k, r in required.items()
                if Lifts(text_of(r, "lifts", f"{_TABLE} {k}")) is lifts
            )
            for lifts in Lifts
        },
        friction=tuple(figure_of(r, f"{_TABLE} {k}") for k, r in rows_in(rows, "friction", _TABLE).items()),
        less=points["less"],
        more=points["more"],
        pin_share=figure_of(rows["pin-share"], f"{_TABLE} pin-share"),
        says={k: words_of(r, "text", f"{_TABLE} {k}") for k, r in rows_in(rows, "says", _TABLE).items()},
    )


def standard_gravity() -> Fraction:
    """Return standard gravity in m/s², by which a mass in kg becomes a weight in N."""
    return _figures().gravity.value


def likely_pin_share() -> Figure:
    """Return the share of the wear that lies on the pin rather than in the hole."""
    return _figures().pin_share


def strand_factor(min_tensile: Fraction, hung_mass: Fraction, share: Fraction) -> Fraction:
    """Return the static factor of safety of one strand that carries this share of what hangs on its set.

    Parameters
    ----------
    min_tensile
        Minimum breaking force of the strand, N.
    hung_mass
        On all strands together, kg.
    share
        Of the weight that this strand carries, above 0 and at most 1.

    Raises
    ------
    BadInput
        If a figure is not positive or the share is above 1.

    **Source**: minimum breaking load over largest static load, as in ISO 3691-1 (from memory).

    Examples
    --------
    >>> round(float(strand_factor(Fraction(75600), Fraction(2300), Fraction(3, 4))), 3)
    4.469
    """
    _positive("minimum breaking force", min_tensile, "N")
    _positive("hung mass", hung_mass, "kg")
    _positive("share of the load", share, "")
    if share > 1:
        raise BadInput(Problem("share of the load", str(share), "at most 1"))
    return min_tensile / (share * standard_gravity() * hung_mass)


def static_factor(strands: int, min_tensile: Fraction, hung_mass: Fraction) -> Fraction:
    """Return the static factor of safety K of a chain set whose strands share the load equally.

    ``K = n·F / (g·m)``, mast vertical, at rest, no friction.

    Parameters
    ----------
    strands
        How many chains share the load, 1 or more.
    min_tensile
        Minimum breaking force of one strand, N; never an average.
    hung_mass
        On all strands together, kg.

    Raises
    ------
    BadInput
        If a figure is not positive.

    **Source**: minimum breaking load over largest static load, as in ISO 3691-1 (from memory).

    Examples
    --------
    >>> round(float(static_factor(2, Fraction(75600), Fraction(2850))), 2)
    5.41
    """
    if strands < 1:
        raise BadInput(Problem("strands", str(strands), "1 or more: how many chains share the load"))
    return strand_factor(min_tensile, hung_mass, Fraction(1, strands))


def static_strength(
    strands: int,
    min_tensile: Fraction,
    min_tensile_source: Source,
    hung_mass: Fraction,
    lifts: Lifts = Lifts.LOADS,
    elongation: Fraction | None = None,
) -> StrengthResult:
    """Return how strong a chain set is against the load on the truck's plate.

    Parameters
    ----------
    strands, min_tensile, hung_mass
        As for `static_factor`; the hung mass with the load of the truck's plate.
    min_tensile_source
        Where the minimum breaking force comes from: the chain's certificate, or a table.
    lifts
        What the chain lifts.
    elongation
        As a ratio, for the worn factor; None for the new chain alone.

    Raises
    ------
    BadInput
        If a figure is not positive.
    """
    figures = _figures()
    factor = static_factor(strands, min_tensile, hung_mass)
    required = figures.required[lifts]
    residual = None if elongation is None else residual_band(elongation)
    return StrengthResult(
        factor=factor,
        with_friction=tuple((f, factor / (1 + f.value)) for f in figures.friction),
        required=required,
        unmet=tuple(r for r in required if factor < r.value),
        worn=None if residual is None else (factor * residual.low, factor * residual.high),
        residual=residual,
        min_tensile_source=min_tensile_source,
        certificate=_certificate(min_tensile_source.evidence),
        caution=figures.says["information-only"],
    )


def _certificate(evidence: Evidence) -> Words | None:
    if evidence is Evidence.READ:
        return None
    request = _figures().says["certificate"]
    return Words(request.en.format(evidence=evidence), request.es.format(evidence=evidence))


def residual_band(elongation: Fraction) -> ResidualBand:
    """Return what is published of the strength left in a worn chain: information only.

    A straight line from 1 when new through each published point at 3 %: an assumption, and said so.

    Parameters
    ----------
    elongation
        As a ratio; a chain shorter than nominal counts as new.

    **Source**: points of 0.85 and 0.82 at 3 % (as quoted by secondary pages).

    Examples
    --------
    >>> residual_band(Fraction(2, 100)).low
    Fraction(22, 25)
    """
    figures = _figures()
    return ResidualBand(
        elongation=elongation,
        low=_on_line(elongation, figures.less),
        high=_on_line(elongation, figures.more),
        beyond_published=elongation > figures.less.elongation,
        sources=(figures.less.figure.source, figures.more.figure.source),
        assumption=figures.says["straight-line"],
        caution=figures.says["information-only"],
    )


def _on_line(elongation: Fraction, point: _Point) -> Fraction:
    left = 1 - (1 - point.figure.value) * elongation / point.elongation
    return min(Fraction(1), max(Fraction(0), left))


def residual_modes(
    elongation: Fraction, pitch: Fraction, pin_diameter: Fraction, plate_height: Fraction, pin_share: Fraction
) -> ResidualModes:
    """Return what wear leaves of pin and eye, part by part: information only.

    The growth of a joint ``e·p`` is groove in the pin (its share) and wear of the hole (the rest).
    Bending falls with the cube of the depth left, shear with the area, the eye with its crown.

    Parameters
    ----------
    elongation
        As a ratio, 0 or more.
    pitch, pin_diameter, plate_height
        mm.
    pin_share
        Share of the wear on the pin, 0 to 1.

    Raises
    ------
    BadInput
        If a dimension is not positive, the plate is no higher than the pin, or the share is not in 0 to 1.

    **Source**: section modulus, area and crown of a worn joint (computed).

    Examples
    --------
    >>> worn = residual_modes(
    ...     Fraction(3, 100), Fraction("19.05"), Fraction("7.94"), Fraction("18.0975"), Fraction(1, 2)
    ... )
    >>> round(float(worn.pin_bending), 4)
    0.8959
    """
    _positive("pitch", pitch, "mm")
    _positive("pin diameter", pin_diameter, "mm")
    _beside_hole(plate_height, pin_diameter)
    if not 0 <= pin_share <= 1:
        raise BadInput(Problem("share of the wear on the pin", str(pin_share), "a share from 0 to 1"))
    growth = max(Fraction(0), elongation) * pitch
    pin_wear, hole_wear = pin_share * growth, (1 - pin_share) * growth
    crown = (plate_height - pin_diameter) / 2
    return ResidualModes(
        pin_bending=_share(1 - pin_wear / pin_diameter) ** 3,
        pin_shear=_share(1 - 4 * pin_wear / (Fraction(pi) * pin_diameter)),
        eye_crown=_share(1 - hole_wear / crown),
    )


def edge_residual(height_loss: Fraction, plate_height: Fraction, hole_diameter: Fraction) -> Fraction:
    """Return what plate edge wear leaves of the section beside the hole: information only.

    Wear on one edge narrows the sections beside the holes: 5 % of the height takes more than 5 % of them.

    Parameters
    ----------
    height_loss
        mm, 0 or more.
    plate_height, hole_diameter
        mm, unworn.

    Raises
    ------
    BadInput
        If the loss is negative, or the plate is no higher than its hole.

    **Source**: net section beside the eye (computed).

    Examples
    --------
    >>> round(float(edge_residual(Fraction("0.904875"), Fraction("18.0975"), Fraction("7.94"))), 3)
    0.911
    """
    _beside_hole(plate_height, hole_diameter)
    if height_loss < 0:
        raise BadInput(Problem("loss of plate height", str(height_loss), "0 mm or more"))
    return _share(1 - height_loss / (plate_height - hole_diameter))


def bearing_area(pin_diameter: Fraction, plate_thickness: Fraction, articulating_plates: int) -> Fraction:
    """Return the area on which a joint slides, in mm²: only the articulating plates turn on the pin.

    Parameters
    ----------
    pin_diameter, plate_thickness
        mm.
    articulating_plates
        In one articulating pitch: the second figure of the lacing.

    Raises
    ------
    BadInput
        If a figure is not positive.

    **Source**: plate thickness times articulating plates times pin diameter, a leaf-chain system design
    page (read).

    Examples
    --------
    >>> bearing_area(Fraction("7.94"), Fraction("3.30"), 4)
    Fraction(13101, 125)
    """
    _positive("pin diameter", pin_diameter, "mm")
    _positive("plate thickness", plate_thickness, "mm")
    _positive("articulating plates", Fraction(articulating_plates), "")
    return pin_diameter * plate_thickness * articulating_plates


def joint_pressure(strand_tension: Fraction, area: Fraction) -> Fraction:
    """Return the mean pressure in a joint in kPa, from the pull of one strand in N and its area in mm².

    Raises
    ------
    BadInput
        If a figure is not positive.

    **Source**: force over projected area (computed); no allowable value is published for leaf chain.
    """
    _positive("strand tension", strand_tension, "N")
    _positive("bearing area", area, "mm²")
    return strand_tension / area * _KPA_PER_N_PER_MM2


def _share(value: Fraction) -> Fraction:
    return max(Fraction(0), value)


def _beside_hole(plate_height: Fraction, hole_diameter: Fraction) -> None:
    _positive("hole diameter", hole_diameter, "mm")
    if plate_height <= hole_diameter:
        given = f"{float(plate_height):g} mm"
        raise BadInput(Problem("plate height", given, f"more than the hole of {float(hole_diameter):g} mm"))


def _positive(field: str, value: Fraction, unit: str) -> None:
    if value <= 0:
        raise BadInput(Problem(field, f"{float(value):g} {unit}".strip(), "a figure above 0"))
