"""What holds for every chain set."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.chains.conditions import conditions
from mastwright.chains.elongation import elongation_from_length
from mastwright.quantity import Quantity, Reading, common_instruments, unit
from mastwright.verdict import Verdict, judge_elongation, judge_set, shop_policy
from verdict.made import DAY, chain_set, doubts, finding, percent, values, worn

POLICY = shop_policy()
RULE = common_instruments().find("rule", "length")

readings = st.builds(percent, values, doubts)
spans = st.lists(readings, max_size=3)
stricter = st.integers(1, 300).map(lambda n: Fraction(n, 100))
keys = st.lists(st.sampled_from(sorted(conditions())), max_size=2)


@given(worn, worn, doubts)
def test_more_wear_is_never_better(one: Fraction, other: Fraction, doubt: float) -> None:
    """Of two worn chains read alike the longer has no better verdict."""
    ranks = [judge_elongation(percent(v, doubt), POLICY)[0].rank for v in sorted((one, other))]
    assert ranks == sorted(ranks)


@given(worn, doubts, doubts)
def test_more_doubt_never_makes_a_fit(value: Fraction, one: float, other: float) -> None:
    """The less sure of two readings of one value has no better verdict."""
    ranks = [judge_elongation(percent(value, u), POLICY)[0].rank for u in sorted((one, other))]
    assert ranks == sorted(ranks)


@given(worn, doubts, stricter, stricter)
def test_a_stricter_discard_mark_is_never_better(
    value: Fraction, doubt: float, one: Fraction, other: Fraction
) -> None:
    """A shop that discards earlier gives no better verdict."""
    looser, tighter = max(one, other), min(one, other)
    ranks = [judge_elongation(percent(value, doubt), shop_policy(m))[0].rank for m in (looser, tighter)]
    assert ranks == sorted(ranks)


@given(st.integers(0, 40 * 128), st.sampled_from([8, 12, 16, 24]))
def test_inches_and_millimetres_are_judged_alike(parts: int, pitches: int) -> None:
    """The same length written either way has the same verdict, probability and all."""
    length = Quantity(Fraction(parts, 128), unit("in"), Fraction(1, 128))
    metric = Quantity(length.canonical, unit("mm"), length.canonical_step)
    pitch = Fraction("19.05")
    one, other = (
        judge_elongation(elongation_from_length(x, pitches, pitch, RULE), POLICY) for x in (length, metric)
    )
    assert one == other


@given(spans, spans, keys)
def test_a_set_is_never_better_than_its_parts(
    left: list[Reading], right: list[Reading], seen: list[str]
) -> None:
    """The set's verdict is the worst of its strands and findings, before the set rule and after."""
    found = judge_set(
        chain_set({"left": left, "right": right}, findings=[finding(k) for k in seen]), POLICY, DAY
    )
    parts = found.items[1:]
    assert found.verdict.rank == max(i.verdict.rank for i in parts)
    assert all(i.own_verdict.rank <= i.verdict.rank for i in parts)


@given(spans, spans)
def test_a_strand_is_never_better_than_its_worst_span(left: list[Reading], right: list[Reading]) -> None:
    """A better span beside a bad one does not improve the strand."""
    found = judge_set(chain_set({"left": left, "right": right}), POLICY, DAY)
    for name, several in (("left", left), ("right", right)):
        (strand,) = (i for i in found.items if i.where == name)
        alone = [judge_elongation(r, POLICY)[0].rank for r in several]
        assert strand.own_verdict.rank == max(alone, default=Verdict.NOT_JUDGED.rank)


@given(spans, spans, readings)
def test_one_more_span_is_never_better(left: list[Reading], right: list[Reading], more: Reading) -> None:
    """Measuring more of a measured strand can only find worse, never talk a finding away."""
    before = judge_set(chain_set({"left": [*left, percent(0)], "right": right}), POLICY, DAY)
    after = judge_set(chain_set({"left": [*left, percent(0), more], "right": right}), POLICY, DAY)
    assert after.verdict.rank >= before.verdict.rank


@given(spans, spans)
def test_strands_of_a_condemned_set_go_together(left: list[Reading], right: list[Reading]) -> None:
    """Where one strand is condemned every strand is, and it stops the truck."""
    found = judge_set(chain_set({"left": left, "right": right}), POLICY, DAY)
    items = [i for i in found.items if i.kind == "elongation"]
    own = [i.own_verdict is Verdict.WITHDRAW for i in items]
    assert [i.verdict is Verdict.WITHDRAW and i.blocks for i in items] == [any(own)] * 2


@given(spans, spans)
def test_each_measured_strand_has_one_worst_span(left: list[Reading], right: list[Reading]) -> None:
    """Exactly one span of a measured strand is marked as its worst."""
    found = judge_set(chain_set({"left": left, "right": right}), POLICY, DAY)
    marked = [sum(s.worst for s in found.spans if s.span.strand == name) for name in ("left", "right")]
    assert marked == [int(bool(left)), int(bool(right))]
