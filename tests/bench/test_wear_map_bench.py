"""The bench of the wear map with small counts: both ways count the same, and both are timed."""

from __future__ import annotations

import pytest
import wear_map


def test_both_ways_count_the_same() -> None:
    """The joint-by-joint count agrees with the map that is timed against it, to 1e-9 of the worst joint."""
    timed, difference = wear_map.slow(1, step=4.0)
    assert (timed.moves, timed.seconds > 0) == (1, True)
    assert difference < 1e-9


@pytest.mark.parametrize("count", [10, 1000])
def test_the_map_is_timed(count: int) -> None:
    """As many moves are drawn as were asked for, within the chain, and their map takes some time."""
    moves = wear_map.drawn_moves(count)
    assert len(moves.start) == count
    assert 0 <= moves.highest <= 200 * 19.05
    assert wear_map.fast(count).seconds > 0


def test_the_table(monkeypatch: pytest.MonkeyPatch) -> None:
    """The section has a row for every size, and its ratio and difference below it."""
    monkeypatch.setattr(wear_map, "SIZES", (10, 100))
    monkeypatch.setattr(wear_map, "_SLOW_MOVES", 1)
    section = wear_map.section()
    assert [row[0] for row in section.rows] == ["10", "100"]
    assert len(section.remarks) == 3
