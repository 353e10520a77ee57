"""Every rule by name: one line each."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from mastwright.checks import (
    rules_battery,
    rules_brakes,
    rules_capacity,
    rules_forks,
    rules_hydraulics,
    rules_mast,
    rules_plain,
    rules_tyres,
)
from mastwright.checks.rule import Rule

RULES: Mapping[str, Rule] = MappingProxyType(
    {
        "observe": rules_plain.OBSERVE,
        "at_most": rules_plain.AT_MOST,
        "at_least": rules_plain.AT_LEAST,
        "between": rules_plain.BETWEEN,
        "torque_range": rules_plain.BETWEEN,
        "share_at_most": rules_plain.SHARE_AT_MOST,
        "share_at_least": rules_plain.SHARE_AT_LEAST,
        "age": rules_plain.AGE,
        "difference": rules_plain.DIFFERENCE,
        "plate_range": rules_plain.PLATE_RANGE,
        "work_air": rules_plain.WORK_AIR,
        "schedule": rules_plain.SCHEDULE,
        "fork_thickness": rules_forks.THICKNESS,
        "fork_angle": rules_forks.ANGLE,
        "fork_angle_gap": rules_forks.ANGLE_GAP,
        "tip_difference": rules_forks.TIP_DIFFERENCE,
        "tip_difference_maker": rules_plain.DIFFERENCE,
        "fork_strength": rules_forks.STRENGTH,
        "thickness_forecast": rules_forks.FORECAST,
        "fork_capacity": rules_forks.CAPACITY,
        "proof_load": rules_forks.PROOF_LOAD,
        "capacity_load_centre": rules_capacity.LOAD_CENTRE,
        "capacity_attachment": rules_capacity.ATTACHMENT,
        "standard_load_centre": rules_capacity.STANDARD_LOAD_CENTRE,
        "lift_drift": rules_mast.LIFT_DRIFT,
        "tilt_drift": rules_mast.TILT_DRIFT,
        "lowering_speed": rules_mast.LOWERING_SPEED,
        "leak_class": rules_hydraulics.LEAK_CLASS,
        "cleanliness": rules_hydraulics.CLEANLINESS,
        "stopping_distance": rules_brakes.STOPPING_DISTANCE,
        "brake_drag": rules_brakes.DRAG,
        "pressure_deviation": rules_tyres.PRESSURE_DEVIATION,
        "diameter_lost": rules_tyres.DIAMETER_LOST,
        "density_corrected": rules_battery.DENSITY_CORRECTED,
        "density_full": rules_battery.DENSITY_FULL,
        "density_low": rules_battery.DENSITY_FULL,
        "density_spread": rules_battery.DENSITY_SPREAD,
        "voltage_spread": rules_battery.VOLTAGE_SPREAD,
        "cell_voltage": rules_battery.CELL_VOLTAGE,
        "voltage_density": rules_battery.VOLTAGE_DENSITY,
        "electrolyte_temperature": rules_battery.TEMPERATURE,
        "battery_insulation": rules_battery.INSULATION,
    }
)
