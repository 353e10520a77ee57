"""The shop's rules of judgement: which marks, and how much doubt a `fit` may carry."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache

from mastwright.chains.elongation import elongation_figures
from mastwright.quantity import BadInput, Evidence, Limit, LimitKind, Problem, Source, read_table


@dataclass(frozen=True)
class Policy:
    """What a visit is judged by.

    Parameters
    ----------
    highest_doubt
        Probability of being over the limit that a `fit` may carry.
    discard, planned, nearing
        Elongation marks; `planned` is None where the shop discards at its planned mark already.
    nearing_share
        Share of an allowance used up from which an item is watched.
    repair_days
        Latest date of a repair that does not stop the truck.
    strands_differ, shorter_than_new
        In standard uncertainties; see ``tables/policy.csv``.
    span_worth
        Share of what the best place would read, below which a span is warned about.
    """

    highest_doubt: float
    discard: Limit
    planned: Limit | None
    nearing: Limit
    nearing_share: Fraction
    repair_days: int
    strands_differ: float
    shorter_than_new: float
    span_worth: float


@cache
def _figures() -> dict[str, Fraction]:
    return {row["name"]: Fraction(row["value"]) for row in read_table("mastwright.verdict", "policy.csv")}


def shop_policy(discard_percent: Fraction | None = None, highest_doubt: float | None = None) -> Policy:
    """Return the policy that ships, tightened by what the shop has set.

    Parameters
    ----------
    discard_percent
        The elongation at which this shop (or the truck's maker) discards, percent; never above the
        default of 3 %.
    highest_doubt
        Between 0 and the allowed 5 %.

    Raises
    ------
    BadInput
        If either is looser than allowed.
    """
    figures, marks = _figures(), elongation_figures()
    policy = Policy(
        highest_doubt=float(figures["highest_doubt"]),
        discard=marks.discard,
        planned=marks.planned,
        nearing=marks.nearing,
        nearing_share=figures["nearing_share"],
        repair_days=int(figures["repair_days"]),
        strands_differ=float(figures["strands_differ"]),
        shorter_than_new=float(figures["shorter_than_new"]),
        span_worth=float(figures["span_worth"]),
    )
    if highest_doubt is not None:
        top = float(figures["highest_doubt_allowed"])
        if not 0 < highest_doubt <= top:
            right = f"above 0 % and at most {top:.0%}"
            raise BadInput(Problem("policy.highest_doubt", f"{highest_doubt:.3%}", right))
        policy = replace(policy, highest_doubt=highest_doubt)
    if discard_percent is None or discard_percent == marks.discard.at:
        return policy
    if not 0 < discard_percent < marks.discard.at:
        right = f"above 0 % and at most {float(marks.discard.at):g} %: a shop may be stricter, never looser"
        raise BadInput(Problem("policy.discard_at", f"{float(discard_percent):g} %", right))
    source = Source("the shop's own discard mark, stricter than the default", Evidence.COMMON_PRACTICE)
    own = Limit(discard_percent, "percent", marks.discard.worse, LimitKind.SHOP, source)
    return replace(
        policy,
        discard=own,
        planned=marks.planned if marks.planned.at < own.at else None,
        nearing=marks.nearing
        if marks.nearing.at < own.at
        else replace(own, at=own.at * policy.nearing_share),
    )
