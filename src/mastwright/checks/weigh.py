"""A check's answers weighed: the reading and the limit that it is held against."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from mastwright.checks.answer import Answer, AnswerField, Answers
from mastwright.checks.case import Case
from mastwright.checks.catalogue import Check
from mastwright.checks.outcome import Measured, NotJudged, Outcome, Seen
from mastwright.checks.rules import RULES
from mastwright.checks.shop_limits import ShopLimit
from mastwright.checks.truck import TruckFacts
from mastwright.quantity import BadInput, Instrument, Problem

_WORSE_CASE = AnswerField("worse_case", "yes-no", required=False)


def answer_fields(check: Check) -> tuple[AnswerField, ...]:
    """Return what a check asks the technician."""
    fields = RULES[check.rule].fields(check)
    return (*fields, _WORSE_CASE) if check.worse_case else fields


def weigh(
    check: Check,
    answers: Mapping[str, Answer],
    facts: TruckFacts,
    limits: tuple[ShopLimit, ...],
    instrument: Instrument,
    on: date,
) -> Outcome:
    """Return what the answers to a check come to.

    Parameters
    ----------
    check
        Which one.
    answers
        By field name, as `answer_fields` asks for them.
    facts
        Of the truck.
    limits
        The maker's and the shop's own on this check.
    instrument
        What the main reading was taken with.
    on
        Day of the visit.

    Raises
    ------
    BadInput
        If an answer is missing or impossible.
    """
    _refuse_incomplete(check, answers)
    given = Answers(answers)
    outcome = RULES[check.rule].weigh(Case(check, given, facts, limits, instrument, on))
    if not given.yes("worse_case"):
        return outcome
    match outcome:
        case Measured():
            return replace(outcome, worse_case=True)
        case NotJudged():
            # What the technician saw stands, whether or not the maker's figure is known.
            return Seen(ok=False, worse_case=True, notes=(outcome.why, *outcome.notes))
        case _:
            return outcome


def _refuse_incomplete(check: Check, answers: Mapping[str, Answer]) -> None:
    problems = []
    for field in answer_fields(check):
        answer = answers.get(field.name)
        if answer is None:
            if field.required:
                problems.append(Problem(field.name, "", "is needed for this check"))
        elif field.choices and answer not in field.choices:
            problems.append(Problem(field.name, str(answer), f"one of {', '.join(field.choices)}"))
    if problems:
        raise BadInput(problems)
