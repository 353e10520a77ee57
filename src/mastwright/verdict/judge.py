"""A whole visit judged: every item, the roll-up, what to order, when to come again."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from functools import cache

from mastwright.checks import NO_LIMITS, Check, ShopLimits, applicable
from mastwright.quantity import read_table
from mastwright.verdict.chain_verdict import JudgedSet, judge_set
from mastwright.verdict.check_verdict import JudgedCheck, judge_check
from mastwright.verdict.item import JudgedItem
from mastwright.verdict.legal import Duty, legal_frame
from mastwright.verdict.next_visit import NextVisit, next_visit
from mastwright.verdict.order import OrderLine, order_lines
from mastwright.verdict.policy import Policy, shop_policy
from mastwright.verdict.strength_item import SetStrength, set_strength
from mastwright.verdict.verdicts import Verdict, worst
from mastwright.verdict.wear_place import SetWear, set_wear
from mastwright.visits.visit import Refusal, Visit


@dataclass(frozen=True)
class JudgedVisit:
    """What a visit comes to.

    Parameters
    ----------
    verdict
        The worst of all items.
    may_work
        Whether the truck may work at all.
    may_work_until
        The earliest date of a replacement or repair; None where there is none, or it may not work.
    items
        In walking order.
    dangers
        The items that are not fit, in order of danger.
    not_looked_at
        Checks that apply to this truck and were not recorded.
    """

    visit: Visit
    policy: Policy
    verdict: Verdict
    may_work: bool
    may_work_until: date | None
    items: tuple[JudgedItem, ...]
    dangers: tuple[JudgedItem, ...]
    sets: tuple[JudgedSet, ...]
    strengths: tuple[SetStrength, ...]
    wears: tuple[SetWear, ...]
    checks: tuple[JudgedCheck, ...]
    order: tuple[OrderLine, ...]
    duties: tuple[Duty, ...]
    next_visit: NextVisit
    not_looked_at: tuple[Check, ...]


@cache
def _danger_ranks() -> dict[str, int]:
    return {row["system"]: int(row["rank"]) for row in read_table("mastwright.verdict", "danger.csv")}


def judge_visit(visit: Visit, limits: ShopLimits = NO_LIMITS) -> JudgedVisit:
    """Judge everything that was written down at the truck.

    Parameters
    ----------
    visit
        As read by `mastwright.visits.read_visit`.
    limits
        The maker's and the shop's own limits.

    Raises
    ------
    BadInput
        If the visit's policy is looser than allowed, or an answer cannot be what it says.
    """
    policy = shop_policy(visit.policy.discard_percent, visit.policy.highest_doubt)
    frame = legal_frame(visit.truck.facts.country)
    sets = tuple(_refused_set(judge_set(s, policy, visit.on), visit.refusals) for s in visit.chains)
    strengths = tuple(s for judged in sets if (s := set_strength(judged, visit.truck)) is not None)
    checks = _judge_checks(visit, limits, policy)
    items = (
        *(i for s in sets for i in s.items),
        *(s.item for s in strengths),
        *(c.item for c in checks),
    )
    blocked = any(i.blocks for i in items)
    dated = [i.by for i in items if i.verdict is Verdict.REPLACE and i.by is not None]
    return JudgedVisit(
        visit=visit,
        policy=policy,
        verdict=worst(i.verdict for i in items),
        may_work=not blocked,
        may_work_until=min(dated) if dated and not blocked else None,
        items=items,
        dangers=in_order_of_danger(items),
        sets=sets,
        strengths=strengths,
        wears=tuple(w for judged in sets if (w := set_wear(judged, visit.truck, policy)) is not None),
        checks=checks,
        order=order_lines(sets, items),
        duties=frame.duties_for(out_of_service=blocked, planned=bool(dated)),
        next_visit=next_visit(visit, items, frame),
        not_looked_at=_not_looked_at(visit),
    )


def in_order_of_danger(items: Iterable[JudgedItem]) -> tuple[JudgedItem, ...]:
    """Return the items that are not fit, the most dangerous first.

    A strand that only the set rule condemned stands behind the set itself.
    """
    ranks = _danger_ranks()
    named = [i for i in items if i.verdict is not Verdict.FIT and i.verdict is i.own_verdict]
    return tuple(sorted(named, key=lambda i: (not i.blocks, -i.verdict.rank, ranks[i.system])))


def _judge_checks(visit: Visit, limits: ShopLimits, policy: Policy) -> tuple[JudgedCheck, ...]:
    truck = visit.truck
    order = {check.id: place for place, check in enumerate(applicable(truck.facts))}
    judged = [judge_check(e, truck.facts, truck.model, limits, policy, visit.on) for e in visit.checks]
    judged = [replace(j, item=_refused(j.item, visit.refusals)) for j in judged]
    return tuple(sorted(judged, key=lambda j: order.get(j.entry.check.id, len(order))))


def _refused(item: JudgedItem, refusals: Iterable[Refusal]) -> JudgedItem:
    """Mark a refused item; its verdict stays what it is."""
    hit = any(r.item == item.key and r.where in {"", item.where} for r in refusals)
    return replace(item, refused=True) if hit and item.verdict.rank >= Verdict.REPLACE.rank else item


def _refused_set(judged: JudgedSet, refusals: Iterable[Refusal]) -> JudgedSet:
    return replace(judged, items=tuple(_refused(i, refusals) for i in judged.items))


def _not_looked_at(visit: Visit) -> tuple[Check, ...]:
    done = {e.check.id for e in visit.checks}
    return tuple(c for c in applicable(visit.truck.facts) if c.id not in done and c.kind != "information")
