"""The papers of a visit as PDF: report, parts order, out-of-service tag, refusal sheet, shop card."""

from mastwright.paperwork.card import card_pdf
from mastwright.paperwork.judgement import FORMAT, check_judgement
from mastwright.paperwork.labels import labels, languages
from mastwright.paperwork.order import order_pdf
from mastwright.paperwork.papers import papers
from mastwright.paperwork.refusal import refusal_pdf
from mastwright.paperwork.report import report_pdf
from mastwright.paperwork.tag import tag_pdf

__all__ = [
    "FORMAT",
    "card_pdf",
    "check_judgement",
    "labels",
    "languages",
    "order_pdf",
    "papers",
    "refusal_pdf",
    "report_pdf",
    "tag_pdf",
]
