"""The card of chain lengths to hang up in the shop."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from mastwright.paperwork.compile import compile_paper
from mastwright.paperwork.labels import labels
from mastwright.quantity import BadInput, Problem, UnitSystem

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping
    from datetime import date

_MARKS = ("at_1", "at_2", "at_3")


def card_pdf(
    cards: Iterable[Mapping[str, Any]], day: date, language: str = "en", units: str = "metric"
) -> bytes:
    """Return the shop card of chain lengths as PDF, one row for each pitch and number of pitches.

    Parameters
    ----------
    cards
        One document per chain, as `mastwright.chains.spans.card_document` makes it. Chains of one pitch
        share their rows.
    day
        Printed on the card.
    language, units
        ``en`` or ``es``; ``metric`` (mm, A4) or ``inch`` (inches to 1/64, US letter).

    Raises
    ------
    BadInput
        If there is no card, or the language or units are none of these.
    """
    words = labels(language)
    if units not in tuple(UnitSystem):
        raise BadInput(Problem("units", units, f"one of {', '.join(UnitSystem)}"))
    given = list(cards)
    if not given:
        raise BadInput(Problem("cards", "none", "at least one chain"))
    paper = {
        "words": words,
        "language": language,
        "units": units,
        "pitches": _by_pitch(given, inch=units == UnitSystem.INCH),
        "marks": given[0]["marks"],
        "evidence": sorted({card["evidence"] for card in given}),
    }
    return compile_paper("card", paper, day)


def _by_pitch(cards: list[Mapping[str, Any]], *, inch: bool) -> list[dict[str, Any]]:
    made = []
    for pitch in sorted({card["pitch_mm"] for card in cards}):
        alike = [card for card in cards if card["pitch_mm"] == pitch]
        spans = {span["pitches"]: _span(span, inch=inch) for card in alike for span in card["spans"]}
        made.append(
            {
                "pitch": f"{alike[0]['pitch_in']} in" if inch else f"{pitch:g} mm",
                "plates": _by_plate(alike, inch=inch),
                "spans": [spans[count] for count in sorted(spans)],
            }
        )
    return made


def _span(span: Mapping[str, Any], *, inch: bool) -> dict[str, Any]:
    if inch:
        lengths = {mark: f"{span[f'{mark}_percent_in']} in" for mark in _MARKS}
        return {"pitches": span["pitches"], "new": f"{span['new_in']} in", **lengths}
    lengths = {mark: f"{span[f'{mark}_percent_mm_text']} mm" for mark in _MARKS}
    return {"pitches": span["pitches"], "new": f"{span['new_mm']:g} mm", **lengths}


def _by_plate(cards: list[Mapping[str, Any]], *, inch: bool) -> list[dict[str, str]]:
    """Name the chains of one pitch, those of one plate together with the height at which it is discarded."""
    plates: dict[str, list[str]] = {}
    for card in cards:
        wear = card["edge_wear"]
        least = f"{wear['limit_in']} in" if inch else f"{wear['limit_mm_text']} mm"
        plates.setdefault(least, []).append(card["designation"])
    return [{"least": least, "chains": shared_name(names)} for least, names in plates.items()]


def shared_name(designations: list[str]) -> str:
    """Return several designations in one, what they share said once and the lacings after it.

    Examples
    --------
    >>> shared_name(["LH1222 / BL622", "LH1234 / BL634"])
    'LH12.. / BL6..: 22 34'
    >>> shared_name(["AL522"])
    'AL522'

    Notes
    -----
    **Source**: the last two digits of a designation are its lacing (ASME B29.8, ISO 4347; read).
    """
    lacings: dict[str, list[str]] = {}
    for name in designations:
        stem = " / ".join(f"{part[:-2]}.." for part in name.split(" / "))
        lacings.setdefault(stem, []).append(name)
    return "; ".join(
        names[0] if len(names) == 1 else f"{stem}: {' '.join(name[-2:] for name in names)}"
        for stem, names in lacings.items()
    )
