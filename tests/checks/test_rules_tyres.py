"""Rules for tyres, as an entry meets them."""

from fractions import Fraction

import pytest

from mastwright.checks import NotJudged
from mastwright.quantity import BadInput

from .weighing import entry, limits, measured, passes

PLATE: dict[str, object] = {"plate_pressure": "800 kPa"}


@pytest.mark.parametrize(
    ("value", "good"), [("850 kPa", True), ("750 kPa", True), ("851 kPa", False), ("749 kPa", False)]
)
def test_a_pressure_is_near_its_plate(value: str, good: bool) -> None:
    """Too much is as wrong as too little."""
    assert passes(measured("TYR-05", {"value": value, "tolerance": "50 kPa", **PLATE})) is good


def test_a_pressure_without_tolerance_is_not_judged() -> None:
    """What is off is kept, with the doubt of the gauge."""
    outcome = entry("TYR-05", {"value": "780 kPa", **PLATE})
    assert isinstance(outcome, NotJudged)
    assert outcome.reading is not None
    assert outcome.reading.value == 20
    assert outcome.reading.standard_uncertainty == pytest.approx((5**2 + 7.8**2) ** 0.5)


@pytest.mark.parametrize(("value", "good"), [("462 mm", True), ("461 mm", False)])
def test_a_tyre_may_lose_what_its_maker_says(value: str, good: bool) -> None:
    """Diameter when new less diameter now."""
    own = limits("TYR-01", at_most="38 mm")
    found = measured("TYR-01", {"value": value, "original": "500 mm"}, own=own)
    assert passes(found) is good
    assert found.reading.value == 500 - Fraction(value.removesuffix(" mm"))
    assert found.as_new == 0


def test_a_tyre_does_not_grow() -> None:
    """A diameter when new that is smaller than now would hide the wear."""
    with pytest.raises(BadInput) as bad:
        entry("TYR-01", {"value": "500 mm", "original": "480 mm"})
    (problem,) = bad.value.problems
    assert (problem.field, problem.given) == ("original", "480 mm")


def test_a_new_tyre_may_read_a_graduation_more() -> None:
    """The tape's last millimetre is no growth."""
    own = limits("TYR-01", at_most="38 mm")
    assert passes(measured("TYR-01", {"value": "501 mm", "original": "500 mm"}, own=own))
