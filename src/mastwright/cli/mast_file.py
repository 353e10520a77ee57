"""A mast written down once in a file, instead of options at every call."""

from __future__ import annotations

import argparse
import difflib
import tomllib
from pathlib import Path

from mastwright.cli.text_file import read_text_file
from mastwright.quantity import BadInput, Problem

_NOT_OPTIONS = {"command", "mast_file", "json", "svg"}
# One file serves both mast commands: what only the other one asks for is passed over.
_OF_EITHER = {
    "moves", "duty", "cycles", "lift_height", "sharp", "lacing", "plate_thickness", "pin_diameter", "reading",
    "instrument", "hidden_pins", "height",
}  # fmt: skip


def with_file(chosen: argparse.Namespace) -> argparse.Namespace:
    """Return the options with those of the mast file put in where none was given.

    Parameters
    ----------
    chosen
        As parsed; ``mast_file`` names a TOML file whose keys are the options with underscores, for
        example ``arrangement = "C"`` and ``inner_kg = 250``. A path in it is taken from the file's folder.

    Raises
    ------
    BadInput
        With every key that is no option of this command, or holds no plain value.
    """
    if chosen.mast_file is None:
        return chosen
    path = Path(chosen.mast_file)
    text = read_text_file(path)
    try:
        table = tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        raise BadInput(Problem(path.name, "", f"valid TOML: {error}")) from None
    known = sorted(set(vars(chosen)) - _NOT_OPTIONS)
    filled, problems = dict(vars(chosen)), []
    for key, value in table.items():
        if key in _OF_EITHER and key not in known:
            continue
        if key not in known:
            near = difflib.get_close_matches(key, known, 1)
            right = f"did you mean {near[0]!r}?" if near else f"one of {', '.join(known)}"
            problems.append(Problem(f"{path.name}: {key}", str(value), right))
        elif not _fits(value, filled[key]):
            problems.append(Problem(f"{path.name}: {key}", str(value), _wanted(filled[key])))
        elif filled[key] in (None, [], False):
            filled[key] = _taken(key, value, path)
    if problems:
        raise BadInput(problems)
    return argparse.Namespace(**filled)


def _fits(value: object, current: object) -> bool:
    if isinstance(current, bool):
        return isinstance(value, bool)
    if isinstance(current, list):
        return isinstance(value, list) and all(isinstance(v, str) for v in value)
    return isinstance(value, (str, int, float)) and not isinstance(value, bool)


def _wanted(current: object) -> str:
    if isinstance(current, bool):
        return "true or false"
    return "a list of texts" if isinstance(current, list) else "a text or a number"


def _taken(key: str, value: object, path: Path) -> object:
    if isinstance(value, (bool, list)):
        return value
    return str(path.parent / str(value)) if key == "moves" else str(value)
