"""Hung masses against virtual work: what the cylinder lifts must equal what rises."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.mast import MastMasses, arrangement, hung_mass

_MASS = st.fractions(min_value=0, max_value=10_000, max_denominator=10)

# How far each part rises per unit of cylinder stroke once the free lift is used up, from the chain of
# constant length alone (2 x sheave - anchor): outer frame fixed. Outermost moving frame first.
# Two-stage A: frame 1, carriage 2. Three-stage C: middle 1, inner and carriage 2 (the carriage stands
# still on the inner frame). Three-stage D: middle 1, inner 2, carriage 2·2 - 1 = 3. Four-stage E: first
# frame 1, second 2, inner and carriage 2·2 - 1 = 3. Source: virtual work (computed).


def _masses(load: Fraction, carriage: Fraction, inner: Fraction, middle: Fraction) -> MastMasses:
    return MastMasses(load=load, carriage=carriage, inner=inner, middle=middle)


def _on(letter: str, name: str, masses: MastMasses) -> Fraction:
    return hung_mass(arrangement(letter).chain_set(name), masses)


@given(load=_MASS, carriage=_MASS, inner=_MASS)
def test_two_stage(load: Fraction, carriage: Fraction, inner: Fraction) -> None:
    """A: the sheave on the frame takes twice the chain pull: 2(L+C) + I lifted by one stroke."""
    masses = _masses(load, carriage, inner, Fraction(0))
    work = 2 * (load + carriage) + 1 * inner
    assert 2 * _on("A", "carriage", masses) + inner == work


@given(load=_MASS, carriage=_MASS, inner=_MASS, middle=_MASS)
def test_three_stage_full_free_lift(
    load: Fraction, carriage: Fraction, inner: Fraction, middle: Fraction
) -> None:
    """C: main sheave on the middle frame: M + 2(L+C+I) lifted by one stroke."""
    masses = _masses(load, carriage, inner, middle)
    work = 1 * middle + 2 * (load + carriage + inner)
    assert 2 * _on("C", "main", masses) + middle == work


@given(load=_MASS, carriage=_MASS, inner=_MASS, middle=_MASS)
def test_three_stage_without_free_lift(
    load: Fraction, carriage: Fraction, inner: Fraction, middle: Fraction
) -> None:
    """D: the sheave on the middle frame up, the carriage anchor on it down: M + 2I + 3(L+C)."""
    masses = _masses(load, carriage, inner, middle)
    work = 1 * middle + 2 * inner + 3 * (load + carriage)
    assert 2 * _on("D", "main", masses) - _on("D", "carriage", masses) + middle == work


@given(load=_MASS, carriage=_MASS, inner=_MASS, middle=_MASS, first=_MASS)
def test_four_stage(
    load: Fraction, carriage: Fraction, inner: Fraction, middle: Fraction, first: Fraction
) -> None:
    """E: lower sheave up, upper anchor down on the first frame: M1 + 2 M2 + 3(L+C+I)."""
    masses = _masses(load, carriage, inner, middle)
    work = 1 * first + 2 * middle + 3 * (load + carriage + inner)
    assert 2 * _on("E", "lower-main", masses) - _on("E", "upper-main", masses) + first == work


@pytest.mark.parametrize("letter", ["B", "C", "E"])
def test_free_lift_chain_carries_the_carriage_alone(letter: str) -> None:
    """In free lift the carriage rises twice the cylinder: 2(L+C), virtual work (computed)."""
    masses = _masses(Fraction(2000), Fraction(300), Fraction(999), Fraction(999))
    assert 2 * _on(letter, "free-lift", masses) == 2 * 2300


def test_weightless_inner_frame_doubles_the_pull() -> None:
    """D with no inner frame mass: main chains pull exactly twice the carriage chains (computed)."""
    masses = _masses(Fraction(1234), Fraction(321), Fraction(0), Fraction(0))
    assert _on("D", "main", masses) == 2 * _on("D", "carriage", masses)
