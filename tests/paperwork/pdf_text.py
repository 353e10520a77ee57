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
        yield from _Reader(number, pikepdf.Matrix()).read(page.obj)


class _Reader:
    """Follows one content stream: where it draws, in which font, and what is said in place of glyphs."""

    def __init__(self, page: int, place: pikepdf.Matrix) -> None:
        self._page = page
        self._place = place
        self._kept: list[pikepdf.Matrix] = []
        self._line = pikepdf.Matrix()
        self._font: Any = None
        self._size = 0.0
        self._instead: list[str | None] = []

    def read(self, holder: Any) -> Iterator[Shown]:
        """Yield the runs of text of a page or form."""
        resources = holder.get("/Resources", pikepdf.Dictionary())
        for instruction in pikepdf.parse_content_stream(holder):
            operands: Any = instruction.operands
            name = str(instruction.operator)
            if name in {"Tj", "TJ"}:
                yield self._shown(operands[0] if name == "TJ" else operands)
            elif name == "Do":
                inner = resources["/XObject"][str(operands[0])]
                if inner.get("/Subtype") == "/Form":
                    yield from _Reader(self._page, self._place).read(inner)
            elif name == "Tf":
                self._font, self._size = resources["/Font"][str(operands[0])], float(operands[1])
            elif name in {"BDC", "BMC", "EMC"}:
                self._mark(name, operands)
            else:
                self._move(name, operands)

    def _shown(self, parts: Any) -> Shown:
        codes = b"".join(bytes(part) for part in parts if isinstance(part, pikepdf.String))
        instead = next((words for words in reversed(self._instead) if words is not None), None)
        text = _decoded(codes, self._font) if instead is None else instead
        return Shown(self._page, text, self._size * abs((self._line @ self._place).d), self._font)

    def _mark(self, name: str, operands: Any) -> None:
        if name == "EMC":
            self._instead.pop()
            return
        marks = operands[1] if name == "BDC" else None
        spoken = marks.get("/ActualText") if isinstance(marks, pikepdf.Dictionary) else None
        self._instead.append(None if spoken is None else str(spoken))

    def _move(self, name: str, operands: Any) -> None:
        if name == "q":
            self._kept.append(self._place)
        elif name == "Q":
            self._place = self._kept.pop()
        elif name == "cm":
            self._place = pikepdf.Matrix(*map(float, operands)) @ self._place
        elif name == "Tm":
            self._line = pikepdf.Matrix(*map(float, operands))


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
