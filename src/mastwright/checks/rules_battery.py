"""Rules for traction batteries: corrected density, spread of cells, voltage, temperature, insulation."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from mastwright.checks.answer import AnswerField
from mastwright.checks.battery import (
    density_at_30,
    density_at_80f,
    mean_cell_voltage,
    needed_insulation,
    open_circuit_voltage,
    spread,
    temperature_limits,
)
from mastwright.checks.case import Case
from mastwright.checks.catalogue import Check
from mastwright.checks.outcome import Information, NotJudged, Outcome
from mastwright.checks.rule import Rule, quantity, value_and
from mastwright.quantity import Amount, Limit, LimitKind, Note, Worse

_WARM = quantity("electrolyte_temperature", "temperature")


def _corrected(case: Case) -> tuple[Fraction, Note]:
    density, warm = case.answers.value("value"), case.answers.value("electrolyte_temperature")
    at_30 = density_at_30(density, warm)
    params = {"at30": Amount(at_30, "density"), "at80f": Amount(density_at_80f(density, warm), "density")}
    return at_30, Note("density-corrected", params)


def _density_corrected(case: Case) -> Outcome:
    return Information((_corrected(case)[1],))


def _density_full(case: Case) -> Outcome:
    at_30, note = _corrected(case)
    lowest = case.answers.optional("lowest")
    shipped = () if lowest is None else (case.limit(lowest, Worse.LOWER),)
    return case.against(case.reading(at_30), shipped, notes=(note,))


def _spread(name: str) -> Callable[[Case], Outcome]:
    def weigh(case: Case) -> Outcome:
        apart = spread(case.answers.values(name))
        one = case.instrument.uncertainty_at(max(case.answers.values(name)))
        return case.against(case.reading(apart, one * 2**0.5), case.shipped(Worse.HIGHER), as_new=Fraction(0))

    return weigh


def _cell_voltage(case: Case) -> Outcome:
    cells = case.answers.whole("cells")
    mean = mean_cell_voltage(case.answers.value("value"), cells)
    doubt = case.instrument.uncertainty_at(case.answers.value("value")) / cells
    return case.against(case.reading(mean, doubt), case.shipped(Worse.LOWER))


def _voltage_density(case: Case) -> Outcome:
    expected = open_circuit_voltage(case.answers.value("density"))
    off = abs(case.answers.value("value") - expected)
    agrees = not any(limit.reached_by(off) for limit in case.shipped(Worse.HIGHER))
    params = {"expected": Amount(expected, "voltage"), "off": Amount(off, "voltage")}
    return Information((Note("voltage-agrees" if agrees else "voltage-disagrees", params),))


def _temperature(case: Case) -> Outcome:
    state = case.answers.text("state")
    figures = temperature_limits()
    sides = {
        "in-use": (("in-use", Worse.HIGHER),),
        "before-charge": (("before-charge", Worse.HIGHER), ("coldest", Worse.LOWER)),
    }
    shipped = tuple(
        Limit(
            figures[name].value,
            "temperature",
            worse,
            LimitKind.STANDARD,
            figures[name].source,
            reached_is_over=worse is Worse.HIGHER,
        )
        for name, worse in sides[state]
    )
    return case.against(case.main(), shipped)


def _insulation(case: Case) -> Outcome:
    given = case.answers.optional("battery_voltage")
    nominal = case.facts.battery_voltage if given is None else given
    if nominal is None:
        return NotJudged(Note("battery-voltage-missing"), case.main())
    return case.against(case.main(), (case.limit(needed_insulation(nominal), Worse.LOWER),))


def _cells(check: Check) -> tuple[AnswerField, ...]:
    return (AnswerField("cells", "quantities", check.reads),)


DENSITY_CORRECTED = Rule(value_and(_WARM), _density_corrected)
DENSITY_FULL = Rule(value_and(_WARM, quantity("lowest", "density", required=False)), _density_full)
DENSITY_SPREAD = Rule(_cells, _spread("cells"))
VOLTAGE_SPREAD = Rule(_cells, _spread("cells"))
CELL_VOLTAGE = Rule(value_and(AnswerField("cells", "whole")), _cell_voltage)
VOLTAGE_DENSITY = Rule(value_and(quantity("density", "density")), _voltage_density)
TEMPERATURE = Rule(
    value_and(AnswerField("state", "choice", choices=("in-use", "before-charge"))), _temperature
)
INSULATION = Rule(value_and(quantity("battery_voltage", "voltage", required=False)), _insulation)
