"""Entries as a technician writes them, weighed: shared by the tests of the rules."""

from collections.abc import Mapping
from datetime import date

from mastwright.checks import (
    AnswerField,
    Measured,
    Outcome,
    Seen,
    ShopLimit,
    TruckFacts,
    answer_fields,
    find_check,
    read_shop_limits,
    weigh,
)
from mastwright.checks.answer import Answer
from mastwright.quantity import Field, UnitSystem, common_instruments, parse_quantity

DAY = date(2026, 11, 10)
"""The day of every visit here. demo data"""

GAS = TruckFacts("counterbalance", "lpg", frozenset({"pneumatic-tyres", "brake-pedal"}))
"""A gas truck whose plate was not written down. demo data"""


def limits(check: str, *, model: str = "", **fields: str | bool) -> tuple[ShopLimit, ...]:
    """Return the limits of a shop's file with one limit on this check."""
    row = {"check": check, "kind": "maker", "source": "service manual of an invented model", **fields}
    row |= {"model": model} if model else {}
    lines = [f"{k} = {str(v).lower() if isinstance(v, bool) else repr(v)}" for k, v in row.items()]
    read = read_shop_limits({"demo.toml": "\n".join(["[[limit]]", *lines])})
    return read.for_check(check, model)


def entry(
    check: str,
    given: Mapping[str, object],
    facts: TruckFacts = GAS,
    own: tuple[ShopLimit, ...] = (),
    instrument: str = "",
    system: UnitSystem = UnitSystem.METRIC,
) -> Outcome:
    """Weigh one entry; quantities are written as text, lists of them as tuples of texts."""
    known = find_check(check)
    fields = {field.name: field for field in answer_fields(known)}
    answers = {name: _answer(fields[name], value, system) for name, value in given.items()}
    tool = common_instruments().find(instrument or known.instrument, known.reads)
    return weigh(known, answers, facts, own, tool, DAY)


def measured(
    check: str,
    given: Mapping[str, object],
    facts: TruckFacts = GAS,
    own: tuple[ShopLimit, ...] = (),
    instrument: str = "",
    system: UnitSystem = UnitSystem.METRIC,
) -> Measured:
    """Weigh one entry that comes to a reading held against a limit."""
    outcome = entry(check, given, facts, own, instrument, system)
    assert isinstance(outcome, Measured)
    return outcome


def passes(outcome: Outcome) -> bool:
    """Tell whether an outcome is in order; one that is not judged or informs is neither."""
    if isinstance(outcome, Measured):
        return not (outcome.limit.reached_by(outcome.reading.value) or outcome.worse_case)
    assert isinstance(outcome, Seen)
    return outcome.ok


def codes(outcome: Outcome) -> list[str]:
    """Return the codes of an outcome's remarks."""
    return [note.code for note in outcome.notes]


def _answer(field: AnswerField, value: object, system: UnitSystem) -> Answer:
    if field.kind == "quantities":
        assert isinstance(value, tuple)
        return tuple(parse_quantity(v, Field(field.name, field.dimension, system)) for v in value)
    if field.kind == "quantity":
        return parse_quantity(value, Field(field.name, field.dimension, system, minimum=None))
    assert isinstance(value, (str, bool, date, int))
    return value
