"""For each rule an entry that is in order and one that is not, made from the check's own limit."""

from collections.abc import Callable
from datetime import timedelta
from fractions import Fraction

from mastwright.checks import Check, TruckFacts
from mastwright.quantity import canonical_unit, exact_text

from .weighing import DAY

Given = dict[str, object]
Pair = tuple[Given, Given]

MAKERS = Fraction(10)
"""The maker's limit of an invented model, in the unit of the check. demo data"""

FACTS = TruckFacts(
    "counterbalance",
    "electric",
    country="US",
    rated_capacity=Fraction(2000),
    load_centre=Fraction(500),
    battery_voltage=Fraction(48),
)
"""A truck whose plate and battery are known, where the law sets a limit for work air. demo data"""


def _text(value: Fraction, dimension: str) -> str:
    return f"{exact_text(value)} {canonical_unit(dimension).name}"


def _around(low: Fraction | float, high: Fraction | float, **more: object) -> Callable[[Check], Pair]:
    """Return readings at these multiples of the limit: the first in order, the second not."""

    def pair(check: Check) -> Pair:
        limit = MAKERS if check.limit is None else check.limit
        good, bad = (_text(limit * Fraction(str(part)), check.reads) for part in (low, high))
        return {"value": good, **more}, {"value": bad, **more}

    return pair


def _values(good: object, bad: object, **more: object) -> Callable[[Check], Pair]:
    return lambda _: ({"value": good, **more}, {"value": bad, **more})


def _share(low: str, high: str) -> Callable[[Check], Pair]:
    """Return readings of a share of 1000: around the limit's share, or around the maker's limit."""

    def pair(check: Check) -> Pair:
        mark = MAKERS if check.limit is None else 1000 * check.limit
        whole = {check.reference: _text(Fraction(1000), check.reads)}
        good, bad = (_text(mark * Fraction(part), check.reads) for part in (low, high))
        return {"value": good, **whole}, {"value": bad, **whole}

    return pair


def _cells(check: Check) -> Pair:
    assert check.limit is not None
    top = Fraction({"density": "1.28", "voltage": "2.12"}[check.reads])
    apart = [_text(top - check.limit * Fraction(part), check.reads) for part in ("0.5", "1.5")]
    good, bad = ((_text(top, check.reads), other) for other in apart)
    return {"cells": good}, {"cells": bad}


def _age(check: Check) -> Pair:
    months = MAKERS if check.limit is None else check.limit
    days = [int(months * part * Fraction("30.4375")) for part in (Fraction(1, 2), Fraction(2))]
    return {"value": DAY - timedelta(days=days[0])}, {"value": DAY - timedelta(days=days[1])}


def _seen(_: Check) -> Pair:
    return {"ok": True}, {"ok": False}


def _either(**given: object) -> Callable[[Check], Pair]:
    return lambda _: (dict(given), dict(given))


_FORK = {"original": "40 mm", "earlier": "41 mm", "hours_between": "1000 h", "hours_ahead": "1000 h"}
_MOMENT = {"axle_to_fork_face": "450 mm", "new_load_centre": "600 mm"}

PAIRS: dict[str, Callable[[Check], Pair]] = {
    "observe": _seen,
    "at_most": _around(0.5, 2),
    "at_least": _around(2, 0.5),
    "between": _around(1.5, 3),
    "torque_range": _around(1.5, 3),
    "share_at_most": _share("0.9", "1.1"),
    "share_at_least": _share("1.1", "0.9"),
    "age": _age,
    "difference": _around(0.5, 2),
    "tip_difference_maker": _around(0.5, 2),
    "plate_range": _values("1500 kg", "2500 kg", minimum="1000 kg", maximum="2000 kg"),
    "work_air": _around(0.5, 2),
    "schedule": _either(),
    "fork_thickness": _values("39 mm", "35 mm", original="40 mm", original_from="marking"),
    "fork_angle": _values("92 deg", "94 deg"),
    "fork_angle_gap": _around(0.9, 1.1),
    "tip_difference": _values("29 mm", "31 mm", blade_length="1000 mm"),
    "fork_strength": _values("38 mm", "30 mm", original="40 mm"),
    "thickness_forecast": _values("40 mm", "36.5 mm", **_FORK),
    "fork_capacity": _values("1001 kg", "999 kg"),
    "proof_load": _values("2501 kg", "2499 kg", marked_capacity="1000 kg"),
    "capacity_load_centre": _either(**_MOMENT),
    "capacity_attachment": _either(
        **_MOMENT, attachment_mass="300 kg", attachment_centre="150 mm", thrust_out="100 mm"
    ),
    "standard_load_centre": _either(),
    "lift_drift": _around(0.5, 2),
    "tilt_drift": _around(0.5, 2),
    "lowering_speed": _around(0.5, 2),
    "leak_class": _values("none", "III"),
    "cleanliness": _values("18/16/13", "18/17/13", target="18/16/13"),
    "stopping_distance": _values("2.0 m", "2.2 m", speed="10 km/h"),
    "brake_drag": _values("19 %", "18 %", top_speed="10 km/h"),
    "pressure_deviation": _values("760 kPa", "740 kPa", plate_pressure="800 kPa", tolerance="50 kPa"),
    "diameter_lost": _values("495 mm", "485 mm", original="500 mm"),
    "density_corrected": _values("1.28 kg/l", "1.10 kg/l", electrolyte_temperature="45 °C"),
    "density_full": _values("1.28 kg/l", "1.26 kg/l", electrolyte_temperature="30 °C", lowest="1.27 kg/l"),
    "density_low": _values("1.16 kg/l", "1.12 kg/l", electrolyte_temperature="30 °C", lowest="1.13 kg/l"),
    "density_spread": _cells,
    "voltage_spread": _cells,
    "cell_voltage": _values("50.4 V", "48 V", cells=24),
    "voltage_density": _values("2.12 V", "2.02 V", density="1.28 kg/l"),
    "electrolyte_temperature": _values("54 °C", "56 °C", state="in-use"),
    "battery_insulation": _values("2500 ohm", "2300 ohm"),
}
"""The two entries by rule: the first is in order, the second is not."""

SIDES: dict[str, dict[str, str]] = {
    "at_least": {"at_least": "10"},
    "share_at_least": {"at_least": "10"},
    "between": {"at_least": "10", "at_most": "20"},
    "torque_range": {"at_least": "10", "at_most": "20"},
}
"""How a maker's limit is written for a rule; all others are not to be exceeded: at_most 10."""
