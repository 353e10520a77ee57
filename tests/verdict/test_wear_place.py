"""Where this truck's chains wear: the best span, readings taken elsewhere, and what must be known for it."""

from __future__ import annotations

from itertools import pairwise

import pytest

from mastwright.quantity import BadInput
from mastwright.verdict import JudgedVisit, SetWear, Verdict, judge_visit
from mastwright.visits import read_visit

_HEAD = """
[visit]
id = "v"
date = 2026-11-20
technician = "Ines Calder"
[customer]
name = "Fennmoor Cold Stores"
[truck]
id = "t"
kind = "reach"
power = "electric"
hours = 100
rated_capacity = "1600 kg"
{lift}
[truck.mast]
{mast}
"""
_CHAIN = """
[[chain]]
set = "{set}"
designation = "LH1234"
strands = ["left", "right"]
[[chain.span]]
strand = "left"
start = {start}
pitches = 16
length = "306 mm"
instrument = "{instrument}"
[[chain.span]]
strand = "right"
gauge = "0.5 %"
"""
SIMPLEX = 'arrangement = "A"\ncarriage_mass = "300 kg"\nsheave = "95 mm"'
TRIPLEX = (
    'arrangement = "C"\ncarriage_mass = "300 kg"\ninner_mass = "250 kg"\n'
    'free_lift = "1.5 m"\nsheave = "95 mm"'
)
LIFT = 'lift_height = "4.5 m"'


def judged(
    mast: str = SIMPLEX,
    *,
    lift: str = LIFT,
    chain: str = "main",
    start: int = 1,
    instrument: str = "rule",
) -> JudgedVisit:
    """Return a visit of one chain set on a mast (demo data)."""
    text = _HEAD.format(lift=lift, mast=mast) + _CHAIN.format(set=chain, start=start, instrument=instrument)
    return judge_visit(read_visit(text))


def wear(mast: str = SIMPLEX, *, chain: str = "main", instrument: str = "rule") -> SetWear:
    """Return the wear of the one chain set."""
    return judged(mast, chain=chain, instrument=instrument).wears[0]


def codes(found: SetWear) -> list[str]:
    """Return what is said of a set."""
    return [note.code for note in found.notes]


def test_the_rule_is_hooked_just_below_the_sheave() -> None:
    """A duty that returns to the floor wears the first pitches below the sheave most."""
    found = wear()
    assert found.first_pin == 1
    assert found.pitches % 2 == 0
    assert codes(found)[0] == "hook-here-or-raised"


def test_the_links_hang_on_the_anchor_side_once_raised_past_the_height_told() -> None:
    """In a two-stage mast the set moves half the fork lift."""
    found = wear()
    assert found.clear_height is not None
    assert float(found.clear_height) == pytest.approx(2 * found.clear_stroke)
    assert found.clear_stroke > found.pitches * found.pitch + found.wrap


def test_a_reading_up_the_chain_is_warned_about_and_the_verdict_stands() -> None:
    """A span 60 pitches down reads less of the wear; only the warning is new."""
    near, far = judged(start=1), judged(start=60)
    assert "span-diluted" not in codes(near.wears[0])
    assert "span-diluted" in codes(far.wears[0])
    assert far.verdict is near.verdict is Verdict.FIT


def test_a_reading_without_a_place_says_nothing_of_dilution() -> None:
    """A graduated gauge without pitches has no place on the map."""
    assert [span.strand for span, _, _ in wear().dilutions] == ["left"]


def test_a_finer_instrument_asks_for_a_shorter_span() -> None:
    """The calliper can afford to be nearer the worst joint."""
    floor = SIMPLEX + '\nwork = "floor work"'
    assert wear(floor, instrument="calliper").pitches <= wear(floor, instrument="rule").pitches


def test_a_set_read_by_gauge_alone_is_taken_to_be_measured_by_rule() -> None:
    """Without a length in hand the rule decides the span."""
    text = _HEAD.format(lift=LIFT, mast=SIMPLEX) + _CHAIN.format(set="main", start=1, instrument="rule")
    gauge = text.replace('length = "306 mm"\ninstrument = "rule"', 'gauge = "0.5 %"')
    assert judge_visit(read_visit(gauge)).wears[0].pitches == wear().pitches


def test_every_set_of_a_three_stage_mast_has_its_own_map() -> None:
    """Free-lift and main chains of a three-stage mast move at different heights."""
    free, main = wear(TRIPLEX, chain="free-lift"), wear(TRIPLEX, chain="main")
    assert free.clear_height is not None
    assert main.clear_height is not None
    assert free.clear_height < 1500 < main.clear_height


def test_links_that_the_duty_never_lifts_clear_are_told_lowered_only() -> None:
    """With one low rack level the span never passes the sheave."""
    low = SIMPLEX + '\nlevel = [{ height = "300 mm", share = "100 %" }]'
    found = wear(low)
    assert found.clear_height is None
    assert codes(found)[0] == "hook-here"


def test_rack_levels_are_no_assumption_but_the_travel_height_is() -> None:
    """What was said is not called assumed; what was not is."""
    said = SIMPLEX + '\ntravel_height = "200 mm"\nlevel = [{ height = "3 m", share = "80 %" }]'
    assert "duty-assumed" not in codes(wear(said))
    assert "duty-assumed" in codes(wear(SIMPLEX))


def test_a_sheave_that_was_not_given_is_assumed_and_said() -> None:
    """Five pitches, as pulley guides say, and a note."""
    bare = 'arrangement = "A"\ncarriage_mass = "300 kg"'
    assert "sheave-assumed" in codes(wear(bare))
    assert wear(bare).wrap == pytest.approx(wear().wrap, rel=0.01)


def test_the_most_worn_piece_is_one() -> None:
    """Pieces are relative to the worst joint, in order down the chain."""
    pieces = wear().pieces
    assert max(p.wear for p in pieces) == 1
    assert all(a.end == pytest.approx(b.start) for a, b in pairwise(pieces))


@pytest.mark.parametrize(
    ("mast", "lift", "chain"),
    [
        ('carriage_mass = "300 kg"', LIFT, "main"),
        ('arrangement = "A"', LIFT, "main"),
        (SIMPLEX, "", "main"),
        (TRIPLEX, LIFT, "tilt"),
        (TRIPLEX.replace('free_lift = "1.5 m"\n', ""), LIFT, "main"),
        (TRIPLEX.replace('inner_mass = "250 kg"\n', ""), LIFT, "main"),
        (SIMPLEX + '\nlevel = [{ height = "0 mm", share = "100 %" }]', LIFT, "main"),
    ],
)
def test_without_what_the_map_needs_there_is_none(mast: str, lift: str, chain: str) -> None:
    """Too little known of the mast, or nothing ever lifted: no map, and no guess."""
    assert judged(mast, lift=lift, chain=chain).wears == ()


@pytest.mark.parametrize(
    ("mast", "message"),
    [
        (SIMPLEX + '\nwork = "anything"', "floor work, mixed, high racking"),
        (SIMPLEX.replace('"95 mm"', '"0 mm"'), "above 0"),
        (
            SIMPLEX + '\nlevel = [{ height = "3 m", share = "80 %" }, { height = "4 m", share = "30 %" }]',
            "100 %",
        ),
        (SIMPLEX + '\nlevel = [{ height = "3 m" }]', "is needed"),
    ],
)
def test_impossible_use_of_the_mast_is_refused(mast: str, message: str) -> None:
    """The field and what would be right are told."""
    with pytest.raises(BadInput, match=message):
        judged(mast)
