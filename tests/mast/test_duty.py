"""Duties and tables of moves: what is read, what is assumed, what is refused."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest

from mastwright.mast.articulation import PlateShape, on_pin_circle, on_rim
from mastwright.mast.best_span import MapSpan, best_span, span_at
from mastwright.mast.chain_length import strand_length
from mastwright.mast.duty import RackLevel, counter_duty, described_duties, described_duty, rack_duty
from mastwright.mast.elements import mast_elements
from mastwright.mast.moves import Moves, moves_from_csv, set_moves
from mastwright.mast.state import body_masses
from mastwright.mast.wear_map import wear_map
from mastwright.mast.wear_rate import (
    WearCoefficient,
    WearCourse,
    WearReading,
    prior_coefficient,
    updated_coefficient,
)
from mastwright.quantity import BadInput

HEAD = "from_height_mm,to_height_mm,load_kg,count\n"


def test_a_table_of_moves() -> None:
    """Columns may stand in any order; blank lines and a mark of the encoding are passed over."""
    moves = moves_from_csv("\ufeffcount, load_kg,to_height_mm,from_height_mm\n\n40,1200.5,3000,0\n", "day")
    assert [float(c[0]) for c in (moves.start, moves.end, moves.load, moves.count)] == [0, 3000, 1200.5, 40]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "line 1: day, header: the columns"),
        ("a,b\n1,2\n", "line 1: day, header: 'a,b' given"),
        (HEAD, "day: at least one move"),
        (HEAD + "0,1,2\n", "line 2: day, row: '0,1,2' given; 4 cells"),
        (HEAD + "0,1,2,3\n0,high,2,3\n", "line 3: day, to_height_mm: 'high' given; a number from 0 to 40000"),
        (HEAD + "-1,1,2,3\n", "line 2: day, from_height_mm: '-1' given"),
        (HEAD + "0,1e9,2,3\n", "line 2: day, to_height_mm: '1e9' given"),
        (HEAD + "0,1,nan,3\n", "line 2: day, load_kg: 'nan' given"),
        (HEAD + "0,1,2,inf\n", "line 2: day, count: 'inf' given"),
        (HEAD + "0,1,2,1_0\n", "line 2: day, count: '1_0' given"),
        (HEAD + "0,1,2," + "9" * 200_000 + "\n", "day: a table of comma-separated cells"),
    ],
)
def test_a_table_that_is_no_table_of_moves(text: str, said: str) -> None:
    """What is wrong is told by line and column."""
    with pytest.raises(BadInput) as refused:
        moves_from_csv(text, "day")
    assert said in str(refused.value)


def test_not_every_fault_of_a_long_table_is_told() -> None:
    """Ten faults are enough to see what is wrong."""
    with pytest.raises(BadInput) as refused:
        moves_from_csv(HEAD + "x,1,2,3\n" * 1000, "day")
    assert len(refused.value.problems) == 10


def test_what_a_set_does_in_a_move() -> None:
    """Three-stage mast, 1500 mm of free lift: the free-lift chain stops where the main chain starts."""
    mast = mast_elements("C")
    masses = body_masses(Fraction(0), Fraction(300), Fraction(250), None, None)
    moves = Moves.of([(1000, 2500, 2000, 4)])
    free, main = (set_moves(mast, name, moves, 1500, masses, 2, 10) for name in ("free-lift", "main"))
    assert (float(free.start[0]), float(free.end[0]), float(free.tension[0])) == (500, 750, 11_500)
    assert (float(main.start[0]), float(main.end[0]), float(main.tension[0])) == (0, 500, 12_750)
    assert (main.highest, main.travelled) == (500, 2000)


def test_the_load_pulls_twice_on_the_lower_chains() -> None:
    """D: the load counts twice on the main chains (computed)."""
    masses = body_masses(Fraction(0), Fraction(300), Fraction(250), None, None)
    main = set_moves(mast_elements("D"), "main", Moves.of([(0, 3000, 1000, 1)]), 0, masses, 2, 10)
    assert float(main.tension[0]) == (250 + 2 * 1300) * 10 / 2


def test_rack_levels_load_one_way() -> None:
    """Each cycle is loaded one way and empty the other; what is left over travels low."""
    duty = rack_duty([RackLevel(2000, 0.5), RackLevel(4000, 0.2)], 100, 1000)
    assert duty.moves.end.tolist() == [2000, 0, 4000, 0, 150, 0]
    assert duty.moves.load.tolist() == [1000, 0] * 3
    assert duty.moves.count.tolist() == pytest.approx([50, 50, 20, 20, 30, 30])
    assert [str(s.evidence) for s in duty.assumed] == ["read"]


def test_a_given_travel_height_is_not_assumed() -> None:
    """Nothing is assumed where it was said; nothing is left over where the shares are whole."""
    duty = rack_duty([RackLevel(2000, 1)], 10, 1000, travel_height=200)
    assert (duty.assumed, duty.moves.end.tolist()) == ((), [2000, 0])


@pytest.mark.parametrize(
    ("levels", "field"),
    [
        ([RackLevel(-1, 0.5)], "rack level 1, height"),
        ([RackLevel(1, 0.5), RackLevel(1, 1.5)], "rack level 2, share"),
        ([RackLevel(1, 0.6), RackLevel(2, 0.6)], "rack levels, share"),
    ],
)
def test_rack_levels_that_cannot_be(levels: list[RackLevel], field: str) -> None:
    """A height or share that cannot be is named."""
    with pytest.raises(BadInput, match=field):
        rack_duty(levels, 100, 1000)


def test_a_lift_counter() -> None:
    """Each lift goes up loaded and comes down empty."""
    moves = counter_duty([(1000, 30), (3000, 5)], 800).moves
    assert moves.start.tolist() == [0, 1000, 0, 3000]
    assert moves.load.tolist() == [800, 0, 800, 0]
    assert moves.count.tolist() == [30, 30, 5, 5]


@pytest.mark.parametrize(
    ("row", "field"), [((-1.0, 3.0), "lift counter, height"), ((10.0, -3.0), "lift counter, lifts")]
)
def test_a_lift_counter_that_cannot_be(row: tuple[float, float], field: str) -> None:
    """A class below the floor or a negative count is refused."""
    with pytest.raises(BadInput, match=field):
        counter_duty([row], 800)


@pytest.mark.parametrize("words", described_duties())
def test_a_duty_in_words_is_whole_and_says_that_it_is_assumed(words: str) -> None:
    """Shares come to all cycles, none higher than the lift height, every source told."""
    duty = described_duty(words.upper(), 1000, 1500, 4000)
    assert duty.moves.count.sum() == pytest.approx(2000)
    assert duty.moves.end.max() <= 4000
    assert {str(s.evidence) for s in duty.assumed} == {"read", "common practice, no source"}


def test_a_duty_that_nobody_knows() -> None:
    """The duties that there are are named."""
    with pytest.raises(BadInput, match=r"duty: 'light' given; one of floor work, mixed, high racking"):
        described_duty("light", 1000, 1500, 4000)


def test_sheaves_that_cannot_be() -> None:
    """A waisted plate longer than the rim, or a pin circle no larger than the pitch, is refused."""
    with pytest.raises(BadInput, match="sheave: '1 mm' given"):
        on_rim(19.05, 1, 18, PlateShape.FIGURE_EIGHT)
    with pytest.raises(BadInput, match="pin circle: '19 mm' given"):
        on_pin_circle(19.05, 19)


def test_a_strand_that_would_reach_the_sheave() -> None:
    """A carried run no longer than the stroke is refused; parity follows the ends."""
    with pytest.raises(BadInput, match="carried run"):
        strand_length(1200, 1500, 180, 19.05, 1500, same_ends=True)
    even, odd = (strand_length(1200, 1750, 180, 19.05, 1500, same_ends=s) for s in (False, True))
    assert (even.pitches % 2, odd.pitches % 2, abs(even.pitches - odd.pitches)) == (0, 1, 1)


def _chart(stroke: float) -> tuple[float, ...]:
    nothing = np.array([0.0])
    moves = Moves(nothing, np.array([stroke * 2]), nothing + 1000, nothing + 1)
    masses = body_masses(Fraction(0), Fraction(300), None, None, None)
    chart = wear_map(set_moves(mast_elements("A"), "carriage", moves, 0, masses, 1, 10), 20, 200)
    best, one = best_span(chart, 3, 0.4), span_at(chart, 1, 2)
    return () if best is None or one is None else (best.pitches, best.first_pin, one.last_pin, chart.take_up)


def test_nothing_worn_nothing_to_measure() -> None:
    """A set that does not move has no best span, and one that moves a little has a short one."""
    assert _chart(0) == ()
    assert _chart(5) == pytest.approx((2, 1, 3, 40))


@pytest.mark.parametrize(("pin", "pitches", "field"), [(1, 3, "pitches"), (1, 0, "pitches"), (0, 2, "pin")])
def test_spans_that_cannot_be(pin: int, pitches: int, field: str) -> None:
    """Odd or no pitches, or a pin before the first, are refused."""
    one = np.array([1.0])
    masses = body_masses(Fraction(0), Fraction(300), None, None, None)
    moves = set_moves(mast_elements("A"), "carriage", Moves(one, one, one, one), 0, masses, 1, 10)
    with pytest.raises(BadInput, match=field):
        span_at(wear_map(moves, 20, 200), pin, pitches)


def test_a_sharp_count() -> None:
    """Unsmoothed, one lift of 500 mm bends joints down to 300 twice, then once, then never."""
    zero = np.array([0.0])
    masses = body_masses(Fraction(0), Fraction(300), None, None, None)
    moves = set_moves(
        mast_elements("A"), "carriage", Moves(zero, zero + 1000, zero, zero + 1), 0, masses, 1, 10
    )
    chart = wear_map(moves, 20, 200, sharp=True)
    assert chart.articulations.tolist() == [1] * 10 + [2] * 15 + [1] * 10
    assert chart.d.tolist() == [20 * (i + 0.5) for i in range(-10, 25)]


def test_readings_move_the_coefficient_and_narrow_it() -> None:
    """A sharp reading decides, a vague one leaves the prior, two sharp ones meet between."""
    prior = prior_coefficient()
    sharp = updated_coefficient(prior, [WearReading(1.0, 0.01, 0.5e8)])
    vague = updated_coefficient(prior, [WearReading(1.0, 100, 0.5e8)])
    assert sharp.median == pytest.approx(2e-8, rel=0.005)
    assert sharp.high / sharp.low == pytest.approx(1 + 2 * 0.01, abs=0.002)
    assert vague.median == pytest.approx(prior.median, rel=0.01)
    assert vague.high / vague.low == pytest.approx(9, rel=0.02)
    both = updated_coefficient(prior, [WearReading(1.0, 0.05, 0.5e8), WearReading(2.0, 0.05, 0.5e8)])
    assert sharp.median < both.median < 4e-8


def test_no_reading_leaves_the_prior() -> None:
    """Without a reading the answer is what was believed before (computed)."""
    prior = WearCoefficient(2e-8, 1e-8, 4e-8)
    after = updated_coefficient(prior, [])
    assert (after.median, after.low, after.high) == pytest.approx((2e-8, 1e-8, 4e-8), rel=0.002)


def test_dry_is_the_factor_of_the_table() -> None:
    """An unlubricated chain starts sixty times higher."""
    assert prior_coefficient(dry=True).median == pytest.approx(6e-7)


def test_a_straight_course() -> None:
    """Without options wear is what steady wear says, below and past any mark."""
    assert [WearCourse().elongation(e) for e in (0, 1, 4)] == [0, 1, 4]


def test_once_the_case_is_through_wear_goes_faster() -> None:
    """Past 1.5 % at twice the rate: 2 % of steady wear is 2.5 %."""
    course = WearCourse(case_gone=1.5, case_factor=2)
    assert [course.elongation(e) for e in (1, 1.5, 2)] == [1, 1.5, 2.5]


def test_the_stroke_that_brings_a_span_past_the_sheave() -> None:
    """Its last pin and a whole wrap have to pass (geometry, computed)."""
    assert MapSpan(16, 1, 10, 330, 1.0).stroke_past_sheave(200) == 530
