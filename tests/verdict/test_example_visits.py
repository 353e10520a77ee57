"""The six example visits, judged from file to verdict. Invented trucks and readings: demo data."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

import pytest

from mastwright.checks import read_shop_limits
from mastwright.verdict import JudgedItem, JudgedVisit, Verdict, judge_visit
from mastwright.visits import read_visit

FOLDER = Path(__file__).parents[2] / "examples" / "visits"


@cache
def visit(number: int) -> JudgedVisit:
    """Return an example judged with the limits that lie beside it."""
    (file,) = FOLDER.glob(f"{number}-*.toml")
    limits = {f.name: f.read_text(encoding="utf-8") for f in (FOLDER / "limits").glob("*.toml")}
    return judge_visit(read_visit(file.read_text(encoding="utf-8")), read_shop_limits(limits))


def items(number: int, kind: str, name: str = "") -> dict[str, JudgedItem]:
    """Return the items of a kind by where they are."""
    return {i.where: i for i in visit(number).items if i.kind == kind and i.name == name}


def verdicts(found: dict[str, JudgedItem]) -> dict[str, str]:
    """Return the verdicts as words."""
    return {where: str(i.verdict) for where, i in found.items()}


@pytest.mark.parametrize(
    ("number", "verdict", "may_work"),
    [
        (1, "fit", True),
        (2, "withdraw", False),
        (3, "withdraw", False),
        (4, "withdraw", False),
        (5, "remeasure", False),
        (6, "withdraw", False),
    ],
)
def test_what_each_visit_comes_to(number: int, verdict: str, may_work: bool) -> None:
    """A sound truck works; a worn strand, a turned pin, worn forks, doubt and a refusal do not."""
    assert (visit(number).verdict, visit(number).may_work) == (Verdict(verdict), may_work)


def test_the_sound_truck_needs_nothing() -> None:
    """Every item fit, nothing ordered, seen again by the calendar."""
    assert {i.verdict for i in visit(1).items} == {Verdict.FIT}
    assert (visit(1).order, visit(1).dangers) == ((), ())
    assert visit(1).next_visit.by == date(2027, 2, 2)


def test_one_worn_strand_raises_the_other() -> None:
    """12 3/8 in over 16 pitches of 3/4 in is 3.125 %: both strands go, one of them by the set rule."""
    strands = items(2, "elongation")
    assert verdicts(strands) == {"left": "withdraw", "right": "withdraw"}
    assert (strands["left"].own_verdict, strands["right"].own_verdict) == (Verdict.WITHDRAW, Verdict.FIT)
    assert [(line.what, line.quantity) for line in visit(2).order] == [("leaf-chain", 2), ("anchor-pins", 4)]


def test_a_turned_pin_outweighs_a_good_length() -> None:
    """Both strands measure well and both are condemned."""
    strands = items(3, "elongation")
    assert {i.own_verdict for i in strands.values()} == {Verdict.FIT}
    assert verdicts(strands) == {"left": "withdraw", "right": "withdraw"}
    assert [i.key for i in items(3, "check", "MST-08").values() if i.verdict is Verdict.NOT_JUDGED] == [
        "MST-08"
    ]


def test_worn_forks_and_brakes_withdraw_while_the_chain_has_a_date() -> None:
    """A fork past 10 % and a stopping distance too long stop the truck; the chain is planned."""
    forks = items(4, "check", "FRK-09")
    assert verdicts(forks) == {"left fork": "withdraw", "right fork": "watch"}
    assert verdicts(items(4, "check", "BRK-01")) == {"": "withdraw"}
    assert verdicts(items(4, "elongation")) == {"left": "replace", "right": "replace"}
    assert {line.name for line in visit(4).order if line.by is None} == {"fork pair", "hydraulic hose"}


def test_a_doubtful_reading_is_measured_again() -> None:
    """163 mm over 10 pitches of 5/8 in by rule is 2.68 %: too near 3 % to be called either way."""
    strands = items(5, "elongation")
    assert verdicts(strands) == {"left": "remeasure", "right": "watch"}
    assert (visit(5).order, visit(5).may_work_until) == ((), None)


def test_a_refused_withdrawal_stays_withdrawn() -> None:
    """The customer's no is kept beside the verdict, and nothing is ordered against it."""
    fork = items(6, "check", "FRK-09")["left fork"]
    assert (fork.verdict, fork.refused, fork.blocks) == (Verdict.WITHDRAW, True, True)
    assert {i.refused for i in items(6, "elongation").values()} == {True}
    assert (visit(6).order, visit(6).may_work) == ((), False)
