"""The chain table checked against itself: the relations that its rows must obey.

A wrong digit in a remembered or copied row usually breaks one of them. A breach is no verdict on the
chain; it says that the row needs the standard's own text before anybody relies on it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from mastwright.chains.designation import possible_designations
from mastwright.chains.standard import LeafChain
from mastwright.quantity import Source, read_table, source_of, unit

_HUNDRED = Fraction(100)
_UNEVEN = (3, 4)  # the one lacing whose strength is not in proportion


@dataclass(frozen=True)
class Relation:
    """One relation of the table.

    Parameters
    ----------
    name, meaning
        In a word, and in a sentence.
    applies
        The series that it holds for, or the two designations that it compares.
    value
        Its constant, in `unit_name`.
    tolerance
        In `unit_name`, or in percent where it compares shares.
    source
        Where the relation comes from.
    """

    name: str
    meaning: str
    applies: tuple[str, ...]
    value: Fraction
    tolerance: Fraction
    unit_name: str
    source: Source


@dataclass(frozen=True)
class Breach:
    """A row that does not obey a relation.

    Parameters
    ----------
    relation
        Which one.
    row
        Name of the chain.
    expected, found
        In mm, plates, N or lbf as the relation's meaning says; 0 expected where the designation cannot
        be read at all.
    """

    relation: Relation
    row: str
    expected: Fraction
    found: Fraction


def relations() -> tuple[Relation, ...]:
    """Return the relations of the table, with their tolerances and sources."""
    return tuple(
        Relation(
            name=row["relation"],
            meaning=row["meaning"],
            applies=tuple(row["series"].split()),
            value=Fraction(row["value"]),
            tolerance=Fraction(row["tolerance"]),
            unit_name=row["unit"],
            source=source_of(row["source"], row["evidence"], f"relations.csv {row['relation']}"),
        )
        for row in read_table("mastwright.chains", "relations.csv")
    )


def check_table(chains: Iterable[LeafChain]) -> tuple[Breach, ...]:
    """Tell which rows of a chain table break which relation.

    Parameters
    ----------
    chains
        The rows; relations between rows look only among these.
    """
    rows = tuple(chains)
    breaches = []
    for relation in relations():
        for row, expected, found in _pairs(relation, rows):
            allowed = relation.tolerance
            if relation.unit_name == "%":
                allowed = abs(expected) * allowed / _HUNDRED
            if abs(found - expected) > allowed:
                breaches.append(Breach(relation, row.name, expected, found))
    return tuple(breaches)


def _pairs(relation: Relation, rows: tuple[LeafChain, ...]) -> Iterator[tuple[LeafChain, Fraction, Fraction]]:
    """Yield row, expected and found value wherever the relation says something."""
    if relation.name == "next-strength":
        yield from _equal_strength(relation, rows)
        return
    for row in rows:
        if row.series in relation.applies:
            yield from (
                (row, expected, found) for expected, found in _BY_NAME[relation.name](relation, row, rows)
            )


_Rows = tuple[LeafChain, ...]
_Found = Iterator[tuple[Fraction, Fraction]]


def _number(_: Relation, row: LeafChain, __: _Rows) -> _Found:
    for text in row.designations:
        meant = next(iter(possible_designations(text)), None)
        yield (meant.pitch if meant else Fraction(0)), row.pitch
        for says, has in zip((meant.lacing if meant else None) or (0, 0), row.lacing, strict=True):
            yield Fraction(says), Fraction(has)


def _inches(_: Relation, row: LeafChain, __: _Rows) -> _Found:
    yield unit("in").to_canonical(row.pitch_in), row.pitch


def _pounds(_: Relation, row: LeafChain, __: _Rows) -> _Found:
    yield unit("lbf").to_canonical(row.min_tensile_lbf), row.min_tensile


def _plate_height(relation: Relation, row: LeafChain, _: _Rows) -> _Found:
    yield relation.value * row.pitch, row.plate_height_max


def _hole(relation: Relation, row: LeafChain, _: _Rows) -> _Found:
    if row.plate_hole_min is not None:
        yield row.pin_diameter_max + relation.value, row.plate_hole_min


def _width(relation: Relation, row: LeafChain, _: _Rows) -> _Found:
    if row.width_max is not None:
        plates = sum(row.lacing) * (row.plate_thickness_max + relation.value)
        yield plates + row.pin_diameter_max / 2, row.width_max


def _width_step(relation: Relation, row: LeafChain, rows: _Rows) -> _Found:
    first = _same_size(row, rows)[0]
    if row.width_max is not None and first.width_max is not None:
        more = sum(row.lacing) - sum(first.lacing)
        yield first.width_max + more * (row.plate_thickness_max + relation.value), row.width_max


def _whole_pounds(relation: Relation, row: LeafChain, _: _Rows) -> _Found:
    yield relation.value * round(row.min_tensile_lbf / relation.value), row.min_tensile_lbf


def _proportion(relation: Relation, row: LeafChain, rows: _Rows) -> _Found:
    uneven = row.series == "LH" and row.lacing == _UNEVEN
    if uneven == (relation.name == "proportion-3x4"):
        first = _same_size(row, rows)[0]
        yield relation.value * first.min_tensile * row.weak_plates / first.weak_plates, row.min_tensile


def _next_plate(_: Relation, row: LeafChain, rows: _Rows) -> _Found:
    yield from ((light.plate_thickness_max, row.plate_thickness_max) for light in _next_light(row, rows))


def _next_pin(_: Relation, row: LeafChain, rows: _Rows) -> _Found:
    yield from ((light.pin_diameter_max, row.pin_diameter_max) for light in _next_light(row, rows))


def _equal_strength(relation: Relation, rows: _Rows) -> Iterator[tuple[LeafChain, Fraction, Fraction]]:
    light, heavy = ([r for r in rows if name in r.designations] for name in relation.applies)
    yield from ((b, a.min_tensile, b.min_tensile) for a in light for b in heavy)


def _same_size(row: LeafChain, rows: _Rows) -> list[LeafChain]:
    """Return the rows of the same series and pitch, fewest plates first."""
    return sorted(
        (r for r in rows if (r.series, r.pitch) == (row.series, row.pitch)), key=lambda r: sum(r.lacing)
    )


def _next_light(row: LeafChain, rows: _Rows) -> list[LeafChain]:
    """Return one AL chain of the next larger pitch, if there is one."""
    return sorted((r for r in rows if r.series == "AL" and r.pitch > row.pitch), key=lambda r: r.pitch)[:1]


_BY_NAME: dict[str, Callable[[Relation, LeafChain, _Rows], _Found]] = {
    "number": _number,
    "inches": _inches,
    "pounds": _pounds,
    "plate-height": _plate_height,
    "hole": _hole,
    "width": _width,
    "width-step": _width_step,
    "whole-pounds": _whole_pounds,
    "proportion": _proportion,
    "proportion-3x4": _proportion,
    "next-plate": _next_plate,
    "next-pin": _next_pin,
}
