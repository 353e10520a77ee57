"""`mastwright mast wear`: where the chains of a mast wear, and where to measure them."""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from mastwright.chains.elongation import elongation_figures
from mastwright.chains.strength import standard_gravity
from mastwright.cli.mast_drawing import mast_drawing
from mastwright.cli.mast_file import with_file
from mastwright.cli.mast_options import MastGiven, Options, read_mast
from mastwright.cli.mast_readings import ReadSpan, coefficient_of, read_spans
from mastwright.cli.mast_state_command import cylinder_forces, force_lines
from mastwright.cli.text_file import read_text_file
from mastwright.mast.best_span import MapSpan, best_span, span_at
from mastwright.mast.duty import Duty, described_duty
from mastwright.mast.figures import mast_figure, mast_figures
from mastwright.mast.moves import moves_from_csv, set_moves
from mastwright.mast.state import hung_on, lift_for_stroke
from mastwright.mast.wear_map import WearMap, wear_map
from mastwright.mast.wear_rate import (
    WearCoefficient,
    elongation_percent,
    pin_pressure,
    prior_coefficient,
)
from mastwright.quantity import (
    Amount,
    Instrument,
    Problem,
    UnitSystem,
    common_instruments,
    decimal_text,
)
from mastwright.wording import amount_text, percent_text, word, words_of

_MOST_CYCLES = Fraction(10**9)
_MOST_HIDDEN = Fraction(1000)


def mast_wear(chosen: argparse.Namespace) -> int:
    """Print the wear map of every chain set and the span to measure."""
    chosen = with_file(chosen)
    language = chosen.lang or "en"
    options = Options(chosen)
    parts = _joint(options)
    described = _described(chosen, options)
    readings = read_spans(chosen, options)
    hidden = _hidden(chosen, options)
    given = read_mast(chosen, options)
    for reading in readings:
        given.letter.chain_set(reading.name, "--reading")
    instrument = common_instruments().find(chosen.instrument or "rule", "length", field="--instrument")
    duty = _duty(chosen, given, described)
    document: dict[str, Any] = {
        "arrangement": given.letter.letter,
        "sets": [
            _set_document(chosen, given, number, duty, parts, instrument, readings, hidden)
            for number in range(len(given.letter.sets))
        ],
        **cylinder_forces(given),
        "assumed": [*given.assumed, *map(str, duty.assumed), *_assumed_wear(parts)],
        "cautions": list(words_of("cautions", language)),
    }
    if chosen.svg:
        drawing = mast_drawing(document["sets"], float(given.pitch), language)
        Path(chosen.svg).write_text(drawing, encoding="utf-8")
    if chosen.json:
        print(json.dumps(document, ensure_ascii=False, indent=2))
    else:
        print(_text(document, language, UnitSystem(chosen.units or "metric")))
    return 0


def _hidden(chosen: argparse.Namespace, options: Options) -> int:
    """Return how many pins below the sheave cannot be reached."""
    number = options.value("hidden-pins", "ratio", most=_MOST_HIDDEN) or Fraction(0)
    if number.denominator != 1:
        options.problems.append(Problem("--hidden-pins", chosen.hidden_pins, "a whole number of pins"))
    return int(number)


def _joint(options: Options) -> tuple[float | None, float | None]:
    """Return bearing width and pin diameter, mm, where they were given."""
    lacing, thickness = options.lacing(), options.length("plate-thickness")
    pin = options.length("pin-diameter")
    width = None if lacing is None or thickness is None else float(lacing[1] * thickness)
    return width, None if pin is None else float(pin)


def _described(chosen: argparse.Namespace, options: Options) -> tuple[float, float] | None:
    """Return cycles and lift height of a duty in words, or None if a table of moves was given."""
    if (chosen.moves is None) == (chosen.duty is None):
        options.problems.append(
            Problem("--moves", chosen.moves or "", "a table of moves, or else --duty in plain words")
        )
    if chosen.duty is None:
        return None
    cycles = options.value("cycles", "ratio", most=_MOST_CYCLES, needed="how many storage cycles")
    height = options.value(
        "lift-height",
        "length",
        most=mast_figures()["highest_lift"].value,
        needed="fork height of the highest rack",
    )
    return float(cycles or 0), float(height or 0)


def _duty(chosen: argparse.Namespace, given: MastGiven, described: tuple[float, float] | None) -> Duty:
    if described is None:
        return Duty(moves_from_csv(read_text_file(Path(chosen.moves)), chosen.moves))
    cycles, height = described
    return described_duty(chosen.duty, cycles, float(given.load), height, "--duty")


def _set_document(
    chosen: argparse.Namespace,
    given: MastGiven,
    number: int,
    duty: Duty,
    parts: tuple[float | None, float | None],
    instrument: Instrument,
    readings: Sequence[ReadSpan],
    hidden: int,
) -> dict[str, Any]:
    loading = given.letter.sets[number]
    name = loading.name
    gravity, bend = float(standard_gravity()), given.bend
    moves = set_moves(
        given.elements, name, duty.moves, float(given.free_lift), given.empty, given.strands, gravity
    )
    chart = wear_map(moves, float(given.pitch), bend.wrap, sharp=chosen.sharp)
    limit = float(elongation_figures().discard.at)
    doubt = instrument.uncertainty_at(Fraction(mast_figures()["customary_span"].value))
    customary = max(2, 2 * round(mast_figure("customary_span") / float(given.pitch) / 2))
    pull = {
        key: float(hung_on(given.elements, name, masses)) * gravity / given.strands
        for key, masses in (("loaded", given.loaded), ("empty", given.empty))
    }
    width, pin = parts
    read = [r for r in readings if r.name == name]
    coefficient = (
        prior_coefficient() if width is None else coefficient_of(chart, bend.angle, width, read, instrument)
    )
    return {
        "set": name,
        "title": loading.title_es if chosen.lang == "es" else loading.title_en,
        "wrap_mm": bend.wrap,
        "articulation_deg": bend.angle_deg,
        "strands": given.strands,
        "tension_loaded_n": pull["loaded"],
        "tension_empty_n": pull["empty"],
        "readings": len(read),
        "pin_pressure_mpa": None if not (width and pin) else pin_pressure(pull["loaded"], pin, width),
        "profile": _profile(chart, bend.angle, width, coefficient),
        "peak_elongation": _peak(chart, bend.angle, width, coefficient),
        "best_span": _span(best_span(chart, limit, doubt, hidden), given, name, limit, doubt),
        "customary_span": _span(span_at(chart, 1, customary), given, name, limit, doubt),
        "take_up_mm": chart.take_up * limit / 100,
    }


def _profile(
    chart: WearMap, angle: float, width: float | None, coefficient: WearCoefficient
) -> list[dict[str, float | None]]:
    per_newton = _per_newton(chart, angle, width, coefficient.median)
    return [
        {
            "d_mm": float(d),
            "articulations": float(count),
            "weighted": float(pulled),
            "elongation_percent": None if per_newton is None else float(pulled) * per_newton,
        }
        for d, count, pulled in zip(chart.d, chart.articulations, chart.weighted, strict=True)
    ]


def _per_newton(chart: WearMap, angle: float, width: float | None, coefficient: float) -> float | None:
    return None if width is None else elongation_percent(1, angle, chart.pitch, width, coefficient)


def _peak(
    chart: WearMap, angle: float, width: float | None, coefficient: WearCoefficient
) -> dict[str, float] | None:
    if width is None:
        return None
    peak = float(chart.weighted.max())
    return {
        f"{key}_percent": elongation_percent(peak, angle, chart.pitch, width, value)
        for key, value in (
            ("low", coefficient.low),
            ("median", coefficient.median),
            ("high", coefficient.high),
        )
    }


def _span(
    span: MapSpan | None, given: MastGiven, name: str, limit: float, doubt: float
) -> dict[str, float | int | None] | None:
    if span is None:
        return None
    stroke = span.stroke_past_sheave(given.bend.wrap)
    return {
        "pitches": span.pitches,
        "first_pin": span.first_pin,
        "last_pin": span.last_pin,
        "start_mm": span.start,
        "end_mm": span.end,
        "dilution": span.dilution,
        "miss_probability": span.miss_probability(mast_figure("peak_percent"), limit, doubt),
        "lift_past_sheave_mm": lift_for_stroke(given.elements, name, stroke, float(given.free_lift)),
    }


def _assumed_wear(parts: tuple[float | None, float | None]) -> list[str]:
    names = ["sheave_efficiency", "peak_percent", *(["wear_coefficient", "wear_spread"] if parts[0] else [])]
    return [
        f"{f.meaning}, {float(f.value):g}{'' if f.unit == 'ratio' else f' {f.unit}'}: {f.source}"
        for f in (mast_figures()[name] for name in names)
    ]


def _text(document: dict[str, Any], language: str, system: UnitSystem) -> str:
    lines: list[str] = []
    for entry in document["sets"]:
        shown = {
            "bend": f"{decimal_text(Fraction(entry['articulation_deg']), 1)}°",
            "wrap": _shown(entry["wrap_mm"], "length", system),
            "loaded": _shown(entry["tension_loaded_n"], "force", system),
            "empty": _shown(entry["tension_empty_n"], "force", system),
        }
        lines += [entry["title"], f"  {word('mast', 'chain', language).format(**shown)}"]
        if entry["best_span"] is None:
            lines.append(f"  {word('mast', 'still', language)}")
            continue
        for key in ("best_span", "customary_span"):
            lines.append(f"  {_span_text(entry[key], key, language, system)}")
        take_up = _shown(entry["take_up_mm"], "length", system)
        lines.append(f"  {word('mast', 'take_up', language).format(take_up=take_up)}")
        if entry["peak_elongation"] is not None:
            peak = {k.removesuffix("_percent"): f"{v:.2g} %" for k, v in entry["peak_elongation"].items()}
            key = "peak_read" if entry["readings"] else "peak"
            lines.append(f"  {word('mast', key, language).format(**peak)}")
    return "\n".join([*lines, *force_lines(document, language, system)])


def _span_text(span: dict[str, Any], key: str, language: str, system: UnitSystem) -> str:
    shown = {
        "pitches": span["pitches"],
        "first": span["first_pin"],
        "last": span["last_pin"],
        "share": percent_text(span["dilution"]),
        "miss": percent_text(span["miss_probability"]),
    }
    text = word("mast", key, language).format(**shown)
    if span["lift_past_sheave_mm"] is None:
        return text
    lift = _shown(span["lift_past_sheave_mm"], "length", system)
    return f"{text}; {word('mast', 'past', language).format(lift=lift)}"


def _shown(value: float, dimension: str, system: UnitSystem) -> str:
    return amount_text(Amount(Fraction(value), dimension), system)
