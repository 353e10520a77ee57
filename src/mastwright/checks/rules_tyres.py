"""Rules for tyres: pressure against the plate, diameter lost."""

from __future__ import annotations

from fractions import Fraction

from mastwright.checks.case import Case
from mastwright.checks.outcome import Outcome
from mastwright.checks.rule import Rule, quantity, value_and
from mastwright.checks.tyres import diameter_lost
from mastwright.quantity import Worse


def _pressure_deviation(case: Case) -> Outcome:
    reading = case.main()
    off = case.reading(
        abs(reading.value - case.answers.value("plate_pressure")), reading.standard_uncertainty
    )
    allowed = case.answers.optional("tolerance")
    return case.against(off, () if allowed is None else (case.limit(allowed, Worse.HIGHER),))


def _diameter_lost(case: Case) -> Outcome:
    reading = case.main()
    lost = case.reading(
        diameter_lost(case.answers.value("original"), reading.value), reading.standard_uncertainty
    )
    shipped = () if case.check.limit is None else (case.limit(case.check.limit, Worse.HIGHER),)
    return case.against(lost, shipped, as_new=Fraction(0))


PRESSURE_DEVIATION = Rule(
    value_and(quantity("plate_pressure", "pressure"), quantity("tolerance", "pressure", required=False)),
    _pressure_deviation,
)
DIAMETER_LOST = Rule(value_and(quantity("original", "length")), _diameter_lost)
