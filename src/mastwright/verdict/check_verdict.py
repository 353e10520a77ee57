"""One of the other checks judged: measured against its limit, seen, or kept without a verdict."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta

from mastwright.checks import (
    Check,
    Measured,
    NotJudged,
    Outcome,
    Seen,
    Severity,
    ShopLimits,
    TruckFacts,
    weigh,
)
from mastwright.quantity import Amount, Limit, Note
from mastwright.verdict.conformity import conformity
from mastwright.verdict.item import JudgedItem, blocks_work
from mastwright.verdict.policy import Policy
from mastwright.verdict.verdicts import Verdict
from mastwright.visits.visit import CheckEntry

_BROKEN = {
    Severity.OUT_OF_SERVICE: Verdict.WITHDRAW,
    Severity.REPAIR: Verdict.REPLACE,
    Severity.MONITOR: Verdict.WATCH,
}


@dataclass(frozen=True)
class JudgedCheck:
    """A check judged, with the outcome behind it."""

    entry: CheckEntry
    outcome: Outcome
    item: JudgedItem


def judge_check(
    entry: CheckEntry, facts: TruckFacts, model: str, limits: ShopLimits, policy: Policy, on: date
) -> JudgedCheck:
    """Judge one check of the visit.

    Parameters
    ----------
    entry
        As written down.
    facts, model
        Of the truck.
    limits
        The maker's and the shop's own.
    policy
        The shop's rules of judgement.
    on
        Day of the visit.
    """
    outcome = weigh(
        entry.check, entry.answers, facts, limits.for_check(entry.check.id, model), entry.instrument, on
    )
    item = JudgedItem(
        key=entry.check.id,
        kind="check",
        name=entry.check.id,
        where=entry.where,
        system=entry.check.system,
        verdict=Verdict.NOT_JUDGED,
        own_verdict=Verdict.NOT_JUDGED,
        severity=entry.check.severity,
        written=entry.written,
        free_text=entry.note,
        photos=entry.photos,
        order_part=entry.check.order_part,
    )
    item = _judged(item, outcome, entry.check, policy)
    if item.verdict is Verdict.REPLACE:
        latest = on + timedelta(days=policy.repair_days)
        item = replace(item, by=min(entry.by or latest, latest))
    return JudgedCheck(entry, outcome, item)


def _judged(item: JudgedItem, outcome: Outcome, check: Check, policy: Policy) -> JudgedItem:
    match outcome:
        case Measured():
            return _measured(item, outcome, check, policy)
        case Seen():
            severity = Severity.OUT_OF_SERVICE if outcome.worse_case else check.severity
            verdict = Verdict.FIT if outcome.ok else _BROKEN[severity]
            reason = Note("seen-in-order" if outcome.ok else "seen-not-in-order", {})
            return _with(item, verdict, severity, (reason,), outcome.notes)
        case NotJudged():
            return replace(item, reading=outcome.reading, reasons=(outcome.why,), notes=outcome.notes)
        case _:  # information: no verdict of its own
            return _with(item, Verdict.FIT, check.severity, (Note("information-only", {}),), outcome.notes)


def _measured(item: JudgedItem, outcome: Measured, check: Check, policy: Policy) -> JudgedItem:
    severity = Severity.OUT_OF_SERVICE if outcome.worse_case else check.severity
    nearing = None
    if outcome.as_new is not None:
        allowance = outcome.limit.at - outcome.as_new
        nearing = replace(
            outcome.limit, at=outcome.as_new + allowance * policy.nearing_share, reached_is_over=True
        )
    found = conformity(
        outcome.reading,
        outcome.limit,
        severity=severity,
        highest_doubt=policy.highest_doubt,
        nearing=nearing,
    )
    verdict = Verdict.WITHDRAW if outcome.worse_case else found.verdict
    reasons = (
        _reason(outcome, found.verdict, nearing),
        *((Note("worse-case", {}),) if outcome.worse_case else ()),
    )
    judged = _with(item, verdict, severity, reasons, outcome.notes)
    return replace(judged, reading=outcome.reading, limit=outcome.limit, probability=found.probability_over)


def _reason(outcome: Measured, verdict: Verdict, nearing: Limit | None) -> Note:
    """Return the remark of a measured check; of one that is only watched, too, whether it is over."""
    limit, read = outcome.limit, outcome.reading.value
    params = {"read": Amount(read, limit.dimension), "limit": Amount(limit.at, limit.dimension)}
    if limit.reached_by(read):
        return Note("measured-over", params)
    if verdict is Verdict.FIT:
        return Note("measured-fit", params)
    if nearing is not None and nearing.reached_by(read) and verdict is Verdict.WATCH:
        return Note("measured-nearing", params)
    return Note("measured-doubt", params)


def _with(
    item: JudgedItem, verdict: Verdict, severity: Severity, reasons: tuple[Note, ...], notes: tuple[Note, ...]
) -> JudgedItem:
    return replace(
        item,
        verdict=verdict,
        own_verdict=verdict,
        severity=severity,
        reasons=reasons,
        notes=notes,
        blocks=blocks_work(verdict, severity),
    )
