"""A judged visit on a terminal: the outcome first, then why, what to order, when to come again."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from pathlib import Path

from mastwright.wording import Document, word

_WIDTH = 96


def judge_text(document: Document, written: Iterable[Path]) -> str:
    """Return the judgement document as text.

    Parameters
    ----------
    document
        By `mastwright.wording.tell`.
    written
        The papers' files.
    """
    language = str(document["language"])

    def label(key: str) -> str:
        return word("terminal", key, language)

    visit, truck = _table(document["visit"]), _table(document["truck"])
    due = _table(document["next_visit"])
    who = f"{truck['id']}  {truck['kind']}, {truck['power']}, {truck['hours']}"
    lines = [
        f"{who}  -  {visit['customer']}, {visit['date']}",
        f"== {str(document['outcome_text']).upper()} ==",
    ]
    for reason in _rows(document["reasons"]):
        refused = f" [{label('refused')}]" if reason["refused"] else ""
        by = f" {label('by')} {reason['by']}" if reason["by"] else ""
        lines.append(f"{reason['rank']}. {_what(reason)}: {reason['verdict_text']}{by}{refused}")
        lines += _wrapped([reason["text"], reason["if_ignored"], reason["action"]])
    lines += _order(_rows(document["order"]), label("order"))
    lines.append(f"{label('next')}: {due['by']} - {due['because']}")
    missing = _rows(document["not_looked_at"])
    if missing:
        stopping = sum(bool(m["stops_the_truck"]) for m in missing)
        lines.append(label("not-looked-at").format(count=len(missing), stopping=stopping))
    lines = [part for line in lines for part in textwrap.wrap(line, _WIDTH, subsequent_indent="   ")]
    lines.append("")
    lines += [f"! {c}" for c in _texts(document["cautions"])]
    lines += [f"{label('written')}: {path}" for path in written]
    return "\n".join([*lines, ""])


def _order(rows: list[Document], label: str) -> list[str]:
    told = []
    for row in rows:
        size = f", {row['length_text']}" if row["length_text"] else ""
        told.append(
            f"{label}: {row['quantity']} x {row['what']} {row['designation']}{size} ({row['needed_by']})"
        )
    return told


def _what(reason: Document) -> str:
    item, title = str(reason["item"]), str(reason["title"])
    return item if item.startswith(title) else f"{item} - {title}"


def _wrapped(texts: Iterable[object]) -> list[str]:
    return [f"   {text}" for text in texts if text]


def _table(value: object) -> Document:
    return value if isinstance(value, dict) else {}


def _rows(value: object) -> list[Document]:
    return [v for v in value if isinstance(v, dict)] if isinstance(value, list) else []


def _texts(value: object) -> list[str]:
    return [str(v) for v in value] if isinstance(value, list) else []
