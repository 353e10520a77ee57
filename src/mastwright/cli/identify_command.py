"""`mastwright chain identify`: which chains it may be, and what would tell."""

from __future__ import annotations

import argparse
import json
import re

from mastwright.chains.identify import Identification, Observed, identification_document
from mastwright.chains.identify import identify as identify_chain
from mastwright.chains.standard import leaf_chains
from mastwright.quantity import (
    BadInput,
    Field,
    Instrument,
    Problem,
    Reading,
    UnitSystem,
    common_instruments,
    parse_quantity,
)
from mastwright.wording import percent_text, say, word, words_of

_LACING = re.compile(r"^\s*(\d)\s*[xX×]\s*(\d)\s*$")
_SHOWN = 12


def identify(chosen: argparse.Namespace) -> int:
    """Print the ranked candidates and the one to assume."""
    result = identify_chain(_observed(chosen), leaf_chains())
    language = chosen.lang or "en"
    system = UnitSystem(chosen.units or "metric")
    document = identification_document(result)
    document["separate_by_text"] = [say(n, language, system) for n in result.separate_by]
    document["notes_text"] = [say(n, language, system) for n in result.notes]
    document["cautions"] = list(words_of("cautions", language))
    print(
        json.dumps(document, ensure_ascii=False, indent=2)
        if chosen.json
        else _text(document, result, language)
    )
    return 0


def _observed(chosen: argparse.Namespace) -> Observed:
    problems: list[Problem] = []
    instrument = common_instruments().find(chosen.instrument, "length", field="--instrument")
    system = UnitSystem(chosen.units or "metric")

    def read(name: str) -> Reading | None:
        text = getattr(chosen, name)
        return (
            None
            if text is None
            else _reading(text, f"--{name.replace('_', '-')}", instrument, system, problems)
        )

    if chosen.pitch is not None and chosen.length is not None:
        problems.append(Problem("--pitch", chosen.pitch, "either --pitch, or --length with --pitches"))
    if chosen.pitches is not None and chosen.length is None:
        problems.append(Problem("--pitches", str(chosen.pitches), "only with --length; --pitch is one pitch"))
    if chosen.length is not None and chosen.pitches is None:
        problems.append(Problem("--pitches", "", "how many pitches --length was measured over"))
    parts = {
        name: read(name) for name in ("pitch", "length", "plate_height", "plate_thickness", "pin_diameter")
    }
    lacing = _lacing(chosen.lacing, problems)
    if problems:
        raise BadInput(problems)
    return Observed(
        length=parts["length"] or parts["pitch"],
        pitches=chosen.pitches if parts["length"] is not None else 1,
        plate_height=parts["plate_height"],
        plate_thickness=parts["plate_thickness"],
        pin_diameter=parts["pin_diameter"],
        lacing=lacing,
        marking=chosen.marking or "",
        worn=False if chosen.unworn else True if chosen.worn else None,
    )


def _reading(
    text: str, name: str, instrument: Instrument, system: UnitSystem, problems: list[Problem]
) -> Reading | None:
    try:
        return Reading.of(parse_quantity(text, Field(name, "length", system)), instrument)
    except BadInput as bad:
        problems += bad.problems
        return None


def _lacing(text: str | None, problems: list[Problem]) -> tuple[int, int] | None:
    if text is None:
        return None
    match = _LACING.match(text)
    if match is None:
        problems.append(Problem("--lacing", text, "plates in the outer and in the inner pitch, as 3x4"))
        return None
    return int(match[1]), int(match[2])


def _text(document: dict[str, object], result: Identification, language: str) -> str:
    lines = [f"{percent_text(c.probability).rjust(8)}  {c.chain.name}" for c in result.candidates[:_SHOWN]]
    if result.assumed is not None:
        lines.append(f"{word('terminal', 'assumed', language)}: {result.assumed.name}")
    for key, mark in (("separate_by_text", "- "), ("notes_text", "- "), ("cautions", "! ")):
        texts = document[key]
        lines += [f"{mark}{text}" for text in texts] if isinstance(texts, list) else []
    return "\n".join(lines)
