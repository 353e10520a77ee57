"""Oil of a chain: which, how, how often."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.lubrication import oiled_life_ratio, oiling_intervals, oiling_steps, oils, oils_for
from mastwright.quantity import Evidence


def _grades(celsius: Fraction) -> list[str]:
    return [oil.grade.en for oil in oils_for(celsius)]


@pytest.mark.parametrize(
    ("celsius", "grades"),
    [
        (-30, ["low-temperature chain oil, ISO VG 15 to 68, as its maker says"]),
        (-5, ["ISO VG 100 (SAE 30)", "SAE 20"]),
        (20, ["ISO VG 100 (SAE 30)", "SAE 30"]),
        (25, ["ISO VG 150 (SAE 40)", "SAE 30"]),
        (46, ["ISO VG 220 (SAE 50)", "SAE 40"]),
        (80, []),
    ],
)
def test_oil_by_temperature(celsius: int, grades: list[str]) -> None:
    """Source: table in the manner of DIN 8195, and American chain practice (both from memory)."""
    assert _grades(Fraction(celsius)) == grades


def test_fahrenheit_bounds_are_exact() -> None:
    """A bound written in °F is kept exactly: 40 °F is 40/9 °C."""
    assert "SAE 20" not in _grades(Fraction(40, 9))
    assert "SAE 30" in _grades(Fraction(40, 9))


def test_no_gap_within_a_practice() -> None:
    """Within each practice one oil begins where the one before it ends."""
    for practice in {oil.source.text for oil in oils()}:
        rows = [oil for oil in oils() if oil.source.text == practice]
        assert [a.below for a in rows[:-1]] == [b.lowest for b in rows[1:]]


def test_steps_start_with_the_caution() -> None:
    """The first step makes the mast safe; the others follow in order, each in both languages."""
    steps = oiling_steps()
    assert [s.key for s in steps] == ["stand-safe", "brush", "slack", "flood", "no-grease", "new-chain"]
    assert "switch off" in steps[0].text.en
    assert all(s.text.en != s.text.es for s in steps)


def test_intervals_shortest_first() -> None:
    """Sources: a training page 100 h, a truck maker 150 h or monthly (read), a guidance 250 h (as quoted)."""
    found = oiling_intervals()
    assert [i.hours for i in found] == [100, 150, 250]
    assert [i.months for i in found] == [None, Fraction(1), Fraction(1)]
    assert found[-1].source.evidence is Evidence.AS_QUOTED


def test_sixty_fold_life_is_only_quoted() -> None:
    """Source: a chain maker's estimate of sixty times the life, no data shown (as quoted)."""
    assert oiled_life_ratio().value == 60
    assert oiled_life_ratio().source.evidence is Evidence.AS_QUOTED
