"""A visit as written down at the truck: one technician, one truck, one day."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from mastwright.chains.conditions import Condition
from mastwright.chains.standard import LeafChain
from mastwright.checks import Check, TruckFacts
from mastwright.mast import Arrangement
from mastwright.quantity import Instrument, Quantity, Reading, UnitSystem

Answer = Quantity | tuple[Quantity, ...] | str | bool | date | int


@dataclass(frozen=True)
class Photo:
    """A picture that belongs to a finding: its file, beside the visit file, and what it shows."""

    file: str
    caption: str


@dataclass(frozen=True)
class SpanReading:
    """One stretch of one strand, read.

    Parameters
    ----------
    strand
        ``left``, ``right`` or another name of the set.
    pitches
        Even; None for a gauge that has its own span.
    start
        Pitches below the sheave tangent, mast lowered, where the stretch begins; None if not noted.
    written
        The reading in the technician's own words.
    reading
        Elongation, percent.
    """

    strand: str
    pitches: int | None
    start: int | None
    written: str
    reading: Reading
    photos: tuple[Photo, ...] = ()


@dataclass(frozen=True)
class EdgeReading:
    """Plate height of one strand where it runs over the sheave, and of an unworn plate if measured; mm."""

    strand: str
    written: str
    reading: Reading
    unworn: Quantity | None


@dataclass(frozen=True)
class Finding:
    """A condition seen on a chain set.

    Parameters
    ----------
    strand
        '' for the whole set.
    put_right
        Whether it was put right at this visit, looked at again and found in order.
    """

    condition: Condition
    strand: str
    where: str
    note: str
    photos: tuple[Photo, ...]
    put_right: bool = False


@dataclass(frozen=True)
class ChainSet:
    """The parallel chains doing one job, with all that was read and seen on them.

    Parameters
    ----------
    name
        ``main``, ``free-lift``, ...
    chain
        Which leaf chain it is.
    sure
        False where the designation was assumed, not read.
    strands
        Their names.
    pitches_total
        Of each strand, for the order; None if not counted.
    ends
        Of each strand, for the order.
    minimum_strength
        From the chain's certificate, N, if it was seen.
    fitted_on
        When the set was fitted.
    first
        First reading at fitting by strand, percent.
    """

    name: str
    chain: LeafChain
    strands: tuple[str, ...]
    pitches_total: int | None
    ends: str
    minimum_strength: Quantity | None
    fitted_on: date | None
    first: Mapping[str, Reading]
    spans: tuple[SpanReading, ...]
    edges: tuple[EdgeReading, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class CheckEntry:
    """One of the other checks, answered."""

    check: Check
    where: str
    answers: Mapping[str, Answer]
    written: str
    instrument: Instrument
    note: str
    by: date | None
    photos: tuple[Photo, ...]


@dataclass(frozen=True)
class Refusal:
    """The customer's signed no: to what, by whom, why.

    Parameters
    ----------
    item
        The set's name for chains, or the id of a check.
    where
        Which one of several, as written in the entry; '' for all.
    """

    item: str
    where: str
    reason: str
    by: str
    initials: str
    at: date


@dataclass(frozen=True)
class MastUse:
    """How the mast is built and used, as far as it was said; mm.

    Parameters
    ----------
    sheave
        Running diameter of the rim.
    free_lift
        How far the carriage lifts before the frames move.
    travel_height
        Fork height when travelling.
    work
        The duty in plain words, one of `mastwright.mast.duty.described_duties`.
    levels
        Rack levels: fork height, and share of the storage cycles.
    """

    sheave: Fraction | None
    free_lift: Fraction | None
    travel_height: Fraction | None
    work: str
    levels: tuple[tuple[Fraction, Fraction], ...]


@dataclass(frozen=True)
class Truck:
    """Which truck, what the plate says, how it is used; masses in kg, hours of the meter."""

    id: str
    facts: TruckFacts
    model: str
    serial: str
    lift_height: Quantity | None
    hours: Fraction
    duty: str
    environment: str
    lifts_people: bool
    arrangement: Arrangement | None
    masses: Mapping[str, Fraction]
    use: MastUse
    service_hours: Fraction | None
    service_months: int | None
    last_examination: date | None


@dataclass(frozen=True)
class Policy:
    """What the shop has set stricter: discard mark in percent and the highest doubt a `fit` may carry."""

    discard_percent: Fraction | None
    highest_doubt: float | None


@dataclass(frozen=True)
class Visit:
    """Everything that was written down at one truck on one day."""

    id: str
    on: date
    technician: str
    customer: str
    site: str
    note: str
    system: UnitSystem
    language: str
    truck: Truck
    previous_on: date | None
    previous_hours: Fraction | None
    policy: Policy
    chains: tuple[ChainSet, ...]
    checks: tuple[CheckEntry, ...]
    refusals: tuple[Refusal, ...]

    @property
    def photo_files(self) -> tuple[str, ...]:
        """The files of all photos, each once, in order."""
        photos = [
            *(p for c in self.chains for s in c.spans for p in s.photos),
            *(p for c in self.chains for f in c.findings for p in f.photos),
            *(p for c in self.checks for p in c.photos),
        ]
        return tuple(dict.fromkeys(p.file for p in photos))
