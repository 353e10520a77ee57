"""Readings, limits and chain sets for the tests of the verdicts. Invented figures: demo data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from fractions import Fraction

from hypothesis import strategies as st

from mastwright.chains.conditions import find_condition
from mastwright.chains.standard import find_chain
from mastwright.quantity import (
    Evidence,
    Limit,
    LimitKind,
    Quantity,
    Reading,
    Source,
    Worse,
    common_instruments,
    unit,
)
from mastwright.visits import ChainSet, EdgeReading, Finding, SpanReading

DAY = date(2026, 11, 20)
GAUGE = common_instruments().find("graduated-gauge", "percent")
CALLIPER = common_instruments().find("calliper", "length")
SOURCE = Source("a figure of these tests", Evidence.DEMO_DATA)

Number = str | int | float | Fraction


def percent(value: Number, doubt: float = 0.05, graduation: Number = "0.001") -> Reading:
    """Return an elongation as read, with its standard uncertainty and the graduation it was read to."""
    read, half = Fraction(value), Fraction(graduation) / 2
    return Reading(read, read - half, read + half, "percent", "%", GAUGE, doubt)


def by_legs(passed: Number | None, stopped: Number | None, doubt: float = 0.1) -> Reading:
    """Return what a pass/fail gauge said."""
    low, high = (None if leg is None else Fraction(leg) for leg in (stopped, passed))
    value = high if high is not None else low
    return Reading(value or Fraction(0), low, high, "percent", "%", GAUGE, doubt)


def limit(at: Number, worse: Worse = Worse.HIGHER, *, over_at: bool = True) -> Limit:
    """Return a limit in percent."""
    return Limit(Fraction(at), "percent", worse, LimitKind.MAKER, SOURCE, reached_is_over=over_at)


def span(strand: str, reading: Reading, start: int | None = 1) -> SpanReading:
    """Return one stretch of a strand."""
    return SpanReading(strand, 16, start, "as read", reading)


def finding(key: str, strand: str = "", *, put_right: bool = False) -> Finding:
    """Return a condition that was seen."""
    return Finding(find_condition(key), strand, "at the sheave", "a note", (), put_right)


def edge(
    height: Number, unworn: Number | None = None, strand: str = "left", doubt: float = 0.1
) -> EdgeReading:
    """Return a plate height, mm."""
    read = Fraction(height)
    half = CALLIPER.step / 2
    reading = Reading(read, read - half, read + half, "length", "mm", CALLIPER, doubt)
    beside = None if unworn is None else Quantity(Fraction(unworn), unit("mm"), Fraction(1, 100))
    return EdgeReading(strand, f"{float(read):g} mm", reading, beside)


def chain_set(
    spans: Mapping[str, Iterable[Reading]],
    *,
    first: Mapping[str, Reading] | None = None,
    edges: Iterable[EdgeReading] = (),
    findings: Iterable[Finding] = (),
    pitches_total: int | None = 112,
    strands: tuple[str, ...] = ("left", "right"),
) -> ChainSet:
    """Return a chain set of 3/4 in chain with these readings by strand."""
    return ChainSet(
        name="main",
        chain=find_chain("BL634"),
        strands=strands,
        pitches_total=pitches_total,
        ends="clevis both ends",
        minimum_strength=None,
        fitted_on=None,
        first=first or {},
        spans=tuple(span(strand, reading) for strand, found in spans.items() for reading in found),
        edges=tuple(edges),
        findings=tuple(findings),
    )


values = st.integers(-400, 800).map(lambda n: Fraction(n, 100))
"""Elongations in percent, from shorter than new to far past every mark."""

worn = st.integers(0, 800).map(lambda n: Fraction(n, 100))
"""Elongations in percent that a worn chain can have."""

doubts = st.floats(0.001, 1)
"""Standard uncertainties in percent, from a fine gauge to a tape over a short span."""
