"""Rules that any check can use: seen or not, a reading against one limit, a range, a share, an age."""

from __future__ import annotations

from collections.abc import Callable

from mastwright.checks.answer import AnswerField
from mastwright.checks.case import Case
from mastwright.checks.catalogue import Check
from mastwright.checks.dates import months_between
from mastwright.checks.figures import constant
from mastwright.checks.outcome import Information, Outcome, Seen
from mastwright.checks.rule import Rule, quantity, value_and
from mastwright.quantity import Amount, BadInput, Note, Problem, Reading, Worse


def _observe(case: Case) -> Outcome:
    worse = case.answers.yes("worse_case")
    return Seen(case.answers.yes("ok") and not worse, worse)


def _one_sided(worse: Worse) -> Callable[[Case], Outcome]:
    return lambda case: case.against(case.main(), case.shipped(worse))


def _between(case: Case) -> Outcome:
    """Hold a reading against a range, which only the maker knows."""
    return case.against(case.main(), ())


def _share_fields(check: Check) -> tuple[AnswerField, ...]:
    return (quantity("value", check.reads), quantity(check.reference, check.reads))


def _share(worse: Worse) -> Callable[[Case], Outcome]:
    def weigh(case: Case) -> Outcome:
        whole = case.answers.positive(case.check.reference)
        new = whole if worse is Worse.LOWER else None
        return case.against(case.main(), case.shipped(worse, of=whole), as_new=new)

    return weigh


def _age(case: Case) -> Outcome:
    done = case.answers.day("value")
    age = Reading.exact(months_between(done, case.on), "age", "months", case.instrument)
    return case.against(age, case.shipped(Worse.HIGHER), notes=(Note("done-on", {"date": done.isoformat()}),))


def difference_of(case: Case) -> Reading:
    """Return the difference of two sides, given as such or as both readings."""
    if case.answers.has("value"):
        return case.main()
    left, right = case.answers.value("left"), case.answers.value("right")
    doubt = sum(case.instrument.uncertainty_at(side) ** 2 for side in (left, right)) ** 0.5
    return case.reading(abs(left - right), doubt)


DIFFERENCE_FIELDS = value_and(
    quantity("left", "length", required=False), quantity("right", "length", required=False), required=False
)


def _difference(case: Case) -> Outcome:
    return case.against(difference_of(case), ())


def _plate_range(case: Case) -> Outcome:
    low, high = case.answers.value("minimum"), case.answers.value("maximum")
    if low > high:
        raise BadInput(
            Problem("minimum", f"{float(low):g} kg", f"no more than the {float(high):g} kg maximum")
        )
    return case.against(case.main(), (case.limit(low, Worse.LOWER), case.limit(high, Worse.HIGHER)))


def _work_air(case: Case) -> Outcome:
    """Hold carbon monoxide in work air against the law of the country; other figures are for orientation."""
    legal = case.shipped(Worse.HIGHER) if case.facts.country == "US" else ()
    strictest = Amount(constant("work_air_strictest"), case.check.reads)
    return case.against(case.main(), legal, notes=(Note("work-air-orientation", {"strictest": strictest}),))


def _schedule(_: Case) -> Outcome:
    return Information((Note("schedule-elsewhere"),))


OBSERVE = Rule(lambda _: (AnswerField("ok", "yes-no"),), _observe)
AT_MOST = Rule(value_and(), _one_sided(Worse.HIGHER))
AT_LEAST = Rule(value_and(), _one_sided(Worse.LOWER))
BETWEEN = Rule(value_and(), _between)
SHARE_AT_MOST = Rule(_share_fields, _share(Worse.HIGHER))
SHARE_AT_LEAST = Rule(_share_fields, _share(Worse.LOWER))
AGE = Rule(lambda _: (AnswerField("value", "date"),), _age)
DIFFERENCE = Rule(DIFFERENCE_FIELDS, _difference)
PLATE_RANGE = Rule(value_and(quantity("minimum", "mass"), quantity("maximum", "mass")), _plate_range)
WORK_AIR = Rule(value_and(), _work_air)
SCHEDULE = Rule(lambda _: (), _schedule)
