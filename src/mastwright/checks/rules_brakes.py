"""Rules for brakes: stopping distance from a known speed, drag at the truck's top speed."""

from __future__ import annotations

from fractions import Fraction

from mastwright.checks.brakes import allowed_stopping_distance, drag_from_distance, needed_drag
from mastwright.checks.case import Case
from mastwright.checks.outcome import Outcome
from mastwright.checks.rule import Rule, quantity, value_and
from mastwright.quantity import Amount, Note, Worse


def _stopping_distance(case: Case) -> Outcome:
    speed, distance = case.answers.value("speed"), case.answers.value("value")
    limit = case.limit(allowed_stopping_distance(speed), Worse.HIGHER)
    notes: tuple[Note, ...] = ()
    if distance > 0:
        notes = (
            Note(
                "drag-from-distance",
                {"drag": Amount(Fraction(drag_from_distance(distance, speed)), "percent")},
            ),
        )
    return case.against(case.main(), (limit,), notes=notes)


def _drag(case: Case) -> Outcome:
    return case.against(case.main(), (case.limit(needed_drag(case.answers.value("top_speed")), Worse.LOWER),))


STOPPING_DISTANCE = Rule(value_and(quantity("speed", "speed")), _stopping_distance)
DRAG = Rule(value_and(quantity("top_speed", "speed")), _drag)
