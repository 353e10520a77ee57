"""Runs the command in this process, and looks at what it says."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from mastwright.cli.main import main

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples" / "visits"
VISITS = sorted(EXAMPLES.glob("*.toml"))


@dataclass(frozen=True)
class Answer:
    """Exit status, and what went to each stream."""

    status: int
    out: str
    err: str

    @property
    def document(self) -> Any:  # Any: what the command printed as JSON
        """Return what was printed, read as JSON."""
        return json.loads(self.out)

    @property
    def fields(self) -> list[str]:
        """Return the fields that are told to be wrong."""
        return [str(p["field"]) for p in self.document["problems"]]


def call(capsys: pytest.CaptureFixture[str], *arguments: object) -> Answer:
    """Run one command; an argument may be a path."""
    status = main([str(a) for a in arguments])
    streams = capsys.readouterr()
    return Answer(status, streams.out, streams.err)
