"""Conformity with doubt: how probable it is that an item is over its limit, and what follows.

The verdict compares a reading with three marks: the limit, a guard mark before it that leaves room for
the doubt, and a mark from which the item is watched. The marks are worked out once, exactly, in the
dimension's own unit and rounded to the safe side, so that a reading in inches and the same reading in
millimetres meet the same marks.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor, sqrt
from statistics import NormalDist

from mastwright.checks import Severity
from mastwright.quantity import Limit, Reading, Worse
from mastwright.verdict.verdicts import Verdict

_GRAIN = 10**6
_STANDARD_NORMAL = NormalDist()
_OVER = {
    Severity.OUT_OF_SERVICE: Verdict.WITHDRAW,
    Severity.REPAIR: Verdict.REPLACE,
    Severity.MONITOR: Verdict.WATCH,
}


def probability_over(reading: Reading, limit: Limit) -> float:
    """Tell how probable it is that the true value is over the limit, given the reading.

    Parameters
    ----------
    reading, limit
        In the same unit. Of a pass/fail gauge the value is the leg: the result is then the chance
        that an item at the limit would have passed that leg.

    Returns
    -------
    float
        Between 0 and 1.

    Source
    ------
    JCGM 106:2012 clause 7, normal posterior with a flat prior (from memory).
    """
    short = float(limit.at - reading.value) * (1 if limit.worse is Worse.HIGHER else -1)
    if reading.standard_uncertainty == 0:
        return float(limit.reached_by(reading.value))
    return _STANDARD_NORMAL.cdf(-short / reading.standard_uncertainty)


def guard_mark(limit: Limit, standard_uncertainty: float, highest_doubt: float) -> Fraction:
    """Return the mark past which a reading is too doubtful for a `fit`.

    Parameters
    ----------
    limit
        The limit.
    standard_uncertainty
        Of the reading, same unit.
    highest_doubt
        Probability of being over the limit that is still allowed.

    Source
    ------
    JCGM 106:2012 clause 8 guarded acceptance (from memory); ``limit - z u``, rounded to the safe side.
    """
    room = Fraction(_STANDARD_NORMAL.inv_cdf(1 - highest_doubt) * standard_uncertainty)
    if limit.worse is Worse.HIGHER:
        return Fraction(floor((limit.at - room) * _GRAIN), _GRAIN)
    return Fraction(ceil((limit.at + room) * _GRAIN), _GRAIN)


@dataclass(frozen=True)
class Conformity:
    """What a measured reading comes to: the verdict, the probability behind it and the guard mark used."""

    verdict: Verdict
    probability_over: float
    guard: Fraction


def conformity(
    reading: Reading,
    limit: Limit,
    *,
    severity: Severity,
    highest_doubt: float,
    planned: Limit | None = None,
    nearing: Limit | None = None,
) -> Conformity:
    """Judge a reading against its limit, doubt included.

    Parameters
    ----------
    reading, limit
        In the same unit.
    severity
        What being over the limit means for the truck.
    highest_doubt
        Probability of being over the limit that a `fit` may carry.
    planned, nearing
        Marks before the limit from which the item is replaced at a date, or watched.

    Returns
    -------
    Conformity
        A reading at or past the limit is over it whatever its doubt; doubt is never rounded to a pass.
    """
    probability = probability_over(reading, limit)
    guard = _guard(reading, limit, highest_doubt)
    return Conformity(_verdict(reading, limit, guard, severity, planned, nearing), probability, guard)


def _guard(reading: Reading, limit: Limit, highest_doubt: float) -> Fraction:
    """Return the guard mark with the whole half graduation as room besides the rest of the doubt.

    A true value at the limit reads one graduation or the next; taken as one of many small errors the
    graduation would let the lower one through too often (``bench/RESULTS.md``, false accept). Where it
    is nearly all of the doubt, the plain mark leaves more room, and stands. A figure off a plate or a
    count has no doubt, whatever its last digit.
    """
    plain = guard_mark(limit, reading.standard_uncertainty, highest_doubt)
    if reading.low is None or reading.high is None or _is_leg(reading) or reading.standard_uncertainty == 0:
        return plain
    half = (reading.high - reading.low) / 2
    rest = sqrt(max(0.0, reading.standard_uncertainty**2 - float(half) ** 2 / 3))
    if limit.worse is Worse.HIGHER:
        return min(plain, guard_mark(replace(limit, at=limit.at - half), rest, highest_doubt))
    return max(plain, guard_mark(replace(limit, at=limit.at + half), rest, highest_doubt))


def _verdict(
    reading: Reading,
    limit: Limit,
    guard: Fraction,
    severity: Severity,
    planned: Limit | None,
    nearing: Limit | None,
) -> Verdict:
    higher = limit.worse is Worse.HIGHER
    certain = reading.low if higher else reading.high
    is_interval = reading.low is None or reading.high is None or _is_leg(reading)
    seen = certain if is_interval else reading.value
    if seen is not None and limit.reached_by(seen):
        return _OVER[severity]
    open_end = (reading.high if higher else reading.low) is None
    past_guard = open_end or (reading.value > guard if higher else reading.value < guard)
    if past_guard:
        return Verdict.WATCH if severity is Severity.MONITOR else Verdict.REMEASURE
    if planned is not None and seen is not None and planned.reached_by(seen):
        return Verdict.REPLACE
    if nearing is not None and seen is not None and nearing.reached_by(seen):
        return Verdict.WATCH
    return Verdict.FIT


def _is_leg(reading: Reading) -> bool:
    """Tell whether a closed interval lies between two legs of a gauge: then its value is its upper end."""
    return reading.value == reading.high != reading.low
