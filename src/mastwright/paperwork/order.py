"""The parts order of a visit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from mastwright.paperwork.compile import compile_paper
from mastwright.paperwork.judgement import check_judgement, paper_of, visit_day

if TYPE_CHECKING:
    from collections.abc import Mapping


def order_pdf(document: Mapping[str, Any]) -> bytes:
    """Return the parts order of a visit as PDF, with a line to fill in for supplier and order number.

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
    return compile_paper("order", paper_of(document), visit_day(document))
