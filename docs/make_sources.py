"""Write docs/sources.md: every table of the product, each figure with its source and how it is known."""

from __future__ import annotations

import csv
import tomllib
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parent.parent
TABLES = ROOT / "src" / "mastwright"
HEAD = """# Sources

Every figure that mastwright judges by stands in a table beside the code that owns it, with its source and
how it is known; a row without a source does not load. The words mean:

- **read**: read in the page or document named (often an excerpt);
- **as quoted**: a page that was read reports what the standard or regulation says;
- **computed**: follows from other rows;
- **from memory**: remembered, not verified; all minimum strengths of LH/BL chains are of this kind;
- **common practice, no source**: a trade rule or our own judgement;
- **demo data**: invented.

This page is made from the tables by `python docs/make_sources.py`.
"""
_TEXTS = {"source", "evidence", "strength_evidence", "strength_source"}


def sources_page() -> str:
    """Return the page."""
    parts = [HEAD]
    for path in sorted(TABLES.glob("*/tables/*")):
        rows = list(_toml(path) if path.suffix == ".toml" else _csv(path))
        if not rows:
            continue
        parts.append(f"\n## {path.relative_to(TABLES)}\n\n| figure | source | known |\n| --- | --- | --- |")
        parts += [f"| {_cell(names)} | {_cell(source)} | {_cell(known)} |" for names, source, known in rows]
    return "\n".join(parts) + "\n"


def _csv(path: Path) -> Iterator[tuple[str, str, str]]:
    """Give rows of one source together: a table of chains has few sources and many rows."""
    with path.open(encoding="utf-8", newline="") as file:
        table = list(csv.DictReader(file))
    if not table or "source" not in table[0]:
        return
    grouped: dict[tuple[str, str], list[str]] = {}
    for row in table:
        grouped.setdefault((row["source"], _known(row)), []).append(_figure(row))
    for (source, known), names in grouped.items():
        yield "; ".join(names), source, known


def _known(row: dict[str, str]) -> str:
    strength = row.get("strength_evidence")
    return f"{row['evidence']}; minimum strength {strength}" if strength else row["evidence"]


def _figure(row: dict[str, str]) -> str:
    if "designation_iso" in row:
        return " / ".join(d for d in (row["designation_iso"], row["designation_ansi"]) if d)
    name = next(value for value in row.values() if value)
    value = row.get("value") or row.get("limit") or row.get("standard_uncertainty") or row.get("factor") or ""
    unit = row.get("unit") or "" if value and "value" in row else ""
    return " ".join(part for part in (name, "=" if value else "", value, unit) if part)


def _toml(path: Path) -> Iterator[tuple[str, str, str]]:
    yield from _walk((), tomllib.loads(path.read_text(encoding="utf-8")))


def _walk(keys: tuple[str, ...], node: object) -> Iterator[tuple[str, str, str]]:
    if isinstance(node, list):
        for item in node:
            yield from _walk(keys, item)
    if not isinstance(node, dict):
        return
    source = node.get("source") or node.get("reference")
    if isinstance(source, str):
        name = ".".join(keys) + (f" = {node['value']}" if "value" in node else "")
        yield name, source, str(node.get("evidence", ""))
    for key, value in node.items():
        if key not in _TEXTS:
            yield from _walk((*keys, key), value)


def _cell(text: str) -> str:
    return text.replace("|", "\\|").replace("\n", " ")


if __name__ == "__main__":
    (ROOT / "docs" / "sources.md").write_text(sources_page(), encoding="utf-8")
