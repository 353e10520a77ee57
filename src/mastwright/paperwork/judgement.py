"""The judgement document that every paper is made from: its shape, and what it means for the papers."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Mapping
from datetime import date
from typing import Any

from mastwright.paperwork.labels import labels
from mastwright.quantity import BadInput, Problem

FORMAT = "mastwright-judgement-1"
VERDICTS = ("fit", "watch", "remeasure", "replace", "withdraw", "not judged")


class _Words(tuple[str, ...]):
    """One of these words."""

    __slots__ = ()


class _OrNull(tuple[Any]):
    """What stands inside, or null."""

    __slots__ = ()


_DAY = "day"
_VERDICT = _Words(VERDICTS)
_MAY_BE_DAY = _OrNull((_DAY,))

_SPAN = {
    "from_pitch": _OrNull((int,)), "pitches": _OrNull((int,)),
    "elongation_percent": float, "uncertainty_percent": float,
    "length_text": str, "text": str, "worst": bool, "verdict": _VERDICT,
}  # fmt: skip
_STRAND = {
    "strand": str, "title": str, "verdict": _VERDICT, "verdict_text": str, "own_verdict": _VERDICT,
    "pitches_total": _OrNull((int,)), "spans": [_SPAN], "edge_wear_text": str, "growth_text": str,
    "conditions": [{"key": str, "title": str}],
}  # fmt: skip
_SHAPE: dict[str, Any] = {
    "format": _Words((FORMAT,)),
    "language": str,
    "units": _Words(("metric", "inch")),
    "program_version": str,
    "visit": {
        "id": str, "date": _DAY, "technician": str, "customer": str, "site": str, "country": str, "note": str,
    },
    "truck": {
        "id": str, "kind": str, "power": str, "serial": str, "model": str, "rated_capacity": str,
        "load_centre": str, "lift_height": str, "hours": str, "environment": str, "mast_arrangement": str,
    },
    "verdict": _VERDICT,
    "verdict_text": str,
    "may_work": bool,
    "may_work_until": _MAY_BE_DAY,
    "outcome_text": str,
    "reasons": [{
        "rank": int, "item": str, "check": str, "verdict": _VERDICT, "verdict_text": str, "text": str,
        "if_ignored": str, "action": str, "refused": bool, "by": _MAY_BE_DAY,
    }],
    "items": [{
        "item": str, "check": str, "title": str, "group": str, "verdict": _VERDICT, "verdict_text": str,
        "own_verdict": _VERDICT, "own_verdict_text": str, "severity": str, "reading": str,
        "uncertainty": str, "limit": str, "limit_source": str, "limit_evidence": str,
        "probability_over_limit": _OrNull((float,)), "probability_text": str, "method": str,
        "reasons": [str], "notes": [str], "action": str, "refused": bool, "by": _MAY_BE_DAY,
        "photos": [{"file": str, "caption": str}],
    }],
    "chains": [{
        "set": str, "title": str, "verdict": _VERDICT, "verdict_text": str, "designation": str,
        "pitch_mm": float, "strands": [_STRAND], "strength": [str], "measured_how": str, "limit_text": str,
        "limit_source": str,
    }],
    "order": [{
        "line": int, "what": str, "designation": str, "detail": str, "quantity": int, "unit": str,
        "length_text": str, "ends": str, "certificate": str, "because": str, "needed_by": str,
    }],
    "refusals": [{
        "item": str, "verdict_text": str, "what": str, "why_it_matters": str, "may_not_do": str,
        "reason_given": str, "initials": str, "by": str, "at": str,
    }],
    "next_visit": {
        "by": _MAY_BE_DAY, "hours_text": str, "because": str, "bounds": [{"text": str, "by": _MAY_BE_DAY}],
    },
    "legal": [{"text": str, "reference": str, "evidence": str}],
    "not_looked_at": [{"id": str, "title": str, "severity": str}],
    "cautions": [str],
    "assumptions": [str],
}  # fmt: skip


def check_judgement(document: Mapping[str, Any]) -> None:
    """Refuse a document that is not a whole judgement, naming every field that is wrong.

    Raises
    ------
    BadInput
        With one problem for each wrong field. Fields beyond the shape are let be.
    """
    problems: list[Problem] = []
    _check(document, _SHAPE, "", problems)
    _check(
        document.get("book_head") if isinstance(document, Mapping) else None,
        _OrNull((str,)),
        "book_head",
        problems,
    )
    if problems:
        raise BadInput(problems)
    labels(document["language"])


def _check(given: Any, shape: Any, field: str, problems: list[Problem]) -> None:
    if isinstance(shape, _OrNull):
        if given is not None and not _fits(given, shape[0]):
            problems.append(_problem(field, given, _right(shape)))
    elif isinstance(shape, dict):
        _check_table(given, shape, field, problems)
    elif isinstance(shape, list):
        if not isinstance(given, (list, tuple)):
            problems.append(_problem(field, given, "a list"))
            return
        for number, one in enumerate(given):
            _check(one, shape[0], f"{field}[{number}]", problems)
    elif not _fits(given, shape):
        problems.append(_problem(field, given, _right(shape)))


def _check_table(given: Any, shape: dict[str, Any], field: str, problems: list[Problem]) -> None:
    if not isinstance(given, Mapping):
        problems.append(_problem(field or "judgement", given, "a table of fields"))
        return
    for key, inner in shape.items():
        name = f"{field}.{key}" if field else key
        if key not in given:
            problems.append(Problem(name, "", f"missing; {_right(inner)} stands here in a judgement"))
        else:
            _check(given[key], inner, name, problems)


def _fits(given: Any, shape: Any) -> bool:
    if isinstance(shape, _Words):
        return given in shape
    if shape == _DAY:
        return _is_day(given)
    if shape is float:
        return isinstance(given, (int, float)) and not isinstance(given, bool) and math.isfinite(given)
    if shape is int:
        return isinstance(given, int) and not isinstance(given, bool)
    if shape is bool:
        return isinstance(given, bool)
    return isinstance(given, str) and not any("\ud800" <= c <= "\udfff" for c in given)


def _is_day(given: Any) -> bool:
    if not isinstance(given, str) or not re.fullmatch(r"\d{4}-\d{2}-\d{2}", given):
        return False
    try:
        date.fromisoformat(given)
    except ValueError:
        return False
    return True


def _right(shape: Any) -> str:
    if isinstance(shape, _OrNull):
        return f"{_right(shape[0])} or null"
    if isinstance(shape, _Words):
        return f"one of {', '.join(shape)}" if len(shape) > 1 else shape[0]
    if isinstance(shape, (dict, list)):
        return "a table of fields" if isinstance(shape, dict) else "a list"
    words = {str: "text", int: "a whole number", float: "a finite number", bool: "true or false"}
    return words.get(shape, "a day such as 2026-12-24")


def _problem(field: str, given: Any, right: str) -> Problem:
    return Problem(field, ascii(given)[:60], right)


def visit_day(document: Mapping[str, Any]) -> date:
    """Return the day of the visit: the date every paper carries."""
    return date.fromisoformat(document["visit"]["date"])


def signal_word(document: Mapping[str, Any]) -> str | None:
    """Return which signal word the outcome needs: danger, warning, caution, or None for a fit truck.

    A truck that may not work is a danger; a reading that is past or may be past its limit, or could not be
    judged, a warning; one that is nearing it, a caution.

    **Source**: the degrees of ANSI Z535.4 and ISO 3864-2 (from memory); which verdict takes which is ours.
    """
    if not document["may_work"]:
        return "danger"
    return {"watch": "caution", "fit": None}.get(document["verdict"], "warning")


def verdict_of(document: Mapping[str, Any], item: str) -> str | None:
    """Return the verdict on one item of the judgement, or None when it names no such item."""
    for one in (*document["items"], *document["reasons"]):
        if one["item"] == item:
            verdict: str = one["verdict"]
            return verdict
    return None


def paper_of(document: Mapping[str, Any]) -> dict[str, Any]:
    """Return what every paper of a visit prints from: the judgement, the words of its language, its units."""
    return {
        "judgement": document,
        "words": labels(document["language"]),
        "language": document["language"],
        "units": document["units"],
    }


def judgement_bytes(document: Mapping[str, Any]) -> bytes:
    """Return the document as JSON, keys in order, for the attachment of the report."""
    return json.dumps(document, ensure_ascii=False, sort_keys=True, indent=1, allow_nan=False).encode()
