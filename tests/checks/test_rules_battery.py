"""Rules for traction batteries, as an entry meets them."""

from fractions import Fraction

import pytest

from mastwright.checks import Information, NotJudged, TruckFacts
from mastwright.quantity import Amount, BadInput, Worse

from .weighing import codes, entry, limits, measured, passes

WARM: dict[str, object] = {"electrolyte_temperature": "45 °C"}


@pytest.mark.parametrize("check", ["BAT-01", "BAT-02"])
def test_a_density_is_told_at_both_references(check: str) -> None:
    """At 30 °C and at 80 °F, so that nobody takes one for the other."""
    outcome = entry(check, {"value": "1.28 kg/l", **WARM})
    assert isinstance(outcome, Information)
    (note,) = outcome.notes
    assert note.params["at30"] == Amount(Fraction("1.2905"), "density")
    assert note.params["at80f"] == Amount(Fraction("1.2932"), "density")


@pytest.mark.parametrize("check", ["BAT-03", "BAT-11"])
def test_a_density_is_judged_corrected(check: str) -> None:
    """The lowest that the battery's plate allows is held against the figure at 30 °C."""
    given = {"value": "1.28 kg/l", "lowest": "1.29 kg/l"}
    assert passes(measured(check, {**given, **WARM}))
    assert not passes(measured(check, {**given, "electrolyte_temperature": "30 °C"}))


def test_a_density_without_the_plates_figure_is_not_judged() -> None:
    """It is kept corrected, with the remark."""
    outcome = entry("BAT-03", {"value": "1.28 kg/l", **WARM})
    assert isinstance(outcome, NotJudged)
    assert outcome.reading is not None
    assert outcome.reading.value == Fraction("1.2905")
    assert codes(outcome) == ["density-corrected"]


@pytest.mark.parametrize(
    ("check", "cells", "good"),
    [
        ("BAT-04", ("1.285 kg/l", "1.275 kg/l", "1.265 kg/l"), True),
        ("BAT-04", ("1.285 kg/l", "1.260 kg/l"), False),
        ("BAT-05", ("1.285 kg/l", "1.235 kg/l"), True),
        ("BAT-05", ("1.285 kg/l", "1.230 kg/l"), False),
        ("BAT-06", ("2.12 V", "1.93 V"), True),
        ("BAT-06", ("2.12 V", "1.92 V"), False),
    ],
)
def test_cells_stand_together(check: str, cells: tuple[str, ...], good: bool) -> None:
    """Highest less lowest; of the voltage the mark itself is too much."""
    found = measured(check, {"cells": cells})
    assert passes(found) is good
    assert found.as_new == 0


def test_a_spread_has_the_doubt_of_two_readings() -> None:
    """Highest and lowest were each read: 0.005 kg/l becomes 0.0071 kg/l."""
    found = measured("BAT-04", {"cells": ("1.285 kg/l", "1.275 kg/l")})
    assert found.reading.standard_uncertainty == pytest.approx(0.005 * 2**0.5)


def test_one_cell_has_no_spread() -> None:
    """The message asks for more cells."""
    with pytest.raises(BadInput, match="two cells or more"):
        entry("BAT-04", {"cells": ("1.285 kg/l",)})


@pytest.mark.parametrize(("value", "good"), [("49.92 V", True), ("49.9 V", False)])
def test_the_mean_cell_voltage(value: str, good: bool) -> None:
    """Twenty-four cells of 2.08 V are 49.92 V."""
    found = measured("BAT-07", {"value": value, "cells": 24})
    assert passes(found) is good


def test_the_mean_shares_the_doubt_among_the_cells() -> None:
    """The doubt of one cell is that of the battery over its number of cells."""
    one = measured("BAT-07", {"value": "48 V", "cells": 1}).reading.standard_uncertainty
    mean = measured("BAT-07", {"value": "48 V", "cells": 24}).reading.standard_uncertainty
    assert mean == pytest.approx(one / 24)


def test_a_battery_has_cells() -> None:
    """None is no number of cells."""
    with pytest.raises(BadInput, match="1 or more"):
        entry("BAT-07", {"value": "48 V", "cells": 0})


@pytest.mark.parametrize(
    ("value", "code"),
    [
        ("2.12 V", "voltage-agrees"),
        ("2.15 V", "voltage-agrees"),
        ("2.16 V", "voltage-disagrees"),
        ("2.08 V", "voltage-disagrees"),
    ],
)
def test_voltage_and_density_tell_on_each_other(value: str, code: str) -> None:
    """More than 0.03 V apart puts one of the two in doubt, and judges neither."""
    outcome = entry("BAT-08", {"value": value, "density": "1.28 kg/l"})
    assert isinstance(outcome, Information)
    assert codes(outcome) == [code]


@pytest.mark.parametrize(
    ("state", "value", "good", "worse"),
    [
        ("in-use", "54 °C", True, Worse.HIGHER),
        ("in-use", "55 °C", False, Worse.HIGHER),
        ("in-use", "5 °C", True, Worse.HIGHER),
        ("before-charge", "44 °C", True, Worse.HIGHER),
        ("before-charge", "45 °C", False, Worse.HIGHER),
        ("before-charge", "10 °C", True, Worse.LOWER),
        ("before-charge", "9 °C", False, Worse.LOWER),
    ],
)
def test_the_temperature_has_its_state(state: str, value: str, good: bool, worse: Worse) -> None:
    """Below 55 °C in use; before a charge below 45 °C and no colder than 10 °C."""
    found = measured("BAT-10", {"value": value, "state": state})
    assert passes(found) is good
    assert found.limit.worse is worse


@pytest.mark.parametrize(
    ("plate", "entered", "limit"),
    [
        (None, "48 V", 2400),
        (Fraction(48), None, 2400),
        (Fraction(48), "80 V", 4000),
        (Fraction(12), None, 1000),
    ],
)
def test_insulation_goes_by_the_batterys_voltage(
    plate: Fraction | None, entered: str | None, limit: int
) -> None:
    """Fifty ohm a volt and never under 1000 ohm; what the entry says outweighs the truck's sheet."""
    facts = TruckFacts("reach", "electric", battery_voltage=plate)
    given = {"value": "9 kohm"} | ({"battery_voltage": entered} if entered else {})
    assert measured("BAT-13", given, facts).limit.at == limit


def test_insulation_without_a_voltage_is_not_judged() -> None:
    """The reading is kept, and the reason is said."""
    outcome = entry("BAT-13", {"value": "9 kohm"})
    assert isinstance(outcome, NotJudged)
    assert outcome.why.code == "battery-voltage-missing"


def test_a_battery_of_no_voltage_is_refused() -> None:
    """A 0 in the entry is a mistake, not a voltage left out."""
    facts = TruckFacts("reach", "electric", battery_voltage=Fraction(48))
    with pytest.raises(BadInput, match="nominal voltage"):
        entry("BAT-13", {"value": "9 kohm", "battery_voltage": "0 V"}, facts)


def test_a_maker_may_ask_for_more_insulation() -> None:
    """A tighter figure of the maker's governs."""
    facts = TruckFacts("reach", "electric", battery_voltage=Fraction(48))
    own = limits("BAT-13", at_least="24 kohm")
    assert measured("BAT-13", {"value": "9 kohm"}, facts, own).limit.at == 24000
