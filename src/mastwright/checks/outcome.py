"""What a check comes to before the verdict: measured against a limit, seen, not judged, or information."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from mastwright.quantity import Limit, Note, Reading


@dataclass(frozen=True)
class Measured:
    """A reading and the limit that governs it, in the same unit.

    Parameters
    ----------
    others
        Limits that apply too but are not the tightest.
    as_new
        The value when new, where it is known: it tells how much of the allowance is used up.
    worse_case
        Whether the technician saw the worse case.
    """

    reading: Reading
    limit: Limit
    others: tuple[Limit, ...] = ()
    as_new: Fraction | None = None
    notes: tuple[Note, ...] = ()
    worse_case: bool = False


@dataclass(frozen=True)
class Seen:
    """A pass/fail observation."""

    ok: bool
    worse_case: bool = False
    notes: tuple[Note, ...] = ()


@dataclass(frozen=True)
class NotJudged:
    """A reading that is kept without a verdict, and why."""

    why: Note
    reading: Reading | None = None
    notes: tuple[Note, ...] = ()


@dataclass(frozen=True)
class Information:
    """Figures that help to judge, and are no verdict themselves."""

    notes: tuple[Note, ...]


Outcome = Measured | Seen | NotJudged | Information
