"""The verdicts, from best to worst, and what each means for the truck."""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum


class Verdict(StrEnum):
    """Whether an item may go on working, from best to worst."""

    FIT = "fit"
    WATCH = "watch"
    NOT_JUDGED = "not judged"
    REPLACE = "replace"
    REMEASURE = "remeasure"
    WITHDRAW = "withdraw"

    @property
    def rank(self) -> int:
        """Place from best (0) to worst."""
        return list(Verdict).index(self)


def worst(verdicts: Iterable[Verdict]) -> Verdict:
    """Return the worst of several verdicts; `not judged` where there is none."""
    return max(verdicts, key=lambda v: v.rank, default=Verdict.NOT_JUDGED)
