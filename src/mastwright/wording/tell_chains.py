"""The chain sets of a judged visit, as the document shows them: strands, spans, growth, strength."""

from __future__ import annotations

from mastwright.chains.elongation import Growth
from mastwright.quantity import Reading, decimal_text
from mastwright.verdict import JudgedItem, JudgedSet, JudgedSpan
from mastwright.wording.amounts import percent_text
from mastwright.wording.catalogue import say
from mastwright.wording.teller import Document, Teller


def chain_documents(teller: Teller) -> list[Document]:
    """Return every chain set of the visit."""
    return [_chain(teller, judged) for judged in teller.judged.sets]


def _chain(teller: Teller, judged: JudgedSet) -> Document:
    chain = judged.chain_set.chain
    strands = [i for i in judged.items if i.kind == "elongation"]
    limit = teller.judged.policy.discard
    source, evidence = teller.source(limit.source)
    methods = dict.fromkeys(teller.word("instrument", s.span.reading.instrument.name) for s in judged.spans)
    return {
        "set": judged.chain_set.name,
        "title": teller.word("set", judged.chain_set.name),
        "verdict": str(judged.verdict),
        "verdict_text": teller.word("verdict", str(judged.verdict)),
        "designation": chain.name,
        "pitch_mm": float(chain.pitch),
        "strands": [_strand(teller, judged, item) for item in strands],
        "strength": _strength(teller, judged),
        "measured_how": ", ".join(methods),
        "limit_text": teller.limit(limit),
        "limit_source": source,
        "limit_evidence": evidence,
        "wear": _wear(teller, judged),
        "findings": [
            teller.title(i) for i in judged.items if i.kind == "finding" and not _strand_of(judged, i)
        ],
    }


def _wear(teller: Teller, judged: JudgedSet) -> Document | None:
    """Return where the set wears and where to hook the rule, or None where the mast is not known."""
    for wear in teller.judged.wears:
        if wear.set_name == judged.chain_set.name:
            clear = None if wear.clear_height is None else float(wear.clear_height)
            return {
                "pitch_mm": wear.pitch,
                "wrap_mm": wear.wrap,
                "longest_stroke_mm": wear.longest_stroke,
                "pieces": [{"from_mm": p.start, "to_mm": p.end, "wear": p.wear} for p in wear.pieces],
                "first_pin": wear.first_pin,
                "pitches": wear.pitches,
                "clear_stroke_mm": wear.clear_stroke,
                "clear_height_mm": clear,
                "notes": [say(n, teller.language, teller.system) for n in wear.notes],
            }
    return None


def _strand(teller: Teller, judged: JudgedSet, item: JudgedItem) -> Document:
    spans = [_span(teller, s) for s in judged.spans if s.span.strand == item.where]
    edges = [i for i in judged.items if i.kind == "edge-wear" and i.where == item.where]
    growth = judged.growth.get(item.where)
    found = [f for f in judged.chain_set.findings if f.strand == item.where]
    return {
        "strand": item.where,
        "title": teller.where(item),
        "verdict": str(item.verdict),
        "verdict_text": teller.word("verdict", str(item.verdict)),
        "own_verdict": str(item.own_verdict),
        "pitches_total": judged.chain_set.pitches_total,
        "spans": spans,
        "edge_wear_text": " ".join(say(n, teller.language, teller.system) for i in edges for n in i.reasons),
        "growth_text": "" if growth is None else _growth(growth),
        "conditions": [
            {"key": f.condition.key, "title": f.condition.title.of(teller.language)} for f in found
        ],
    }


def _span(teller: Teller, judged: JudgedSpan) -> Document:
    span, reading = judged.span, judged.span.reading
    notes = say(judged.reason, teller.language, teller.system)
    return {
        "from_pitch": span.start,
        "pitches": span.pitches,
        "elongation_percent": float(reading.value),
        "uncertainty_percent": reading.standard_uncertainty,
        "length_text": span.written,
        "bounds_text": _bounds(reading),
        "text": notes,
        "worst": judged.worst,
        "verdict": str(judged.verdict),
        "verdict_text": teller.word("verdict", str(judged.verdict)),
    }


def _bounds(reading: Reading) -> str:
    """Return the legs of a gauge between which a reading lies; nothing where it is a number."""
    if reading.low is not None and reading.high is not None and reading.value != reading.high:
        return ""
    legs = [("≥", reading.low), ("<", reading.high)]
    return ", ".join(f"{sign} {float(leg):g} %" for sign, leg in legs if leg is not None)


def _growth(growth: Growth) -> str:
    return f"{decimal_text(growth.percent, 2)} % ± {decimal_text(growth.standard_uncertainty, 2)}"


def _strength(teller: Teller, judged: JudgedSet) -> list[str]:
    told: list[str] = []
    for strength in teller.judged.strengths:
        if strength.set_name != judged.chain_set.name:
            continue
        told += [
            say(n, teller.language, teller.system) for n in (*strength.item.reasons, *strength.item.notes)
        ]
        band = strength.result.residual
        if band is not None:
            left = f"{percent_text(float(band.low))} - {percent_text(float(band.high))}"
            told.append(f"{band.assumption.of(teller.language)} {left}")
    return told


def _strand_of(judged: JudgedSet, item: JudgedItem) -> bool:
    return item.where in judged.chain_set.strands
