"""The visits that ship as examples, and the template, can all be read."""

from __future__ import annotations

from pathlib import Path

import pytest

from mastwright.visits import read_visit

EXAMPLES = Path(__file__).parents[2] / "examples"
FILES = [EXAMPLES / "template.toml", *sorted((EXAMPLES / "visits").glob("*.toml"))]


@pytest.mark.parametrize("file", FILES, ids=lambda f: f.stem)
def test_an_example_reads(file: Path) -> None:
    """Every example is a visit with something on it."""
    visit = read_visit(file.read_text(encoding="utf-8"))
    assert visit.chains or visit.checks


@pytest.mark.parametrize("file", FILES, ids=lambda f: f.stem)
def test_an_example_is_of_an_invented_truck(file: Path) -> None:
    """Every example says that its data are invented, or is the template."""
    assert "demo data" in file.read_text(encoding="utf-8") or file.stem == "template"


def test_there_are_examples() -> None:
    """The list above is not empty, so that the tests of it cannot pass on nothing."""
    assert len(FILES) >= 7


@pytest.mark.parametrize("file", FILES, ids=lambda f: f.stem)
def test_a_photo_of_an_example_is_there(file: Path) -> None:
    """Every photo that an example names lies beside it."""
    visit = read_visit(file.read_text(encoding="utf-8"))
    assert [p for p in visit.photo_files if not (file.parent / p).is_file()] == []
