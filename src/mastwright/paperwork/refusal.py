"""The sheet on which a customer signs for refusing work that was advised."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from mastwright.paperwork.compile import compile_paper
from mastwright.paperwork.judgement import check_judgement, paper_of, verdict_of, visit_day

if TYPE_CHECKING:
    from collections.abc import Mapping


def refusal_pdf(document: Mapping[str, Any]) -> bytes:
    """Return the refusal sheet of a visit as PDF: what was refused, what follows, a box for initials each.

    Parameters
    ----------
    document
        The judgement document.

    Raises
    ------
    BadInput
        If the document is no whole judgement.
    """
    check_judgement(document)
    refusals = [{**one, "verdict": verdict_of(document, one["item"])} for one in document["refusals"]]
    paper = {**paper_of(document), "refusals": refusals}
    return compile_paper("refusal", paper, visit_day(document))
