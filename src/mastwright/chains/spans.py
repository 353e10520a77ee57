"""Lengths of a chain over its customary stretches, new and worn: the card that hangs in the shop."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import ceil, floor

from mastwright.chains.edge_wear import EdgeWearLimit, edge_wear_limit
from mastwright.chains.elongation import elongation_figures
from mastwright.chains.note import note_text
from mastwright.chains.standard import LeafChain
from mastwright.quantity import Note, Source, decimal_text, inch_text, read_table, source_of, unit

_NOTES = "card_notes.toml"


@dataclass(frozen=True)
class SpanFigure:
    """A customary stretch (mm) or a mark (percent of growth) with its meaning and source."""

    value: Fraction
    meaning: str
    source: Source


@dataclass(frozen=True)
class SpanCard:
    """Length of so many pitches, mm: new, and grown by each mark."""

    pitches: int
    new: Fraction
    at_1: Fraction
    at_2: Fraction
    at_3: Fraction


@dataclass(frozen=True)
class ShopCard:
    """What a technician needs beside the chain: lengths, edge wear, tolerance when new, warnings.

    Parameters
    ----------
    chain
        The chain.
    spans
        Its customary stretches, shortest first.
    edge_wear
        Plate height at which it is discarded, from the table's largest height.
    new_tolerance
        A new chain may be longer or shorter than nominal by this many percent.
    warnings
        Codes of `card_notes.toml`.
    """

    chain: LeafChain
    spans: tuple[SpanCard, ...]
    edge_wear: EdgeWearLimit
    new_tolerance: Fraction
    warnings: tuple[Note, ...]


@cache
def span_figures() -> dict[str, SpanFigure]:
    """Return the customary stretches and marks by name."""
    return {
        row["name"]: SpanFigure(
            value=Fraction(row["value"]),
            meaning=row["meaning"],
            source=source_of(row["source"], row["evidence"], f"spans.csv {row['name']}"),
        )
        for row in read_table("mastwright.chains", "spans.csv")
    }


def customary_spans(chain: LeafChain) -> tuple[int, ...]:
    """Tell over how many pitches to measure a chain: the even numbers nearest one, two and three feet.

    Parameters
    ----------
    chain
        Its pitch decides; halfway between two even numbers the longer stretch is taken.

    Returns
    -------
    tuple of int
        Distinct even numbers, at least 2, shortest first.

    Source
    ------
    Table `spans.csv`.

    Examples
    --------
    >>> from mastwright.chains.standard import find_chain
    >>> customary_spans(find_chain("BL634"))
    (16, 32, 48)
    """
    stretches = [figure.value for name, figure in span_figures().items() if name.startswith("stretch")]
    return tuple(sorted({max(2, 2 * _nearest(stretch / (2 * chain.pitch))) for stretch in stretches}))


def span_card(chain: LeafChain, pitches: int) -> SpanCard:
    """Tell how long so many pitches of a chain are, new and grown by 1, 2 and 3 percent.

    Examples
    --------
    >>> from mastwright.chains.standard import find_chain
    >>> float(span_card(find_chain("BL634"), 20).at_3)
    392.43
    """
    new = pitches * chain.pitch
    at_1, at_2, at_3 = (new * (1 + span_figures()[f"mark_{n}"].value / 100) for n in (1, 2, 3))
    return SpanCard(pitches, new, at_1, at_2, at_3)


def shop_card(chain: LeafChain) -> ShopCard:
    """Return everything that the shop card of a chain shows."""
    spans = tuple(span_card(chain, pitches) for pitches in customary_spans(chain))
    count = spans[0].pitches
    warnings = [Note("count-pitches", {"pitches": str(count), "pins": str(count + 1)})]
    if span_figures()["stretch_1"].value % chain.pitch:
        warnings.append(Note("not-twelve-inches", {"pitch": inch_text(chain.pitch_in)}))
    warnings.append(Note("even-and-taut"))
    warnings.append(Note("trend-only", {"percent": f"{float(span_figures()['mark_1'].value):g}"}))
    warnings.append(Note("compare-unworn"))
    warnings.append(Note("ask-certificate", {"evidence": str(chain.strength_source.evidence)}))
    if chain.flag:
        warnings.append(Note("row-doubtful", {"flag": chain.flag}))
    warnings.append(Note("maker-first"))
    return ShopCard(
        chain=chain,
        spans=spans,
        edge_wear=edge_wear_limit(None, chain.plate_height_max),
        new_tolerance=elongation_figures().new_tolerance.at,
        warnings=tuple(warnings),
    )


def card_document(card: ShopCard, language: str = "en") -> dict[str, object]:
    """Return a shop card as plain values for JSON and for the printed card.

    Parameters
    ----------
    card
        From `shop_card`.
    language
        `en` or `es`, of the warnings.

    Returns
    -------
    dict
        Lengths in mm unrounded; the texts beside them are rounded to the safe side: a length limit
        down (0.1 mm, 1/64 in), a height limit up (0.01 mm, 0.001 in).
    """
    chain, wear = card.chain, card.edge_wear
    return {
        "designation": chain.name,
        "designation_iso": chain.designation_iso,
        "designation_ansi": chain.designation_ansi,
        "pitch_mm": float(chain.pitch),
        "pitch_in": inch_text(chain.pitch_in),
        "lacing": chain.lacing_text,
        "evidence": str(chain.source.evidence),
        "source": chain.source.text,
        "standard": chain.standard,
        "spans": [_span_document(span, card.new_tolerance) for span in card.spans],
        "marks": [_mark_document(f"mark_{n}") for n in (1, 2, 3)],
        "new_tolerance_percent": float(card.new_tolerance),
        "new_tolerance_source": str(elongation_figures().new_tolerance.source),
        "edge_wear": {
            "plate_height_mm": float(wear.unworn),
            "limit_mm": float(wear.limit.at),
            "limit_mm_text": _up(wear.limit.at, 2),
            "limit_in": _up(unit("in").from_canonical(wear.limit.at), 3),
            "source": str(wear.limit.source),
        },
        "strength": {
            "min_tensile_kN": float(unit("kN").from_canonical(chain.min_tensile)),
            "min_tensile_lbf": float(chain.min_tensile_lbf),
            "evidence": str(chain.strength_source.evidence),
            "source": chain.strength_source.text,
        },
        "warnings": [note_text(note, _NOTES, language) for note in card.warnings],
    }


def _span_document(span: SpanCard, tolerance: Fraction) -> dict[str, object]:
    inch = unit("in")
    document: dict[str, object] = {
        "pitches": span.pitches,
        "pins": span.pitches + 1,
        "new_mm": float(span.new),
        "new_in": inch_text(inch.from_canonical(span.new)),
        "new_tolerance_mm": float(span.new * tolerance / 100),
    }
    for n, length in enumerate((span.at_1, span.at_2, span.at_3), 1):
        document[f"at_{n}_percent_mm"] = float(length)
        document[f"at_{n}_percent_mm_text"] = decimal_text(Fraction(floor(length * 10), 10), 1)
        document[f"at_{n}_percent_in"] = inch_text(inch.from_canonical(length), down=True)
    return document


def _mark_document(name: str) -> dict[str, object]:
    mark = span_figures()[name]
    return {"percent": float(mark.value), "meaning": mark.meaning, "source": str(mark.source)}


def _nearest(value: Fraction) -> int:
    return floor(value + Fraction(1, 2))


def _up(value: Fraction, digits: int) -> str:
    scale = 10**digits
    return decimal_text(Fraction(ceil(value * scale), scale), digits)
