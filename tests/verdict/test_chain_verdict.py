"""A chain set judged: each strand, the set rule, edges, findings and remarks."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction

import pytest

from mastwright.chains.conditions import Consequence, conditions
from mastwright.quantity import Amount, Note, Reading
from mastwright.verdict import JudgedItem, JudgedSet, Verdict, judge_elongation, judge_set, shop_policy
from mastwright.visits import ChainSet, Photo
from verdict.made import DAY, by_legs, chain_set, edge, finding, percent, span

POLICY = shop_policy()
SOUND = {"left": [percent("0.5")], "right": [percent("0.5")]}


def judged(found: ChainSet) -> JudgedSet:
    """Return the set judged by the policy that ships."""
    return judge_set(found, POLICY, DAY)


def strands(found: JudgedSet) -> dict[str, JudgedItem]:
    """Return the items of the strands by name."""
    return {i.where: i for i in found.items if i.kind == "elongation"}


def codes(notes: tuple[Note, ...]) -> list[str]:
    """Return what the remarks are."""
    return [n.code for n in notes]


@pytest.mark.parametrize(
    ("read", "verdict", "reasons"),
    [
        (percent("0.5"), "fit", ["elongation-fit"]),
        (percent("1.7"), "watch", ["elongation-nearing"]),
        (percent("2.2"), "replace", ["elongation-planned"]),
        (percent("2.98"), "remeasure", ["elongation-doubt"]),
        (percent("3.1"), "withdraw", ["elongation-over"]),
        (percent("5.99"), "withdraw", ["elongation-over"]),
        (percent("6"), "withdraw", ["elongation-over", "count-again"]),
        (percent("8.33"), "withdraw", ["elongation-over", "count-again"]),
        (by_legs(2, None), "fit", ["elongation-passes"]),
        (by_legs(3, None), "remeasure", ["elongation-gauge-doubt"]),
        (by_legs(None, 2), "remeasure", ["elongation-gauge-doubt"]),
        (by_legs(3, 2), "remeasure", ["elongation-gauge-doubt"]),
        (by_legs(None, 3), "withdraw", ["elongation-over"]),
        (by_legs("2.5", 2), "replace", ["elongation-planned"]),
    ],
)
def test_an_elongation_has_its_verdict_and_reason(read: Reading, verdict: str, reasons: list[str]) -> None:
    """Each zone, and each answer of a pass/fail gauge, has its verdict and says why."""
    found, _, notes = judge_elongation(read, POLICY)
    assert (found, codes(notes)) == (Verdict(verdict), reasons)


@pytest.mark.parametrize(
    ("read", "verdict"), [("-0.25", "fit"), ("-0.358", "fit"), ("-0.3584", "remeasure"), ("-2", "remeasure")]
)
def test_a_chain_shorter_than_new_is_read_again(read: str, verdict: str) -> None:
    """Below -0.2583 % by more than two standard uncertainties (2 x 0.05 %) no chain can be."""
    assert judge_elongation(percent(read), POLICY)[0] is Verdict(verdict)


def test_a_reading_shorter_than_new_says_so() -> None:
    """The reason is the length, not the wear."""
    assert codes(judge_elongation(percent(-2), POLICY)[2]) == ["shorter-than-new"]


def test_a_final_mark_of_two_percent_leaves_no_planned_replacement() -> None:
    """A shop that discards at 2 % withdraws there, and everything below is fit, watched or in doubt."""
    strict = shop_policy(Fraction(2))
    found = [judge_elongation(percent(v), strict)[0] for v in ("1.5", "1.7", "1.95", "2")]
    assert [str(v) for v in found] == ["fit", "watch", "remeasure", "withdraw"]


def test_a_sound_set_is_fit() -> None:
    """Two sound strands make a sound set, with nothing to order and nothing that stops the truck."""
    found = judged(chain_set(SOUND))
    assert (found.verdict, found.condemned, found.planned) == (Verdict.FIT, False, False)
    assert codes(found.items[0].reasons) == ["set-fit"]
    assert not any(i.blocks for i in found.items)


def test_the_set_stands_before_its_parts() -> None:
    """The set itself comes first, then strands, edges and findings."""
    found = judged(chain_set(SOUND, edges=[edge(18)], findings=[finding("harsh-duty")]))
    assert [i.kind for i in found.items] == ["set", "elongation", "elongation", "edge-wear", "finding"]


def test_one_worn_strand_condemns_the_set() -> None:
    """The set rule: the sound strand goes with the worn one; its own verdict stays beside it."""
    found = judged(chain_set({"left": [percent("3.1")], "right": [percent("0.5")]}))
    left, right = strands(found)["left"], strands(found)["right"]
    assert (found.verdict, found.condemned) == (Verdict.WITHDRAW, True)
    assert (left.verdict, left.own_verdict) == (Verdict.WITHDRAW, Verdict.WITHDRAW)
    assert (right.verdict, right.own_verdict, right.blocks) == (Verdict.WITHDRAW, Verdict.FIT, True)


def test_a_raised_strand_says_why() -> None:
    """The strand that only the set rule condemns says so, behind its own reading."""
    found = strands(judged(chain_set({"left": [percent("3.1")], "right": [percent("0.5")]})))
    assert codes(found["right"].reasons) == ["elongation-fit", "set-rule"]
    assert codes(found["left"].reasons) == ["elongation-over"]


def test_one_planned_strand_plans_the_set() -> None:
    """The set rule holds for a planned replacement too, at one date for both."""
    found = judged(chain_set({"left": [percent("2.2")], "right": [percent("0.5")]}))
    assert (found.verdict, found.planned, found.condemned) == (Verdict.REPLACE, True, False)
    assert {i.verdict for i in strands(found).values()} == {Verdict.REPLACE}
    assert {i.by for i in found.items} == {date(2027, 2, 20)}
    assert not any(i.blocks for i in found.items)


def test_a_planned_set_does_not_quiet_a_doubtful_strand() -> None:
    """A strand in doubt stays in doubt beside a planned one, and stops the truck."""
    found = judged(chain_set({"left": [percent("2.2")], "right": [percent("2.98")]}))
    assert strands(found)["right"].verdict is Verdict.REMEASURE
    assert (found.verdict, found.items[0].blocks) == (Verdict.REMEASURE, True)


def test_a_strand_that_nobody_measured_is_not_judged() -> None:
    """One strand unmeasured: the set is not fit, whatever the other reads."""
    found = judged(chain_set({"left": [percent("0.5")]}))
    right = strands(found)["right"]
    assert (found.verdict, right.verdict, right.reading) == (Verdict.NOT_JUDGED, Verdict.NOT_JUDGED, None)
    assert codes(right.reasons) == ["strand-not-measured"]


def test_an_unmeasured_strand_goes_with_a_condemned_one() -> None:
    """The set rule does not ask whether the other strand was measured."""
    found = strands(judged(chain_set({"left": [percent("3.1")]})))
    assert found["right"].verdict is Verdict.WITHDRAW


def test_the_worst_span_of_a_strand_counts() -> None:
    """Of several spans the worst gives the verdict, and it alone is marked."""
    found = judged(chain_set({"left": [percent("0.5"), percent("2.2"), percent(1)], "right": [percent(1)]}))
    left = strands(found)["left"]
    assert left.reading is not None
    assert left.reading.value == Fraction("2.2")
    assert [(str(s.verdict), s.worst) for s in found.spans] == [
        ("fit", False),
        ("replace", True),
        ("fit", False),
        ("fit", True),
    ]


def test_a_doubtful_span_counts_before_a_longer_sure_one() -> None:
    """A reading in doubt governs over a larger one that is sure."""
    found = judged(
        chain_set({"left": [percent("2.6", 0.4), percent("2.7", 0.01)], "right": [percent("2.6", 0.01)]})
    )
    assert strands(found)["left"].verdict is Verdict.REMEASURE


@pytest.mark.parametrize("key", sorted(conditions()))
def test_every_condition_has_the_verdict_of_its_consequence(key: str) -> None:
    """Each condition of the table comes to what its consequence says."""
    expected = {
        Consequence.CONDEMN_SET: Verdict.WITHDRAW,
        Consequence.REPLACE_PART: Verdict.WITHDRAW,
        Consequence.CLEAN_AND_LOOK_AGAIN: Verdict.REMEASURE,
        Consequence.CORRECT: Verdict.REPLACE,
        Consequence.SHORTEN_INTERVAL: Verdict.WATCH,
    }[conditions()[key].consequence]
    found = judged(chain_set(SOUND, findings=[finding(key, "left")]))
    assert (found.items[-1].verdict, found.verdict) == (expected, expected)


@pytest.mark.parametrize("key", sorted(conditions()))
def test_only_a_condemning_condition_condemns_the_strands(key: str) -> None:
    """A turned pin or a crack takes both strands with it; a bad sheave does not."""
    condemns = conditions()[key].consequence is Consequence.CONDEMN_SET
    found = judged(chain_set(SOUND, findings=[finding(key)]))
    expected = Verdict.WITHDRAW if condemns else Verdict.FIT
    assert found.condemned is condemns
    assert {i.verdict for i in strands(found).values()} == {expected}


def test_a_finding_that_was_put_right_is_fit() -> None:
    """Rust that was cleaned, oiled and looked at again does not stop the truck."""
    found = judged(chain_set(SOUND, findings=[finding("surface-rust", put_right=True)]))
    assert (found.verdict, codes(found.items[-1].reasons)) == (Verdict.FIT, ["finding-put-right"])


def test_a_finding_keeps_its_place_and_words() -> None:
    """Strand, place and note of the technician stand in the item, and what is ordered for it."""
    item = judged(chain_set(SOUND, findings=[finding("anchor-cotter-missing", "left")])).items[-1]
    assert (item.where, item.free_text) == ("left", "at the sheave. a note")
    assert item.order_part == conditions()["anchor-cotter-missing"].order_part.en


def test_a_condemning_finding_orders_no_part_of_its_own() -> None:
    """New chains come with the set, not with the finding."""
    assert judged(chain_set(SOUND, findings=[finding("turned-pin")])).items[-1].order_part == ""


def test_a_finding_to_be_corrected_has_the_planned_date() -> None:
    """What is put right by a date gets one, without new chains."""
    found = judged(chain_set(SOUND, findings=[finding("unequal-tension")]))
    assert found.items[-1].by == date(2027, 2, 20)
    assert (found.planned, found.condemned) == (False, False)


def test_three_months_end_with_the_month() -> None:
    """Three months from the last of November are the last of February."""
    found = judge_set(chain_set({"left": [percent("2.2")]}), POLICY, date(2026, 11, 30))
    assert found.items[0].by == date(2027, 2, 28)


@pytest.mark.parametrize(
    ("height", "unworn", "verdict", "reason"),
    [
        ("17.9", "18", "fit", "edge-fit"),
        ("17.28", "18", "remeasure", "edge-doubt"),
        ("17.1", "18", "withdraw", "edge-over"),
        ("17.0", "18", "withdraw", "edge-over"),
    ],
)
def test_edge_wear(height: str, unworn: str, verdict: str, reason: str) -> None:
    """5 % of 18 mm stands at 17.1 mm; by calliper 17.28 mm is too near it."""
    item = judged(chain_set(SOUND, edges=[edge(height, unworn)])).items[-1]
    assert (item.verdict, codes(item.reasons)) == (Verdict(verdict), [reason])


def test_edge_wear_is_watched_from_four_fifths() -> None:
    """Four fifths of the 5 % of 18 mm are used up at 17.28 mm; a sure reading there is watched."""
    sure = replace(edge("17.28", "18", doubt=0.001), unworn=None)
    plate = chain_set(SOUND, edges=[sure])
    found = judge_set(replace(plate, chain=replace(plate.chain, plate_height_max=Fraction(18))), POLICY, DAY)
    assert (found.items[-1].verdict, codes(found.items[-1].reasons)) == (Verdict.WATCH, ["edge-nearing"])


def test_edge_wear_condemns_the_set() -> None:
    """A plate worn at the edge takes both strands with it, whatever their elongation."""
    found = judged(chain_set(SOUND, edges=[edge(17, 18)]))
    assert found.condemned
    assert {i.verdict for i in strands(found).values()} == {Verdict.WITHDRAW}


def test_edge_wear_against_the_table_says_so() -> None:
    """Where no unworn plate was measured, the table's height stands in and is named."""
    item = judged(chain_set(SOUND, edges=[edge("17.9")])).items[-1]
    assert item.notes == (Note("edge-from-table", {"height": Amount(Fraction("18.11"), "length")}),)


def test_a_measured_plate_brings_its_own_doubt() -> None:
    """By hand: √(0.1² + (0.95 x 0.1)²) = 0.1379 mm for h - 0.95 h0, both by calliper."""
    item = judged(chain_set(SOUND, edges=[edge("17.9", 18)])).items[-1]
    assert item.reading is not None
    assert round(item.reading.standard_uncertainty, 4) == 0.1379


def test_growth_without_a_first_reading_says_that_the_new_length_is_unknown() -> None:
    """Growth since fitting is then only as sure as the tolerance of a new chain."""
    found = judged(chain_set(SOUND))
    assert codes(strands(found)["left"].notes) == ["new-length-unknown"]
    assert not found.growth["left"].from_first_reading


def test_growth_with_a_first_reading() -> None:
    """With one, growth is the difference and nothing is said about the new length."""
    found = judged(chain_set(SOUND, first={"left": percent("0.2")}))
    assert found.growth["left"].percent == Fraction("0.3")
    assert strands(found)["left"].notes == ()


def test_a_first_reading_by_legs_is_no_first_length() -> None:
    """A leg is a bound, so that growth is not reckoned from it."""
    found = judged(chain_set(SOUND, first={"left": by_legs("0.5", None)}))
    assert not found.growth["left"].from_first_reading


def test_legs_tell_no_growth() -> None:
    """From a pass/fail gauge no growth is reckoned."""
    assert judged(chain_set({"left": [by_legs(2, None)], "right": [by_legs(2, 1)]})).growth == {}


def test_a_span_without_place_says_so() -> None:
    """Where the span began is part of the reading; left out, it is said."""
    found = replace(chain_set({}), spans=(span("left", percent("0.5"), start=None),))
    assert "span-place-not-noted" in codes(strands(judged(found))["left"].notes)


@pytest.mark.parametrize(
    ("left", "right", "told"),
    [
        ([percent("0.5")], [percent("0.8")], True),
        ([percent("0.5")], [percent("0.7")], False),
        ([percent("0.5"), percent("0.9")], [percent("0.9")], False),
        ([by_legs(2, 1)], [by_legs(1, "0.5")], False),
        ([percent("0.5")], [], False),
    ],
)
def test_strands_that_differ_are_told(left: list[Reading], right: list[Reading], *, told: bool) -> None:
    """Worst against worst, beyond three combined doubts: 3 x √2 x 0.05 % = 0.212 %; legs say no value."""
    found = judged(chain_set({"left": left, "right": right}))
    assert ("strands-differ" in codes(found.items[0].reasons)) is told


@pytest.mark.parametrize(
    ("left", "reason"), [("3.1", "set-condemned"), ("2.2", "set-planned"), ("0.5", "set-fit")]
)
def test_the_set_says_what_becomes_of_it(left: str, reason: str) -> None:
    """Condemned, planned or fit: the set's own first words."""
    found = judged(chain_set({"left": [percent(left)], "right": [percent(left)]}))
    assert codes(found.items[0].reasons) == [reason]


def test_a_set_of_one_strand_is_judged() -> None:
    """A mast with a single chain has no set rule to apply, and no difference to tell."""
    found = judged(chain_set({"one": [percent("0.5")]}, strands=("one",)))
    assert (found.verdict, list(strands(found))) == (Verdict.FIT, ["one"])


def test_the_photos_of_every_span_go_with_the_strand() -> None:
    """What was photographed at any span of the strand stands in its item."""
    spans = [
        replace(span("left", percent(value)), photos=(Photo(f"{value}.png", ""),)) for value in ("0.5", "0.4")
    ]
    found = judged(replace(chain_set({}), spans=tuple(spans)))
    assert [p.file for p in strands(found)["left"].photos] == ["0.5.png", "0.4.png"]


def test_the_date_is_reckoned_from_the_visit() -> None:
    """A later visit sets a later date."""
    found = chain_set({"left": [percent("2.2")]})
    first, second = (judge_set(found, POLICY, DAY + timedelta(days=n)).items[0].by for n in (0, 1))
    assert first is not None
    assert second is not None
    assert second - first == timedelta(days=1)


@pytest.mark.parametrize(("left", "told"), [("0.7", True), ("0", False), ("-0.1", False)])
def test_an_unequal_pair_says_what_a_new_strand_would_carry(left: str, *, told: bool) -> None:
    """Twice the wear means two thirds of the load on a new strand; without growth there is no ratio."""
    found = judged(chain_set({"left": [percent(left)], "right": [percent("1.4")]}))
    notes = {note.code: note for note in found.items[0].reasons}
    assert "strands-differ" in notes
    assert ("pair-share" in notes) is told
    if told:
        assert notes["pair-share"].params["share"] == Amount(Fraction(200, 3), "percent")
