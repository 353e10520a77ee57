"""One judged item of a visit."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from mastwright.checks import Severity
from mastwright.quantity import Limit, Note, Reading
from mastwright.verdict.verdicts import Verdict
from mastwright.visits.visit import Photo


@dataclass(frozen=True)
class JudgedItem:
    """What was judged, against what, and what came of it.

    Parameters
    ----------
    key
        The set's name for chains, the check's id otherwise: what a refusal names.
    kind
        ``elongation``, ``edge-wear``, ``finding``, ``set``, ``strength`` or ``check``.
    name
        What the kind is about: a condition key, a check id, or ''.
    where
        Which strand, which fork; '' where there is one.
    system
        Of ``tables/danger.csv``.
    verdict, own_verdict
        The verdict that stands, and the one of this item alone before the set rule.
    written
        The reading in the technician's own words.
    probability
        Of being over the limit.
    blocks
        Whether the truck must not work because of it.
    by
        Latest date of a replacement or repair.
    order_part
        What to order for it; '' if nothing.
    refused
        Whether the customer said no to it.
    """

    key: str
    kind: str
    name: str
    where: str
    system: str
    verdict: Verdict
    own_verdict: Verdict
    severity: Severity
    written: str = ""
    reading: Reading | None = None
    limit: Limit | None = None
    probability: float | None = None
    reasons: tuple[Note, ...] = ()
    notes: tuple[Note, ...] = ()
    blocks: bool = False
    by: date | None = None
    order_part: str = ""
    refused: bool = False
    free_text: str = ""
    photos: tuple[Photo, ...] = field(default=())


def blocks_work(verdict: Verdict, severity: Severity) -> bool:
    """Tell whether a verdict stops the truck: out of service now, or doubt about something that would be."""
    return verdict is Verdict.WITHDRAW or (
        verdict is Verdict.REMEASURE and severity is Severity.OUT_OF_SERVICE
    )
