"""`mastwright judge`: visits in, verdicts and papers out."""

from __future__ import annotations

import argparse
import json
from pathlib import Path

from mastwright.checks import NO_LIMITS, ShopLimits, read_shop_limits
from mastwright.cli.text_file import read_text_file
from mastwright.quantity import (
    BadInput,
    Instruments,
    Problem,
    UnitSystem,
    common_instruments,
    own_instruments,
)
from mastwright.verdict import judge_visit
from mastwright.visits import Visit, read_visit
from mastwright.wording import Document, tell

_PICTURES = {".png", ".jpg", ".jpeg"}


def judge(chosen: argparse.Namespace) -> int:
    """Judge each visit file, write its papers where asked, print the outcome."""
    problems: list[Problem] = []
    documents: list[Document] = []
    shared = _shared(chosen)
    seen: set[str] = set()
    for name in chosen.visits:
        try:
            documents.append(_one(Path(name), chosen, *shared, seen))
        except BadInput as bad:
            problems += _of_file(name, bad) if len(chosen.visits) > 1 else bad.problems
    if problems:
        raise BadInput(problems)
    if chosen.json:
        told: object = documents[0] if len(documents) == 1 else documents
        print(json.dumps(told, ensure_ascii=False, indent=2))
    return 0


def _shared(chosen: argparse.Namespace) -> tuple[Instruments, ShopLimits | None]:
    instruments = common_instruments()
    limits = None
    problems: list[Problem] = []
    if chosen.gauges:
        try:
            instruments = instruments.replaced_by(own_instruments(read_text_file(Path(chosen.gauges))))
        except BadInput as bad:
            problems += _of_file(chosen.gauges, bad)
    if chosen.limits:
        try:
            limits = _limits(Path(chosen.limits))
        except BadInput as bad:
            problems += bad.problems
        if limits is NO_LIMITS:  # asked for by name, so their absence must not pass in silence
            problems.append(Problem("--limits", chosen.limits, "a folder with files of limits (*.toml)"))
    if problems:
        raise BadInput(problems)
    return instruments, limits


def _of_file(name: str, bad: BadInput) -> list[Problem]:
    """Say before each problem in which file it is."""
    return [
        Problem(p.field if p.field == name else f"{name}: {p.field}", p.given, p.expected, p.line)
        for p in bad.problems
    ]


def _limits(folder: Path) -> ShopLimits:
    files = sorted(folder.glob("*.toml"))
    return read_shop_limits({f.name: read_text_file(f) for f in files}) if files else NO_LIMITS


def _one(
    path: Path,
    chosen: argparse.Namespace,
    instruments: Instruments,
    limits: ShopLimits | None,
    seen: set[str],
) -> Document:
    problems: list[Problem] = []
    try:
        visit = read_visit(read_text_file(path), instruments)
    except BadInput as bad:
        problems += bad.problems
    if limits is None:
        try:
            limits = _limits(path.parent / "limits")
        except BadInput as bad:
            problems += bad.problems
    if problems or limits is None:
        raise BadInput(problems)
    if chosen.out and visit.id in seen:
        right = "an id of its own: another visit of this call has it, and the papers are named after it"
        raise BadInput(Problem("visit.id", visit.id, right))
    seen.add(visit.id)
    photos = _photos(visit, path.parent)
    language = chosen.lang or visit.language
    system = UnitSystem(chosen.units) if chosen.units else visit.system
    document = tell(judge_visit(visit, limits), language, system)
    written = _papers(document, photos, Path(chosen.out)) if chosen.out else []
    if not chosen.json:
        from mastwright.cli.judge_text import judge_text  # noqa: PLC0415  not needed for JSON

        print(judge_text(document, written))
    return document


def _photos(visit: Visit, folder: Path) -> dict[str, bytes]:
    photos, problems = {}, []
    for name in visit.photo_files:
        path = folder / name
        if path.suffix.lower() not in _PICTURES:
            problems.append(Problem("photo", name, f"a picture: {', '.join(sorted(_PICTURES))}"))
        elif not path.is_file():
            problems.append(Problem("photo", name, f"a file beside the visit file; there is no {path}"))
        else:
            photos[name] = path.read_bytes()
    if problems:
        raise BadInput(problems)
    return photos


def _papers(document: Document, photos: dict[str, bytes], folder: Path) -> list[Path]:
    from mastwright.paperwork import papers  # noqa: PLC0415  typst is needed for papers alone

    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for name, content in papers(document, photos).items():
        path = folder / name
        path.write_bytes(content)
        written.append(path)
    return written
