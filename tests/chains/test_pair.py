"""Load share of a pair: limits of the model and bad figures."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.chains.pair import (
    load_of_pair,
    mismatch_for_share,
    settling_cycles,
    share_beside_worn,
    strand_stiffness,
)
from mastwright.quantity import BadInput, Evidence

_POSITIVE = st.fractions(min_value=Fraction(1, 100), max_value=100_000, max_denominator=100)
_LENGTH = st.fractions(min_value=-50, max_value=50, max_denominator=100)


def test_equal_strands_share_alike() -> None:
    """Without a difference in length each pulls half."""
    load = load_of_pair(Fraction(20000), Fraction(0), Fraction(6000))
    assert load.first == load.second == 10000
    assert load.heavier_share == Fraction(1, 2)
    assert not load.one_is_slack


def test_longer_strand_goes_slack() -> None:
    """A large difference leaves everything on the shorter strand, whichever it is."""
    for longer_by in (Fraction(10), Fraction(-10)):
        load = load_of_pair(Fraction(20000), longer_by, Fraction(6000))
        assert load.one_is_slack
        assert load.heavier_share == 1
    assert load_of_pair(Fraction(20000), Fraction(10), Fraction(6000)).first == 0


@given(pull=_POSITIVE, longer_by=_LENGTH, stiffness=_POSITIVE)
def test_pulls_add_up_and_never_push(pull: Fraction, longer_by: Fraction, stiffness: Fraction) -> None:
    """The two pulls add up to the whole, exactly, and a chain never pushes."""
    load = load_of_pair(pull, longer_by, stiffness)
    assert load.first + load.second == pull
    assert min(load.first, load.second) >= 0


@given(pull=_POSITIVE, stiffness=_POSITIVE, share=st.fractions(min_value=Fraction(1, 2), max_value=1))
def test_mismatch_gives_back_its_share(pull: Fraction, stiffness: Fraction, share: Fraction) -> None:
    """The difference worked out for a share gives that share, exactly."""
    longer_by = mismatch_for_share(pull, share, stiffness)
    assert load_of_pair(pull, longer_by, stiffness).heavier_share == share


def test_lighter_load_is_shared_worse() -> None:
    """The same difference weighs more with no load on the forks."""
    loaded, empty = (load_of_pair(Fraction(p), Fraction(1, 5), Fraction(6000)) for p in (22555, 2942))
    assert empty.heavier_share > loaded.heavier_share


def test_softening_is_a_judgement() -> None:
    """The softening of the plates' stiffness is shown as judged, and orders the estimate."""
    stiff = strand_stiffness(3, Fraction("3.30"), Fraction("18.0975"), Fraction(3000))
    assert stiff.low < stiff.likely < stiff.high
    assert {f.source.evidence for f in stiff.softening} == {Evidence.COMMON_PRACTICE}


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: strand_stiffness(0, Fraction(3), Fraction(18), Fraction(3000)), "plates"),
        (lambda: strand_stiffness(3, Fraction(3), Fraction(18), Fraction(0)), "strand length"),
        (lambda: load_of_pair(Fraction(0), Fraction(0), Fraction(1)), "pull"),
        (lambda: load_of_pair(Fraction(1), Fraction(0), Fraction(0)), "stiffness"),
        (lambda: mismatch_for_share(Fraction(1), Fraction(1, 3), Fraction(1)), "share of the shorter strand"),
        (lambda: share_beside_worn(Fraction(1, 2)), "ratio of wear rates"),
        (lambda: settling_cycles(Fraction(0), Fraction(1), Fraction(1)), "wear rate of the first strand"),
    ],
)
def test_impossible_figure_is_refused(call: object, field: str) -> None:
    """A figure that cannot be is refused by name."""
    assert callable(call)
    with pytest.raises(BadInput) as caught:
        call()
    assert caught.value.problems[0].field == field
