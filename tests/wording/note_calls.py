"""Every remark that the product's source makes: its code or codes, and the places that it fills."""

from __future__ import annotations

import ast
import re
from dataclasses import dataclass
from pathlib import Path

import mastwright

SOURCE = Path(mastwright.__file__).parent
_CARD = "chains/spans.py"  # the shop card speaks from a table of its own


@dataclass(frozen=True)
class NoteCall:
    """One `Note(...)` in the source; `places` is None where they are not written out beside the code."""

    file: str
    line: int
    codes: tuple[str, ...]
    places: frozenset[str] | None

    @property
    def on_card(self) -> bool:
        """Whether the shop card says it."""
        return self.file == _CARD


def note_calls() -> list[NoteCall]:
    """Return every call, in the order of the files."""
    return [call for path in sorted(SOURCE.rglob("*.py")) for call in _calls(path)]


def _calls(path: Path) -> list[NoteCall]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    file = path.relative_to(SOURCE).as_posix()
    return [
        NoteCall(file, node.lineno, tuple(_codes(node.args[0], tree)), _places(node))
        for node in ast.walk(tree)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Note"
    ]


def _codes(node: ast.expr, tree: ast.Module) -> list[str]:
    """Return the codes that an expression may have; of an f-string a pattern that its codes match."""
    if isinstance(node, ast.JoinedStr):
        parts = [re.escape(str(p.value)) if isinstance(p, ast.Constant) else ".+" for p in node.values]
        return ["".join(parts)]
    found = []
    for inner in ast.walk(node):
        if isinstance(inner, ast.Constant) and isinstance(inner.value, str):
            found.append(inner.value)
        elif isinstance(inner, ast.Name):
            found += _assigned(inner.id, tree)
    return found


def _assigned(name: str, tree: ast.Module) -> list[str]:
    return [
        inner.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Assign)
        and any(isinstance(t, ast.Name) and t.id == name for t in node.targets)
        for inner in ast.walk(node.value)
        if isinstance(inner, ast.Constant) and isinstance(inner.value, str)
    ]


def _places(node: ast.Call) -> frozenset[str] | None:
    if len(node.args) == 1:
        return frozenset()
    given = node.args[1]
    if not isinstance(given, ast.Dict):
        return None
    return frozenset(str(key.value) for key in given.keys if isinstance(key, ast.Constant))
