"""Rules for the mast, as an entry meets them: drift of lift and tilt, lowering speed."""

from fractions import Fraction
from math import degrees, radians, sin

import pytest

from mastwright.quantity import BadInput

from .weighing import codes, entry, limits, measured, passes


@pytest.mark.parametrize(
    ("given", "value", "said"),
    [
        ({"value": "60 mm"}, 60, []),
        ({"value": "60 mm", "time": "10 min"}, 60, []),
        ({"value": "60 mm", "time": "5 min"}, 120, ["drift-scaled"]),
        ({"value": "60 mm", "time": "20 min"}, 30, ["drift-scaled"]),
        ({"value": "60 mm", "measured_at": "fork"}, 60, []),
        ({"value": "60 mm", "measured_at": "mast-stages"}, 120, ["drift-doubled"]),
        (
            {"value": "30 mm", "measured_at": "mast-stages", "time": "5 min"},
            120,
            ["drift-scaled", "drift-doubled"],
        ),
    ],
)
def test_a_drift_is_that_of_the_fork_in_ten_minutes(
    given: dict[str, object], value: int, said: list[str]
) -> None:
    """Scaled from another time, doubled from between the stages, and said."""
    found = measured("MST-01", given)
    assert found.reading.value == value
    assert codes(found) == said
    assert found.as_new == 0


@pytest.mark.parametrize(
    ("given", "factor"),
    [
        ({"value": "60 mm"}, 1),
        ({"value": "60 mm", "time": "5 min"}, 2),
        ({"value": "60 mm", "time": "5 min", "measured_at": "mast-stages"}, 4),
        ({"value": "0 mm", "time": "5 min"}, 1),
    ],
)
def test_a_scaled_drift_carries_a_scaled_doubt(given: dict[str, object], factor: int) -> None:
    """What multiplies the reading multiplies its doubt."""
    assert measured("MST-01", given).reading.standard_uncertainty == pytest.approx(0.4 * factor)


def test_the_note_of_a_scaled_drift_says_the_time() -> None:
    """In minutes, as it was timed."""
    (note,) = measured("MST-01", {"value": "60 mm", "time": "150 s"}).notes
    assert note.params == {"minutes": "2.5"}


@pytest.mark.parametrize("time", ["0 min", "-5 min"])
@pytest.mark.parametrize(("check", "value"), [("MST-01", "60 mm"), ("MST-03", "2 deg")])
def test_a_drift_takes_time(check: str, value: str, time: str) -> None:
    """No time at all is refused."""
    with pytest.raises(BadInput, match="time of the drift test"):
        entry(check, {"value": value, "time": time})


def test_a_load_does_not_rise_by_itself() -> None:
    """A drift below 0 is refused."""
    with pytest.raises(BadInput, match="drift"):
        entry("MST-01", {"value": "-1 mm"})


@pytest.mark.parametrize(
    ("given", "value"),
    [({"value": "2 deg"}, 2), ({"value": "2 deg", "time": "5 min"}, 4), ({"value": "0 deg"}, 0)],
)
def test_a_tilt_is_read_as_an_angle(given: dict[str, object], value: int) -> None:
    """With the level's doubt, scaled with the time."""
    found = measured("MST-03", given)
    assert found.reading.value == value
    assert found.reading.standard_uncertainty == pytest.approx(0.1 * (value / 2 if value else 1))


def test_a_tilt_is_read_as_a_stroke() -> None:
    """The arm makes an angle of the rod's travel."""
    stroke = f"{406 * sin(radians(4)):.6f} mm"
    found = measured("MST-03", {"stroke": stroke, "arm": "406 mm"})
    assert float(found.reading.value) == pytest.approx(4, abs=1e-6)
    assert passes(found)


def test_a_stroke_has_the_doubt_of_its_rule() -> None:
    """Half of what one millimetre more would make: 0.07 degrees on an arm of 406 mm."""
    found = measured("MST-03", {"stroke": "20 mm", "arm": "406 mm"})
    assert found.reading.standard_uncertainty == pytest.approx(degrees(1 / 406) / 2, rel=0.01)


def test_a_stroke_at_the_end_of_its_arm_has_a_doubt_too() -> None:
    """A mast that lies down is no more certain than another."""
    found = measured("MST-03", {"stroke": "406 mm", "arm": "406 mm"})
    assert found.reading.value == 90
    assert found.reading.standard_uncertainty > 0


@pytest.mark.parametrize("given", [{}, {"stroke": "20 mm"}, {"arm": "406 mm"}, {"time": "10 min"}])
def test_half_a_tilt_is_none(given: dict[str, object]) -> None:
    """An angle, or stroke and arm both."""
    with pytest.raises(BadInput, match="or stroke and arm"):
        entry("MST-03", given)


@pytest.mark.parametrize(
    "given", [{"value": "0.5 m/s"}, {"distance": "2 m", "time": "4 s"}, {"distance": "1 m", "time": "2 s"}]
)
def test_a_speed_is_read_or_timed(given: dict[str, object]) -> None:
    """Distance over time is the same speed."""
    assert measured("MST-05", given).reading.value == Fraction(1, 2)


@pytest.mark.parametrize(("time", "good"), [("3.4 s", True), ("3.3 s", False)])
def test_a_load_comes_down_slowly(time: str, good: bool) -> None:
    """Two metres take more than 3.3 s at 0.6 m/s."""
    assert passes(measured("MST-05", {"distance": "2 m", "time": time})) is good


@pytest.mark.parametrize("given", [{}, {"distance": "2 m"}, {"time": "4 s"}])
def test_half_a_speed_is_none(given: dict[str, object]) -> None:
    """A speed, or distance and time both."""
    with pytest.raises(BadInput, match="or distance and time"):
        entry("MST-05", given)


def test_a_maker_may_allow_less_drift() -> None:
    """A tighter figure of the maker's governs over the standard's."""
    found = measured("MST-01", {"value": "60 mm"}, own=limits("MST-01", at_most="50 mm"))
    assert not passes(found)
