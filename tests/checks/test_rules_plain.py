"""Rules that any check can use: seen, one limit, a share, an age, a difference, a plate's range."""

from datetime import date
from fractions import Fraction

import pytest

from mastwright.checks import NotJudged, Seen, TruckFacts
from mastwright.quantity import BadInput, LimitKind, UnitSystem

from .weighing import codes, entry, limits, measured, passes


@pytest.mark.parametrize(
    ("given", "seen"),
    [
        ({"ok": True}, Seen(ok=True)),
        ({"ok": False}, Seen(ok=False)),
        ({"ok": True, "worse_case": False}, Seen(ok=True)),
        ({"ok": True, "worse_case": True}, Seen(ok=False, worse_case=True)),
        ({"ok": False, "worse_case": True}, Seen(ok=False, worse_case=True)),
    ],
)
def test_what_is_seen_is_in_order_or_not(given: dict[str, object], seen: Seen) -> None:
    """The worse case outweighs an entry that says it is in order."""
    assert entry("MST-14", given) == seen


@pytest.mark.parametrize(("ok", "good"), [(True, True), (False, False)])
def test_the_parking_brake_holds_or_not(ok: bool, good: bool) -> None:
    """On the 15 % ramp it is seen: no instrument puts a doubt on a grade of just 15 %."""
    assert entry("BRK-10", {"ok": ok}) == Seen(ok=good)


def test_the_grade_of_a_truck_type_is_the_makers() -> None:
    """The grade that other trucks must hold comes from the maker's figure."""
    own = limits("BRK-12", at_least="10 %")
    assert isinstance(entry("BRK-12", {"value": "12 %"}), NotJudged)
    assert passes(measured("BRK-12", {"value": "12 %"}, own=own))
    assert not passes(measured("BRK-12", {"value": "8 %"}, own=own))


@pytest.mark.parametrize(
    ("check", "value", "good"),
    [
        ("BRK-04", "300 N", True),
        ("BRK-04", "301 N", False),
        ("BRK-03", "450 N", True),
        ("BRK-05", "150 N", True),
        ("BRK-06", "201 N", False),
        ("BAT-15", "30 %", False),
        ("BAT-15", "29 %", True),
        ("BAT-12", "80 %", True),
        ("BAT-12", "79 %", False),
        ("BAT-14", "50 kohm", True),
        ("BAT-14", "49.9 kohm", False),
        ("BAT-17", "13 mm", True),
        ("BAT-17", "14 mm", False),
    ],
)
def test_the_mark_itself(check: str, value: str, good: bool) -> None:
    """Whether a reading of just the limit passes is said in the table, check by check."""
    assert passes(measured(check, {"value": value})) is good


@pytest.mark.parametrize(("value", "good"), [("640 kPa", True), ("639 kPa", False), ("900 kPa", True)])
def test_a_share_of_the_plate(value: str, good: bool) -> None:
    """A tyre under 80 % of its plate pressure is not pumped up on the truck."""
    found = measured("TYR-06", {"value": value, "plate_pressure": "800 kPa"})
    assert (found.limit.at, found.as_new) == (Fraction(640), Fraction(800))
    assert passes(found) is good


def test_a_gap_has_no_value_when_new() -> None:
    """The length of the blade is no reading of its straightness."""
    assert measured("FRK-02", {"value": "3 mm", "blade_length": "1200 mm"}).as_new is None


@pytest.mark.parametrize(
    ("check", "given", "field"),
    [
        ("TYR-06", {"value": "0 kPa", "plate_pressure": "0 kPa"}, "plate_pressure"),
        ("FRK-02", {"value": "0 mm", "blade_length": "0 mm"}, "blade_length"),
        ("FRK-06", {"value": "0 mm", "blade_length": "0 mm"}, "blade_length"),
        ("FRK-09", {"value": "0 mm", "original": "0 mm", "original_from": "maker"}, "original"),
        ("FRK-19", {"value": "0 kg", "marked_capacity": "0 kg"}, "marked_capacity"),
        ("FRK-05", {"value": "0 mm", "height": "0 mm"}, "height"),
    ],
)
def test_a_share_of_nothing_is_refused(check: str, given: dict[str, object], field: str) -> None:
    """A whole of 0 would make a limit of 0, which a reading of 0 would pass."""
    with pytest.raises(BadInput) as bad:
        entry(check, given)
    assert [p.field for p in bad.value.problems] == [field]


@pytest.mark.parametrize(
    ("done", "good"), [(date(2026, 11, 10), True), (date(2025, 11, 10), True), (date(2025, 11, 9), False)]
)
def test_an_examination_lasts_to_its_day(done: date, good: bool) -> None:
    """Twelve months to the day are in date, one day more is not; a date has no doubt of measurement."""
    found = measured("INT-05", {"value": done})
    assert passes(found) is good
    assert found.reading.standard_uncertainty == 0
    assert codes(found) == ["done-on"]


def test_a_date_to_come_is_refused() -> None:
    """What was done was not done after the visit."""
    with pytest.raises(BadInput, match="a day not after 2026-11-10"):
        entry("INT-05", {"value": date(2026, 11, 11)})


def test_years_of_a_maker_are_months() -> None:
    """A cylinder's period of ten years is held against months."""
    own = limits("LPG-02", at_most="10 years")
    assert measured("LPG-02", {"value": date(2017, 1, 10)}, own=own).limit.at == 120


@pytest.mark.parametrize("given", [{"value": "4 mm"}, {"left": "104 mm", "right": "100 mm"}])
def test_a_difference_is_given_as_such_or_by_its_sides(given: dict[str, object]) -> None:
    """Either way it is the same difference."""
    assert measured("MST-15", given, own=limits("MST-15", at_most="3 mm")).reading.value == 4


def test_the_larger_side_may_be_either() -> None:
    """A difference has no sign."""
    own = limits("MST-15", at_most="3 mm")
    assert measured("MST-15", {"left": "96 mm", "right": "100 mm"}, own=own).reading.value == 4


def test_two_sides_carry_two_doubts() -> None:
    """Each side is a reading, and both doubts are in the difference: a rule of 0.4 mm gives 0.57 mm."""
    own = limits("MST-15", at_most="3 mm")
    found = measured("MST-15", {"left": "104 mm", "right": "100 mm"}, own=own)
    assert found.reading.standard_uncertainty == pytest.approx(0.4 * 2**0.5)


def test_one_side_alone_is_no_difference() -> None:
    """The message names the side that is missing."""
    with pytest.raises(BadInput) as bad:
        entry("MST-15", {"left": "104 mm"})
    assert bad.value.problems[0].field == "right"


@pytest.mark.parametrize(("value", "good"), [("1000", True), ("999", False), ("2000", True), ("2001", False)])
def test_the_battery_is_within_the_plates_range(value: str, good: bool) -> None:
    """Its mass is part of the counterweight: neither too little nor too much."""
    given = {"value": f"{value} kg", "minimum": "1000 kg", "maximum": "2000 kg"}
    assert passes(measured("BAT-16", given)) is good


def test_a_range_may_be_one_mass() -> None:
    """A plate that names one mass takes just that."""
    given = {"value": "1500 kg", "minimum": "1500 kg", "maximum": "1500 kg"}
    assert passes(measured("BAT-16", given))


def test_a_range_the_wrong_way_round_is_refused() -> None:
    """Nothing could lie within it."""
    with pytest.raises(BadInput) as bad:
        entry("BAT-16", {"value": "1500 kg", "minimum": "2000 kg", "maximum": "1000 kg"})
    (problem,) = bad.value.problems
    assert (problem.field, problem.given) == ("minimum", "2000 kg")


@pytest.mark.parametrize("country", ["GB", "DE", "other"])
def test_work_air_without_a_shipped_law_is_not_judged(country: str) -> None:
    """The strictest figure orients; only the law of the place judges."""
    outcome = entry("ENG-06", {"value": "30 ppm"}, TruckFacts("counterbalance", "lpg", country=country))
    assert isinstance(outcome, NotJudged)
    assert codes(outcome) == ["work-air-orientation"]


@pytest.mark.parametrize(("value", "good"), [("50 ppm", True), ("51 ppm", False)])
def test_work_air_by_the_law(value: str, good: bool) -> None:
    """Where the law ships with mastwright it governs."""
    found = measured("ENG-06", {"value": value}, TruckFacts("counterbalance", "lpg", country="US"))
    assert passes(found) is good
    assert found.limit.kind is LimitKind.LAW


@pytest.mark.parametrize(
    ("check", "metric", "inch"),
    [
        ("BRK-04", {"value": "222.411080763025 N"}, {"value": "50 lbf"}),
        ("MST-01", {"value": "50.8 mm"}, {"value": "2 in"}),
        ("MST-01", {"value": "50.8 mm", "time": "300 s"}, {"value": "2 in", "time": "5 min"}),
        ("MST-05", {"value": "0.508 m/s"}, {"value": "100 ft/min"}),
        (
            "FRK-02",
            {"value": "6.35 mm", "blade_length": "1219.2 mm"},
            {"value": "1/4 in", "blade_length": "48 in"},
        ),
        (
            "FRK-09",
            {"value": "36.83 mm", "original": "40.64 mm", "original_from": "shank"},
            {"value": "1.45 in", "original": "1.6 in", "original_from": "shank"},
        ),
        (
            "FRK-06",
            {"left": "76.2 mm", "right": "50.8 mm", "blade_length": "1066.8 mm"},
            {"left": "3 in", "right": "2 in", "blade_length": "42 in"},
        ),
        ("BRK-01", {"value": "2.01168 m", "speed": "2.68224 m/s"}, {"value": "6.6 ft", "speed": "6 mph"}),
        ("BAT-10", {"value": "50 °C", "state": "in-use"}, {"value": "122 °F", "state": "in-use"}),
        (
            "BAT-16",
            {"value": "453.59237 kg", "minimum": "90.718474 kg", "maximum": "907.18474 kg"},
            {"value": "1000 lb", "minimum": "200 lb", "maximum": "2000 lb"},
        ),
    ],
)
def test_the_unit_changes_nothing(check: str, metric: dict[str, object], inch: dict[str, object]) -> None:
    """The same reading in either system comes to the same, to the last digit."""
    ours, theirs = measured(check, metric), measured(check, inch)
    assert (ours.reading.value, ours.reading.low, ours.reading.high) == (
        theirs.reading.value,
        theirs.reading.low,
        theirs.reading.high,
    )
    assert ours.reading.standard_uncertainty == theirs.reading.standard_uncertainty
    assert (ours.limit, ours.others, ours.as_new, ours.notes) == (
        theirs.limit,
        theirs.others,
        theirs.as_new,
        theirs.notes,
    )


def test_a_bare_number_takes_the_systems_unit() -> None:
    """What a visit in inches writes without a unit is inches."""
    found = measured("MST-01", {"value": "2"}, system=UnitSystem.INCH)
    assert found.reading.value == Fraction("50.8")
