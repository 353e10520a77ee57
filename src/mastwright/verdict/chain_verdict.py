"""A chain set judged: each strand by its worst span, then the set rule.

One condemned strand, or any condition that condemns, condemns every strand of the set.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from math import hypot

from dateutil.relativedelta import relativedelta

from mastwright.chains.conditions import Consequence
from mastwright.chains.edge_wear import edge_wear_limit
from mastwright.chains.elongation import Growth, elongation_figures, growth_since_fitting
from mastwright.chains.pair import share_beside_worn
from mastwright.checks import Severity
from mastwright.quantity import Amount, Note, Reading
from mastwright.verdict.conformity import conformity
from mastwright.verdict.item import JudgedItem, blocks_work
from mastwright.verdict.policy import Policy
from mastwright.verdict.verdicts import Verdict, worst
from mastwright.visits.visit import ChainSet, EdgeReading, Finding, SpanReading

_SYSTEM = "chains"
_FOLLOWS = {
    Consequence.CONDEMN_SET: Verdict.WITHDRAW,
    Consequence.REPLACE_PART: Verdict.WITHDRAW,
    Consequence.CLEAN_AND_LOOK_AGAIN: Verdict.REMEASURE,
    Consequence.CORRECT: Verdict.REPLACE,
    Consequence.SHORTEN_INTERVAL: Verdict.WATCH,
}


@dataclass(frozen=True)
class JudgedSpan:
    """One span with its own verdict and reason, and whether it is the worst of its strand."""

    span: SpanReading
    verdict: Verdict
    reason: Note
    worst: bool


@dataclass(frozen=True)
class JudgedSet:
    """A chain set judged.

    Parameters
    ----------
    items
        The set itself first, then its strands, edges and findings.
    condemned
        Whether the chains themselves are to be replaced before the truck works.
    planned
        Whether they are to be replaced at a date.
    """

    chain_set: ChainSet
    verdict: Verdict
    items: tuple[JudgedItem, ...]
    spans: tuple[JudgedSpan, ...]
    growth: dict[str, Growth]
    condemned: bool
    planned: bool


def judge_elongation(reading: Reading, policy: Policy) -> tuple[Verdict, float, tuple[Note, ...]]:
    """Judge one elongation reading.

    Parameters
    ----------
    reading
        Percent of the nominal length.
    policy
        The shop's marks.

    Returns
    -------
    tuple
        The verdict, the probability of being over the discard mark, and the reasons.
    """
    found = conformity(
        reading,
        policy.discard,
        severity=Severity.OUT_OF_SERVICE,
        highest_doubt=policy.highest_doubt,
        planned=policy.planned,
        nearing=policy.nearing,
    )
    marks = elongation_figures()
    shortest = -float(marks.new_tolerance.at) - policy.shorter_than_new * reading.standard_uncertainty
    limit = Amount(policy.discard.at, "percent")
    read = Amount(reading.value, "percent")
    if float(reading.value) < shortest:
        return Verdict.REMEASURE, found.probability_over, (Note("shorter-than-new", {"read": read}),)
    reasons = [_reason(found.verdict, reading, policy, read, limit)]
    if reading.value >= marks.miscount.at:
        reasons.append(Note("count-again", {"read": read}))
    return found.verdict, found.probability_over, tuple(reasons)


def _reason(verdict: Verdict, reading: Reading, policy: Policy, read: Amount, limit: Amount) -> Note:
    match verdict:
        case Verdict.WITHDRAW:
            return Note("elongation-over", {"read": read, "limit": limit})
        case Verdict.REMEASURE if _by_legs(reading):
            return Note("elongation-gauge-doubt", {"leg": read, "limit": limit})
        case Verdict.REMEASURE:
            return Note("elongation-doubt", {"read": read, "limit": limit})
        case Verdict.REPLACE if policy.planned is not None:
            return Note("elongation-planned", {"read": read, "planned": Amount(policy.planned.at, "percent")})
        case Verdict.WATCH:
            return Note("elongation-nearing", {"read": read, "nearing": Amount(policy.nearing.at, "percent")})
        case _ if reading.low is None:
            return Note("elongation-passes", {"leg": read, "limit": limit})
        case _:
            return Note("elongation-fit", {"read": read, "limit": limit})


def judge_set(chain_set: ChainSet, policy: Policy, on: date) -> JudgedSet:
    """Judge a chain set from all that was read and seen on it.

    Parameters
    ----------
    chain_set
        As written down.
    policy
        The shop's marks.
    on
        Day of the visit.
    """
    planned_by = on + relativedelta(months=int(elongation_figures().planned_months))
    strands: list[JudgedItem] = []
    spans: list[JudgedSpan] = []
    growth: dict[str, Growth] = {}
    for strand in chain_set.strands:
        item, judged, grown = _strand(chain_set, strand, policy)
        strands.append(item)
        spans += judged
        if grown is not None:
            growth[strand] = grown
    edges = [_edge(chain_set, edge, policy) for edge in chain_set.edges]
    findings = [_finding(chain_set, finding) for finding in chain_set.findings]
    condemning = [
        *strands,
        *edges,
        *(
            i
            for i, f in zip(findings, chain_set.findings, strict=True)
            if f.condition.consequence is Consequence.CONDEMN_SET
        ),
    ]
    condemned = any(i.own_verdict is Verdict.WITHDRAW for i in condemning)
    planned = not condemned and any(i.own_verdict is Verdict.REPLACE for i in (*strands, *edges))
    strands = [_under_set_rule(i, condemned=condemned, planned=planned) for i in strands]
    items = [*strands, *edges, *findings]
    verdict = worst(i.verdict for i in items)
    notes = _set_notes(chain_set, policy, condemned=condemned, planned=planned, verdict=verdict)
    whole = JudgedItem(
        key=chain_set.name,
        kind="set",
        name=chain_set.chain.name,
        where="",
        system=_SYSTEM,
        verdict=verdict,
        own_verdict=verdict,
        severity=Severity.OUT_OF_SERVICE,
        reasons=notes,
        blocks=any(i.blocks for i in items),
    )
    dated = tuple(
        replace(i, by=planned_by) if i.verdict is Verdict.REPLACE and i.by is None else i
        for i in (whole, *items)
    )
    return JudgedSet(chain_set, verdict, dated, tuple(spans), growth, condemned, planned)


def _strand(
    chain_set: ChainSet, strand: str, policy: Policy
) -> tuple[JudgedItem, list[JudgedSpan], Growth | None]:
    judged = [(s, judge_elongation(s.reading, policy)) for s in chain_set.spans if s.strand == strand]
    item = JudgedItem(
        key=chain_set.name,
        kind="elongation",
        name="",
        where=strand,
        system=_SYSTEM,
        verdict=Verdict.NOT_JUDGED,
        own_verdict=Verdict.NOT_JUDGED,
        severity=Severity.OUT_OF_SERVICE,
        limit=policy.discard,
        reasons=(Note("strand-not-measured", {}),),
    )
    if not judged:
        return item, [], None
    governing = max(judged, key=lambda pair: (pair[1][0].rank, pair[1][1], pair[0].reading.value))
    span, (verdict, probability, reasons) = governing
    growth = _growth(span, chain_set)
    notes = [] if span.start is not None else [Note("span-place-not-noted", {})]
    if growth is not None and not growth.from_first_reading:
        notes.append(
            Note(
                "new-length-unknown", {"tolerance": Amount(elongation_figures().new_tolerance.at, "percent")}
            )
        )
    item = replace(
        item,
        verdict=verdict,
        own_verdict=verdict,
        written=span.written,
        reading=span.reading,
        probability=probability,
        reasons=reasons,
        notes=tuple(notes),
        blocks=blocks_work(verdict, Severity.OUT_OF_SERVICE),
        photos=tuple(p for s, _ in judged for p in s.photos),
    )
    spans = [JudgedSpan(s, v[0], v[2][0], worst=s is span) for s, v in judged]
    return item, spans, growth


def _growth(span: SpanReading, chain_set: ChainSet) -> Growth | None:
    if _by_legs(span.reading):
        return None
    first = chain_set.first.get(span.strand)
    return growth_since_fitting(span.reading, None if first is None or _by_legs(first) else first)


def _by_legs(reading: Reading) -> bool:
    """Tell whether a pass/fail gauge was read: a leg is a bound on the elongation, not its value."""
    return reading.low is None or reading.high is None or reading.value == reading.high


def _under_set_rule(item: JudgedItem, *, condemned: bool, planned: bool) -> JudgedItem:
    """Raise a strand's verdict to that of its set; its own verdict stays beside it."""
    raised = Verdict.WITHDRAW if condemned else Verdict.REPLACE if planned else item.verdict
    if raised.rank <= item.verdict.rank:
        return item
    reasons = (*item.reasons, Note("set-rule", {}))
    return replace(
        item, verdict=raised, reasons=reasons, blocks=blocks_work(raised, item.severity) or item.blocks
    )


def _edge(chain_set: ChainSet, edge: EdgeReading, policy: Policy) -> JudgedItem:
    unworn = None if edge.unworn is None else edge.unworn.canonical
    wear = edge_wear_limit(unworn, chain_set.chain.plate_height_max)
    reading = edge.reading
    if edge.unworn is not None:
        share = 1 - float(elongation_figures().edge_wear.at)
        doubt = hypot(reading.standard_uncertainty, share * reading.instrument.uncertainty_at(wear.unworn))
        reading = replace(reading, standard_uncertainty=doubt)
    watch = wear.unworn - (wear.unworn - wear.limit.at) * policy.nearing_share
    found = conformity(
        reading,
        wear.limit,
        severity=Severity.OUT_OF_SERVICE,
        highest_doubt=policy.highest_doubt,
        nearing=replace(wear.limit, at=watch),
    )
    params = {"read": Amount(reading.value, "length"), "limit": Amount(wear.limit.at, "length")}
    code = {Verdict.WITHDRAW: "edge-over", Verdict.REMEASURE: "edge-doubt", Verdict.WATCH: "edge-nearing"}
    return JudgedItem(
        key=chain_set.name,
        kind="edge-wear",
        name="",
        where=edge.strand,
        system=_SYSTEM,
        verdict=found.verdict,
        own_verdict=found.verdict,
        severity=Severity.OUT_OF_SERVICE,
        written=edge.written,
        reading=reading,
        limit=wear.limit,
        probability=found.probability_over,
        reasons=(Note(code.get(found.verdict, "edge-fit"), params),),
        notes=(Note("edge-from-table", {"height": Amount(wear.unworn, "length")}),)
        if wear.from_table
        else (),
        blocks=blocks_work(found.verdict, Severity.OUT_OF_SERVICE),
    )


def _finding(chain_set: ChainSet, finding: Finding) -> JudgedItem:
    condition = finding.condition
    verdict = Verdict.FIT if finding.put_right else _FOLLOWS[condition.consequence]
    reason = "put-right" if finding.put_right else condition.consequence
    return JudgedItem(
        key=chain_set.name,
        kind="finding",
        name=condition.key,
        where=finding.strand,
        system=_SYSTEM,
        verdict=verdict,
        own_verdict=verdict,
        severity=Severity.OUT_OF_SERVICE,
        reasons=(Note(f"finding-{reason}", {}),),
        blocks=blocks_work(verdict, Severity.OUT_OF_SERVICE),
        order_part="" if condition.consequence is Consequence.CONDEMN_SET else condition.order_part.en,
        free_text=". ".join(w for w in (finding.where, finding.note) if w),
        photos=finding.photos,
    )


def _set_notes(
    chain_set: ChainSet, policy: Policy, *, condemned: bool, planned: bool, verdict: Verdict
) -> tuple[Note, ...]:
    notes = []
    if condemned:
        notes.append(Note("set-condemned", {"strands": len(chain_set.strands)}))
    elif planned:
        notes.append(Note("set-planned", {"strands": len(chain_set.strands)}))
    elif verdict is Verdict.FIT:
        notes.append(Note("set-fit", {}))
    apart = _strands_apart(chain_set.spans, policy)
    if apart is not None:
        least, most = apart
        notes.append(Note("strands-differ", {"difference": Amount(most - least, "percent")}))
        if least > 0:
            share = share_beside_worn(most / least)
            params = {"ratio": Amount(most / least, "ratio"), "share": Amount(100 * share, "percent")}
            notes.append(Note("pair-share", params))
    return tuple(notes)


def _strands_apart(spans: Iterable[SpanReading], policy: Policy) -> tuple[Fraction, Fraction] | None:
    """Return the least and the most worn strand's elongation, if doubt does not explain the difference."""
    worst_span: dict[str, Reading] = {}
    for span in spans:
        known = worst_span.get(span.strand)
        if not _by_legs(span.reading) and (known is None or span.reading.value > known.value):
            worst_span[span.strand] = span.reading
    readings = sorted(worst_span.values(), key=lambda r: r.value)
    if len(readings) < 2:  # noqa: PLR2004  a pair
        return None
    least, most = readings[0], readings[-1]
    doubt = hypot(least.standard_uncertainty, most.standard_uncertainty)
    differ = float(most.value - least.value) > policy.strands_differ * doubt
    return (least.value, most.value) if differ else None
