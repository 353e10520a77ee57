"""Elongation of a strand from what was read on it: a length, a percent gauge, a pass/fail gauge.

Chains do not stretch: pins and the holes of the articulating plates wear, so growth shows only from pin
to pin across articulating plates, and only over an even number of pitches is it the chain's own.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import hypot, sqrt

from mastwright.quantity import (
    BadInput,
    Instrument,
    Limit,
    LimitKind,
    Problem,
    Quantity,
    Reading,
    Worse,
    read_table,
    source_of,
)


@dataclass(frozen=True)
class ElongationFigures:
    """The shop's marks for elongation, each with its source.

    Parameters
    ----------
    discard, planned, nearing
        Marks in percent of the nominal length.
    planned_months
        Latest date of a planned replacement after the visit, months.
    new_tolerance
        Length tolerance of a new chain either way, percent.
    miscount
        Past this a reading is more likely a miscounted pitch, percent.
    edge_wear
        Share of plate height at whose loss a chain is discarded.
    """

    discard: Limit
    planned: Limit
    nearing: Limit
    planned_months: Fraction
    new_tolerance: Limit
    miscount: Limit
    edge_wear: Limit


@cache
def elongation_figures() -> ElongationFigures:
    """Return the figures that ship with mastwright."""
    limits = {
        row["name"]: Limit(
            at=Fraction(row["value"]),
            dimension=row["dimension"],
            worse=Worse.HIGHER,
            kind=LimitKind(row["kind"]),
            source=source_of(row["source"], row["evidence"], f"elongation.csv {row['name']}"),
        )
        for row in read_table("mastwright.chains", "elongation.csv")
    }
    months = limits.pop("planned_months").at
    return ElongationFigures(planned_months=months, **limits)


def check_pitches(pitches: int, *, field: str = "pitches") -> int:
    """Return the number of pitches if growth can be read over it.

    Raises
    ------
    BadInput
        If it is odd or not positive.
    """
    if pitches <= 0:
        raise BadInput(Problem(field, str(pitches), "an even number of pitches, 2 or more"))
    if pitches % 2:
        right = f"an even number, such as {pitches - 1 or 2} or {pitches + 1}"
        why = "growth shows only across the articulating plates, so an odd count misstates it"
        raise BadInput(Problem(field, str(pitches), f"{right}: {why}"))
    return pitches


def check_taut(*, taut: bool, field: str = "taut") -> None:
    """Refuse a reading of a slack chain: the play in its joints does not show.

    Raises
    ------
    BadInput
        If the chain was not taut.
    """
    if not taut:
        right = (
            "the length of the taut chain: raise the load-free carriage until its weight hangs on the chain, "
            "secure it, measure again"
        )
        raise BadInput(Problem(field, "false", f"{right}; a slack chain can read new whatever its wear"))


def elongation_from_length(
    length: Quantity, pitches: int, pitch: Fraction, instrument: Instrument
) -> Reading:
    """Tell how much longer than new a stretch of chain reads, in percent of its nominal length.

    Parameters
    ----------
    length
        Over `pitches` pitches, from pin to pin.
    pitches
        An even number.
    pitch
        Nominal, mm.
    instrument
        That reads lengths.

    Returns
    -------
    Reading
        In percent; its standard uncertainty is ``100 u / (n p)``.

    Raises
    ------
    BadInput
        If the number of pitches is odd.

    Source
    ------
    ``e = L / (n p) - 1``; US Army TM 10-3930-671-24 and UK chain guidance measure so.

    Examples
    --------
    >>> from mastwright.quantity import Field, common_instruments, parse_quantity
    >>> rule = common_instruments().find("rule", "length")
    >>> length = parse_quantity("12.375 in", Field("length", "length"))
    >>> float(elongation_from_length(length, 12, Fraction("25.4"), rule).value)
    3.125
    """
    nominal = check_pitches(pitches) * pitch
    read = Reading.of(length, instrument)

    def percent(value: Fraction) -> Fraction:
        return 100 * (value / nominal - 1)

    half = instrument.step / 2
    return Reading(
        value=percent(read.value),
        low=percent(read.value - half),
        high=percent(read.value + half),
        dimension="percent",
        unit_name=read.unit_name,
        instrument=instrument,
        standard_uncertainty=100 * read.standard_uncertainty / float(nominal),
    )


def elongation_from_legs(
    passed: Fraction | None, stopped: Fraction | None, instrument: Instrument
) -> Reading:
    """Turn a pass/fail gauge's answer into the interval that it stands for, in percent.

    Parameters
    ----------
    passed
        The smallest leg that the chain has not reached, percent; None if it has reached every leg.
    stopped
        The largest leg that the chain has reached, percent; None if it has reached none.
    instrument
        The gauge.

    Raises
    ------
    BadInput
        If neither is given, or they contradict each other.
    """
    if passed is None and stopped is None:
        raise BadInput(
            Problem(
                "passes", "", "the leg that the chain passes, or stops_at with the leg that it has reached"
            )
        )
    if passed is not None and stopped is not None and stopped >= passed:
        given = f"passes {float(passed):g} %, stops_at {float(stopped):g} %"
        raise BadInput(
            Problem(
                "passes",
                given,
                "a leg above stops_at: a chain cannot pass a leg below one that it has reached",
            )
        )
    value = passed if passed is not None else stopped
    return Reading(
        value=value if value is not None else Fraction(0),
        low=stopped,
        high=passed,
        dimension="percent",
        unit_name="%",
        instrument=instrument,
        standard_uncertainty=instrument.standard_uncertainty,
    )


@dataclass(frozen=True)
class Growth:
    """Growth of a strand since it was fitted, percent of nominal, with its standard uncertainty."""

    percent: Fraction
    standard_uncertainty: float
    from_first_reading: bool


def growth_since_fitting(now: Reading, first: Reading | None) -> Growth:
    """Tell how much a strand has grown since it was fitted, and how sure that is.

    Parameters
    ----------
    now, first
        Elongation against nominal, percent. Without a first reading the new length may lie anywhere in
        the tolerance of a new chain, taken as rectangular.

    Source
    ------
    ASME B29.8 cl. 1.6 for the tolerance; a rectangular width 2a has u = a/√3 (JCGM 100 cl. 4.3.7).
    """
    if first is not None:
        doubt = hypot(now.standard_uncertainty, first.standard_uncertainty)
        return Growth(now.value - first.value, doubt, from_first_reading=True)
    tolerance = float(elongation_figures().new_tolerance.at) / sqrt(3)
    return Growth(now.value, hypot(now.standard_uncertainty, tolerance), from_first_reading=False)
