"""The ``[[chain]]`` tables of a visit file: which chain, and what was read and seen on each strand."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from mastwright.chains.conditions import Consequence, find_condition
from mastwright.chains.elongation import (
    check_pitches,
    check_taut,
    elongation_from_legs,
    elongation_from_length,
)
from mastwright.chains.standard import LeafChain, find_chain
from mastwright.quantity import Instruments, Quantity, Reading
from mastwright.visits.form import Form
from mastwright.visits.visit import ChainSet, EdgeReading, Finding, Photo, SpanReading

_WAYS = ("length", "mean_pitch", "gauge", "passes", "stops_at")
_SHORTEST_MEAN_PITCH_SPAN = 2


def read_chain_sets(top: Form, instruments: Instruments) -> tuple[ChainSet, ...]:
    """Read every chain set of the visit; problems are kept in the form."""
    sets: dict[str, ChainSet] = {}
    for form in top.tables("chain"):
        found = _chain_set(form, instruments)
        if found and found.name and found.name in sets:
            form.refuse("set", "each chain set once, with all its strands", found.name)
        if found:
            sets[found.name] = found
    return tuple(sets.values())


def read_photos(form: Form) -> tuple[Photo, ...]:
    """Read the optional `photo` (or `photos`) of a table, with the `caption` they share."""
    caption = form.text("caption")
    files = (*((form.text("photo"),) if form.has("photo") else ()), *form.texts("photos"))
    return tuple(Photo(file, caption) for file in files if file)


def _chain_set(form: Form, instruments: Instruments) -> ChainSet | None:
    name = form.text("set", required=True)
    designation = form.text("designation", required=True)
    chain = form.checked("designation", lambda: find_chain(designation)) if designation else None
    strands = form.texts("strands") or ("left", "right")
    pitches_total = form.whole("pitches_total", least=1)
    ends = form.text("ends")
    strength = form.quantity("minimum_strength", "force")
    fitted_on = form.date("fitted_on")
    spans = form.tables("span")
    first_forms = form.tables("first")
    edge_forms = form.tables("edge")
    finding_forms = form.tables("finding")
    form.no_more()
    findings = tuple(f for sub in finding_forms if (f := _finding(sub, strands)))
    if chain is None:
        return None
    return ChainSet(
        name=name,
        chain=chain,
        strands=strands,
        pitches_total=pitches_total,
        ends=ends,
        minimum_strength=strength,
        fitted_on=fitted_on,
        first=_first_readings(first_forms, strands, chain, instruments),
        spans=tuple(s for sub in spans if (s := _span(sub, strands, chain, instruments))),
        edges=tuple(e for sub in edge_forms if (e := _edge(sub, strands, chain, instruments))),
        findings=findings,
    )


def _strand(form: Form, strands: tuple[str, ...], *, required: bool = True) -> str:
    strand = form.text("strand", required=required)
    if strand and strand not in strands:
        form.refuse("strand", f"one of the set's strands: {', '.join(strands)}", strand)
    return strand


def _first_readings(
    forms: tuple[Form, ...], strands: tuple[str, ...], chain: LeafChain, instruments: Instruments
) -> Mapping[str, Reading]:
    first = {}
    for form in forms:
        span = _span(form, strands, chain, instruments)
        if span:
            first[span.strand] = span.reading
    return first


def _span(
    form: Form, strands: tuple[str, ...], chain: LeafChain, instruments: Instruments
) -> SpanReading | None:
    strand = _strand(form, strands)
    pitches = form.whole("pitches")
    start = form.whole("start")
    taut = form.yes("taut", otherwise=True)
    ways = [way for way in _WAYS if form.has(way)]
    instrument = form.text("instrument")
    form.checked("taut", lambda: check_taut(taut=taut))
    if pitches is not None:
        form.checked("pitches", lambda: check_pitches(pitches))
    reading = _way(form, ways, pitches, chain, instrument, instruments)
    photos = read_photos(form)
    form.no_more()
    if reading is None:
        return None
    written, value = reading
    return SpanReading(strand, pitches, start, written, value, photos)


def _way(
    form: Form,
    ways: list[str],
    pitches: int | None,
    chain: LeafChain,
    instrument: str,
    instruments: Instruments,
) -> tuple[str, Reading] | None:
    if ways in (["length"], ["mean_pitch"]):
        return _by_length(form, ways[0], pitches, chain, instrument or "rule", instruments)
    if ways == ["gauge"]:
        quantity = form.quantity("gauge", "percent")
        found = form.checked(
            "instrument", lambda: instruments.find(instrument or "graduated-gauge", "percent")
        )
        if quantity is None or found is None:
            return None
        return f"{float(quantity.canonical):g} %", Reading.of(quantity, found)
    if ways and set(ways) <= {"passes", "stops_at"}:
        return _by_legs(form, instrument or "leg-gauge", instruments)
    given = ", ".join(ways)
    form.refuse("length", "one way of reading: length, mean_pitch, gauge, or passes and stops_at", given)
    return None


def _by_length(
    form: Form,
    way: str,
    pitches: int | None,
    chain: LeafChain,
    instrument: str,
    instruments: Instruments,
) -> tuple[str, Reading] | None:
    quantity = form.quantity(way, "length")
    found = form.checked("instrument", lambda: instruments.find(instrument, "length"))
    count = pitches if pitches is not None or way == "length" else _SHORTEST_MEAN_PITCH_SPAN
    if count is None:
        form.refuse("pitches", "how many pitches the length was measured over, an even number")
    if quantity is None or found is None or not count or count % 2:
        return None
    length = (
        quantity
        if way == "length"
        else Quantity(quantity.value * count, quantity.unit, quantity.step * count)
    )
    return _shown(quantity), elongation_from_length(length, count, chain.pitch, found)


def _by_legs(form: Form, instrument: str, instruments: Instruments) -> tuple[str, Reading] | None:
    passed = form.quantity("passes", "percent")
    stopped = form.quantity("stops_at", "percent")
    found = form.checked("instrument", lambda: instruments.find(instrument, "percent"))
    if found is None or (passed is None and stopped is None):
        return None
    legs: tuple[Fraction | None, Fraction | None] = (
        passed.canonical if passed else None,
        stopped.canonical if stopped else None,
    )
    reading = form.checked("passes", lambda: elongation_from_legs(*legs, found))
    words = [
        f"{word} {float(leg):g} %" for word, leg in zip(("<", "≥"), legs, strict=True) if leg is not None
    ]
    return None if reading is None else (", ".join(words), reading)


def _shown(quantity: Quantity) -> str:
    return f"{float(quantity.value):g} {quantity.unit.name}"


def _edge(
    form: Form, strands: tuple[str, ...], chain: LeafChain, instruments: Instruments
) -> EdgeReading | None:
    strand = _strand(form, strands)
    height = form.quantity("plate_height", "length", required=True)
    unworn = form.quantity("unworn", "length")
    name = form.text("instrument") or "calliper"
    found = form.checked("instrument", lambda: instruments.find(name, "length"))
    form.no_more()
    if height is None or found is None:
        return None
    if unworn is not None and unworn.canonical < height.canonical - found.step:
        form.refuse(
            "unworn",
            "at least the worn plate height: it is the height of a plate that never meets the sheave",
        )
        return None
    if unworn is None and height.canonical > chain.plate_height_max + found.step:
        highest = f"{float(chain.plate_height_max):g} mm"
        right = (
            f"at most the {highest} of a new {chain.name} plate; if one is higher, give its height as unworn"
        )
        form.refuse("plate_height", right, _shown(height))
        return None
    return EdgeReading(strand, _shown(height), Reading.of(height, found), unworn)


def _finding(form: Form, strands: tuple[str, ...]) -> Finding | None:
    key = form.text("condition", required=True)
    condition = form.checked("condition", lambda: find_condition(key, "condition")) if key else None
    finding_strand = _strand(form, strands, required=False)
    where, note = form.text("where"), form.text("note")
    put_right = form.yes("put_right", otherwise=False)
    photos = read_photos(form)
    form.no_more()
    if condition is None:
        return None
    if put_right and condition.consequence is Consequence.CONDEMN_SET:
        right = "left out: this condition condemns the set, and only new chains put it right"
        form.refuse("put_right", right, "true")
    return Finding(condition, finding_strand, where, note, photos, put_right)
