"""The report of a visit: outcome first, then chains, readings, sources and signatures."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from mastwright.mast.path_drawing import MarkedSpan, WornPiece, draw_path
from mastwright.paperwork.chain_drawing import draw_strand, drawable, elongation_text, last_pitch, span_label
from mastwright.paperwork.compile import check_pictures, compile_paper
from mastwright.paperwork.judgement import (
    VERDICTS,
    check_judgement,
    judgement_bytes,
    paper_of,
    signal_word,
    visit_day,
)
from mastwright.paperwork.labels import labels
from mastwright.quantity import BadInput

if TYPE_CHECKING:
    from collections.abc import Mapping

_PAST_SHEAVE = 1.1


def report_pdf(document: Mapping[str, Any], photo_files: Mapping[str, bytes] | None = None) -> bytes:
    """Return the report of a visit as PDF, A4 for metric shops and US letter for inch shops.

    Parameters
    ----------
    document
        The judgement document; it travels inside the PDF as ``judgement.json``.
    photo_files
        JPEG or PNG pictures by the file names that the document gives. One that is not supplied is
        named in its place.

    Raises
    ------
    BadInput
        If the document is no whole judgement, or a picture cannot be printed.
    """
    check_judgement(document)
    words = labels(document["language"])
    sources = _Sources()
    groups = _groups(document, sources)
    chains, drawings = _chains(document, words, sources)
    pictures, photos = _photos(document, photo_files or {}, words["report"]["photos"])
    paper = {
        **paper_of(document),
        "signal": signal_word(document),
        "counts": _counts(document),
        "groups": groups,
        "chains": chains,
        "photos": photos,
        "sources": sources.listed,
    }
    return compile_paper(
        "report",
        paper,
        visit_day(document),
        drawings=drawings,
        photos=pictures,
        attached=judgement_bytes(document),
    )


class _Sources:
    """The sources in the order they are first met, each with its number."""

    def __init__(self) -> None:
        self.listed: list[dict[str, Any]] = []

    def number(self, text: str, evidence: str) -> int | None:
        """Return the number under which a source is listed, or None where there is no source.

        A source given without evidence is taken to be one already listed under the same text.
        """
        if not text:
            return None
        for source in self.listed:
            if source["text"] == text and evidence in {source["evidence"], ""}:
                found: int = source["number"]
                return found
        self.listed.append({"number": len(self.listed) + 1, "text": text, "evidence": evidence})
        return len(self.listed)


def _counts(document: Mapping[str, Any]) -> list[dict[str, Any]]:
    found = Counter(item["verdict"] for item in document["items"])
    return [{"verdict": verdict, "count": found[verdict]} for verdict in reversed(VERDICTS) if found[verdict]]


def _groups(document: Mapping[str, Any], sources: _Sources) -> list[dict[str, Any]]:
    groups: dict[str, list[dict[str, Any]]] = {}
    for item in document["items"]:
        number = sources.number(item["limit_source"], item["limit_evidence"])
        groups.setdefault(item["group"], []).append({**item, "source": number})
    return [{"title": title, "items": items} for title, items in groups.items()]


def _path(chain: Mapping[str, Any], words: Mapping[str, Any]) -> str:
    """Return the drawn path of a chain set with its wear and the best span, or nothing if not known."""
    wear = chain.get("wear")
    if not wear:
        return ""
    pieces = [WornPiece(p["from_mm"], p["to_mm"], p["wear"]) for p in wear["pieces"]]
    last = wear["first_pin"] + wear["pitches"]
    label = f"{words['path']['pins']} {wear['first_pin']}-{last}"
    # Drawn raised just past the sheave where the mast lifts so far, else at its largest stroke.
    shown = min(wear["clear_stroke_mm"] * _PAST_SHEAVE, wear["longest_stroke_mm"])
    spans = [MarkedSpan(wear["first_pin"], wear["pitches"], label)]
    return draw_path(
        chain["title"],
        wear["pitch_mm"],
        wear["wrap_mm"],
        wear["longest_stroke_mm"],
        shown,
        pieces,
        spans,
        words["path"],
    )


def _chains(
    document: Mapping[str, Any], words: Mapping[str, Any], sources: _Sources
) -> tuple[list[dict[str, Any]], dict[str, str]]:
    chains: list[dict[str, Any]] = []
    drawings: dict[str, str] = {}
    for chain in document["chains"]:
        placed = [drawable(strand) for strand in chain["strands"]]
        last = last_pitch(placed)
        strands = []
        for strand, shown in zip(chain["strands"], placed, strict=True):
            file = f"strand-{len(drawings)}.svg"
            drawings[file] = draw_strand(shown, words, last)
            spoken = [
                f"{s['from_pitch']}-{s['from_pitch'] + s['pitches']}: {span_label(s, words)}"
                for s in shown["spans"]
            ]
            alt = ". ".join([f"{chain['title']}, {strand['title']}, {words['drawing']['axis']}", *spoken])
            seen = [
                _condition(condition, drawings, document["language"]) for condition in strand["conditions"]
            ]
            spans = [{**span, "elongation_text": elongation_text(span)} for span in strand["spans"]]
            strands.append({**strand, "spans": spans, "drawing": file, "alt": alt, "seen": seen})
        path = _path(chain, words)
        if path:
            drawings[f"path-{len(chains)}.svg"] = path
        number = sources.number(chain["limit_source"], chain.get("limit_evidence", ""))
        wear = chain.get("wear")
        said = {"path": f"path-{len(chains)}.svg", "notes": wear["notes"]} if path and wear else None
        chains.append({**chain, "strands": strands, "source": number, "where": said})
    return chains, drawings


def _condition(condition: Mapping[str, Any], drawings: dict[str, str], language: str) -> dict[str, Any]:
    from mastwright.chains.condition_drawings import draw_condition  # noqa: PLC0415  a sound chain needs none

    file = f"condition-{len(drawings)}.svg"
    try:
        drawings[file] = draw_condition(condition["key"], language)
    except BadInput:
        # A document may name a condition that this version has no drawing of; its words still stand.
        return {**condition, "drawing": None}
    return {**condition, "drawing": file}


def _photos(
    document: Mapping[str, Any], photo_files: Mapping[str, bytes], word: str
) -> tuple[dict[str, bytes], list[dict[str, Any]]]:
    named: dict[str, str] = {}
    photos = []
    for item in document["items"]:
        for photo in item["photos"]:
            file = photo["file"]
            if file in photo_files:
                named.setdefault(file, f"photo-{len(named)}")
            photos.append(
                {
                    "picture": named.get(file),
                    "file": file,
                    "caption": photo["caption"],
                    "title": item["title"],
                    "alt": f"{word}: {item['title']}. {photo['caption']}",
                }
            )
    check_pictures({file: photo_files[file] for file in named})
    return {name: photo_files[file] for file, name in named.items()}, photos
