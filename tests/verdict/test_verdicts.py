"""The verdicts and their order."""

from __future__ import annotations

import pytest

from mastwright.checks import Severity
from mastwright.verdict import Verdict, worst
from mastwright.verdict.item import blocks_work

IN_ORDER = ["fit", "watch", "not judged", "replace", "remeasure", "withdraw"]


def test_verdicts_run_from_best_to_worst() -> None:
    """Each verdict ranks behind the one before it."""
    assert [v.value for v in sorted(Verdict, key=lambda v: v.rank)] == IN_ORDER


@pytest.mark.parametrize(
    ("several", "expected"),
    [
        (["fit", "withdraw", "watch"], "withdraw"),
        (["fit", "not judged"], "not judged"),
        (["replace", "remeasure"], "remeasure"),
        (["fit"], "fit"),
    ],
)
def test_the_worst_of_several_stands(several: list[str], expected: str) -> None:
    """Several verdicts come to the worst of them."""
    assert worst(Verdict(v) for v in several) is Verdict(expected)


def test_nothing_judged_is_not_fit() -> None:
    """Where there is no verdict at all, the answer is that nothing was judged."""
    assert worst([]) is Verdict.NOT_JUDGED


@pytest.mark.parametrize("severity", Severity)
def test_a_withdrawn_item_stops_the_truck(severity: Severity) -> None:
    """What is withdrawn stops the truck, whatever the check is usually worth."""
    assert blocks_work(Verdict.WITHDRAW, severity)


@pytest.mark.parametrize(
    ("severity", "stops"),
    [(Severity.OUT_OF_SERVICE, True), (Severity.REPAIR, False), (Severity.MONITOR, False)],
)
def test_doubt_stops_the_truck_where_the_fault_would(severity: Severity, *, stops: bool) -> None:
    """Doubt about what would take the truck out of service stops it; other doubt does not."""
    assert blocks_work(Verdict.REMEASURE, severity) is stops


@pytest.mark.parametrize("verdict", [Verdict.FIT, Verdict.WATCH, Verdict.NOT_JUDGED, Verdict.REPLACE])
def test_no_other_verdict_stops_the_truck(verdict: Verdict) -> None:
    """A replacement at a date, a nearing mark and a missing limit leave the truck at work."""
    assert not blocks_work(verdict, Severity.OUT_OF_SERVICE)
