"""From bending to elongation: the wear coefficient, what readings say of it, and its course."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, expm1, log

from mastwright.mast.figures import mast_figure

_STEPS = 4000
_SIDE = 8.0
_ONE_SIGMA = (0.15865525393145707, 0.5, 0.8413447460685429)


@dataclass(frozen=True)
class WearCoefficient:
    """Wear volume per force and way of sliding, pin and plate together, mm³/(N·mm).

    Parameters
    ----------
    median
        As likely too low as too high.
    low, high
        One standard deviation either way: two in three lie between.
    """

    median: float
    low: float
    high: float


@dataclass(frozen=True)
class WearReading:
    """One reading of a strand: what it says, and what bending that span has seen.

    Parameters
    ----------
    elongation
        Since fitting, percent.
    uncertainty
        Standard, percent; above 0.
    per_coefficient
        Elongation in percent that a coefficient of 1 would give the span (`elongation_percent`).
    """

    elongation: float
    uncertainty: float
    per_coefficient: float


def prior_coefficient(*, dry: bool = False) -> WearCoefficient:
    """Return what is taken for the wear coefficient before the chain itself has been read.

    Examples
    --------
    >>> prior_coefficient().median
    1e-08
    """
    median = mast_figure("wear_coefficient") * (mast_figure("dry_factor") if dry else 1)
    spread = mast_figure("wear_spread")
    return WearCoefficient(median, median / spread, median * spread)


def updated_coefficient(prior: WearCoefficient, readings: Sequence[WearReading]) -> WearCoefficient:
    """Return the coefficient after the chain's own readings.

    Log-normal before, normal reading errors; the answer is the median and the one-sigma range.

    **Source**: Bayes' rule on a grid of the logarithm (computed).

    Examples
    --------
    >>> after = updated_coefficient(prior_coefficient(), [WearReading(1.0, 0.05, 0.5e8)])
    >>> round(after.median * 1e8, 2), round(after.high / after.low, 2)
    (1.99, 1.11)
    """
    centre, sigma = log(prior.median), log(prior.high / prior.median)
    steps = [-_SIDE + 2 * _SIDE * i / _STEPS for i in range(_STEPS + 1)]
    logs = [-z * z / 2 + sum(_fit(exp(centre + sigma * z), r) for r in readings) for z in steps]
    top = max(logs)
    weights = [exp(value - top) for value in logs]
    total = sum(weights)
    low, median, high = (exp(centre + sigma * _quantile(steps, weights, p * total)) for p in _ONE_SIGMA)
    return WearCoefficient(median, low, high)


def _fit(coefficient: float, reading: WearReading) -> float:
    return -(((reading.elongation - coefficient * reading.per_coefficient) / reading.uncertainty) ** 2) / 2


def _quantile(steps: list[float], weights: list[float], wanted: float) -> float:
    """Return where the running sum of the weights, each spread about its step, is what is wanted."""
    width = steps[1] - steps[0]
    passed = 0.0
    place = 0
    while passed + weights[place] < wanted:
        passed += weights[place]
        place += 1
    return steps[place] + width * ((wanted - passed) / weights[place] - 0.5)


def elongation_percent(
    weighted: float, angle: float, pitch: float, bearing_width: float, coefficient: float
) -> float:
    """Return the elongation of a joint from its bending under pull, percent.

    Parameters
    ----------
    weighted
        Pull times articulations, summed, N.
    angle
        Of articulation, rad.
    pitch, bearing_width
        mm; the bearing width is plate thickness times number of articulating plates. The pin's
        diameter cancels: a thicker pin slides further under less pressure.
    coefficient
        Wear coefficient, mm³/(N·mm).

    **Source**: wear in proportion to force and way of sliding (computed).

    Examples
    --------
    >>> round(elongation_percent(2 * (11277.65 + 1471.00), 0.333022, 19.05, 13.2, 1e-8), 10)
    1.68837e-05
    """
    return 100 * coefficient * angle / (2 * bearing_width * pitch) * weighted


def pin_pressure(tension: float, pin_diameter: float, bearing_width: float) -> float:
    """Return the mean pressure between pin and articulating plates, N/mm².

    **Source**: force over projected area (computed).

    Examples
    --------
    >>> round(pin_pressure(11277.65, 7.94, 13.2), 2)
    107.6
    """
    return tension / (pin_diameter * bearing_width)


@dataclass(frozen=True)
class WearCourse:
    """How elongation departs from a straight line.

    Parameters
    ----------
    run_in, run_in_over
        Elongation of running in, and the steady wear after which 63 % of it has come, percent; 0 for none.
    case_gone
        Elongation at which the hard case of the pin is worn through, percent; None for never.
    case_factor
        How many times faster it goes from there.
    """

    run_in: float = 0.0
    run_in_over: float = 1.0
    case_gone: float | None = None
    case_factor: float = 1.0

    def elongation(self, steady: float) -> float:
        """Return the elongation where steady wear alone would give this much, percent.

        Examples
        --------
        >>> WearCourse(case_gone=1.75, case_factor=2.0).elongation(2.0)
        2.25
        """
        grown = steady - self.run_in * expm1(-steady / self.run_in_over)
        if self.case_gone is None or grown <= self.case_gone:
            return grown
        return self.case_gone + self.case_factor * (grown - self.case_gone)


def usual_course(pitch: float, pin_share: float) -> WearCourse:
    """Return the usual course: running in, then steady, then faster once the case is through.

    Parameters
    ----------
    pitch
        mm.
    pin_share
        Share of the wear that lies on the pin, above 0 to 1.

    Examples
    --------
    >>> round(usual_course(19.05, 0.9).case_gone or 0, 2)
    1.75
    """
    return WearCourse(
        run_in=mast_figure("run_in_percent"),
        run_in_over=mast_figure("run_in_over_percent"),
        case_gone=100 * mast_figure("case_depth") / (pin_share * pitch),
        case_factor=mast_figure("case_factor"),
    )
