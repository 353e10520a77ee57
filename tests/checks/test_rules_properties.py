"""What holds for every reading, whatever its figure."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from mastwright.checks import (
    AnswerField,
    Check,
    Information,
    Measured,
    NotJudged,
    Outcome,
    Seen,
    TruckFacts,
    answer_fields,
    catalogue,
    weigh,
)
from mastwright.checks.answer import Answer
from mastwright.quantity import BadInput, Quantity, canonical_unit, common_instruments, units_of

from .answers import FACTS
from .weighing import DAY, GAS, limits, measured, passes

tenths = st.integers(0, 10_000).map(lambda n: Fraction(n, 10))


def mm(value: Fraction) -> str:
    """Write a length down."""
    return f"{float(value):.1f} mm"


@given(tenths, tenths)
def test_more_drift_is_never_better(one: Fraction, other: Fraction) -> None:
    """Of two drifts the larger passes only where the smaller does."""
    less, more = sorted((one, other))
    good = [passes(measured("MST-01", {"value": mm(v)})) for v in (less, more)]
    assert good in ([True, True], [True, False], [False, False])


@given(st.integers(300, 400), st.integers(300, 400))
def test_a_thinner_fork_is_never_better(one: int, other: int) -> None:
    """Of two thicknesses the smaller passes only where the larger does."""
    thin, thick = sorted((Fraction(one, 10), Fraction(other, 10)))
    fork: dict[str, object] = {"original": "40 mm", "original_from": "marking"}
    good = [passes(measured("FRK-09", {**fork, "value": mm(v)})) for v in (thin, thick)]
    assert good in ([True, True], [False, True], [False, False])


@given(tenths, tenths)
def test_a_limit_more_never_helps(at: Fraction, reading: Fraction) -> None:
    """What the standard condemns, no further limit lets pass, unless it is chosen to govern."""
    own = limits("MST-01", at_most=mm(at))
    alone = measured("MST-01", {"value": mm(reading)})
    beside = measured("MST-01", {"value": mm(reading)}, GAS, own)
    assert passes(alone) or not passes(beside)
    assert beside.limit.at == min(at, 100)


@given(tenths, tenths)
def test_sides_have_no_order(left: Fraction, right: Fraction) -> None:
    """Which fork is called left changes nothing."""
    blade: dict[str, object] = {"blade_length": "1200 mm"}
    one = measured("FRK-06", {"left": mm(left), "right": mm(right), **blade})
    other = measured("FRK-06", {"left": mm(right), "right": mm(left), **blade})
    assert one == other


@given(st.integers(1, 60), tenths)
def test_a_drift_goes_by_its_rate(minutes: int, drift: Fraction) -> None:
    """The same rate gives the same drift in ten minutes, however long it was watched."""
    timed = measured("MST-01", {"value": f"{float(drift * minutes):.1f} mm", "time": f"{minutes} min"})
    assert timed.reading.value == 10 * drift


@given(st.integers(1, 400), st.integers(1, 10**7))
def test_insulation_is_held_at_fifty_ohm_a_volt(volts: int, ohms: int) -> None:
    """And never under 1000 ohm, whatever the battery."""
    facts = TruckFacts("reach", "electric", battery_voltage=Fraction(volts))
    found = measured("BAT-13", {"value": f"{ohms} ohm"}, facts)
    assert passes(found) is (ohms >= max(50 * volts, 1000))


def _answers(field: AnswerField) -> st.SearchStrategy[Answer | None]:
    """Return what might stand in a field: mostly something of its kind, at times nothing at all."""
    quantities = st.builds(
        lambda value, unit: Quantity(value, unit, Fraction(1)),
        st.one_of(
            st.sampled_from([Fraction(0), Fraction(-1), Fraction(10**12), Fraction(1, 10**12)]),
            st.fractions(-10, 2000, max_denominator=1000),
        ),
        st.sampled_from(units_of(field.dimension)) if field.dimension else st.just(canonical_unit("length")),
    )
    kinds: dict[str, st.SearchStrategy[Answer]] = {
        "quantity": quantities,
        "quantities": st.lists(quantities, max_size=4).map(tuple),
        "choice": st.sampled_from((*field.choices, "other")),
        "yes-no": st.booleans(),
        "date": st.dates(),
        "whole": st.integers(-1, 50),
        "text": st.one_of(st.sampled_from(["18/16/13", "20/18/15"]), st.text(max_size=8)),
    }
    return st.one_of(kinds[field.kind], kinds[field.kind], kinds[field.kind], st.none())


def _weighed(check: Check, answers: dict[str, Answer], facts: TruckFacts) -> Outcome | BadInput:
    tool = common_instruments().find(check.instrument, check.reads)
    try:
        return weigh(check, answers, facts, (), tool, DAY)
    except BadInput as bad:
        return bad


ONE_A_RULE = {check.rule: check for check in catalogue().values()}


@pytest.mark.parametrize("rule", ONE_A_RULE)
@settings(max_examples=40)
@given(st.data())
def test_whatever_is_written_is_weighed_or_refused(rule: str, data: st.DataObject) -> None:
    """No entry ends in anything but an outcome, or a message that names a field and what would be right."""
    check = ONE_A_RULE[rule]
    drawn = {f.name: data.draw(_answers(f), f.name) for f in answer_fields(check)}
    answers = {name: answer for name, answer in drawn.items() if answer is not None}
    found = _weighed(check, answers, data.draw(st.sampled_from([FACTS, GAS])))
    if isinstance(found, BadInput):
        assert found.problems
        assert all(p.field and p.expected for p in found.problems)
    else:
        assert isinstance(found, (Measured, Seen, NotJudged, Information))
