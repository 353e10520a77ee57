"""What the checks need to know of a truck: its kind, power, what is fitted, what its plate says."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

_ENGINES = frozenset({"lpg", "petrol", "diesel"})
_TYRES = frozenset({"cushion-tyres", "pneumatic-tyres"})


@dataclass(frozen=True)
class TruckFacts:
    """The facts that decide which checks apply and against what.

    Parameters
    ----------
    kind
        ``counterbalance``, ``reach``, ``stacker``, ``order-picker`` or ``pallet``.
    power
        ``electric``, ``lpg``, ``petrol`` or ``diesel``.
    fitted
        Equipment by tag, such as ``sideshift`` or ``cushion-tyres``.
    country
        Of the site, two letters or ``other``.
    rated_capacity, load_centre
        Of the plate, kg and mm.
    battery_voltage
        Nominal, V.
    """

    kind: str
    power: str
    fitted: frozenset[str] = frozenset()
    country: str = "other"
    rated_capacity: Fraction | None = None
    load_centre: Fraction | None = None
    battery_voltage: Fraction | None = None

    @property
    def group(self) -> str:
        """The group by which the catalogue says which trucks a check applies to."""
        if self.kind != "counterbalance":
            return self.kind
        return "engine-counterbalance" if self.power in _ENGINES else "electric-counterbalance"

    @property
    def equipment(self) -> frozenset[str]:
        """What is fitted, the fuel included.

        What was not said must not hide a check: a battery truck has lead-acid cells unless it says
        lithium, and a counterbalance truck of unsaid tyres is asked the checks of either kind.
        """
        implied = {self.power}
        if self.power == "electric" and "lithium" not in self.fitted:
            implied.add("lead-acid")
        if self.kind == "counterbalance" and not self.fitted & _TYRES:
            implied |= _TYRES
        return self.fitted | implied
