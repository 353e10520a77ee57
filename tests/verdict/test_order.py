"""What has to be ordered after a visit."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from mastwright.verdict import JudgedVisit, OrderLine, Verdict, judge_visit
from visits.written import chain, check, read


def spans(left: str, right: str) -> str:
    """Return a span of each strand, by calliper over 16 pitches."""
    return "".join(
        f'[[chain.span]]\nstrand = "{s}"\npitches = 16\nlength = "{x} mm"\ninstrument = "calliper"\n'
        for s, x in (("left", left), ("right", right))
    )


REFUSAL = '[[refusal]]\nitem = "{item}"\nby = "Odell Marsh"\ninitials = "OM"\n'
CONDEMNED, PLANNED, SOUND = spans("315", "306"), spans("311.5", "306"), spans("306", "306")


def refusal(item: str, where: str = "") -> str:
    """Return a refusal of an item."""
    return REFUSAL.format(item=item) + (f'where = "{where}"\n' if where else "")


def judged(*blocks: str) -> JudgedVisit:
    """Return a visit judged."""
    return judge_visit(read(*blocks))


def shown(lines: tuple[OrderLine, ...]) -> list[tuple[str, str, int, date | None]]:
    """Return what is ordered, how many and by when."""
    return [(line.what, line.name, line.quantity, line.by) for line in lines]


def fork(side: str, thickness: str) -> str:
    """Return one fork of 40 mm as measured."""
    fields = (f'where = "{side} fork"', f'value = "{thickness}"', 'original = "40 mm"')
    return check("FRK-09", *fields, 'original_from = "marking"', 'instrument = "calliper"')


def test_a_sound_visit_orders_nothing() -> None:
    """Nothing worn, nothing to order."""
    assert judged(chain(spans=SOUND), check()).order == ()


def test_a_condemned_set_orders_every_strand_and_new_pins() -> None:
    """US Army TM 10-3930-671-24 (read): all strands together, with two new anchor pins each, at once."""
    order = judged(chain("pitches_total = 112", 'ends = "clevis"', spans=CONDEMNED)).order
    name = "LH1234 / BL634"
    assert shown(order) == [("leaf-chain", name, 2, None), ("anchor-pins", name, 4, None)]
    assert (order[0].pitches, order[0].length, order[0].ends) == (112, 112 * Fraction("19.05"), "clevis")


def test_a_planned_set_is_ordered_by_its_date() -> None:
    """The same parts, by the date of the replacement."""
    assert {line.by for line in judged(chain(spans=PLANNED)).order} == {date(2027, 2, 20)}


def test_a_turned_pin_orders_the_set() -> None:
    """A condition that condemns orders chains and no part of its own."""
    pin = '[[chain.finding]]\ncondition = "turned-pin"\n'
    assert [line.what for line in judged(chain(pin, spans=SOUND)).order] == ["leaf-chain", "anchor-pins"]


def test_a_set_of_four_strands_orders_four() -> None:
    """As many chains as there are strands."""
    strands = 'strands = ["left", "right", "inner left", "inner right"]'
    assert [line.quantity for line in judged(chain(strands, spans=CONDEMNED)).order] == [4, 8]


@pytest.mark.parametrize(
    ("counted", "notes"),
    [
        (("pitches_total = 112",), ["order-certificate"]),
        ((), ["order-certificate", "count-before-ordering"]),
    ],
)
def test_an_order_asks_for_what_is_missing(counted: tuple[str, ...], notes: list[str]) -> None:
    """A certificate always, and a count of pitches where nobody has counted."""
    assert [n.code for n in judged(chain(*counted, spans=CONDEMNED)).order[0].notes] == notes


def test_a_bad_anchor_orders_its_part_alone() -> None:
    """A part of the anchorage is ordered without new chains, before the truck works."""
    pin = '[[chain.finding]]\ncondition = "anchor-cotter-missing"\n'
    (line,) = judged(chain(pin, spans=SOUND)).order
    assert (line.what, line.by) == ("part", None)


def test_two_worn_forks_order_one_pair() -> None:
    """One line for a part that both ask for, with both reasons."""
    (line,) = judged(fork("left", "35 mm"), fork("right", "35.5 mm")).order
    assert (line.what, line.quantity, line.by) == ("part", 1, None)
    assert [i.where for i in line.because] == ["left fork", "right fork"]


@pytest.mark.parametrize(
    ("first", "second", "by"),
    [
        ("by = 2026-12-10", "by = 2026-12-01", date(2026, 12, 1)),
        ("by = 2026-12-01", "by = 2026-12-10", date(2026, 12, 1)),
        ("by = 2026-12-01", "worse_case = true", None),
        ("worse_case = true", "by = 2026-12-01", None),
    ],
)
def test_one_part_is_wanted_at_the_soonest(first: str, second: str, by: date | None) -> None:
    """Two items that ask for one part want it by the earlier date, or before the truck works."""
    entries = [check("MST-14", "ok = false", f'where = "{w}"', f) for w, f in (("l", first), ("r", second))]
    (line,) = judged(*entries).order
    assert line.by == by


def test_a_doubtful_fork_orders_nothing() -> None:
    """What is to be measured again is not ordered."""
    assert judged(fork("left", "36.1 mm")).order == ()


def test_a_refused_set_is_not_ordered() -> None:
    """The customer's no keeps the chains off the order, and their verdict as it is."""
    visit = judged(chain(spans=PLANNED), refusal("main"))
    assert visit.order == ()
    assert {i.verdict for i in visit.items} == {Verdict.REPLACE}


def test_a_refused_part_is_not_ordered() -> None:
    """A refused fork is left out; the other one is still ordered."""
    visit = judged(fork("left", "35 mm"), fork("right", "35.5 mm"), refusal("FRK-09", "left fork"))
    assert [i.where for line in visit.order for i in line.because] == ["right fork"]


def test_a_refusal_of_one_strand_leaves_the_set_on_order() -> None:
    """Chains are replaced by the set: a no to one strand is no to that strand alone."""
    visit = judged(chain(spans=CONDEMNED), refusal("main", "left"))
    assert [line.what for line in visit.order] == ["leaf-chain", "anchor-pins"]
