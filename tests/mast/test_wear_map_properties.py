"""The wear map against the joint-by-joint count, and what must hold for any duty."""

from __future__ import annotations

from itertools import pairwise
from random import Random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from mastwright.mast.articulation import on_rim
from mastwright.mast.best_span import best_span, span_at
from mastwright.mast.moves import SetMoves
from mastwright.mast.wear_map import WearMap, wear_map

from .link_by_link import bends
from .map_strategies import LIFTS, MOVES, PITCHES, lifts_of, set_moves_of


def _wrap(pitch: float) -> float:
    return on_rim(pitch, 5 * pitch, 0.95 * pitch).wrap


def _map(moves: SetMoves, pitch: float = 19.05, *, sharp: bool = False) -> WearMap:
    return wear_map(moves, pitch, _wrap(pitch), sharp=sharp)


def _warehouse(seed: int, cycles: int) -> list[tuple[float, float, float, int]]:
    """Demo data: floor moves, and racks with a little overtravel to put down and pick up."""
    random = Random(seed)  # noqa: S311  demo data
    rows = []
    for _ in range(cycles):
        if random.random() < 0.3:
            rows += [(0.0, 100.0, 11_000.0, 1), (100.0, 0.0, 11_000.0, 1)]
            continue
        rack = random.choice([750.0, 1500.0, 2250.0])
        over = rack + random.uniform(20, 80)
        rows += [(0.0, over, 11_000.0, 1), (over, rack, 11_000.0, 1), (rack, 0.0, 1500.0, 1)]
    return rows


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("pitch", [15.875, 19.05, 25.4])
def test_counted_as_link_by_link(seed: int, pitch: float) -> None:
    """Random duties, every joint: within 1e-9 of the joint-by-joint count (computed)."""
    rows = _warehouse(seed, 6)
    chart = _map(set_moves_of(rows), pitch)
    joints = [float(d) for d in chart.d]
    plain = bends(joints, [(a, b, n) for a, b, _, n in rows], pitch, chart.wrap)
    pulled = bends(joints, [(a, b, t * n) for a, b, t, n in rows], pitch, chart.wrap)
    assert chart.articulations == pytest.approx(plain, rel=1e-9, abs=1e-9)
    assert chart.weighted == pytest.approx(pulled, rel=1e-9, abs=1e-9 * max(pulled))


@settings(max_examples=15)
@given(rows=st.lists(st.tuples(st.floats(0, 300), st.floats(0, 300), st.floats(1, 10), st.integers(0, 9)),
                     min_size=1, max_size=4), pitch=PITCHES)  # fmt: skip
def test_short_moves_counted_as_link_by_link(
    rows: list[tuple[float, float, float, int]], pitch: float
) -> None:
    """Any handful of short moves agrees with the joint-by-joint count (computed)."""
    chart = _map(set_moves_of(rows), pitch)
    slow = bends([float(d) for d in chart.d], [(a, b, t * n) for a, b, t, n in rows], pitch, chart.wrap)
    assert chart.weighted == pytest.approx(slow, rel=1e-9, abs=1e-7)


@given(rows=MOVES, pitch=PITCHES, sharp=st.booleans())
def test_never_negative(rows: list[tuple[float, float, float, int]], pitch: float, sharp: bool) -> None:
    """No joint bends less than never."""
    chart = _map(set_moves_of(rows), pitch, sharp=sharp)
    assert (chart.articulations >= 0).all()
    assert (chart.weighted >= 0).all()


@given(rows=MOVES, pitch=PITCHES)
def test_the_map_holds_every_joint_that_bends(
    rows: list[tuple[float, float, float, int]], pitch: float
) -> None:
    """All bending is twice the way travelled, in pitches, so no worn joint lies off the map."""
    moves = set_moves_of(rows)
    chart = _map(moves, pitch)
    assert chart.articulations.sum() * pitch == pytest.approx(2 * moves.travelled, rel=1e-9, abs=1e-6)


@given(rows=MOVES)
def test_take_up_is_work(rows: list[tuple[float, float, float, int]]) -> None:
    """Weighted bending sums to twice pull times way, whatever the heights."""
    moves = set_moves_of(rows)
    chart = _map(moves)
    work = float((np.abs(moves.end - moves.start) * moves.tension * moves.count).sum())
    assert chart.weighted.sum() * chart.pitch == pytest.approx(2 * work, rel=1e-9, abs=1e-3)
    assert chart.take_up * chart.weighted.max() == pytest.approx(2 * work, rel=1e-9, abs=1e-3)


@given(rows=MOVES, sharp=st.booleans())
def test_backwards_is_the_same(rows: list[tuple[float, float, float, int]], sharp: bool) -> None:
    """A duty run backwards bends every joint as often."""
    there = _map(set_moves_of(rows), sharp=sharp)
    back = _map(set_moves_of([(b, a, t, n) for a, b, t, n in rows]), sharp=sharp)
    assert there.articulations == pytest.approx(back.articulations, rel=1e-9, abs=1e-9)


@given(rows=MOVES, part=st.floats(0, 1))
def test_a_stop_on_the_way_changes_nothing(rows: list[tuple[float, float, float, int]], part: float) -> None:
    """Splitting a move into two in the same direction bends every joint as often."""
    whole = _map(set_moves_of(rows))
    split = []
    for a, b, t, n in rows:
        stop = min(max(a + part * (b - a), min(a, b)), max(a, b))
        split += [(a, stop, t, n), (stop, b, t, n)]
    assert _map(set_moves_of(split)).articulations == pytest.approx(whole.articulations, rel=1e-9, abs=1e-6)


@given(rows=LIFTS, pitch=PITCHES, sharp=st.booleans())
def test_lifts_from_the_bottom_wear_most_at_the_sheave(
    rows: list[tuple[float, int]], pitch: float, sharp: bool
) -> None:
    """Return-to-bottom lifts: never more further down, and most at the first clear joint."""
    chart = _map(lifts_of(rows), pitch, sharp=sharp)
    clear = chart.articulations[chart.d > 0]
    assert (np.diff(clear) <= 1e-9 * clear[0]).all()
    assert clear[0] == pytest.approx(chart.articulations.max(), rel=1e-12)


@given(rows=LIFTS, pitch=PITCHES)
def test_the_first_joint_bends_twice_for_every_lift_and_again_past_the_wrap(
    rows: list[tuple[float, int]], pitch: float
) -> None:
    """Sharp count just below the sheave: 2 x lifts x (1 + share of lifts higher than the wrap)."""
    chart = _map(lifts_of(rows), pitch, sharp=True)
    first = int((chart.d > 0).argmax())
    d = float(chart.d[first])
    expected = sum(2 * n * ((x > d) + (x > d + chart.wrap)) for x, n in rows)
    assert chart.articulations[first] == pytest.approx(expected)


@given(rows=MOVES, factor=st.floats(0.1, 10))
def test_wear_goes_with_the_pull(rows: list[tuple[float, float, float, int]], factor: float) -> None:
    """Twice the pull, twice the weighted count; the plain count is the same."""
    plain = _map(set_moves_of(rows))
    pulled = _map(set_moves_of([(a, b, t * factor, n) for a, b, t, n in rows]))
    assert pulled.weighted == pytest.approx(plain.weighted * factor, rel=1e-9, abs=1e-6)
    assert pulled.articulations == pytest.approx(plain.articulations)


@given(rows=LIFTS, pitch=PITCHES)
def test_a_longer_span_never_reads_more(rows: list[tuple[float, int]], pitch: float) -> None:
    """From the peak down, dilution is at most 1 and falls with the length of the span."""
    chart = _map(lifts_of(rows), pitch)
    spans = [span_at(chart, 1, n) for n in (2, 4, 8, 12, 16, 20, 24)]
    dilutions = [span.dilution for span in spans if span]
    assert len(dilutions) == len(spans)
    assert all(0 < d <= 1 for d in dilutions)
    assert all(b <= a + 1e-9 for a, b in pairwise(dilutions))


@given(rows=MOVES, pitch=PITCHES, u=st.floats(0.05, 1))
def test_the_best_span_is_even_and_clear_of_the_sheave(
    rows: list[tuple[float, float, float, int]], pitch: float, u: float
) -> None:
    """Whatever the duty: an even number of pitches, below the sheave."""
    chart = _map(set_moves_of(rows), pitch)
    span = best_span(chart, 3, u)
    assert (span is None) == (chart.weighted.max() <= 0)
    if span:
        assert span.pitches % 2 == 0
        assert span.start > 0
        assert 0 <= span.dilution <= 1
