"""What holds for any stop."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.checks.brakes import allowed_stopping_distance, drawbar_pull, needed_drag

speeds = st.integers(1, 15_000).map(lambda mm_s: Fraction(mm_s, 1000))


@given(speeds, speeds)
def test_faster_never_has_to_stop_shorter(one: Fraction, other: Fraction) -> None:
    """Distance and drag both grow with speed, across the knee too."""
    slow, fast = sorted((one, other))
    assert allowed_stopping_distance(slow) <= allowed_stopping_distance(fast)
    assert needed_drag(slow) <= needed_drag(fast) <= 25


@given(mass=st.integers(1, 60_000).map(Fraction), grade=st.integers(0, 200).map(Fraction))
def test_no_grade_pulls_more_than_the_weight(mass: Fraction, grade: Fraction) -> None:
    """The pull is below the grade's own share of the weight, and below the weight."""
    pull, weight = drawbar_pull(mass, grade), float(mass) * 9.80665
    assert pull <= weight * min(float(grade) / 100, 1.0) * (1 + 1e-12)
