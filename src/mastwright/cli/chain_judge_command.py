"""`mastwright chain judge`: readings of one strand or of a set, judged as a visit would judge them."""

from __future__ import annotations

import argparse
import json
import re
from datetime import date

from mastwright.chains.elongation import elongation_figures
from mastwright.quantity import (
    BadInput,
    Field,
    Problem,
    UnitSystem,
    common_instruments,
    decimal_text,
    parse_quantity,
)
from mastwright.verdict import JudgedItem, JudgedSet, Policy, Verdict, judge_set, shop_policy
from mastwright.visits.form import Form
from mastwright.visits.read_chains import read_chain_sets
from mastwright.visits.visit import ChainSet
from mastwright.wording import percent_text, say, word, words_of

_PLACE = re.compile(r"^chain\[1\]\.(?:(?P<part>span|first)\[(?P<number>\d+)\]\.)?")
_OPTION = {"mean_pitch": "--pitch", "stops_at": "--stops-at", "taut": "--slack"}
_SPAN_FIELDS = {"strand", "pitches", "length"}
_SPAN = re.compile(r"^([A-Za-z0-9-]+):([0-9]{1,6}):(.+)$")


def chain_judge(chosen: argparse.Namespace) -> int:
    """Judge the readings given and print what they come to."""
    system = UnitSystem(chosen.units or "metric")
    policy, chain_set = _read(chosen, system)
    judged = judge_set(chain_set, policy, date.min)
    document = _document(judged, policy, chosen.lang or "en", system)
    print(
        json.dumps(document, ensure_ascii=False, indent=2)
        if chosen.json
        else _text(document, chosen.lang or "en")
    )
    return 0


def _read(chosen: argparse.Namespace, system: UnitSystem) -> tuple[Policy, ChainSet]:
    problems: list[Problem] = []
    policy = shop_policy()
    try:
        policy = _policy(chosen.discard_at)
    except BadInput as bad:
        problems += [Problem("--discard-at", p.given, p.expected) for p in bad.problems]
    try:
        chain_set = _chain_set(chosen, system)
    except BadInput as bad:
        problems += bad.problems
    if problems:
        raise BadInput(problems)
    return policy, chain_set


def _policy(discard_at: str | None) -> Policy:
    if discard_at is None:
        return shop_policy()
    return shop_policy(parse_quantity(discard_at, Field("--discard-at", "percent")).canonical)


def _chain_set(chosen: argparse.Namespace, system: UnitSystem) -> ChainSet:
    """Read the options as the `[[chain]]` table of a visit would be read."""
    spans = [_span_option(s, chosen) for s in chosen.span]
    ways = {
        "pitches": chosen.pitches,
        "length": chosen.length,
        "mean_pitch": chosen.pitch,
        "gauge": chosen.gauge,
        "passes": chosen.passes,
        "stops_at": chosen.stops_at,
    }
    given = {key: value for key, value in ways.items() if value is not None}
    alone = bool(given) or not spans
    if alone:
        first_strand = spans[0]["strand"] if spans else "strand"
        spans.insert(0, {"strand": first_strand, **given, **_manner(chosen)})
    strands = list(dict.fromkeys(str(s["strand"]) for s in spans))
    table: dict[str, object] = {
        "set": "chain",
        "designation": chosen.designation,
        "strands": strands,
        "span": spans,
    }
    if chosen.first_length is not None:
        table["first"] = [
            {
                "strand": strands[0],
                "pitches": chosen.pitches,
                "length": chosen.first_length,
                **_manner(chosen),
            }
        ]
    problems: list[tuple[tuple[str | int, ...], Problem]] = []
    sets = read_chain_sets(Form({"chain": [table]}, (), problems, system), common_instruments())
    if problems:
        raise BadInput([Problem(_option(p.field, alone=alone), p.given, p.expected) for _, p in problems])
    return sets[0]


def _manner(chosen: argparse.Namespace) -> dict[str, object]:
    manner: dict[str, object] = {"taut": not chosen.slack}
    if chosen.instrument:
        manner["instrument"] = chosen.instrument
    return manner


def _span_option(text: str, chosen: argparse.Namespace) -> dict[str, object]:
    match = _SPAN.match(text)
    if not match:
        raise BadInput(Problem("--span", text, "STRAND:PITCHES:LENGTH, as in left:16:'12 1/8 in'"))
    strand, pitches, length = match.groups()
    return {"strand": strand, "pitches": int(pitches), "length": length, **_manner(chosen)}


def _option(field: str, *, alone: bool) -> str:
    """Return the option that a field of the table was given by; `alone` if span 1 has options of its own."""
    place = _PLACE.match(field)
    name = _PLACE.sub("", field)
    if place and place["part"] == "span" and int(place["number"]) > alone and name in _SPAN_FIELDS:
        return "--span"
    if place and place["part"] == "first" and name == "length":
        return "--first-length"
    return _OPTION.get(name, f"--{name.replace('_', '-')}")


def _document(judged: JudgedSet, policy: Policy, language: str, system: UnitSystem) -> dict[str, object]:
    strands = [i for i in judged.items if i.kind == "elongation"]
    governing = max(strands, key=_badness)
    reading = governing.reading
    return {
        "designation": judged.chain_set.chain.name,
        "elongation_percent": None if reading is None else float(reading.value),
        "standard_uncertainty_percent": None if reading is None else reading.standard_uncertainty,
        "probability_over_limit": governing.probability,
        "limit_percent": float(policy.discard.at),
        "limit_source": str(policy.discard.source),
        "verdict": str(judged.verdict),
        "verdict_text": word("verdict", str(judged.verdict), language),
        "replace_within_months": int(elongation_figures().planned_months) if judged.planned else None,
        "reasons": [say(n, language, system) for n in (*governing.reasons, *judged.items[0].reasons)],
        "notes": [say(n, language, system) for n in governing.notes],
        "strands": [_strand(judged, i, language, system) for i in strands],
        "cautions": list(words_of("cautions", language)),
    }


def _badness(item: JudgedItem) -> tuple[int, float]:
    return (
        item.own_verdict.rank if item.own_verdict is not Verdict.NOT_JUDGED else -1,
        item.probability or 0.0,
    )


def _strand(judged: JudgedSet, item: JudgedItem, language: str, system: UnitSystem) -> dict[str, object]:
    growth = judged.growth.get(item.where)
    return {
        "strand": item.where,
        "verdict": str(item.verdict),
        "own_verdict": str(item.own_verdict),
        "elongation_percent": None if item.reading is None else float(item.reading.value),
        "standard_uncertainty_percent": None if item.reading is None else item.reading.standard_uncertainty,
        "probability_over_limit": item.probability,
        "growth_since_fitting_percent": None if growth is None else float(growth.percent),
        "growth_uncertainty_percent": None if growth is None else growth.standard_uncertainty,
        "first_reading_known": growth is not None and growth.from_first_reading,
        "spans": [
            {
                "pitches": s.span.pitches,
                "written": s.span.written,
                "elongation_percent": float(s.span.reading.value),
                "verdict": str(s.verdict),
                "worst": s.worst,
            }
            for s in judged.spans
            if s.span.strand == item.where
        ],
        "reasons": [say(n, language, system) for n in item.reasons],
    }


def _text(document: dict[str, object], language: str) -> str:
    lines = [f"{document['designation']}: {document['verdict_text']}"]
    percent, doubt = document["elongation_percent"], document["standard_uncertainty_percent"]
    probability = document["probability_over_limit"]
    if isinstance(percent, float) and isinstance(doubt, float) and isinstance(probability, float):
        over = word("doubt", "over-limit", language).format(probability=percent_text(probability))
        shown = f"{decimal_text(percent, 2)} % (u = {decimal_text(doubt, 2)} %)"
        lines.append(f"{shown}, {document['limit_percent']:g} %: {over}")
    months = document["replace_within_months"]
    if months is not None:
        lines.append(word("terminal", "within", language).format(months=months))
    for key, mark in (("reasons", "- "), ("notes", "- "), ("cautions", "! ")):
        texts = document[key]
        lines += [f"{mark}{text}" for text in texts] if isinstance(texts, list) else []
    return "\n".join(lines)
