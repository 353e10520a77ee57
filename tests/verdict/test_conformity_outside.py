"""Conformity with doubt against figures published outside the project."""

from __future__ import annotations

import pytest

from mastwright.quantity import Worse
from mastwright.verdict import guard_mark, probability_over, shop_policy
from verdict.made import limit, percent


@pytest.mark.parametrize(
    ("conforming", "z"), [(0.80, 0.84), (0.90, 1.28), (0.95, 1.64), (0.99, 2.33), (0.999, 3.09)]
)
def test_the_table_of_one_sided_intervals(conforming: float, z: float) -> None:
    """JCGM 106:2012 cl. 7.3 table 1 (from memory): z for a conformance probability, printed to 0.01."""
    assert -float(guard_mark(limit(0), 1.0, 1 - conforming)) == pytest.approx(z, abs=0.0051)


@pytest.mark.parametrize(
    ("conforming", "z"), [(0.80, 0.842), (0.90, 1.282), (0.95, 1.645), (0.99, 2.326), (0.999, 3.090)]
)
def test_the_quantiles_of_the_normal_distribution(conforming: float, z: float) -> None:
    """Any table of the normal distribution: the same to 0.001 (computed)."""
    assert round(-float(guard_mark(limit(0), 1.0, 1 - conforming)), 3) == z


def test_the_breakdown_voltage() -> None:
    """JCGM 106:2012 example of a diode (from memory): limit -5.40 V, -5.47 V, u 0.05 V: 0.92, here 0.919."""
    over = probability_over(percent("-5.47", 0.05), limit("-5.40"))
    assert round(1 - over, 3) == 0.919


def test_the_viscosity() -> None:
    """JCGM 106:2012 two-sided example (from memory): 12.5 to 16.3, 13.6 read, u 1.8: 0.66, here 0.663."""
    read = percent("13.6", 1.8)
    outside = probability_over(read, limit("16.3")) + probability_over(read, limit("12.5", Worse.LOWER))
    assert round(1 - outside, 3) == 0.663


def test_a_reading_one_uncertainty_below() -> None:
    """2.9 with u 0.1 under a limit of 3: conforming at 0.841345, the table value of z = 1."""
    assert 1 - probability_over(percent("2.9", 0.1), limit(3)) == pytest.approx(0.841345, abs=5e-7)


@pytest.mark.parametrize(("doubt", "over"), [(0.13, 0.062), (0.05, 0.00003)])
def test_a_rule_and_a_calliper_at_two_point_eight(doubt: float, over: float) -> None:
    """2.8 % read: over 3 % at 6.2 % with a rule over 16 pitches, 0.003 % with a calliper (computed)."""
    assert probability_over(percent("2.8", doubt), limit(3)) == pytest.approx(over, rel=0.06)


def test_the_guard_for_ninety_five_percent() -> None:
    """ISO 14253-1:2017 (from memory), 95 % one-sided: 3 - 1.645 u; with u 0.13 that is 2.79."""
    guard = float(guard_mark(limit(3), 0.13, 0.05))
    assert round(guard, 2) == 2.79
    assert round((3 - guard) / 0.13, 3) == 1.645


def test_two_standard_uncertainties() -> None:
    """A guard of U = 2 u accepts at 97.72 % or better: the table value of z = 2."""
    assert 1 - probability_over(percent("2.8", 0.1), limit(3)) == pytest.approx(0.9772, abs=5e-5)


@pytest.mark.parametrize(
    ("mean", "doubt", "mark", "detected"),
    [
        ("2.943", 0.05, 3, 0.129),
        ("2.943", 0.15, 3, 0.353),
        ("2.709", 0.15, 3, 0.026),
        ("2.475", 0.15, 2, 0.999),
        ("2.007", 0.15, 2, 0.519),
        ("1.071", 0.15, 2, 0.000),
    ],
)
def test_how_often_a_worn_chain_is_seen(mean: str, doubt: float, mark: int, detected: float) -> None:
    """A simulation of 200 000 readings of a worn span (computed): share of them at or past the mark."""
    assert probability_over(percent(mean, doubt), limit(mark)) == pytest.approx(detected, abs=0.003)


def test_the_doubt_that_a_fit_may_carry() -> None:
    """ISO 14253-1:2017 (from memory): 95 % conformance at the least; ours is 97.5 %."""
    policy = shop_policy()
    assert 1 - policy.highest_doubt >= 0.95
    assert guard_mark(policy.discard, 0.1, policy.highest_doubt) < guard_mark(policy.discard, 0.1, 0.05)
