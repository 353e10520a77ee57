"""A template and its data made into a PDF: the same bytes each time, claiming PDF/A-3a and PDF/UA-1.

What a person wrote reaches typst only as JSON, never as part of a template. The claim is the writer's:
no validator of PDF/A has been run.
"""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Mapping
from datetime import UTC, date, datetime, time
from functools import cache, lru_cache
from importlib import resources
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Any

import fontpkg_atkinson_hyperlegible

from mastwright.paperwork.palette import SIGNAL_COLOURS, VERDICT_COLOURS
from mastwright.quantity import BadInput, Problem

if TYPE_CHECKING:
    import typst

STANDARDS = ["a-3a", "ua-1"]
SUBSTITUTE = "□"
_BREAK = "\u200b"
_LONG_WORD = 20
_BREAK_EVERY = 10
_PROBE = b"""#set document(title: "probe")
#set text(font: "Atkinson Hyperlegible")
#json("paper.json")"""
_PICTURE_PROBE = b"""#set document(title: "probe")
#image("picture", alt: "probe")"""
_PICTURES = (b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n")


def compile_paper(
    template: str,
    paper: Mapping[str, Any],
    day: date,
    *,
    drawings: Mapping[str, str] | None = None,
    photos: Mapping[str, bytes] | None = None,
    attached: bytes | None = None,
) -> bytes:
    """Return one paper as PDF.

    Parameters
    ----------
    template
        Its name, for example ``report``.
    paper
        All that it prints. Characters that no typeface at hand has are shown as □.
    day
        Printed into the document's properties in place of the clock.
    drawings
        SVG texts by the name the template knows them under.
    photos
        JPEG or PNG pictures by the name the template knows them under.
    attached
        JSON to travel inside the PDF.

    Returns
    -------
    bytes
        The PDF: equal bytes for equal input.
    """
    shown, lacking = shown_text({**paper, "day": [day.year, day.month, day.day]})
    shown["lacking"] = lacking
    shown["colours"] = {
        "verdict": VERDICT_COLOURS,
        "signal": {word: list(pair) for word, pair in SIGNAL_COLOURS.items()},
    }
    files: dict[str, bytes] = {
        "style.typ": _template("style"),
        "paper.json": json.dumps(shown).encode(),
        **{name: text.encode() for name, text in (drawings or {}).items()},
    }
    if attached is not None:
        files["judgement.json"] = attached
    return _compile(_template(template), files, day, photos or {})


def check_pictures(pictures: Mapping[str, bytes]) -> None:
    """Refuse pictures that cannot be printed.

    Raises
    ------
    BadInput
        Naming each file that is no JPEG or PNG that can be read.
    """
    problems = [
        Problem(f"photo {name}", f"{len(data)} bytes", "a JPEG or PNG picture that can be read")
        for name, data in pictures.items()
        if not (data.startswith(_PICTURES) and _compiles(_PICTURE_PROBE, {}, {"picture": data}))
    ]
    if problems:
        raise BadInput(problems)


def shown_text(given: Any) -> tuple[Any, bool]:
    """Return texts as they can be printed, and whether a character had to give way.

    Controls, line breaks and marks of writing direction become spaces or vanish, words longer than a
    column may break, and what no typeface has becomes □.
    """
    seen: set[str] = set()
    _collect(given, seen)
    odd = {c for c in seen if not c.isascii()}
    missing = _missing("".join(sorted(c for c in odd if unicodedata.category(c)[0] not in "CZ")))
    missing |= {c for c in odd if unicodedata.category(c) in {"Co", "Cn", "Cs"}}
    table: dict[int, str] = {ord(c): SUBSTITUTE for c in missing}
    for c in seen - missing:
        if c.isspace() or unicodedata.category(c) == "Cc":
            table[ord(c)] = "\u00a0" if c in "\u00a0\u202f" else " "
        elif unicodedata.category(c) == "Cf":
            table[ord(c)] = ""
    return _tidied(given, table), bool(missing)


def _collect(given: Any, seen: set[str]) -> None:
    if isinstance(given, str):
        seen.update(unicodedata.normalize("NFC", given))
    elif isinstance(given, Mapping):
        for value in given.values():
            _collect(value, seen)
    elif isinstance(given, (list, tuple)):
        for value in given:
            _collect(value, seen)


def _tidied(given: Any, table: dict[int, str]) -> Any:
    if isinstance(given, str):
        words = unicodedata.normalize("NFC", given).translate(table).split(" ")
        return " ".join(_breakable(word) for word in words).strip()
    if isinstance(given, Mapping):
        return {key: _tidied(value, table) for key, value in given.items()}
    if isinstance(given, (list, tuple)):
        return [_tidied(value, table) for value in given]
    return given


def _breakable(word: str) -> str:
    if len(word) <= _LONG_WORD:
        return word
    return _BREAK.join(word[at : at + _BREAK_EVERY] for at in range(0, len(word), _BREAK_EVERY))


@lru_cache(maxsize=256)
def _missing(chars: str) -> frozenset[str]:
    # Asking typst is surer than reading the typefaces: it is the one that refuses.
    if not chars or _compiles(_PROBE, {"paper.json": json.dumps(" ".join(chars)).encode()}):
        return frozenset()
    if len(chars) == 1:
        return frozenset(chars)
    half = len(chars) // 2
    return _missing(chars[:half]) | _missing(chars[half:])


def _compiles(template: bytes, files: Mapping[str, bytes], photos: Mapping[str, bytes] | None = None) -> bool:
    import typst  # noqa: PLC0415  only papers need it, and every command would wait for it

    try:
        _compile(template, files, date(2000, 1, 1), photos or {})
    except typst.TypstError:
        return False
    return True


def _compile(template: bytes, files: Mapping[str, bytes], day: date, photos: Mapping[str, bytes]) -> bytes:
    import typst  # noqa: PLC0415  only papers need it, and every command would wait for it

    # typst takes texts from memory but pictures only from a folder, which lives as long as this call.
    with TemporaryDirectory(prefix="mastwright-") as folder:
        for name, data in photos.items():
            Path(folder, name).write_bytes(data)
        # Its type stub leaves out that a mapping of names to texts is taken too.
        virtual: Any = {"main.typ": template, **files}
        made: bytes = typst.compile(
            virtual,
            root=folder,
            font_paths=_fonts(),
            pdf_standards=list(STANDARDS),  # type: ignore[arg-type]  # a list of its literal words
            timestamp=datetime.combine(day, time(), UTC),
        )
    return made


@cache
def _fonts() -> typst.Fonts:
    import typst  # noqa: PLC0415  only papers need it, and every command would wait for it

    folder = resources.files(fontpkg_atkinson_hyperlegible).joinpath("files")
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=True, font_paths=[str(folder)])


@cache
def _template(name: str) -> bytes:
    return resources.files("mastwright.paperwork").joinpath("templates", f"{name}.typ").read_bytes()
