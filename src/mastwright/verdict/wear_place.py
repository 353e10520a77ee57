"""Where this truck's chains wear, where to hook the rule next time, and what a reading elsewhere is worth.

It never changes a verdict: a reading taken where the chain wears less is warned about, not corrected.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from mastwright.chains.spans import customary_spans
from mastwright.chains.strength import standard_gravity
from mastwright.mast.path_drawing import WornPiece
from mastwright.quantity import Amount, Instrument, Note, common_instruments
from mastwright.verdict.chain_verdict import JudgedSet
from mastwright.verdict.policy import Policy
from mastwright.visits.visit import SpanReading, Truck

if TYPE_CHECKING:
    from mastwright.mast.best_span import MapSpan
    from mastwright.mast.duty import Duty
    from mastwright.mast.elements import MastElements

_ASSUMED_WORK = "mixed"


@dataclass(frozen=True)
class SetWear:
    """The wear map of one chain set, as far as papers need it.

    Parameters
    ----------
    pieces
        Of the chain from the sheave down, with their wear relative to the worst joint.
    pitch, wrap, longest_stroke
        mm.
    first_pin, pitches
        Of the best span, pins counted down from the sheave with the mast lowered.
    clear_stroke, clear_height
        Stroke of the set and fork height, mm, past which the whole span hangs on the anchor side; the
        height is None where the mast does not lift so far.
    dilutions
        Each placed span of this visit, what share of the worst joint's wear it reads, and what share as
        long a span at the best place would read.
    notes
        What is to be said of the set, assumptions included.
    """

    set_name: str
    pieces: tuple[WornPiece, ...]
    pitch: float
    wrap: float
    longest_stroke: float
    first_pin: int
    pitches: int
    clear_stroke: float
    clear_height: Fraction | None
    dilutions: tuple[tuple[SpanReading, float, float], ...]
    notes: tuple[Note, ...]


def set_wear(judged: JudgedSet, truck: Truck, policy: Policy) -> SetWear | None:
    """Return where a chain set wears, or None where too little is known of the mast.

    Parameters
    ----------
    judged
        The set with its readings.
    truck
        With mast arrangement, masses, lift height or rack levels, and free lift where the mast has one.
    policy
        Whose discard mark the best span is chosen for.
    """
    use, masses = truck.use, truck.masses
    load = masses.get("load", truck.facts.rated_capacity)
    if truck.arrangement is None or load is None or "carriage" not in masses:
        return None
    from mastwright.mast.articulation import on_rim  # noqa: PLC0415  it brings numpy, which few visits need
    from mastwright.mast.best_span import best_span, span_at  # noqa: PLC0415
    from mastwright.mast.elements import mast_elements  # noqa: PLC0415
    from mastwright.mast.figures import mast_figures  # noqa: PLC0415
    from mastwright.mast.map_pieces import map_pieces  # noqa: PLC0415
    from mastwright.mast.moves import set_moves  # noqa: PLC0415
    from mastwright.mast.state import body_masses, lift_for_stroke  # noqa: PLC0415
    from mastwright.mast.wear_map import wear_map  # noqa: PLC0415

    elements = mast_elements(truck.arrangement.letter)
    name = _path_name(judged, elements)
    bodies = body_masses(Fraction(0), masses["carriage"], masses.get("inner"), masses.get("middle"), None)
    duty = _duty(truck, float(load))
    known = name is not None and all(bodies[b] is not None for b in elements.hangs[name])
    if name is None or duty is None or not known or (elements.has_free_lift and use.free_lift is None):
        return None
    chain = judged.chain_set.chain
    figures = mast_figures()
    rim = use.sheave if use.sheave is not None else figures["sheave_pitches"].value * chain.pitch
    bend = on_rim(float(chain.pitch), float(rim), float(chain.plate_height_max))
    strands = len(judged.chain_set.strands)
    free_lift = float(use.free_lift or 0)
    way = set_moves(elements, name, duty.moves, free_lift, bodies, strands, float(standard_gravity()))
    chart = wear_map(way, float(chain.pitch), bend.wrap)
    span = best_span(chart, float(policy.discard.at), _in_hand(judged).standard_uncertainty)
    if span is None:
        return None
    clear = span.stroke_past_sheave(bend.wrap)
    lift = lift_for_stroke(elements, name, clear, free_lift) if clear <= way.highest else None
    height = None if lift is None else Fraction(lift)
    dilutions = tuple(
        (s.span, read.dilution, best.dilution)
        for s in judged.spans
        if s.span.start is not None
        and s.span.pitches is not None
        and (read := span_at(chart, max(s.span.start, 1), s.span.pitches)) is not None
        and (best := span_at(chart, span.first_pin, s.span.pitches)) is not None
    )
    notes = [_hook_note(span, height)]
    notes += [
        Note(
            "customary-span-shows",
            {"pitches": read.pitches, "share": Amount(Fraction(100 * read.dilution), "percent")},
        )
        for read in (span_at(chart, span.first_pin, customary_spans(chain)[0]),)
        if read is not None
    ]
    notes += _dilution_notes(dilutions, policy.span_worth)
    if use.sheave is None:
        notes.append(
            Note(
                "sheave-assumed",
                {"sheave": Amount(rim, "length"), "source": str(figures["sheave_pitches"].source)},
            )
        )
    if duty.assumed:
        notes.append(Note("duty-assumed", {"source": "; ".join(dict.fromkeys(map(str, duty.assumed)))}))
    return SetWear(
        set_name=judged.chain_set.name,
        pieces=map_pieces(chart),
        pitch=chart.pitch,
        wrap=chart.wrap,
        longest_stroke=way.highest,
        first_pin=span.first_pin,
        pitches=span.pitches,
        clear_stroke=clear,
        clear_height=height,
        dilutions=dilutions,
        notes=tuple(notes),
    )


def _in_hand(judged: JudgedSet) -> Instrument:
    """Return the instrument that the set's length was read with, a rule where it was not."""
    lengths = [
        s.span.reading.instrument for s in judged.spans if s.span.reading.instrument.dimension == "length"
    ]
    return lengths[0] if lengths else common_instruments().find("rule", "length")


def _path_name(judged: JudgedSet, elements: MastElements) -> str | None:
    """Return the set's name in the arrangement; a mast with one chain set calls it what it likes."""
    names = [path.name for path in elements.paths]
    if len(names) == 1:
        return names[0]
    return judged.chain_set.name if judged.chain_set.name in names else None


def _duty(truck: Truck, load: float) -> Duty | None:
    """Return the moves from rack levels or from plain words; without either a mixed duty is assumed."""
    from mastwright.mast.duty import RackLevel, described_duty, rack_duty  # noqa: PLC0415

    use = truck.use
    travel = None if use.travel_height is None else float(use.travel_height)
    if use.levels:
        levels = [RackLevel(float(height), float(share)) for height, share in use.levels]
        return rack_duty(levels, 1, load, travel)
    if truck.lift_height is None:
        return None
    words = use.work or _ASSUMED_WORK
    return described_duty(words, 1, load, float(truck.lift_height.canonical))


def _hook_note(span: MapSpan, height: Fraction | None) -> Note:
    pitches, first, last = span.pitches, span.first_pin, span.last_pin
    if height is None:
        return Note("hook-here", {"pitches": pitches, "first": first, "last": last})
    raised = Amount(height, "length")
    return Note("hook-here-or-raised", {"pitches": pitches, "first": first, "last": last, "height": raised})


def _dilution_notes(dilutions: tuple[tuple[SpanReading, float, float], ...], worth: float) -> list[Note]:
    """Warn of spans that read clearly less of the wear than as long a span at the best place would."""
    said = []
    for span, share, best in dilutions:
        if share < worth * best:
            read, most = (Amount(Fraction(100 * d), "percent") for d in (share, best))
            said.append(Note("span-diluted", {"strand": span.strand, "share": read, "best": most}))
    return said
