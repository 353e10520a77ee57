"""Limits: which side is over, and which of several counts. The figures are demo data."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.quantity import Evidence, Limit, LimitKind, Source, Worse, governing

SOURCE = Source("invented for this test", Evidence.DEMO_DATA)


def limit(
    at: float | Fraction,
    worse: Worse = Worse.HIGHER,
    *,
    reached_is_over: bool = True,
    kind: LimitKind = LimitKind.STANDARD,
    dimension: str = "percent",
) -> Limit:
    """Build a limit with what matters here."""
    return Limit(Fraction(at), dimension, worse, kind, SOURCE, reached_is_over)


@pytest.mark.parametrize(
    ("worse", "below", "above"), [(Worse.HIGHER, False, True), (Worse.LOWER, True, False)]
)
def test_past_the_mark_is_over(worse: Worse, below: bool, above: bool) -> None:
    """The direction decides which side is over, by however little."""
    hair = Fraction(1, 10**20)
    assert limit(3, worse).reached_by(3 - hair) is below
    assert limit(3, worse).reached_by(3 + hair) is above


@pytest.mark.parametrize("worse", Worse)
@pytest.mark.parametrize("reached_is_over", [True, False])
def test_at_the_mark_the_source_decides(worse: Worse, reached_is_over: bool) -> None:
    """A reading exactly at the mark is over it only where the source says so."""
    assert limit(3, worse, reached_is_over=reached_is_over).reached_by(Fraction(3)) is reached_is_over


def test_reaching_is_over_unless_said_otherwise() -> None:
    """The stricter meaning is the one that needs no words."""
    assert Limit(Fraction(3), "percent", Worse.HIGHER, LimitKind.LAW, SOURCE).reached_by(Fraction(3))


@pytest.mark.parametrize(("worse", "tightest"), [(Worse.HIGHER, 2), (Worse.LOWER, 3)])
def test_the_tightest_governs(worse: Worse, tightest: int) -> None:
    """The limit that condemns first counts, whoever sets it and in whatever order they come."""
    loose = limit(5 - tightest, worse, kind=LimitKind.MAKER)
    tight = limit(tightest, worse, kind=LimitKind.SHOP)
    assert governing((loose, tight)) is tight
    assert governing((tight, loose)) is tight
    assert (tight.tighter_than(loose), loose.tighter_than(tight)) == (True, False)


@pytest.mark.parametrize("worse", Worse)
def test_of_equal_marks_the_one_reached_governs(worse: Worse) -> None:
    """At the same mark the limit that counts the mark itself as over condemns first."""
    allows, forbids = limit(3, worse, reached_is_over=False), limit(3, worse)
    assert governing((allows, forbids)) is forbids
    assert governing((forbids, allows)) is forbids


def test_of_equals_the_first_governs() -> None:
    """Two limits that condemn alike keep the order given."""
    first = limit(3)
    assert governing((first, limit(3, kind=LimitKind.SHOP))) is first


@pytest.mark.parametrize(
    "limits",
    [(), (limit(3), limit(2, Worse.LOWER)), (limit(3), limit(3, dimension="length"))],
    ids=["none", "two directions", "two dimensions"],
)
def test_limits_that_cannot_be_compared(limits: tuple[Limit, ...]) -> None:
    """None at all, or of different kinds of reading, is a fault of the caller."""
    with pytest.raises(ValueError, match="at least one limit, all of one dimension and direction"):
        governing(limits)


@given(
    st.sampled_from(Worse),
    st.lists(st.tuples(st.integers(0, 5), st.booleans()), min_size=1, max_size=5),
    st.integers(-1, 6),
)
def test_governing_condemns_whenever_any_does(
    worse: Worse, marks: list[tuple[int, bool]], value: int
) -> None:
    """A value is over the governing limit exactly when it is over at least one of them."""
    limits = tuple(limit(at, worse, reached_is_over=over) for at, over in marks)
    over_any = any(one.reached_by(Fraction(value)) for one in limits)
    assert governing(limits).reached_by(Fraction(value)) is over_any
