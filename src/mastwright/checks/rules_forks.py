"""Rules for fork arms: thickness left, angle, tips, capacity, proof load."""

from __future__ import annotations

from fractions import Fraction
from math import hypot

from mastwright.checks.answer import AnswerField
from mastwright.checks.case import Case
from mastwright.checks.figures import constant
from mastwright.checks.forks import angle_from_gap, forecast_thickness, strength_left
from mastwright.checks.outcome import Information, NotJudged, Outcome
from mastwright.checks.rule import Rule, quantity, value_and
from mastwright.checks.rules_plain import DIFFERENCE_FIELDS, difference_of
from mastwright.quantity import Amount, BadInput, Note, Problem, Worse

_ORIGINS = ("marking", "maker", "shank")


def _thickness(case: Case) -> Outcome:
    original, origin = case.answers.positive("original"), case.answers.text("original_from")
    if origin == "shank" and case.answers.yes("full_taper"):
        right = "maker or marking: the shank of a full-taper fork is no reference for its blade"
        raise BadInput(Problem("original_from", origin, right))
    reading = case.main()
    if reading.value > original + case.instrument.step:
        given = f"{float(original):g} mm"
        raise BadInput(
            Problem("original", given, "at least the thickness measured now: it is the unworn thickness")
        )
    (limit,) = case.shipped(Worse.LOWER, of=original)
    if origin == "shank":
        # The original was measured too, and the limit is a share of it.
        share = float(limit.at / original)
        doubt = hypot(reading.standard_uncertainty, share * case.instrument.uncertainty_at(original))
        reading = case.reading(reading.value, doubt)
    left = strength_left(reading.value, original)
    notes = (
        Note("fork-original-from", {"original": Amount(original, "length"), "origin": origin}),
        Note("fork-strength-left", {"share": Amount(100 * left, "percent")}),
    )
    return case.against(reading, (limit,), as_new=original, notes=notes)


def _angle(case: Case) -> Outcome:
    original = case.answers.optional("original")
    right_angle = Fraction(90)
    reading = case.main()
    off = abs(reading.value - (right_angle if original is None else original))
    return case.against(
        case.reading(off, reading.standard_uncertainty), case.shipped(Worse.HIGHER), as_new=Fraction(0)
    )


def _angle_gap(case: Case) -> Outcome:
    """Hold the gap against the limit scaled to the height at which it was measured: the same angle."""
    customary = constant("fork_gap_height")
    height = case.answers.positive("height") if case.answers.has("height") else customary
    scaled = case.shipped(Worse.HIGHER, of=height / customary)
    angle = Fraction(angle_from_gap(case.answers.value("value"), height))
    notes = (Note("fork-angle", {"angle": Amount(angle, "angle")}),)
    return case.against(case.main(), scaled, as_new=Fraction(0), notes=notes)


def _tip_difference(case: Case) -> Outcome:
    limits = case.shipped(Worse.HIGHER, of=case.answers.positive("blade_length"))
    return case.against(difference_of(case), limits, as_new=Fraction(0))


def _strength(case: Case) -> Outcome:
    left = strength_left(case.answers.value("value"), case.answers.value("original"))
    return Information(
        (Note("fork-strength-left", {"share": Amount(100 * left, "percent")}), Note("never-derate"))
    )


def _forecast(case: Case) -> Outcome:
    answers = case.answers
    hours, ahead = answers.value("hours_between"), answers.value("hours_ahead")
    now = answers.value("value")
    then = forecast_thickness(now, answers.value("earlier"), hours, ahead)
    (limit,) = case.shipped(Worse.LOWER, of=answers.positive("original"))
    code = "fork-forecast-over" if limit.reached_by(then) else "fork-forecast"
    params = {
        "then": Amount(then, "length"),
        "limit": Amount(limit.at, "length"),
        "hours": Amount(ahead, "hours"),
    }
    return Information((Note(code, params),))


def _capacity(case: Case) -> Outcome:
    truck = case.facts.rated_capacity
    if truck is None:
        return NotJudged(Note("plate-capacity-missing"), case.main())
    return case.against(case.main(), case.shipped(Worse.LOWER, of=truck))


def _proof_load(case: Case) -> Outcome:
    limits = case.shipped(Worse.LOWER, of=case.answers.positive("marked_capacity"))
    return case.against(case.main(), limits, notes=(Note("proof-load-by-edition"),))


_ORIGINAL = quantity("original", "length")

THICKNESS = Rule(
    value_and(
        _ORIGINAL,
        AnswerField("original_from", "choice", choices=_ORIGINS),
        AnswerField("full_taper", "yes-no", required=False),
    ),
    _thickness,
)
ANGLE = Rule(value_and(quantity("original", "angle", required=False)), _angle)
ANGLE_GAP = Rule(value_and(quantity("height", "length", required=False)), _angle_gap)
TIP_DIFFERENCE = Rule(lambda c: (*DIFFERENCE_FIELDS(c), quantity("blade_length", "length")), _tip_difference)
STRENGTH = Rule(lambda _: (quantity("value", "length"), _ORIGINAL), _strength)
FORECAST = Rule(
    value_and(
        _ORIGINAL,
        quantity("earlier", "length"),
        quantity("hours_between", "hours"),
        quantity("hours_ahead", "hours"),
    ),
    _forecast,
)
CAPACITY = Rule(value_and(), _capacity)
PROOF_LOAD = Rule(value_and(quantity("marked_capacity", "mass")), _proof_load)
