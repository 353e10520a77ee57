"""The tag that is tied to a truck that is out of service."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from mastwright.paperwork.compile import compile_paper
from mastwright.paperwork.judgement import check_judgement, paper_of, visit_day
from mastwright.quantity import BadInput, Problem, read_table

if TYPE_CHECKING:
    from collections.abc import Mapping

_REASON_LONGEST = 260
_TRUCK_LONGEST = 90
_NAME_LONGEST = 40


def tag_pdf(document: Mapping[str, Any]) -> bytes:
    """Return the out-of-service tag of a truck as PDF, A6, one side.

    Its main words are large enough to be read at 2 m; one reason stands on it, the first.

    Parameters
    ----------
    document
        The judgement document.

    Raises
    ------
    BadInput
        If the document is no whole judgement, or the truck may work.

    Notes
    -----
    **Source**: height of letters from ``tables/letters.csv`` (common practice, no source); page ISO 216 A6.
    """
    check_judgement(document)
    if document["may_work"]:
        raise BadInput(Problem("may_work", "true", "false: a truck that may work gets no out-of-service tag"))
    reasons = document["reasons"]
    paper = {
        **paper_of(document),
        "reason": _shortened(_first_reason(document), _REASON_LONGEST),
        "truck": _shortened(document["truck"]["id"], _TRUCK_LONGEST),
        "technician": _shortened(document["visit"]["technician"], _NAME_LONGEST),
        "visit": _shortened(document["visit"]["id"], _NAME_LONGEST),
        "more": len(reasons) > 1,
        "cap_height_mm": main_words_cap_height_mm(),
    }
    return compile_paper("tag", paper, visit_day(document))


def _first_reason(document: Mapping[str, Any]) -> str:
    """Return what the tag says: the item that is most dangerous, and why."""
    if not document["reasons"]:
        return str(document["outcome_text"])
    first = document["reasons"][0]
    return f"{first['item']}: {first['text']}"


@cache
def main_words_cap_height_mm() -> float:
    """Return the least height of the capitals of the tag's main words, in mm."""
    rows = read_table("mastwright.paperwork", "letters.csv")
    return next(float(row["cap_height"]) for row in rows if row["name"] == "tag-main-words")


def _shortened(text: str, longest: int) -> str:
    """Cut a text so that the tag stays one page, at a space where there is one."""
    if len(text) <= longest:
        return text
    kept = text[:longest].rpartition(" ")[0] or text[:longest]
    return f"{kept.rstrip(' ,;:.')} …"
