"""The leaf chains of the standards: dimensions, minimum strength, and how each figure is known."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction
from functools import cache

from mastwright.chains.designation import bare_number_advice, plain_marking
from mastwright.quantity import BadInput, Problem, Source, read_table, source_of, unit

_LONGEST = 12  # characters of a misspelt designation worth comparing


@dataclass(frozen=True)
class LeafChain:
    """One chain of the table; lengths in mm, maxima as the standard gives them.

    Parameters
    ----------
    designation_iso, designation_ansi
        `LH1234` or `LL1244`; `BL634` or `AL644`. At least one of them.
    series
        `LH` (heavy, the same chains as BL), `LL` (light) or `AL` (American light, withdrawn).
    pitch
        mm; `pitch_in` is what the table prints in inches.
    lacing
        Plates in the outer (pin-link) pitch, plates in the inner (articulating) pitch.
    plate_thickness_max, plate_height_max, pin_diameter_max
        mm.
    plate_hole_min, width_max, pack_width
        mm, None where not known: hole of the articulating plates, over the pins, over the plates.
    min_tensile
        Minimum tensile strength, N; `min_tensile_lbf` is what the table prints in pounds.
    mass_kg_per_m
        None where not known; `mass_basis` tells what it rests on.
    source, strength_source
        Of the dimensions, and of the strength.
    standard
        The standards that the row belongs to; `in_standard` is false where that is not confirmed.
    confidence
        `high`, `medium` or `low`: how far the row's cross-checks carry.
    flag
        What is doubtful about the row, or empty.
    """

    designation_iso: str | None
    designation_ansi: str | None
    series: str
    pitch: Fraction
    pitch_in: Fraction
    lacing: tuple[int, int]
    plate_thickness_max: Fraction
    plate_height_max: Fraction
    pin_diameter_max: Fraction
    plate_hole_min: Fraction | None
    width_max: Fraction | None
    pack_width: Fraction | None
    min_tensile: Fraction
    min_tensile_lbf: Fraction
    mass_kg_per_m: Fraction | None
    mass_basis: str
    source: Source
    strength_source: Source
    standard: str
    in_standard: bool
    confidence: str
    flag: str

    @property
    def designations(self) -> tuple[str, ...]:
        """Its designations, the international one first."""
        return tuple(d for d in (self.designation_iso, self.designation_ansi) if d)

    @property
    def name(self) -> str:
        """Its designations joined, as in `LH1234 / BL634`."""
        return " / ".join(self.designations)

    @property
    def short_name(self) -> str:
        """One designation: the international one if it has one."""
        return self.designations[0]

    @property
    def lacing_text(self) -> str:
        """The lacing as the trade writes it, as in `3x4`."""
        return f"{self.lacing[0]}x{self.lacing[1]}"

    @property
    def weak_plates(self) -> int:
        """Plates in the pitch that has fewer; they govern the strength."""
        return min(self.lacing)

    @property
    def articulating_plates(self) -> int:
        """Plates that turn on the pins and wear with them."""
        return self.lacing[1]


@cache
def leaf_chains(edition: str = "leaf_chains.csv") -> tuple[LeafChain, ...]:
    """Return every leaf chain of an edition of the table, smallest pitch of each series first.

    Parameters
    ----------
    edition
        File name among the shipped tables. A superseded edition stays beside the current one, so that
        an old report can be recalculated.
    """
    return tuple(chain_from(row, edition) for row in read_table("mastwright.chains", edition))


def chain_from(row: Mapping[str, str], edition: str) -> LeafChain:
    """Build a chain from the cells of a table row.

    Raises
    ------
    TableError
        If its dimensions or its strength have no source.
    """
    where = f"{edition} {row['designation_iso'] or row['designation_ansi']}"
    outer, inner = row["lacing"].split("x")
    return LeafChain(
        designation_iso=row["designation_iso"] or None,
        designation_ansi=row["designation_ansi"] or None,
        series=row["series"],
        pitch=Fraction(row["pitch_mm"]),
        pitch_in=Fraction(row["pitch_in"]),
        lacing=(int(outer), int(inner)),
        plate_thickness_max=Fraction(row["plate_thickness_max_mm"]),
        plate_height_max=Fraction(row["plate_height_max_mm"]),
        pin_diameter_max=Fraction(row["pin_diameter_max_mm"]),
        plate_hole_min=_known(row["plate_hole_min_mm"]),
        width_max=_known(row["width_max_mm"]),
        pack_width=_known(row["pack_width_mm"]),
        min_tensile=unit("kN").to_canonical(Fraction(row["min_tensile_kN"])),
        min_tensile_lbf=Fraction(row["min_tensile_lbf"]),
        mass_kg_per_m=_known(row["mass_kg_per_m"]),
        mass_basis=row["mass_basis"],
        source=source_of(row["source"], row["evidence"], where),
        strength_source=source_of(row["strength_source"], row["strength_evidence"], f"{where} strength"),
        standard=row["standard"],
        in_standard=row["in_standard"] == "yes",
        confidence=row["confidence"],
        flag=row["flag"],
    )


def find_chain(text: str, field: str = "designation", *, edition: str = "leaf_chains.csv") -> LeafChain:
    """Return the chain that a designation names.

    Parameters
    ----------
    text
        ``BL634``, ``bl 634``, ``LH-1234`` or both as in ``LH1234 / BL634``. A number without its
        prefix is refused, since it means two different chains.

    Raises
    ------
    BadInput
        If it is a bare number, names no chain of the table, or names two different ones.

    Examples
    --------
    >>> find_chain("bl 634").name
    'LH1234 / BL634'
    """
    by_name = {d: chain for chain in leaf_chains(edition) for d in chain.designations}
    parts = [plain_marking(part) for part in text.split("/")]
    for part in parts:
        if part.isdecimal():
            raise BadInput(Problem(field, text, bare_number_advice(part, by_name)))
        if part not in by_name:
            near = get_close_matches(part[:_LONGEST], by_name, n=4, cutoff=0.3)
            right = "a leaf chain of the table by its designation with prefix, such as LH1234 or BL634"
            raise BadInput(Problem(field, text, f"{right}; nearest: {', '.join(near)}" if near else right))
    named = {by_name[part].name for part in parts}
    if len(named) > 1:
        raise BadInput(Problem(field, text, f"one chain: these are {' and '.join(sorted(named))}"))
    return by_name[parts[0]]


def _known(cell: str) -> Fraction | None:
    return Fraction(cell) if cell else None
