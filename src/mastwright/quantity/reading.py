"""A reading: an interval, how it was taken, and how sure it is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from mastwright.quantity.instruments import Instrument
    from mastwright.quantity.parse import Quantity


@dataclass(frozen=True)
class Reading:
    """What an instrument said, as an interval in the dimension's own unit.

    Parameters
    ----------
    value
        As read. For a pass/fail gauge the leg that it passed or stopped at.
    low, high
        The interval that the reading stands for, open (None) on one side for a pass/fail gauge.
    dimension
        A dimension of `mastwright.quantity.units`.
    unit_name
        The unit it was written in.
    instrument
        What it was read with.
    standard_uncertainty
        Of `value`, same unit, graduation and reading included.
    """

    value: Fraction
    low: Fraction | None
    high: Fraction | None
    dimension: str
    unit_name: str
    instrument: Instrument
    standard_uncertainty: float

    @classmethod
    def of(cls, quantity: Quantity, instrument: Instrument) -> Reading:
        """Take a quantity read off an instrument; half a graduation either side is its interval."""
        value = quantity.canonical
        half = instrument.step / 2
        return cls(
            value=value,
            low=value - half,
            high=value + half,
            dimension=quantity.unit.dimension,
            unit_name=quantity.unit.name,
            instrument=instrument,
            standard_uncertainty=instrument.uncertainty_at(value),
        )

    @classmethod
    def exact(cls, value: Fraction, dimension: str, unit_name: str, instrument: Instrument) -> Reading:
        """Take a count, a date or a figure off a plate: no doubt of measurement in it."""
        return cls(value, value, value, dimension, unit_name, instrument, 0.0)
