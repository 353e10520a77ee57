"""Load share of a pair against worked examples and a simulation."""

from __future__ import annotations

from fractions import Fraction
from math import exp

import pytest

from mastwright.chains.pair import (
    load_of_pair,
    mismatch_for_share,
    settling_cycles,
    share_beside_worn,
    strand_stiffness,
)

# 2300 kg on two strands of 3/4 in pitch, 3x4, 3 m long, E = 205 GPa (handbook value, from memory).
_PULL = Fraction("9.80665") * 2300
_STIFF = strand_stiffness(3, Fraction("3.30"), Fraction("18.0975"), Fraction(3000))


def test_stiffness_of_worked_example() -> None:
    """Source: E·A = 36.73 MN, half of it over 3000 mm is 6121 N/mm, in longhand (computed)."""
    assert float(_STIFF.likely) == pytest.approx(6121, abs=0.6)
    assert float(_STIFF.likely * 2 * 3000) == pytest.approx(36.73e6, rel=2e-4)


def test_mismatch_of_worked_example() -> None:
    """Source: 60/40 at 0.737 mm (ends of the estimate 0.921, 0.526), slack at 3.685 mm (computed)."""
    sixty = Fraction(3, 5)
    found = [float(mismatch_for_share(_PULL, sixty, k)) for k in (_STIFF.low, _STIFF.likely, _STIFF.high)]
    assert found == pytest.approx([0.921, 0.737, 0.526], abs=0.0006)
    assert float(mismatch_for_share(_PULL, Fraction(1), _STIFF.likely)) == pytest.approx(3.685, abs=0.0006)


@pytest.mark.parametrize(("ratio", "percent"), [(2, 67), (3, 75)])
def test_new_strand_beside_worn(ratio: int, percent: int) -> None:
    """Source: r/(1+r): 67 % and 75 % (computed); a military manual replaces the whole set for it (read)."""
    assert round(100 * share_beside_worn(Fraction(ratio))) == percent


def test_settling_of_worked_example() -> None:
    """Source: both strands at 1.98653e-8 mm/N per cycle settle in 8224 cycles, in longhand (computed)."""
    rate = Fraction("1.98653e-8")
    assert float(settling_cycles(rate, rate, _STIFF.likely)) == pytest.approx(8224, abs=1)


def _simulate(first_rate: float, second_rate: float, longer_by: float, cycles: int) -> float:
    """Step the difference in length cycle by cycle, by hand, and return it."""
    pull, stiffness = float(_PULL), float(_STIFF.likely)
    for _ in range(cycles):
        first = min(pull, max(0.0, pull / 2 - stiffness * longer_by / 2))
        longer_by += first_rate * first - second_rate * (pull - first)
    return longer_by


def test_simulated_settling_leaves_one_over_e() -> None:
    """Reference: the wear of both strands stepped cycle by cycle leaves 1/e of the difference (computed)."""
    rate = 1.98653e-8
    cycles = round(settling_cycles(Fraction(rate), Fraction(rate), _STIFF.likely))
    assert _simulate(rate, rate, 0.5, cycles) / 0.5 == pytest.approx(exp(-1), abs=1e-4)


def test_simulated_share_beside_worn() -> None:
    """Reference: stepped, a strand that wears three times faster ends with a quarter (computed)."""
    longer_by = _simulate(3 * 1.98653e-8, 1.98653e-8, 0.0, 60_000)
    share = load_of_pair(_PULL, Fraction(longer_by), _STIFF.likely).second / _PULL
    assert float(share) == pytest.approx(float(share_beside_worn(Fraction(3))), abs=1e-3)
