"""What holds for every reading, limit and doubt."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.checks import Severity
from mastwright.quantity import Limit, Reading, Worse
from mastwright.verdict import Verdict, conformity, guard_mark, probability_over
from verdict.made import by_legs, doubts, limit, percent, values

ORDER = {
    Severity.OUT_OF_SERVICE: ["fit", "watch", "replace", "remeasure", "withdraw"],
    # A repair that is certain has a date, doubt about one has none yet: neither stops the truck.
    Severity.REPAIR: ["fit", "watch", "remeasure", "replace"],
    Severity.MONITOR: ["fit", "watch"],
}
"""What each severity can come to, from best to worst."""

severities = st.sampled_from(Severity)
ways = st.sampled_from(Worse)
alphas = st.floats(0.001, 0.05)
allowed = st.booleans()
graduations = st.sampled_from(["0.001", "0.01", "0.1", "0.25", "0.5"])


def marks(worse: Worse, *, over_at: bool) -> tuple[Limit, Limit, Limit]:
    """Return a limit of 3, a planned mark of 2 and a watch mark of 1.6 before it, or mirrored at 0."""
    sign = 1 if worse is Worse.HIGHER else -1
    return (
        limit(3 * sign, worse, over_at=over_at),
        limit(2 * sign, worse),
        limit(sign * Fraction("1.6"), worse),
    )


def verdict(
    reading: Reading, worse: Worse, severity: Severity, alpha: float, *, over_at: bool = True
) -> Verdict:
    """Return the verdict at those marks; only what stops the truck has a planned mark."""
    at, planned, nearing = marks(worse, over_at=over_at)
    found = conformity(
        reading,
        at,
        severity=severity,
        highest_doubt=alpha,
        planned=planned if severity is Severity.OUT_OF_SERVICE else None,
        nearing=nearing,
    )
    return found.verdict


@given(values, values, doubts, ways, severities, alphas, allowed)
def test_a_worse_reading_is_never_better(
    one: Fraction,
    other: Fraction,
    doubt: float,
    worse: Worse,
    severity: Severity,
    alpha: float,
    over_at: bool,
) -> None:
    """Of two readings with one doubt the worse has no better verdict, whichever way is worse."""
    sign = 1 if worse is Worse.HIGHER else -1
    better, poorer = sorted((one, other))
    places = [
        ORDER[severity].index(verdict(percent(sign * v, doubt), worse, severity, alpha, over_at=over_at))
        for v in (better, poorer)
    ]
    assert places == sorted(places)


legs = st.lists(st.integers(1, 12).map(lambda n: Fraction(n, 2)), min_size=2, max_size=4, unique=True)


@given(legs, st.integers(0, 3), st.integers(0, 3), doubts, alphas)
def test_a_further_leg_is_never_better(
    gauge: list[Fraction], one: int, other: int, doubt: float, alpha: float
) -> None:
    """On one pass/fail gauge a chain that stops at a further leg has no better verdict."""
    gauge.sort()
    reached = sorted(min(n, len(gauge)) for n in (one, other))
    readings = [
        by_legs(gauge[n] if n < len(gauge) else None, gauge[n - 1] if n else None, doubt) for n in reached
    ]
    out = Severity.OUT_OF_SERVICE
    places = [ORDER[out].index(verdict(r, Worse.HIGHER, out, alpha)) for r in readings]
    assert places == sorted(places)


@given(values, doubts, doubts, ways, severities, alphas, graduations)
def test_more_doubt_is_never_better(
    value: Fraction,
    one: float,
    other: float,
    worse: Worse,
    severity: Severity,
    alpha: float,
    graduation: str,
) -> None:
    """Of one reading with two doubts the less sure has no better verdict: doubt never makes a fit."""
    sign = 1 if worse is Worse.HIGHER else -1
    places = [
        ORDER[severity].index(verdict(percent(sign * value, doubt, graduation), worse, severity, alpha))
        for doubt in sorted((one, other))
    ]
    assert places == sorted(places)


@given(values, doubts, ways, severities, alphas, alphas)
def test_a_stricter_shop_is_never_better(
    value: Fraction, doubt: float, worse: Worse, severity: Severity, one: float, other: float
) -> None:
    """A shop that allows less doubt gives no better verdict."""
    places = [
        ORDER[severity].index(verdict(percent(value, doubt), worse, severity, alpha))
        for alpha in sorted((one, other), reverse=True)
    ]
    assert places == sorted(places)


@given(values, doubts, ways, severities, alphas)
def test_a_reading_past_the_limit_is_over_it(
    value: Fraction, doubt: float, worse: Worse, severity: Severity, alpha: float
) -> None:
    """At or past the limit nothing is in doubt any more, however unsure the reading."""
    at = marks(worse, over_at=True)[0]
    found = verdict(percent(value, doubt), worse, severity, alpha)
    assert not at.reached_by(value) or found == ORDER[severity][-1]


@given(values, st.floats(0.001, 1), ways, alphas)
def test_probability_and_guard_mark_agree(value: Fraction, doubt: float, worse: Worse, alpha: float) -> None:
    """Within the guard mark the probability is allowed; past it, but for the rounding, it is not."""
    at = marks(worse, over_at=True)[0]
    guard, over = guard_mark(at, doubt, alpha), probability_over(percent(value, doubt), at)
    past = value - guard if worse is Worse.HIGHER else guard - value
    if past <= 0:
        assert over <= alpha * (1 + 1e-9)
    elif past > Fraction(1, 10**6):
        assert over >= alpha * (1 - 1e-9)


@given(values, doubts, ways, alphas, graduations)
def test_a_fit_carries_no_more_than_the_allowed_doubt(
    value: Fraction, doubt: float, worse: Worse, alpha: float, graduation: str
) -> None:
    """Whatever is called fit, watched or planned is over the limit with no more than the allowed chance."""
    reading = percent(value, doubt, graduation)
    found = verdict(reading, worse, Severity.OUT_OF_SERVICE, alpha)
    over = probability_over(reading, marks(worse, over_at=True)[0])
    assert found in {Verdict.REMEASURE, Verdict.WITHDRAW} or over <= alpha * (1 + 1e-9)


@given(values, doubts, ways)
def test_a_probability_lies_between_none_and_certain(value: Fraction, doubt: float, worse: Worse) -> None:
    """A probability is one, and it is past a half exactly where the reading is past the limit."""
    over = probability_over(percent(value, doubt), limit(3, worse))
    assert 0 <= over <= 1
    assert (over >= 0.5) == limit(3, worse).reached_by(value)
