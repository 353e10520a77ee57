"""A limit: what it is, in which direction things get worse, and who says so."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from mastwright.quantity.source import Source


class Worse(StrEnum):
    """Which way a reading gets worse."""

    HIGHER = "higher"
    LOWER = "lower"


class LimitKind(StrEnum):
    """Who sets a limit."""

    STANDARD = "standard"
    LAW = "law"
    MAKER = "maker"
    SHOP = "shop"
    POLICY = "policy"


@dataclass(frozen=True)
class Limit:
    """A mark that a reading must stay on the right side of; reaching it counts as over it.

    Parameters
    ----------
    at
        In the dimension's own unit, exactly.
    dimension
        A dimension of `mastwright.quantity.units`.
    worse
        Which way a reading gets worse.
    kind
        Who sets it.
    source
        Where it is written and how that is known.
    reached_is_over
        Whether a reading exactly at the mark is over it: true for a mark at which the item is to be
        replaced, false where the source allows the mark itself.
    """

    at: Fraction
    dimension: str
    worse: Worse
    kind: LimitKind
    source: Source
    reached_is_over: bool = True

    def reached_by(self, value: Fraction) -> bool:
        """Tell whether a value is at or past the limit."""
        if value == self.at:
            return self.reached_is_over
        return value > self.at if self.worse is Worse.HIGHER else value < self.at

    def tighter_than(self, other: Limit) -> bool:
        """Tell whether this limit condemns earlier than another of the same direction."""
        if self.at == other.at:
            return self.reached_is_over and not other.reached_is_over
        return self.at < other.at if self.worse is Worse.HIGHER else self.at > other.at


def governing(limits: tuple[Limit, ...]) -> Limit:
    """Return the tightest of several limits of one dimension and direction; of two equal ones the first.

    Raises
    ------
    ValueError
        If there is none, or they differ in dimension or in which way a reading gets worse.
    """
    if len({(limit.dimension, limit.worse) for limit in limits}) != 1:
        raise ValueError("governing limit needs at least one limit, all of one dimension and direction")
    tightest = limits[0]
    for limit in limits[1:]:
        if limit.tighter_than(tightest):
            tightest = limit
    return tightest
