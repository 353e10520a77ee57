"""Rules for the mast: lift drift, tilt drift, lowering speed."""

from __future__ import annotations

from fractions import Fraction

from mastwright.checks.answer import AnswerField
from mastwright.checks.case import Case
from mastwright.checks.figures import constant
from mastwright.checks.mast_drift import at_fork, mean_speed, per_ten_minutes, tilt_from_stroke
from mastwright.checks.outcome import Outcome
from mastwright.checks.rule import Rule, quantity, value_and
from mastwright.quantity import BadInput, Note, Problem, Worse

_SECONDS_A_MINUTE = 60
_PLACES = ("carriage", "fork", "mast-stages")


def _ten_minutes(case: Case, drift: Fraction) -> tuple[Fraction, tuple[Note, ...]]:
    """Return a drift as it would be after ten minutes, and say so where it was timed otherwise."""
    seconds = case.answers.optional("time")
    if seconds is None:
        return drift, ()
    minutes = seconds / _SECONDS_A_MINUTE
    scaled = per_ten_minutes(drift, minutes)
    return scaled, () if scaled == drift else (Note("drift-scaled", {"minutes": f"{float(minutes):g}"}),)


def _lift_drift(case: Case) -> Outcome:
    read = case.answers.value("value")
    place = case.answers.text("measured_at", "carriage")
    shown, notes = _ten_minutes(case, at_fork(read, place))
    factor = float(shown / read) if read else 1.0
    if place == "mast-stages":
        notes = (*notes, Note("drift-doubled"))
    doubt = factor * case.instrument.uncertainty_at(read)
    return case.against(
        case.reading(shown, doubt), case.shipped(Worse.HIGHER), as_new=Fraction(0), notes=notes
    )


def _tilt_drift(case: Case) -> Outcome:
    answers = case.answers
    if answers.has("stroke") and answers.has("arm"):
        stroke, arm = answers.value("stroke"), answers.value("arm")
        angle = Fraction(tilt_from_stroke(stroke, arm))
        step = constant("tilt_stroke_step")
        near = min(stroke + step, arm), max(stroke - step, Fraction(0))
        doubt = max(abs(tilt_from_stroke(other, arm) - float(angle)) for other in near) / 2
    elif answers.has("value"):
        angle = answers.value("value")
        doubt = case.instrument.uncertainty_at(angle)
    else:
        raise BadInput(Problem("value", "", "the angle, or stroke and arm of the tilt cylinder"))
    shown, notes = _ten_minutes(case, angle)
    factor = float(shown / angle) if angle else 1.0
    return case.against(
        case.reading(shown, factor * doubt), case.shipped(Worse.HIGHER), as_new=Fraction(0), notes=notes
    )


def _lowering_speed(case: Case) -> Outcome:
    answers = case.answers
    if answers.has("distance") and answers.has("time"):
        reading = case.reading(mean_speed(answers.value("distance"), answers.value("time")))
    elif answers.has("value"):
        reading = case.main()
    else:
        raise BadInput(Problem("value", "", "the speed, or distance and time"))
    return case.against(reading, case.shipped(Worse.HIGHER))


_TIME = quantity("time", "duration", required=False)

LIFT_DRIFT = Rule(
    value_and(_TIME, AnswerField("measured_at", "choice", required=False, choices=_PLACES)), _lift_drift
)
TILT_DRIFT = Rule(
    value_and(
        quantity("stroke", "length", required=False),
        quantity("arm", "length", required=False),
        _TIME,
        required=False,
    ),
    _tilt_drift,
)
LOWERING_SPEED = Rule(
    value_and(quantity("distance", "length", required=False), _TIME, required=False), _lowering_speed
)
