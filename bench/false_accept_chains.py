"""Chains truly at or over the discard mark, read by rule, tape, calliper and gauges: who lets them pass."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from draws import Spread, normal_draws, written

from mastwright.chains import (
    LeafChain,
    customary_spans,
    elongation_from_legs,
    elongation_from_length,
    leaf_chains,
)
from mastwright.quantity import Instrument, Quantity, Reading, common_instruments, unit
from mastwright.verdict import Verdict, judge_elongation, shop_policy

ACCEPTS = frozenset({Verdict.FIT, Verdict.WATCH, Verdict.REPLACE})
"""Every verdict with which the truck works on without being measured again."""

LENGTH_INSTRUMENTS = ("rule", "tape", "calliper")
GAUGE_LEGS = ((2.0, 3.0), (2.5,), (2.75,), (2.8,))
"""Legs in percent: the planned and the discard mark, and single legs ever nearer to the guard mark."""


@dataclass(frozen=True)
class Shares:
    """Share of the draws that came out `fit`, and that let the truck work at all."""

    fit: float
    accepted: float

    @classmethod
    def of(cls, verdicts: Iterable[tuple[Verdict, int]]) -> Shares:
        """Count verdicts with how often each came."""
        fit = accepted = total = 0
        for verdict, count in verdicts:
            total += count
            fit += count * (verdict is Verdict.FIT)
            accepted += count * (verdict in ACCEPTS)
        return cls(fit / total, accepted / total)


@dataclass(frozen=True)
class Subject:
    """One thing measured in one way.

    Parameters
    ----------
    group, name
        The row of the table that it belongs to, and which of that row.
    uncertainty
        As the product states it for this reading, in words.
    shares
        Draws the readings of an item so many stated uncertainties over its limit.
    """

    group: str
    name: str
    uncertainty: str
    shares: Callable[[float, Spread], Shares]


def chains_by_pitch() -> tuple[LeafChain, ...]:
    """Return one chain of each pitch: spans and marks depend on the pitch alone."""
    return tuple({chain.pitch: chain for chain in leaf_chains()}.values())


def span_subjects(draws: int, chains: Iterable[LeafChain], steps: dict[str, Fraction]) -> list[Subject]:
    """Return every customary span of these chains with every length instrument.

    Parameters
    ----------
    draws
        How many readings each.
    chains
        Which.
    steps
        Graduation to which each instrument is read, mm; its own where it is not named.
    """
    found = common_instruments().find
    return [
        _span(draws, chain, pitches, f"{place} ft", found(name, "length"), steps.get(name))
        for name in LENGTH_INSTRUMENTS
        for chain in chains
        for place, pitches in enumerate(customary_spans(chain), 1)
    ]


def _span(
    draws: int, chain: LeafChain, pitches: int, stretch: str, instrument: Instrument, step: Fraction | None
) -> Subject:
    graduation = instrument.step if step is None else step
    nominal = pitches * chain.pitch
    stated = instrument.uncertainty_at(nominal)
    name = f"{pitches} x {float(chain.pitch_in):g} in"
    policy = shop_policy()
    limit = float(nominal * (1 + policy.discard.at / 100))

    @cache
    def verdict(index: int) -> Verdict:
        length = Quantity(index * graduation, unit("mm"), graduation)
        return judge_elongation(elongation_from_length(length, pitches, chain.pitch, instrument), policy)[0]

    sample = cache(lambda: normal_draws(draws, f"{instrument.name} {name}"))

    def shares(over: float, spread: Spread) -> Shares:
        scatter = spread.scatter(stated, float(graduation))
        counts = written(sample(), limit + over * stated, scatter, float(graduation))
        return Shares.of((verdict(index), count) for index, count in counts.items())

    return Subject(f"{instrument.name}, about {stretch}", name, f"{stated:g} mm", shares)


def graduated_gauge(draws: int) -> Subject:
    """Return a chain read with a gauge that shows percent."""
    instrument = common_instruments().find("graduated-gauge", "percent")
    policy = shop_policy()
    stated, step = instrument.standard_uncertainty, instrument.step

    @cache
    def verdict(index: int) -> Verdict:
        read = Quantity(index * step, unit("%"), step)
        return judge_elongation(Reading.of(read, instrument), policy)[0]

    sample = cache(lambda: normal_draws(draws, instrument.name))

    def shares(over: float, spread: Spread) -> Shares:
        true = float(policy.discard.at) + over * stated
        counts = written(sample(), true, spread.scatter(stated, float(step)), float(step))
        return Shares.of((verdict(index), count) for index, count in counts.items())

    return Subject(instrument.name, f"{float(step):g} % divisions", f"{stated:g} %", shares)


def leg_gauge(draws: int, legs: tuple[float, ...]) -> Subject:
    """Return a chain tried with a pass/fail gauge; the gauge as a whole errs by its own uncertainty."""
    instrument = common_instruments().find("leg-gauge", "percent")
    policy = shop_policy()
    stated = instrument.standard_uncertainty
    words = " and ".join(f"{leg:g}" for leg in legs)

    @cache
    def verdict(reached: int) -> Verdict:
        stopped, passed = legs[:reached], legs[reached:]
        reading = elongation_from_legs(
            Fraction(str(passed[0])) if passed else None,
            Fraction(str(stopped[-1])) if stopped else None,
            instrument,
        )
        return judge_elongation(reading, policy)[0]

    sample = cache(lambda: normal_draws(draws, f"{instrument.name} {words}"))

    def shares(over: float, spread: Spread) -> Shares:
        true = float(policy.discard.at) + over * stated
        scatter = spread.scatter(stated, 0)
        reached = [sum(true + z * scatter >= leg for leg in legs) for z in sample()]
        return Shares.of((verdict(number), reached.count(number)) for number in set(reached))

    return Subject(f"{instrument.name}, legs of {words} %", words, f"{stated:g} %", shares)
