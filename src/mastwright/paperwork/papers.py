"""The papers that one visit needs."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from mastwright.paperwork.judgement import check_judgement
from mastwright.paperwork.order import order_pdf
from mastwright.paperwork.refusal import refusal_pdf
from mastwright.paperwork.report import report_pdf
from mastwright.paperwork.tag import tag_pdf

if TYPE_CHECKING:
    from collections.abc import Mapping

_LONGEST_NAME = 80


def papers(document: Mapping[str, Any], photo_files: Mapping[str, bytes] | None = None) -> dict[str, bytes]:
    """Return the papers a visit needs, by file name.

    The report always; the order when something is to be ordered; the tag when the truck is out of service;
    the refusal sheet when work was refused.

    Parameters
    ----------
    document
        The judgement document.
    photo_files
        JPEG or PNG pictures by the file names that the document gives.

    Returns
    -------
    dict
        PDFs by names such as ``V-2026-0042-report.pdf``; the visit's id with anything else than letters,
        digits, points, dashes and underscores replaced.

    Raises
    ------
    BadInput
        If the document is no whole judgement, or a picture cannot be printed.
    """
    check_judgement(document)
    name = file_stem(document["visit"]["id"])
    made = {f"{name}-report.pdf": report_pdf(document, photo_files)}
    if document["order"]:
        made[f"{name}-order.pdf"] = order_pdf(document)
    if not document["may_work"]:
        made[f"{name}-tag.pdf"] = tag_pdf(document)
    if document["refusals"]:
        made[f"{name}-refusal.pdf"] = refusal_pdf(document)
    return made


def file_stem(visit_id: str) -> str:
    """Return a visit's id as a file name can carry it on any system.

    Examples
    --------
    >>> file_stem("../2026/07: truck 4")
    '2026-07-truck-4'
    """
    return re.sub(r"[^\w.-]+", "-", visit_id).strip(".-")[:_LONGEST_NAME] or "visit"
