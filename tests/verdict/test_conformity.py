"""A reading against its marks: each case once, at and beside each mark."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.checks import Severity
from mastwright.quantity import Reading, Worse
from mastwright.verdict import Verdict, conformity, guard_mark, probability_over
from verdict.made import by_legs, limit, percent

DISCARD, PLANNED, NEARING = limit(3), limit(2), limit("1.6")


def judged(reading: Reading, severity: Severity = Severity.OUT_OF_SERVICE) -> Verdict:
    """Return the verdict on an elongation at the usual marks."""
    found = conformity(
        reading, DISCARD, severity=severity, highest_doubt=0.025, planned=PLANNED, nearing=NEARING
    )
    return found.verdict


@pytest.mark.parametrize(
    ("read", "verdict"),
    [
        ("1.59", "fit"),
        ("1.6", "watch"),
        ("1.99", "watch"),
        ("2", "replace"),
        ("2.9", "replace"),
        ("2.91", "remeasure"),
        ("2.99", "remeasure"),
        ("3", "withdraw"),
        ("3.5", "withdraw"),
    ],
)
def test_each_zone_of_a_wear_limit(read: str, verdict: str) -> None:
    """With u = 0.05 % the guard mark stands at 2.901 %; every mark counts as reached at the mark."""
    assert judged(percent(read)) is Verdict(verdict)


@pytest.mark.parametrize(
    ("severity", "doubtful", "over"),
    [
        (Severity.OUT_OF_SERVICE, "remeasure", "withdraw"),
        (Severity.REPAIR, "remeasure", "replace"),
        (Severity.MONITOR, "watch", "watch"),
    ],
)
def test_severity_says_what_follows(severity: Severity, doubtful: str, over: str) -> None:
    """Over the limit and in doubt mean what the check is worth to the truck."""
    assert (judged(percent("2.99"), severity), judged(percent(3), severity)) == (doubtful, over)


@pytest.mark.parametrize(
    ("passed", "stopped", "verdict"),
    [
        (2, None, "fit"),
        ("2.5", None, "fit"),
        (3, None, "remeasure"),
        (None, 3, "withdraw"),
        (None, 2, "remeasure"),
        (3, 2, "remeasure"),
        ("2.5", 2, "replace"),
        (2, "1.6", "watch"),
        (4, 3, "withdraw"),
    ],
)
def test_legs_are_judged_by_what_is_certain(
    passed: str | int | None, stopped: str | int | None, verdict: str
) -> None:
    """A leg that the chain has reached is certain; above it nothing is known up to the leg it passes."""
    assert judged(by_legs(passed, stopped)) is Verdict(verdict)


@pytest.mark.parametrize(("read", "verdict"), [("92", "fit"), ("90.1", "remeasure"), ("90", "withdraw")])
def test_a_limit_below_is_judged_the_same_way(read: str, verdict: str) -> None:
    """Where lower is worse the guard mark stands above the limit."""
    found = conformity(
        percent(read, 0.5),
        limit(90, Worse.LOWER),
        severity=Severity.OUT_OF_SERVICE,
        highest_doubt=0.025,
    )
    assert found.verdict is Verdict(verdict)


@pytest.mark.parametrize(
    ("low", "high", "verdict"),
    [(None, 91, "remeasure"), (95, None, "fit"), (None, 89, "withdraw")],
)
def test_an_open_interval_below(low: int | None, high: int | None, verdict: str) -> None:
    """Where lower is worse, what is open below is in doubt and what is closed above is certain."""
    found = conformity(
        by_legs(high, low),
        limit(90, Worse.LOWER),
        severity=Severity.OUT_OF_SERVICE,
        highest_doubt=0.025,
    )
    assert found.verdict is Verdict(verdict)


def test_a_mark_that_may_be_reached() -> None:
    """Where the source allows the mark itself, a sure reading at it is in order."""
    reading = Reading.exact(Fraction(3), "percent", "%", percent(3).instrument)
    found = conformity(
        reading, limit(3, over_at=False), severity=Severity.OUT_OF_SERVICE, highest_doubt=0.025
    )
    assert (found.verdict, found.probability_over) == (Verdict.FIT, 0.0)


@pytest.mark.parametrize(("read", "probability"), [("2.99", 0.0), ("3", 1.0), ("3.01", 1.0)])
def test_a_count_is_over_or_not(read: str, probability: float) -> None:
    """What has no doubt of measurement is over the limit or it is not."""
    assert probability_over(percent(read, 0.0), DISCARD) == probability


@pytest.mark.parametrize("worse", Worse)
def test_the_guard_mark_leaves_room_on_the_safe_side(worse: Worse) -> None:
    """The guard mark stands before the limit, whichever way is worse."""
    mark, guard = limit(3, worse), guard_mark(limit(3, worse), 0.1, 0.025)
    assert not mark.reached_by(guard)


def test_what_was_found_is_told() -> None:
    """Verdict, probability and guard mark come together."""
    found = conformity(percent("2.9", 0.1), DISCARD, severity=Severity.REPAIR, highest_doubt=0.05)
    assert found.verdict is Verdict.REMEASURE
    assert found.probability_over == probability_over(percent("2.9", 0.1), DISCARD)
    assert float(found.guard) == pytest.approx(3 - 1.645 * 0.1, abs=0.001)


@pytest.mark.parametrize(
    ("worse", "doubt", "graduation", "guard"),
    [
        (Worse.HIGHER, 0.088, "0.25", 3 - 0.125 - 1.960 * 0.0503),
        (Worse.LOWER, 0.088, "0.25", 3 + 0.125 + 1.960 * 0.0503),
        (Worse.HIGHER, 0.0722, "0.25", 3 - 1.960 * 0.0722),
        (Worse.LOWER, 0.0722, "0.25", 3 + 1.960 * 0.0722),
        (Worse.HIGHER, 0.0, "0.25", 3.0),
        (Worse.LOWER, 0.0, "0.25", 3.0),
    ],
)
def test_a_coarse_graduation_has_its_own_room(
    worse: Worse, doubt: float, graduation: str, guard: float
) -> None:
    """Half a graduation is left whole beside the rest of the doubt; by hand, √(0.088² - 0.125²/3) = 0.0503.

    Where the graduation is all the doubt, the plain mark is the stricter; a figure off a plate has none.
    """
    found = conformity(
        percent(3, doubt, graduation), limit(3, worse), severity=Severity.REPAIR, highest_doubt=0.025
    )
    assert float(found.guard) == pytest.approx(guard, abs=0.0005)


def test_a_leg_has_no_graduation() -> None:
    """The distance between two legs of a gauge is no graduation of it."""
    found = conformity(by_legs(3, 2, 0.1), DISCARD, severity=Severity.REPAIR, highest_doubt=0.025)
    assert found.guard == guard_mark(DISCARD, 0.1, 0.025)
