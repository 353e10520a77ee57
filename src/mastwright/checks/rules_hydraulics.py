"""Rules for hydraulics: leak class by fluid, oil cleanliness."""

from __future__ import annotations

from fractions import Fraction

from mastwright.checks.answer import AnswerField
from mastwright.checks.case import Case
from mastwright.checks.hydraulics import cleaner_or_equal, leak_class, parse_cleanliness
from mastwright.checks.outcome import NotJudged, Outcome, Seen
from mastwright.checks.rule import Rule
from mastwright.quantity import Note, Worse

_FLUIDS = ("hydraulic", "steering", "brake", "fuel")
# Of these fluids any leak is the worse case, whatever its class.
_NEVER = {"brake", "fuel", "steering"}
_CLASSES = ("none", "I", "II", "III")


def _leak(case: Case) -> Outcome:
    found = leak_class(case.answers.text("value"), "value")
    fluid = case.answers.text("fluid", "hydraulic")
    (limit,) = case.shipped(Worse.HIGHER)
    never = fluid in _NEVER and found > 0 and case.check.id.startswith("HYD")
    dropping = found == len(_CLASSES) - 1
    worse = case.answers.yes("worse_case") or never or dropping
    notes = (Note(f"leak-{found}", {}), *((Note("leak-of-this-fluid", {"fluid": fluid}),) if never else ()))
    return Seen(not (worse or limit.reached_by(Fraction(found))), worse, notes)


def _cleanliness(case: Case) -> Outcome:
    code = parse_cleanliness(case.answers.text("value"), "value")
    target = case.answers.text("target")
    if not target:
        return NotJudged(Note("makers-limit-missing"))
    return Seen(cleaner_or_equal(code, parse_cleanliness(target, "target")))


LEAK_CLASS = Rule(
    lambda _: (
        AnswerField("value", "choice", choices=_CLASSES),
        AnswerField("fluid", "choice", required=False, choices=_FLUIDS),
    ),
    _leak,
)
CLEANLINESS = Rule(
    lambda _: (AnswerField("value", "text"), AnswerField("target", "text", required=False)), _cleanliness
)
