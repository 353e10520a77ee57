"""`mastwright mast state`: strokes, links on the sheaves and pulls at one fork height."""

from __future__ import annotations

import argparse
import json
from fractions import Fraction
from typing import Any

from mastwright.chains.strength import standard_gravity
from mastwright.cli.mast_file import with_file
from mastwright.cli.mast_options import MastGiven, Options, read_mast
from mastwright.mast.elements import FREE_LIFT, MAIN
from mastwright.mast.figures import mast_figures
from mastwright.mast.state import hung_on, lifted_by, on_sheave, set_stroke
from mastwright.quantity import Amount, UnitSystem
from mastwright.wording import amount_text, word, words_of


def mast_state(chosen: argparse.Namespace) -> int:
    """Print what the mast does at the height given."""
    chosen = with_file(chosen)
    language = chosen.lang or "en"
    options = Options(chosen)
    height = options.value(
        "height",
        "length",
        most=mast_figures()["highest_lift"].value,
        needed="fork height above lowered",
    )
    given = read_mast(chosen, options)
    document = state_document(given, height or Fraction(0), language)
    if chosen.json:
        print(json.dumps(document, ensure_ascii=False, indent=2))
    else:
        print(_text(document, language, UnitSystem(chosen.units or "metric")))
    return 0


def state_document(given: MastGiven, height: Fraction, language: str) -> dict[str, Any]:
    """Return the state of every chain set, and the cylinder forces that hold the load."""
    gravity = standard_gravity()
    sets = []
    for loading in given.letter.sets:
        stroke = set_stroke(given.elements, loading.name, height, given.free_lift)
        first, last = on_sheave(float(stroke), given.bend.wrap)
        hung = hung_on(given.elements, loading.name, given.loaded) * gravity
        sets.append(
            {
                "set": loading.name,
                "title": loading.title_es if language == "es" else loading.title_en,
                "stroke_mm": float(stroke),
                "on_sheave_from_mm": first,
                "on_sheave_to_mm": last,
                "hung_load_n": float(hung),
                "strand_tension_n": float(hung / given.strands),
            }
        )
    return {
        "arrangement": given.letter.letter,
        "height_mm": float(height),
        "sets": sets,
        **cylinder_forces(given),
        "assumed": list(given.assumed),
        "cautions": list(words_of("cautions", language)),
    }


def cylinder_forces(given: MastGiven) -> dict[str, float | None]:
    """Return the force of the main and of the free-lift cylinder, N, or None without one or its masses."""
    gravity = standard_gravity()
    found = {}
    for key, ram in (("cylinder_force_n", MAIN), ("free_lift_cylinder_force_n", FREE_LIFT)):
        mass = lifted_by(given.elements, ram, given.loaded)
        found[key] = None if mass is None else float(mass * gravity)
    return found


def force_lines(document: dict[str, Any], language: str, system: UnitSystem) -> list[str]:
    """Return the lines of the cylinder forces that are known, what was assumed, and the cautions."""
    lines = [
        f"{word('mast', key, language)}: {_shown(document[key], 'force', system)}"
        for key in ("cylinder_force_n", "free_lift_cylinder_force_n")
        if document[key] is not None
    ]
    lines += [f"- {word('terminal', 'assumed', language)}: {text}" for text in document["assumed"]]
    return lines + [f"! {text}" for text in document["cautions"]]


def _text(document: dict[str, Any], language: str, system: UnitSystem) -> str:
    lines = []
    for entry in document["sets"]:
        shown = {
            key: _shown(entry[key], "force" if key.endswith("_n") else "length", system)
            for key in ("stroke_mm", "on_sheave_from_mm", "on_sheave_to_mm", "strand_tension_n")
        }
        lines.append(f"{entry['title']}: {word('mast', 'state', language).format(**shown)}")
    return "\n".join([*lines, *force_lines(document, language, system)])


def _shown(value: float, dimension: str, system: UnitSystem) -> str:
    return amount_text(Amount(Fraction(value), dimension), system)
