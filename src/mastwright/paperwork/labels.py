"""The fixed words of the papers, one catalogue per language; what was found comes with the judgement."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib import resources
from typing import Any

from mastwright.quantity import BadInput, Problem


@cache
def languages() -> tuple[str, ...]:
    """Return the languages a paper can be printed in."""
    folder = resources.files("mastwright.paperwork").joinpath("labels")
    return tuple(sorted(f.name.removesuffix(".toml") for f in folder.iterdir() if f.name.endswith(".toml")))


@cache
def labels(language: str) -> dict[str, Any]:
    """Return the fixed words of one language, by section and key.

    Raises
    ------
    BadInput
        If the papers do not speak it.
    """
    if language not in languages():
        raise BadInput(Problem("language", language, f"one of {', '.join(languages())}"))
    text = resources.files("mastwright.paperwork").joinpath("labels", f"{language}.toml").read_text("utf-8")
    return tomllib.loads(text)
