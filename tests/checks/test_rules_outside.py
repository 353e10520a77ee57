"""The checks beside figures from outside: standards as quoted, makers' manuals, worked examples."""

from datetime import date
from fractions import Fraction

import pytest

from mastwright.checks import Information, TruckFacts
from mastwright.quantity import Amount, UnitSystem

from .weighing import entry, measured, passes


@pytest.mark.parametrize(
    ("original", "limit", "good", "bad"),
    [
        ("40 mm", Fraction(36), "36.1 mm", "35.9 mm"),
        ("50 mm", Fraction(45), "45.1 mm", "44.9 mm"),
        ("2 in", Fraction("45.72"), "1.81 in", "1.79 in"),
    ],
)
def test_a_fork_goes_at_nine_tenths_of_its_thickness(
    original: str, limit: Fraction, good: str, bad: str
) -> None:
    """40 mm goes at 36, 50 mm at 45, 2 in at 1.8.

    Source: ISO 5057:1993 and ANSI/ITSDF B56.1 cl. 6.2.8 as quoted by fork makers: 90 % of original.
    """
    fork: dict[str, object] = {"original": original, "original_from": "marking"}
    assert measured("FRK-09", {**fork, "value": good}).limit.at == limit
    assert passes(measured("FRK-09", {**fork, "value": good}))
    assert not passes(measured("FRK-09", {**fork, "value": bad}))


def test_ten_per_cent_of_wear_takes_a_fifth_of_the_strength() -> None:
    """36 mm of 40 carry 81 % of what the new fork carried.

    Source: trade pages on fork wear, 10 % wear leaves 80 %; section modulus b t² / 6.
    """
    outcome = entry("FRK-12", {"value": "36 mm", "original": "40 mm"})
    share = outcome.notes[0].params["share"]
    assert isinstance(share, Amount)
    assert float(share.value) == pytest.approx(80, abs=1.01)


@pytest.mark.parametrize(
    ("blade", "system", "limit", "good", "bad"),
    [
        ("48 in", UnitSystem.INCH, Fraction("1.44") * Fraction("25.4"), "1.44 in", "1.45 in"),
        ("1200 mm", UnitSystem.METRIC, Fraction(36), "36 mm", "36.1 mm"),
        ("42 in", UnitSystem.INCH, Fraction("1.26") * Fraction("25.4"), "1.26 in", "1.27 in"),
    ],
)
def test_tips_differ_by_three_per_cent_at_most(
    blade: str, system: UnitSystem, limit: Fraction, good: str, bad: str
) -> None:
    """On a 48 in blade 1.44 in, on 1200 mm 36 mm.

    Source: ISO 5057:1993 and ANSI/ITSDF B56.1 cl. 6.2.8 as quoted by fork makers: 3 % of the blade.
    """
    found = measured("FRK-06", {"value": good, "blade_length": blade}, system=system)
    assert found.limit.at == limit
    assert passes(found)
    assert not passes(measured("FRK-06", {"value": bad, "blade_length": blade}, system=system))


@pytest.mark.parametrize(
    ("blade", "limit_mm"), [("48 in", 6.096), ("1219 mm", 6.095), ("1200 mm", 6.0), ("42 in", 5.334)]
)
@pytest.mark.parametrize(("check", "whole"), [("FRK-02", "blade_length"), ("FRK-03", "shank_height")])
def test_a_fork_is_straight_within_half_a_per_cent(
    check: str, whole: str, blade: str, limit_mm: float
) -> None:
    """On 48 in 0.24 in, which is 6.10 mm on 1219 mm.

    Source: ISO 5057:1993 and ANSI/ITSDF B56.1 cl. 6.2.8 as quoted by fork makers: 0.5 %.
    """
    found = measured(check, {"value": "5 mm", whole: blade})
    assert float(found.limit.at) == pytest.approx(limit_mm, abs=1e-9)


@pytest.mark.parametrize(("angle", "good"), [("93 deg", True), ("93.5 deg", False), ("87 deg", True)])
def test_a_fork_opens_three_degrees_at_most(angle: str, good: bool) -> None:
    """From a right angle to 93 degrees and no further.

    Source: ISO 5057:1993 as quoted by fork makers: 3 degrees.
    """
    assert passes(measured("FRK-04", {"value": angle})) is good


def test_the_gap_and_the_angle_agree() -> None:
    """25 mm at 500 mm is a little less than the 3 degrees of the standard, so it is on the safe side.

    Source: a truck maker's planned-maintenance manual, beside ISO 5057:1993 as quoted.
    """
    (note,) = measured("FRK-05", {"value": "25 mm", "height": "500 mm"}).notes
    angle = note.params["angle"]
    assert isinstance(angle, Amount)
    assert 2.8 < float(angle.value) < 3


@pytest.mark.parametrize(
    ("speed", "distance", "good"),
    [
        ("6 mph", "6.6 ft", True),
        ("6 mph", "6.7 ft", False),
        ("10 km/h", "2.1 m", True),
        ("10 km/h", "2.15 m", False),
        ("20 km/h", "6.2 m", True),
        ("20 km/h", "6.3 m", False),
    ],
)
def test_a_truck_stops_within_its_distance(speed: str, distance: str, good: bool) -> None:
    """Six mph in 6.6 ft passes, 10 km/h in more than 2.1 m does not, 20 km/h takes 6.28 m.

    Source: a truck maker's manual, 1.1 ft for each mph; the metric figures computed from the drag rule
    of ISO 6292 and ANSI/ITSDF B56.1, from memory.
    """
    assert passes(measured("BRK-01", {"value": distance, "speed": speed})) is good


@pytest.mark.parametrize(
    ("nominal", "limit"), [("48 V", 2400), ("12 V", 1000), ("20 V", 1000), ("24 V", 1200), ("80 V", 4000)]
)
def test_a_battery_is_insulated_by_its_voltage(nominal: str, limit: int) -> None:
    """48 V needs 2.4 kohm; 12 V would need 600 ohm and needs 1 kohm.

    Source: EN 1175-1, EN 1987-1 and EN 62485-3 as quoted by a battery maker.
    """
    found = measured("BAT-13", {"value": f"{limit} ohm", "battery_voltage": nominal})
    assert found.limit.at == limit
    assert passes(found)
    assert not passes(measured("BAT-13", {"value": f"{limit - 1} ohm", "battery_voltage": nominal}))


def test_a_warm_cell_reads_too_little() -> None:
    """1.28 kg/l at 45 °C is 1.29 at 30 °C.

    Source: a traction-battery maker's instructions, to two decimals.
    """
    outcome = entry("BAT-01", {"value": "1.28 kg/l", "electrolyte_temperature": "45 °C"})
    told = outcome.notes[0].params["at30"]
    assert isinstance(told, Amount)
    assert round(float(told.value), 2) == 1.29


def test_a_rested_full_cell_shows_its_density() -> None:
    """1.28 kg/l and 2.12 V belong together.

    Source: textbook rule of thumb, density + 0.84; from memory.
    """
    outcome = entry("BAT-08", {"value": "2.12 V", "density": "1.28 kg/l"})
    assert isinstance(outcome, Information)
    assert outcome.notes[0].params["off"] == Amount(Fraction(0), "voltage")


@pytest.mark.parametrize(("axle", "expected_lb"), [("0 in", 4000), ("16 in", 4348)])
def test_a_load_further_out_by_the_moment_balance(axle: str, expected_lb: int) -> None:
    """5000 lb at 24 in leave 4000 lb at 30 in by the short form, and 4348 lb with 16 in to the axle.

    Source: worked examples of trade pages on load centres.
    """
    plate = TruckFacts(
        "counterbalance",
        "lpg",
        rated_capacity=5000 * Fraction("0.45359237"),
        load_centre=24 * Fraction("25.4"),
    )
    outcome = entry("CAP-03", {"new_load_centre": "30 in", "axle_to_fork_face": axle}, plate)
    told = outcome.notes[0].params["mass"]
    assert isinstance(told, Amount)
    assert round(told.value / Fraction("0.45359237")) == expected_lb


@pytest.mark.parametrize(
    ("drift", "minutes", "good"),
    [("100 mm", "10 min", True), ("101 mm", "10 min", False), ("51 mm", "5 min", False)],
)
def test_a_load_sinks_a_hundred_millimetres_in_ten_minutes(drift: str, minutes: str, good: bool) -> None:
    """Half the time is held against half the way.

    Source: a truck maker's service manual, 100 mm in 10 min; the same for ISO 3691-1 from memory.
    """
    assert passes(measured("MST-01", {"value": drift, "time": minutes})) is good


def test_a_tilt_stroke_of_355_tenths_is_five_degrees() -> None:
    """On an arm of 406 mm a stroke of 35.5 mm is the 5 degrees of the standard.

    Source: a truck maker's service manual states 35.5 mm in 10 min; ISO 3691-1 from memory says 5 degrees.
    """
    found = measured("MST-03", {"stroke": "35.5 mm", "arm": "406 mm"})
    assert float(found.reading.value) == pytest.approx(5, abs=0.05)
    assert found.limit.at == 5


@pytest.mark.parametrize(
    ("check", "given", "good"),
    [
        ("BRK-02", {"value": "25 %", "top_speed": "13.44 km/h"}, True),
        ("BRK-02", {"value": "24.9 %", "top_speed": "20 km/h"}, False),
        ("MST-05", {"value": "0.6 m/s"}, True),
        ("MST-05", {"value": "0.61 m/s"}, False),
    ],
)
def test_marks_of_the_truck_standards(check: str, given: dict[str, object], good: bool) -> None:
    """25 % of the weight at 13.4 km/h and above; 0.6 m/s of lowering.

    Source: ISO 6292 and ANSI/ITSDF B56.1, from memory; ILO Safety and health in dock work 19.3.2.
    """
    assert passes(measured(check, given)) is good


@pytest.mark.parametrize(
    ("check", "months"), [("INT-04", 12), ("INT-05", 12), ("INT-06", 6), ("INT-07", 12), ("FRK-20", 12)]
)
def test_legal_intervals(check: str, months: int) -> None:
    """Twelve months in the United Kingdom, Germany and Japan, six in France.

    Source: LOLER 1998 reg. 9(3); DGUV Vorschrift 68 sec. 37; French order of 1 March 2004; Japanese
    ordinance art. 151-21; all as quoted. Fork inspection: ISO 5057 as quoted.
    """
    assert measured(check, {"value": date(2026, 10, 1)}).limit.at == months
