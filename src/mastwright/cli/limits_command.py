"""`mastwright chain limits`: the card of a chain's new and worn lengths."""

from __future__ import annotations

import argparse
import json
from datetime import datetime
from pathlib import Path

from mastwright.chains.spans import card_document, shop_card
from mastwright.chains.standard import find_chain
from mastwright.wording import word, words_of


def limits(chosen: argparse.Namespace) -> int:
    """Print the shop card of a chain, and write it as a page to hang up where asked."""
    language = chosen.lang or "en"
    card = card_document(shop_card(find_chain(chosen.designation)), language)
    document = {**card, "cautions": list(words_of("cautions", language))}
    if chosen.pdf:
        from mastwright.paperwork import card_pdf  # noqa: PLC0415  typst is needed for papers alone

        today = datetime.now().astimezone().date()
        Path(chosen.pdf).write_bytes(card_pdf([document], today, language, chosen.units or "metric"))
    if chosen.json:
        print(json.dumps(document, ensure_ascii=False, indent=2))
    else:
        print(_text(document, language, inch=chosen.units == "inch"))
    return 0


def _text(document: dict[str, object], language: str, *, inch: bool) -> str:
    pitch = f"{document['pitch_mm']} mm / {document['pitch_in']} in"
    lines = [f"{document['designation']}  {pitch}, {document['lacing']}"]
    heads = [word("terminal", key, language) for key in ("pitches", "new")]
    lines.append("".join(h.rjust(12) for h in (*heads, "1 %", "2 %", "3 %")))
    spans = document["spans"]
    for span in spans if isinstance(spans, list) else []:
        row = _row(span, inch=inch)
        lines.append("".join(text.rjust(12) for text in row))
    edge = document["edge_wear"]
    if isinstance(edge, dict):
        shown = f"{edge['limit_in']} in" if inch else f"{edge['limit_mm_text']} mm"
        lines.append(f"{word('check', 'edge-wear', language)}: {shown} [{edge['source']}]")
    for key, mark in (("warnings", "- "), ("cautions", "! ")):
        texts = document[key]
        lines += [f"{mark}{text}" for text in texts] if isinstance(texts, list) else []
    return "\n".join(lines)


def _row(span: dict[str, object], *, inch: bool) -> list[str]:
    if inch:
        return [
            str(span["pitches"]),
            *(str(span[k]) for k in ("new_in", *(f"at_{n}_percent_in" for n in (1, 2, 3)))),
        ]
    marks = [str(span[f"at_{n}_percent_mm_text"]) for n in (1, 2, 3)]
    return [str(span["pitches"]), f"{span['new_mm']:.1f}", *marks]
