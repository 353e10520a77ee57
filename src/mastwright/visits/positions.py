"""On which line of a TOML text each key stands, for messages about it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tree_sitter import Node

Path = tuple[str | int, ...]

_KEYS = {"bare_key", "quoted_key", "dotted_key"}


def key_lines(text: str) -> dict[Path, int]:
    r"""Return the line (from 1) of every table, array element and key, by path.

    Parameters
    ----------
    text
        TOML that has already been parsed without error.

    Examples
    --------
    >>> key_lines('[[span]]\npitches = 16\n')[("span", 0, "pitches")]
    2
    """
    import tree_sitter_toml  # noqa: PLC0415  needed for a faulty file alone
    from tree_sitter import Language, Parser  # noqa: PLC0415

    root = Parser(Language(tree_sitter_toml.language())).parse(text.encode()).root_node
    lines: dict[Path, int] = {}
    if root.has_error:  # a newer TOML than the grammar knows: better no line than a wrong one
        return lines
    arrays: dict[Path, int] = {}
    for node in root.named_children:
        if node.type == "pair":
            lines.update(_pair(node, ()))
        elif node.type in {"table", "table_array_element"}:
            path = _resolve(_key(node.named_children[0]), arrays, grows=node.type == "table_array_element")
            lines.setdefault(path, node.start_point[0] + 1)
            for child in node.named_children[1:]:
                if child.type == "pair":
                    lines.update(_pair(child, path))
    return lines


def _resolve(keys: tuple[str, ...], arrays: dict[Path, int], *, grows: bool) -> Path:
    """Turn the header's keys into a path with the index of each array of tables it runs through."""
    path: Path = ()
    for place, key in enumerate(keys):
        path = (*path, key)
        if grows and place == len(keys) - 1:
            arrays[path] = arrays.get(path, -1) + 1
        if path in arrays:
            path = (*path, arrays[path])
    return path


def _pair(node: Node, above: Path) -> Iterator[tuple[Path, int]]:
    key, value = node.named_children[0], node.named_children[-1]
    path = (*above, *_key(key))
    yield path, node.start_point[0] + 1
    yield from _inside(value, path)


def _inside(value: Node, path: Path) -> Iterator[tuple[Path, int]]:
    if value.type == "inline_table":
        for child in value.named_children:
            yield from _pair(child, path)
    elif value.type == "array":
        for index, child in enumerate(c for c in value.named_children if c.type != "comment"):
            yield (*path, index), child.start_point[0] + 1
            yield from _inside(child, (*path, index))


def _key(node: Node) -> tuple[str, ...]:
    if node.type == "dotted_key":
        return tuple(part for child in node.named_children if child.type in _KEYS for part in _key(child))
    text = (node.text or b"").decode()
    return (text.strip("\"'"),)
