"""What a PDF shows, read from its content streams: characters with their height on the page."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pikepdf

_HEX = re.compile(rb"<([0-9A-Fa-f]+)>")


@dataclass(frozen=True)
class Shown:
    """One run of text: its page (from 1), its characters, its font size on the page in points, its font."""

    page: int
    text: str
    size: float
    font: Any


def open_pdf(data: bytes) -> pikepdf.Pdf:
    """Open a PDF from its bytes."""
    return pikepdf.open(io.BytesIO(data))


def page_text(data: bytes, page: int | None = None) -> str:
    """Return the characters of a page (or of all) without any spaces, since line ends have none."""
    return "".join(
        re.sub(r"[\s\u200b\u00ad]", "", run.text) for run in runs(open_pdf(data)) if page in {None, run.page}
    )


def runs(pdf: pikepdf.Pdf) -> Iterator[Shown]:
    """Yield every run of text of a PDF in the order it is drawn."""
    for number, page in enumerate(pdf.pages, 1):
        yield from _runs(page.obj, number, pikepdf.Matrix())


def _runs(holder: Any, number: int, outer: pikepdf.Matrix) -> Iterator[Shown]:
    resources = holder.get("/Resources", pikepdf.Dictionary())
    now, kept, text = outer, [], pikepdf.Matrix()
    font, size = None, 0.0
    for operands, operator in pikepdf.parse_content_stream(holder):
        name = str(operator)
        if name == "q":
            kept.append(now)
        elif name == "Q":
            now = kept.pop()
        elif name == "cm":
            now = pikepdf.Matrix(*map(float, operands)) @ now
        elif name == "Tm":
            text = pikepdf.Matrix(*map(float, operands))
        elif name == "Tf":
            font, size = resources["/Font"][str(operands[0])], float(operands[1])
        elif name in {"Tj", "TJ"}:
            parts = operands[0] if name == "TJ" else operands
            codes = b"".join(bytes(part) for part in parts if isinstance(part, pikepdf.String))
            scale = abs((text @ now).d)
            yield Shown(number, _decoded(codes, font), size * scale, font)
        elif name == "Do":
            inner = resources["/XObject"][str(operands[0])]
            if inner.get("/Subtype") == "/Form":
                yield from _runs(inner, number, now)


def _decoded(codes: bytes, font: Any) -> str:
    meaning = _meaning(font["/ToUnicode"].read_bytes())
    pairs = [codes[at : at + 2] for at in range(0, len(codes), 2)]
    return "".join(meaning.get(pair, "") for pair in pairs)


def _meaning(cmap: bytes) -> dict[bytes, str]:
    found: dict[bytes, str] = {}
    for block in re.findall(rb"beginbfchar(.*?)endbfchar", cmap, re.DOTALL):
        codes = [bytes.fromhex(code.decode()) for code in _HEX.findall(block)]
        found.update({code: to.decode("utf-16-be") for code, to in zip(codes[::2], codes[1::2], strict=True)})
    return found
