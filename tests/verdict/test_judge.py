"""A whole visit judged: roll-up, order of danger, refusals, duties, what was not looked at."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from mastwright.checks import applicable, catalogue
from mastwright.quantity import BadInput, read_table
from mastwright.verdict import JudgedItem, JudgedVisit, Verdict, in_order_of_danger, judge_visit
from visits.written import SPANS, chain, check, read

PIN = '[[chain.finding]]\ncondition = "turned-pin"\nstrand = "left"\n'
POLICY = '[policy]\n{field} = "{value}"\n'


def spans(left: str, right: str) -> str:
    """Return a span of each strand, by calliper over 16 pitches."""
    return SPANS.replace("306 mm", f"{left} mm", 1).replace("306 mm", f"{right} mm", 1)


def judged(*blocks: str, country: str = "GB") -> JudgedVisit:
    """Return a visit judged."""
    return judge_visit(read(*blocks, customer=f'country = "{country}"'))


def refusal(item: str, where: str = "") -> str:
    """Return a refusal of an item."""
    place = f'where = "{where}"\n' if where else ""
    return f'[[refusal]]\nitem = "{item}"\nby = "Odell Marsh"\ninitials = "OM"\n{place}'


@pytest.mark.parametrize(
    ("blocks", "verdict", "may_work", "until"),
    [
        ((chain(), check()), "fit", True, None),
        ((chain(), check("CAP-01", "ok = false")), "withdraw", False, None),
        ((chain(spans=spans("311.5", "306")),), "replace", True, date(2027, 2, 20)),
        (
            (chain(spans=spans("311.5", "306")), check("MST-14", "ok = false")),
            "replace",
            True,
            date(2026, 12, 20),
        ),
        ((chain(spans=spans("311.5", "306")), check("CAP-01", "ok = false")), "withdraw", False, None),
        ((chain(spans=spans("313.8", "306")),), "remeasure", False, None),
        ((chain(), check("MST-08", 'value = "0.8 mm"')), "not judged", True, None),
        ((chain(PIN),), "withdraw", False, None),
    ],
)
def test_the_worst_verdict_wins(
    blocks: tuple[str, ...], verdict: str, may_work: bool, until: date | None
) -> None:
    """A visit comes to its worst item, to whether the truck may work, and until when."""
    found = judged(*blocks)
    assert (found.verdict, found.may_work, found.may_work_until) == (Verdict(verdict), may_work, until)


def test_items_stand_in_walking_order() -> None:
    """Chains first, then their strength, then the checks as one walks."""
    mast = '[truck.mast]\narrangement = "A"\ncarriage_mass = "500 kg"\n'
    visit = judge_visit(
        read(chain(), check("ELE-05"), check("CAP-01"), truck=f'rated_capacity = "2500 kg"\n{mast}')
    )
    kinds = [i.kind for i in visit.items]
    assert kinds == ["set", "elongation", "elongation", "strength", "check", "check"]
    assert [i.key for i in visit.items[4:]] == ["CAP-01", "ELE-05"]


def names(items: tuple[JudgedItem, ...]) -> list[str]:
    """Return what the items are of."""
    return [i.name or i.where for i in items]


def test_the_most_dangerous_stands_first() -> None:
    """What stops the truck before what does not; chains before forks before brakes before the plate."""
    visit = judged(
        check("CAP-01", "ok = false"),
        check("BRK-11", "ok = false"),
        check("FRK-01", "ok = false"),
        check("MST-14", "ok = false"),
        chain(PIN),
    )
    expected = ["LH1234 / BL634", "turned-pin", "FRK-01", "BRK-11", "CAP-01", "MST-14"]
    assert names(visit.dangers) == expected


def test_a_sound_item_is_no_danger() -> None:
    """What is fit is not among the dangers."""
    assert judged(chain(), check()).dangers == ()


def test_a_strand_condemned_by_the_set_rule_stands_behind_its_set() -> None:
    """Only the strand that is worn itself is named; the other goes with the set."""
    assert names(judged(chain(spans=spans("315", "306"))).dangers) == ["LH1234 / BL634", "left"]


def test_every_system_has_its_place_in_danger() -> None:
    """Each system of the catalogue, and the chains, has a rank of its own."""
    ranks = [row["system"] for row in read_table("mastwright.verdict", "danger.csv")]
    assert {c.system for c in catalogue().values()} | {"chains"} <= set(ranks)
    assert len(ranks) == len(set(ranks))


@pytest.mark.parametrize("left", ["315", "313.8", "311.5"])
def test_a_refusal_never_changes_a_verdict(left: str) -> None:
    """What the customer refused stays withdrawn, doubtful or planned, and may work no more than before."""
    plain, refused = (judged(chain(spans=spans(left, "306")), *r) for r in ((), (refusal("main"),)))
    assert [i.verdict for i in refused.items] == [i.verdict for i in plain.items]
    assert (refused.verdict, refused.may_work) == (plain.verdict, plain.may_work)
    assert refused.may_work_until == plain.may_work_until


def test_a_refused_item_is_marked() -> None:
    """The set and its strands carry the customer's no."""
    found = judged(chain(spans=spans("315", "306")), refusal("main"))
    assert {i.refused for i in found.items} == {True}


def test_what_is_sound_cannot_be_refused() -> None:
    """A no to something that is fit marks nothing."""
    assert {i.refused for i in judged(chain(), refusal("main")).items} == {False}


def test_a_refusal_of_one_place_leaves_the_other() -> None:
    """A no to the left fork is no no to the right one."""
    forks = [check("FRK-01", "ok = false", f'where = "{side} fork"') for side in ("left", "right")]
    found = judged(*forks, refusal("FRK-01", "left fork"))
    assert [(i.where, i.refused) for i in found.items] == [("left fork", True), ("right fork", False)]


def test_a_refusal_without_place_is_of_all() -> None:
    """A no to a check is a no to each place of it."""
    forks = [check("FRK-01", "ok = false", f'where = "{side} fork"') for side in ("left", "right")]
    assert {i.refused for i in judged(*forks, refusal("FRK-01")).items} == {True}


@pytest.mark.parametrize(
    ("blocks", "whens"),
    [
        ((chain(),), {"always"}),
        ((chain(PIN),), {"always", "out-of-service"}),
        ((chain(spans=spans("311.5", "306")),), {"always", "planned"}),
    ],
)
def test_the_duties_follow_the_outcome(blocks: tuple[str, ...], whens: set[str]) -> None:
    """The words of the law are those for a sound truck, one with a date, or one out of service."""
    assert {d.when for d in judged(*blocks).duties} == whens


@pytest.mark.parametrize("country", ["US", "GB", "DE", "FR", "JP", "ES", "other"])
def test_no_country_makes_a_limit_looser(country: str) -> None:
    """The same readings have the same verdict wherever the truck stands."""
    blocks = (chain(spans=spans("313.8", "311.5")), check("FRK-01", "ok = false"))
    here, there = judged(*blocks, country=country), judged(*blocks, country="GB")
    assert [i.verdict for i in here.items] == [i.verdict for i in there.items]


def test_what_was_not_looked_at_is_told() -> None:
    """Every check of the truck but those recorded, and no mere information."""
    visit = judged(check("CAP-01"), check("FRK-01"))
    left = {c.id for c in visit.not_looked_at}
    wanted = {c.id for c in applicable(visit.visit.truck.facts) if c.kind != "information"}
    assert left == wanted - {"CAP-01", "FRK-01"}


@pytest.mark.parametrize(
    ("field", "value", "expected"),
    [
        ("discard_at", "3.5 %", "policy.discard_at: '3.5 %' given; above 0 % and at most 3 %"),
        ("highest_doubt", "6 %", "policy.highest_doubt: '6.000%' given; above 0 % and at most 5%"),
    ],
)
def test_a_looser_policy_is_refused(field: str, value: str, expected: str) -> None:
    """A visit that would be judged more loosely than allowed is not judged."""
    with pytest.raises(BadInput) as refused:
        judged(chain(), POLICY.format(field=field, value=value))
    assert str(refused.value).startswith(expected)


def test_a_stricter_policy_is_used() -> None:
    """A shop that discards at 2 % withdraws what would else have a date."""
    blocks = (chain(spans=spans("311.5", "306")), POLICY.format(field="discard_at", value="2 %"))
    assert judged(*blocks).verdict is Verdict.WITHDRAW


lengths = st.integers(3040, 3300).map(lambda n: f"{n / 10}")
observed = st.lists(
    st.tuples(st.sampled_from(["CAP-01", "FRK-01", "BRK-11", "MST-14", "TYR-02"]), st.booleans()),
    max_size=4,
    unique_by=lambda pair: pair[0],
)


@settings(max_examples=60)
@given(lengths, lengths, observed)
def test_a_visit_is_never_better_than_any_item(left: str, right: str, seen: list[tuple[str, bool]]) -> None:
    """Its verdict is the worst of all, and it works only where nothing stops it."""
    checks = [check(name, f"ok = {str(ok).lower()}") for name, ok in seen]
    found = judged(chain(spans=spans(left, right)), *checks)
    assert found.verdict.rank == max(i.verdict.rank for i in found.items)
    assert found.may_work == (not any(i.blocks for i in found.items))
    assert found.verdict is not Verdict.WITHDRAW or not found.may_work


@settings(max_examples=60)
@given(lengths, lengths, observed, st.data())
def test_whatever_is_refused_the_verdict_stands(
    left: str, right: str, seen: list[tuple[str, bool]], data: st.DataObject
) -> None:
    """A no to any items leaves every verdict, and whether the truck may work, as they were."""
    blocks = [
        chain(spans=spans(left, right)),
        *(check(name, f"ok = {str(ok).lower()}") for name, ok in seen),
    ]
    items = ["main", *(name for name, _ in seen)]
    chosen = data.draw(st.lists(st.sampled_from(items), unique=True))
    plain, refused = judged(*blocks), judged(*blocks, *(refusal(i) for i in chosen))
    assert [i.verdict for i in plain.items] == [i.verdict for i in refused.items]
    assert (plain.may_work, plain.may_work_until) == (refused.may_work, refused.may_work_until)


@settings(max_examples=60)
@given(observed)
def test_dangers_are_in_order(seen: list[tuple[str, bool]]) -> None:
    """Whatever the order of writing, what stops the truck stands before what does not."""
    found = judged(chain(), *(check(name, f"ok = {str(ok).lower()}") for name, ok in seen))
    blocks = [i.blocks for i in in_order_of_danger(reversed(found.items))]
    assert blocks == sorted(blocks, reverse=True)
    assert len(blocks) == sum(not ok for _, ok in seen)
