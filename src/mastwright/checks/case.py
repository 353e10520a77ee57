"""One check at one truck on one day, as a rule sees it, and the ways in which rules conclude."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from mastwright.checks.answer import Answers
from mastwright.checks.catalogue import Check, CheckKind
from mastwright.checks.outcome import Measured, NotJudged
from mastwright.checks.shop_limits import ShopLimit
from mastwright.checks.truck import TruckFacts
from mastwright.quantity import (
    Instrument,
    Limit,
    LimitKind,
    Note,
    Reading,
    Worse,
    canonical_unit,
    governing,
)

_KIND = {CheckKind.LAW: LimitKind.LAW, CheckKind.MAKER: LimitKind.MAKER}


@dataclass(frozen=True)
class Case:
    """What a rule works from."""

    check: Check
    answers: Answers
    facts: TruckFacts
    own: tuple[ShopLimit, ...]
    instrument: Instrument
    on: date

    def limit(self, at: Fraction, worse: Worse) -> Limit:
        """Return the catalogue's own limit, put at this value of the reading."""
        check = self.check
        kind = _KIND.get(check.kind, LimitKind.STANDARD)
        return Limit(at, check.reads, worse, kind, check.source, reached_is_over=not check.mark_allowed)

    def shipped(self, worse: Worse, of: Fraction = Fraction(1)) -> tuple[Limit, ...]:
        """Return the catalogue's own limit, or that share of a whole; nothing where only the maker knows."""
        at = self.check.limit
        return () if at is None else (self.limit(at * of, worse),)

    def reading(self, value: Fraction, standard_uncertainty: float | None = None) -> Reading:
        """Return a value worked out from the answers as a reading of the check's instrument."""
        doubt = (
            self.instrument.uncertainty_at(value) if standard_uncertainty is None else standard_uncertainty
        )
        half = self.instrument.step / 2
        unit = canonical_unit(self.check.reads).name
        return Reading(value, value - half, value + half, self.check.reads, unit, self.instrument, doubt)

    def main(self) -> Reading:
        """Return the main reading as it was written down."""
        return Reading.of(self.answers.quantity("value"), self.instrument)

    def against(
        self,
        reading: Reading,
        shipped: tuple[Limit, ...],
        *,
        as_new: Fraction | None = None,
        notes: tuple[Note, ...] = (),
    ) -> Measured | NotJudged:
        """Hold a reading against the shipped and the shop's limits; the tightest governs.

        Without any limit the reading is kept and not judged. A maker's limit that is marked to govern
        stands alone on its side, but for the law's, and the outcome says so. Of limits on both sides the
        one that is nearer to being exceeded, or already is, governs.
        """
        every = (*shipped, *(s.limit for s in self.own))
        chosen = tuple(s.limit for s in self.own if s.governs)
        decided = {limit.worse for limit in chosen}
        limits = tuple(x for x in every if x in chosen or x.worse not in decided or x.kind is LimitKind.LAW)
        if not limits:
            return NotJudged(Note("makers-limit-missing"), reading, notes)
        said = (*notes, Note("makers-limit-governs")) if chosen else notes
        sides = [
            governing(tuple(x for x in limits if x.worse is w))
            for w in Worse
            if any(x.worse is w for x in limits)
        ]
        governs = min(sides, key=lambda side: _room(reading, side))
        others = tuple(x for x in every if x != governs)
        return Measured(reading, governs, others, as_new if as_new != governs.at else None, said)


def _room(reading: Reading, limit: Limit) -> Fraction:
    """Return how far a reading may still go, negative where it is over."""
    return limit.at - reading.value if limit.worse is Worse.HIGHER else reading.value - limit.at
