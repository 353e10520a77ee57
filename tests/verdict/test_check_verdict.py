"""The other checks judged: measured, seen, not judged, information; severity, dates and doubt."""

from __future__ import annotations

from datetime import date

import pytest

from mastwright.checks import NO_LIMITS, CheckKind, ShopLimits, catalogue, read_shop_limits
from mastwright.quantity import canonical_unit
from mastwright.verdict import JudgedItem, Verdict, judge_check, judge_visit, shop_policy
from visits.written import check, read

POLICY = shop_policy()
FORK = ('original = "40 mm"', 'original_from = "marking"', 'instrument = "calliper"')


def limits(name: str, *fields: str, model: str = "Tolvane 30") -> ShopLimits:
    """Return one limit of a shop's file."""
    rows = [
        "[[limit]]",
        f'check = "{name}"',
        f'model = "{model}"',
        'source = "a manual"',
        'evidence = "demo data"',
    ]
    return read_shop_limits({"any.toml": "\n".join([*rows, *fields])})


def judged(name: str, *fields: str, own: ShopLimits = NO_LIMITS, truck: str = "") -> JudgedItem:
    """Return one check judged on its own."""
    visit = read(check(name, *fields), truck=truck)
    (entry,) = visit.checks
    return judge_check(entry, visit.truck.facts, visit.truck.model, own, POLICY, visit.on).item


def code(item: JudgedItem) -> str:
    """Return the first reason."""
    return item.reasons[0].code


@pytest.mark.parametrize(
    ("thickness", "verdict", "reason"),
    [
        ("39.5 mm", "fit", "measured-fit"),
        ("36.7 mm", "watch", "measured-nearing"),
        ("36.1 mm", "remeasure", "measured-doubt"),
        ("36 mm", "withdraw", "measured-over"),
        ("35 mm", "withdraw", "measured-over"),
    ],
)
def test_a_measured_check(thickness: str, verdict: str, reason: str) -> None:
    """A fork of 40 mm is done at 36 mm; watched from four fifths of the way, 36.8 mm."""
    item = judged("FRK-09", f'value = "{thickness}"', *FORK)
    assert (item.verdict, code(item)) == (Verdict(verdict), reason)


def test_a_measured_check_keeps_its_reading_limit_and_probability() -> None:
    """What was read, against what, and how probable it is to be over."""
    item = judged("FRK-09", 'value = "36 mm"', *FORK)
    assert item.reading is not None
    assert item.limit is not None
    assert item.reading.value == item.limit.at == 36
    assert item.probability == 0.5
    assert item.written == "36 mm"


@pytest.mark.parametrize(
    ("name", "ok", "verdict", "reason"),
    [
        ("CAP-01", "true", "fit", "seen-in-order"),
        ("CAP-01", "false", "withdraw", "seen-not-in-order"),
    ],
)
def test_a_seen_check(name: str, ok: str, verdict: str, reason: str) -> None:
    """What is seen is in order or comes to what its severity says."""
    item = judged(name, f"ok = {ok}")
    assert (item.verdict, code(item)) == (Verdict(verdict), reason)


OBSERVED = sorted(c.id for c in catalogue().values() if c.rule == "observe")


@pytest.mark.parametrize("name", OBSERVED)
def test_every_observation_that_fails_comes_to_its_severity(name: str) -> None:
    """Seen and not in order: withdrawn, repaired by a date, or watched."""
    expected = {"out-of-service": "withdraw", "repair": "replace", "monitor": "watch"}
    assert judged(name, "ok = false").verdict == expected[catalogue()[name].severity]


WORSE = sorted(c.id for c in catalogue().values() if c.rule == "observe" and c.worse_case)


@pytest.mark.parametrize("name", WORSE)
def test_a_worse_case_that_was_seen_withdraws(name: str) -> None:
    """The worse case of a check takes the truck out of service, whatever the check is usually worth."""
    item = judged(name, "ok = false", "worse_case = true")
    assert (item.verdict, item.blocks) == (Verdict.WITHDRAW, True)


def test_a_worse_case_stands_beside_a_good_reading() -> None:
    """A wheel nut torque in order does not outweigh what was seen."""
    own = limits("WHL-01", 'at_least = "500 N·m"', 'at_most = "600 N·m"')
    item = judged("WHL-01", 'value = "550 N·m"', "worse_case = true", own=own)
    assert (item.verdict, item.blocks) == (Verdict.WITHDRAW, True)
    assert [n.code for n in item.reasons] == ["measured-fit", "worse-case"]


def test_a_check_without_the_makers_limit_is_not_judged() -> None:
    """The reading is kept, and no pass is made up."""
    item = judged("MST-08", 'value = "0.8 mm"')
    assert (item.verdict, code(item)) == (Verdict.NOT_JUDGED, "makers-limit-missing")
    assert item.reading is not None
    assert not item.blocks


@pytest.mark.parametrize(("model", "verdict"), [("Tolvane 30", "fit"), ("Ormel 16", "not judged")])
def test_a_makers_limit_is_for_its_model(model: str, verdict: str) -> None:
    """A limit of another model judges nothing."""
    own = limits("MST-08", 'at_most = "1.5 mm"', model=model)
    assert judged("MST-08", 'value = "0.8 mm"', own=own).verdict is Verdict(verdict)


PLAIN = {"at_most", "at_least", "between"}
MAKERS = sorted(c.id for c in catalogue().values() if c.kind is CheckKind.MAKER and c.rule in PLAIN)


@pytest.mark.parametrize("value", ["0", "1000000"])
@pytest.mark.parametrize("name", MAKERS)
def test_a_makers_check_is_never_judged_without_the_maker(name: str, value: str) -> None:
    """However good or bad the reading, nothing is judged by a limit that nobody has given."""
    own_unit = canonical_unit(catalogue()[name].reads).name
    item = judged(name, f"value = {value}" if own_unit == "1" else f'value = "{value} {own_unit}"')
    assert (item.verdict, code(item)) == (Verdict.NOT_JUDGED, "makers-limit-missing")


def test_information_is_fit_and_says_that_it_is_no_verdict() -> None:
    """A figure that only informs stops nothing."""
    item = judged("FRK-12", 'value = "38 mm"', 'original = "40 mm"')
    assert (item.verdict, code(item)) == (Verdict.FIT, "information-only")
    assert item.notes


@pytest.mark.parametrize(
    ("by", "expected"),
    [
        ((), date(2026, 12, 20)),
        (("by = 2026-12-01",), date(2026, 12, 1)),
        (("by = 2026-11-20",), date(2026, 11, 20)),
        (("by = 2027-06-01",), date(2026, 12, 20)),
    ],
)
def test_a_repair_has_a_date(by: tuple[str, ...], expected: date) -> None:
    """By the technician's date, and never later than thirty days after the visit."""
    name = next(n for n in OBSERVED if catalogue()[n].severity == "repair")
    item = judged(name, "ok = false", *by)
    assert (item.verdict, item.by, item.blocks) == (Verdict.REPLACE, expected, False)


def test_only_a_repair_has_a_date() -> None:
    """What is in order has no date, even where one was written."""
    assert judged("CAP-01", "ok = true", "by = 2026-12-01").by is None


def test_a_plate_figure_at_its_mark_passes() -> None:
    """A fork rated exactly as the truck needs it has no doubt of measurement."""
    item = judged("FRK-16", 'value = "1500 kg"', truck='rated_capacity = "3000 kg"')
    assert (item.verdict, item.probability) == (Verdict.FIT, 0.0)


def test_the_order_follows_the_walk() -> None:
    """Whatever the order they were written in, checks come as one walks round the truck."""
    names = ["ELE-05", "FRK-01", "CAP-01"]
    visit = judge_visit(read(*(check(n) for n in names)))
    assert [c.entry.check.id for c in visit.checks] == ["CAP-01", "FRK-01", "ELE-05"]


def test_a_check_that_does_not_apply_is_judged_last() -> None:
    """A check of another kind of truck is kept and judged, behind those of the walk."""
    visit = judge_visit(read(check("STR-06"), check("ELE-05")))
    assert [c.entry.check.id for c in visit.checks] == ["ELE-05", "STR-06"]


@pytest.mark.parametrize(
    ("spread", "verdict", "code"),
    [(["1.280", "1.281"], "fit", "measured-fit"), (["1.280", "1.295"], "watch", "measured-doubt"),
     (["1.280", "1.310"], "watch", "measured-over")],
)  # fmt: skip
def test_a_check_that_is_only_watched_says_whether_it_is_over_or_in_doubt(
    spread: list[str], verdict: str, code: str
) -> None:
    """A spread of cell densities past 0.020 kg/l is over its limit though it only asks to be watched."""
    cells = ", ".join(f'"{density}"' for density in spread)
    item = judged("BAT-04", f"cells = [{cells}]")
    assert str(item.verdict) == verdict
    assert item.reasons[0].code == code
