"""Rules for tyres: pressure against the plate, diameter lost."""

from __future__ import annotations

from fractions import Fraction

from mastwright.checks.case import Case
from mastwright.checks.outcome import Outcome
from mastwright.checks.rule import Rule, quantity, value_and
from mastwright.checks.tyres import diameter_lost
from mastwright.quantity import BadInput, Problem, Worse


def _pressure_deviation(case: Case) -> Outcome:
    reading = case.main()
    off = case.reading(
        abs(reading.value - case.answers.value("plate_pressure")), reading.standard_uncertainty
    )
    allowed = case.answers.optional("tolerance")
    return case.against(off, () if allowed is None else (case.limit(allowed, Worse.HIGHER),))


def _diameter_lost(case: Case) -> Outcome:
    reading, original = case.main(), case.answers.value("original")
    lost = diameter_lost(original, reading.value)
    if lost < -case.instrument.step:
        given = f"{float(original):g} mm"
        raise BadInput(
            Problem("original", given, "at least the diameter measured now: it is the diameter when new")
        )
    return case.against(
        case.reading(lost, reading.standard_uncertainty), case.shipped(Worse.HIGHER), as_new=Fraction(0)
    )


PRESSURE_DEVIATION = Rule(
    value_and(quantity("plate_pressure", "pressure"), quantity("tolerance", "pressure", required=False)),
    _pressure_deviation,
)
DIAMETER_LOST = Rule(value_and(quantity("original", "length")), _diameter_lost)
