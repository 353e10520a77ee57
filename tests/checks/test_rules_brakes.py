"""Rules for brakes, as an entry meets them."""

from fractions import Fraction

import pytest

from mastwright.quantity import Amount, BadInput

from .weighing import codes, entry, measured, passes


@pytest.mark.parametrize(("value", "good"), [("2.1 m", True), ("2.11 m", False)])
def test_the_distance_goes_by_the_speed(value: str, good: bool) -> None:
    """From 10 km/h a truck stops within 2.1 m."""
    found = measured("BRK-01", {"value": value, "speed": "10 km/h"})
    assert found.limit.at == 2100
    assert passes(found) is good


def test_the_drag_of_a_stop_is_told() -> None:
    """v² / (2 g s): 10 km/h in 2.1 m is 18.7 % of the weight."""
    (note,) = measured("BRK-01", {"value": "2.1 m", "speed": "10 km/h"}).notes
    drag = note.params["drag"]
    assert isinstance(drag, Amount)
    assert float(drag.value) == pytest.approx(18.73, abs=0.01)


def test_a_stop_on_the_spot_has_no_drag() -> None:
    """No distance would be an endless drag: it is not told."""
    assert codes(measured("BRK-01", {"value": "0 m", "speed": "10 km/h"})) == []


@pytest.mark.parametrize(("top_speed", "needed"), [("10 km/h", Fraction("18.6")), ("20 km/h", Fraction(25))])
def test_the_drag_goes_by_the_top_speed(top_speed: str, needed: Fraction) -> None:
    """It grows with the speed and stays at 25 %."""
    assert measured("BRK-02", {"value": "30 %", "top_speed": top_speed}).limit.at == needed


@pytest.mark.parametrize("speed", ["0 km/h", "-1 km/h"])
@pytest.mark.parametrize(("check", "field"), [("BRK-01", "speed"), ("BRK-02", "top_speed")])
def test_a_standing_truck_brakes_nothing(check: str, field: str, speed: str) -> None:
    """A speed that is no speed is refused."""
    given = {"value": "2 m" if check == "BRK-01" else "20 %", field: speed}
    with pytest.raises(BadInput, match="speed"):
        entry(check, given)
