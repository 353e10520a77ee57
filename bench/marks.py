"""Where the marks should stand: exact in one unit, or rounded to the unit and graduation of the reading."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from random import Random

from section import Section, thousands

from mastwright.chains import LeafChain, customary_spans, elongation_from_length, leaf_chains
from mastwright.checks import Severity
from mastwright.quantity import Instrument, Quantity, common_instruments, unit
from mastwright.verdict import Policy, Verdict, conformity, judge_elongation, shop_policy

READINGS = 20_000
_SEED = "marks"
_MOST_PERCENT = 5
_HALF = Fraction(1, 2)


@dataclass(frozen=True)
class Graduation:
    """How lengths are read with one instrument in one unit.

    Parameters
    ----------
    instrument
        Its name.
    unit_name
        Unit of the reading.
    step
        Its graduation, in that unit.
    """

    instrument: str
    unit_name: str
    step: Fraction

    @property
    def millimetres(self) -> Fraction:
        """The graduation in mm."""
        return self.step * unit(self.unit_name).factor


GRADUATIONS = (
    Graduation("rule", "mm", Fraction(1)),
    Graduation("calliper", "mm", Fraction(1, 50)),
    Graduation("rule", "in", Fraction(1, 64)),
    Graduation("calliper", "in", Fraction(1, 1000)),
)


@dataclass(frozen=True)
class MadeReading:
    """A length over so many pitches of a chain, as it was written."""

    chain: LeafChain
    pitches: int
    graduation: Graduation
    written: Fraction

    @property
    def quantity(self) -> Quantity:
        """What was written, with its unit."""
        return Quantity(self.written, unit(self.graduation.unit_name), self.graduation.step)

    @property
    def instrument(self) -> Instrument:
        """What it was read with."""
        return common_instruments().find(self.graduation.instrument, "length")


def made_readings(count: int) -> Iterator[MadeReading]:
    """Make readings: every other one of a chain exactly at its discard or planned mark, the rest anywhere.

    Each is written to the nearest graduation.
    """
    generator = Random(_SEED)
    marks = [mark.at for mark in (shop_policy().discard, shop_policy().planned) if mark is not None]
    for number in range(count):
        chain = generator.choice(leaf_chains())
        pitches = generator.choice(customary_spans(chain))
        graduation = generator.choice(GRADUATIONS)
        percent = (
            Fraction(generator.randrange(1000 * _MOST_PERCENT), 1000)
            if number % 2
            else generator.choice(marks)
        )
        length = pitches * chain.pitch * (1 + percent / 100)
        steps = floor(length / graduation.millimetres + _HALF)
        yield MadeReading(chain, pitches, graduation, steps * graduation.step)


def exact_verdict(made: MadeReading, policy: Policy) -> Verdict:
    """Return what the product says."""
    reading = elongation_from_length(made.quantity, made.pitches, made.chain.pitch, made.instrument)
    return judge_elongation(reading, policy)[0]


@dataclass(frozen=True)
class Rounding:
    """What is done to a mark, in graduations of the reading: one that counts when reached, and the guard."""

    reached: Callable[[Fraction], Fraction]
    guard: Callable[[Fraction], Fraction]


def verdict_by_length(made: MadeReading, policy: Policy, rounding: Rounding) -> Verdict:
    """Return what comes of comparing the written number with marks that are lengths in its own unit.

    Parameters
    ----------
    made
        The reading.
    policy
        Its marks in percent.
    rounding
        Of the marks to graduations of the reading.
    """
    grain = made.graduation.millimetres
    nominal = made.pitches * made.chain.pitch

    def mark(percent: Fraction) -> Fraction:
        return nominal * (1 + percent / 100) / grain

    written = made.written / made.graduation.step
    if written >= rounding.reached(mark(policy.discard.at)):
        return Verdict.WITHDRAW
    if written > rounding.guard(mark(_guard(made, policy))):
        return Verdict.REMEASURE
    if policy.planned is not None and written >= rounding.reached(mark(policy.planned.at)):
        return Verdict.REPLACE
    return Verdict.WATCH if written >= rounding.reached(mark(policy.nearing.at)) else Verdict.FIT


def verdict_by_float(made: MadeReading, policy: Policy) -> Verdict:
    """Return what binary floating point makes of the same marks, as a ratio in percent."""
    nominal = float(made.pitches) * float(made.chain.pitch)
    percent = 100 * (float(made.written) * float(unit(made.graduation.unit_name).factor) / nominal - 1)
    if percent >= float(policy.discard.at):
        return Verdict.WITHDRAW
    if percent > float(_guard(made, policy)):
        return Verdict.REMEASURE
    if policy.planned is not None and percent >= float(policy.planned.at):
        return Verdict.REPLACE
    return Verdict.WATCH if percent >= float(policy.nearing.at) else Verdict.FIT


def _guard(made: MadeReading, policy: Policy) -> Fraction:
    """Return the guard mark that the product puts before the discard mark for this reading, percent."""
    reading = elongation_from_length(made.quantity, made.pitches, made.chain.pitch, made.instrument)
    return conformity(
        reading, policy.discard, severity=Severity.OUT_OF_SERVICE, highest_doubt=policy.highest_doubt
    ).guard


def _down(mark: Fraction) -> Fraction:
    return Fraction(floor(mark))


def _up(mark: Fraction) -> Fraction:
    return Fraction(ceil(mark))


def _nearest(mark: Fraction) -> Fraction:
    return Fraction(floor(mark + _HALF))


def _as_it_is(mark: Fraction) -> Fraction:
    return mark


ROUNDINGS = {
    "lengths, not rounded": Rounding(_as_it_is, _as_it_is),
    "lengths, all rounded down: to the safe side": Rounding(_down, _down),
    "lengths, all rounded to the nearest": Rounding(_nearest, _nearest),
    "lengths, all rounded up": Rounding(_up, _up),
    "lengths, limits rounded up and the guard down": Rounding(_up, _down),
}
FLOAT = "a ratio in floating point"


@dataclass(frozen=True)
class Differences:
    """How many readings of each unit get another verdict, and in which direction."""

    mm: int
    inch: int
    stricter: int
    laxer: int


def differences(count: int) -> dict[str, Differences]:
    """Return for each way of setting the marks how its verdicts differ from the product's."""
    policy = shop_policy()
    judged = [(made, exact_verdict(made, policy)) for made in made_readings(count)]
    found = {
        name: _compare([(made, verdict_by_length(made, policy, way), exact) for made, exact in judged])
        for name, way in ROUNDINGS.items()
    }
    by_float = _compare([(made, verdict_by_float(made, policy), exact) for made, exact in judged])
    return {**found, FLOAT: by_float}


def _compare(other: list[tuple[MadeReading, Verdict, Verdict]]) -> Differences:
    differing = [(made, got, exact) for made, got, exact in other if got is not exact]
    millimetres = sum(made.graduation.unit_name == "mm" for made, _, _ in differing)
    stricter = sum(got.rank > exact.rank for _, got, exact in differing)
    total = len(differing)
    return Differences(millimetres, total - millimetres, stricter, total - stricter)


def section(count: int = READINGS) -> Section:
    """Return the table of differing verdicts."""
    made = list(made_readings(count))
    in_mm = sum(m.graduation.unit_name == "mm" for m in made)
    return Section(
        "Marks: exact in one unit, or in the unit and graduation of the reading",
        ".venv/bin/python bench/marks.py",
        f"{thousands(count)} seeded readings, half of them of a chain exactly at 2 % or 3 % and written to "
        f"the nearest graduation, the rest anywhere up to {_MOST_PERCENT} %: {thousands(in_mm)} in mm (rule "
        f"1 mm, calliper 0.02 mm), {thousands(count - in_mm)} in inches (rule 1/64, calliper 0.001). Counted "
        "is how many get another verdict than from the product's exact marks in percent.",
        (
            "marks",
            "differ, of those in mm",
            "differ, of those in inches",
            "stricter",
            "laxer",
            "differ in all",
        ),
        tuple(
            (name, f"{d.mm}", f"{d.inch}", f"{d.stricter}", f"{d.laxer}", f"{d.mm + d.inch}")
            for name, d in differences(count).items()
        ),
    )


if __name__ == "__main__":
    print(section().markdown())
