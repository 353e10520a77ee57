"""What a rule is: the fields it asks for, and how it weighs them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from mastwright.checks.answer import AnswerField
from mastwright.checks.case import Case
from mastwright.checks.catalogue import Check
from mastwright.checks.outcome import Outcome


@dataclass(frozen=True)
class Rule:
    """One way of judging a check.

    Parameters
    ----------
    fields
        What it asks for.
    weigh
        What the answers come to.
    """

    fields: Callable[[Check], tuple[AnswerField, ...]]
    weigh: Callable[[Case], Outcome]


def quantity(name: str, dimension: str, *, required: bool = True) -> AnswerField:
    """Return a field for a quantity."""
    return AnswerField(name, "quantity", dimension, required)


def value_and(*more: AnswerField, required: bool = True) -> Callable[[Check], tuple[AnswerField, ...]]:
    """Return the fields of a rule with a main reading in the check's own dimension, and others."""
    return lambda check: (quantity("value", check.reads, required=required), *more)
