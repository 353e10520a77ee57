"""The shop's rules of judgement and how far a shop may change them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.quantity import BadInput, LimitKind
from mastwright.verdict import shop_policy


def test_what_ships() -> None:
    """Discard at 3 %, planned at 2 %, watched from 1.6 %, a fit with 2.5 % doubt at the most."""
    policy = shop_policy()
    assert policy.planned is not None
    assert [policy.discard.at, policy.planned.at, policy.nearing.at] == [3, 2, Fraction("1.6")]
    assert (policy.highest_doubt, policy.repair_days) == (0.025, 30)


def test_the_default_written_out_changes_nothing() -> None:
    """A shop that writes 3 % has what ships."""
    assert shop_policy(Fraction(3)) == shop_policy()


@pytest.mark.parametrize(
    ("discard", "planned", "nearing"),
    [("2.5", Fraction(2), "1.6"), ("2", None, "1.6"), ("1.5", None, "1.2")],
)
def test_a_stricter_discard_mark(discard: str, planned: Fraction | None, nearing: str) -> None:
    """A mark at 2 % or below is final: no planned mark is left, and watching begins before it."""
    policy = shop_policy(Fraction(discard))
    assert policy.discard.at == Fraction(discard)
    assert (policy.planned.at if policy.planned else None) == planned
    assert policy.nearing.at == Fraction(nearing)


def test_a_shops_own_mark_says_that_it_is_one() -> None:
    """The report can name whose mark it was."""
    own = shop_policy(Fraction(2)).discard
    assert (own.kind, "the shop's own" in own.source.text) == (LimitKind.SHOP, True)


@pytest.mark.parametrize("percent", ["3.01", "5", "0", "-1"])
def test_a_looser_discard_mark_is_refused(percent: str) -> None:
    """A shop may be stricter than 3 %, never looser, and never at nothing."""
    with pytest.raises(BadInput) as refused:
        shop_policy(Fraction(percent))
    (problem,) = refused.value.problems
    assert (problem.field, problem.given) == ("policy.discard_at", f"{float(percent):g} %")
    assert problem.expected == "above 0 % and at most 3 %: a shop may be stricter, never looser"


@pytest.mark.parametrize("doubt", [0.001, 0.025, 0.05])
def test_an_allowed_doubt_is_taken(doubt: float) -> None:
    """Up to 5 % the shop decides."""
    assert shop_policy(highest_doubt=doubt).highest_doubt == doubt


@pytest.mark.parametrize(("doubt", "given_as"), [(0.0501, "5.010%"), (0.5, "50.000%"), (0.0, "0.000%")])
def test_a_doubt_beyond_the_allowed_is_refused(doubt: float, given_as: str) -> None:
    """More than 5 % is refused, and so is none at all, which no reading could meet."""
    with pytest.raises(BadInput) as refused:
        shop_policy(highest_doubt=doubt)
    (problem,) = refused.value.problems
    assert (problem.field, problem.given) == ("policy.highest_doubt", given_as)
    assert problem.expected == "above 0 % and at most 5%"


@given(st.integers(1, 300).map(lambda n: Fraction(n, 100)))
def test_marks_stand_in_order_at_every_policy(discard: Fraction) -> None:
    """Watching begins before the planned mark, and that stands before the discard mark."""
    policy = shop_policy(discard)
    marks = [policy.nearing.at, *([policy.planned.at] if policy.planned else []), policy.discard.at]
    assert marks == sorted(set(marks))
