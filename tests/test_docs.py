"""What the documents say is what the product does."""

from __future__ import annotations

import argparse
import importlib.util
import json
import re
import shlex
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import mastwright
from mastwright.checks import Check, Measured, TruckFacts, catalogue, read_shop_limits, weigh
from mastwright.cli.main import _parser, main
from mastwright.mast import arrangement
from mastwright.quantity import (
    Field,
    Worse,
    canonical_unit,
    common_instruments,
    own_instruments,
    parse_quantity,
)
from mastwright.verdict import judge_visit
from mastwright.visits import read_visit
from mastwright.visits.form import Form
from mastwright.wording import tell

ROOT = Path(__file__).parents[1]
PRODUCT = Path(mastwright.__file__).parent
PAGES = [ROOT / "README.md", *sorted((ROOT / "docs").glob("*.md"))]
SCHEMAS = sorted((ROOT / "docs" / "schema").glob("*.json"))
TABLES = sorted(path.relative_to(PRODUCT).as_posix() for path in PRODUCT.glob("**/tables/*"))
TEMPLATE = (ROOT / "examples" / "template.toml").read_text("utf-8")


def text_of(path: Path) -> str:
    """Return a page."""
    return path.read_text(encoding="utf-8")


def blocks(path: Path, language: str = "") -> list[str]:
    """Return the fenced blocks of a page in this language."""
    fenced = re.findall(r"^```(\w*)\n(.*?)^```$", text_of(path), re.DOTALL | re.MULTILINE)
    return [body for word, body in fenced if word == language]


# Commands and options.


def commands(parser: argparse.ArgumentParser, name: str = "mastwright") -> Iterator[tuple[str, list[str]]]:
    """Yield every command that does something, with its options."""
    below = [a for a in parser._actions if isinstance(a, argparse._SubParsersAction)]
    options = [max(a.option_strings, key=len) for a in parser._actions if a.option_strings]
    yield name, options
    for action in below:
        for word, inner in action.choices.items():
            yield from commands(inner, f"{name} {word}")


_GROUPS = {"mastwright chain", "mastwright mast"}
COMMANDS = [(name, options) for name, options in commands(_parser()) if name not in _GROUPS]
OPTIONS = sorted({option for _, options in COMMANDS for option in options} - {"--help"})


def test_the_walk_finds_commands_and_options() -> None:
    """The tests below walk something."""
    assert [name.removeprefix("mastwright").strip() for name, _ in COMMANDS] == [
        "", "judge", "chain identify", "chain limits", "chain judge", "mast wear", "mast state",
    ]  # fmt: skip
    assert {"--version", "--out", "--discard-at"} <= set(OPTIONS)


@pytest.mark.parametrize("name", [name for name, _ in COMMANDS])
def test_every_command_is_documented(name: str) -> None:
    """README or a page of docs/ shows the command."""
    assert any(re.search(rf"\b{name}\b", text_of(page)) for page in PAGES)


@pytest.mark.parametrize("option", OPTIONS)
def test_every_option_is_documented(option: str) -> None:
    """README or a page of docs/ names the option, whole."""
    assert any(re.search(rf"(?<![\w-]){option}(?![\w-])", text_of(page)) for page in PAGES)


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_no_option_is_documented_that_is_not_there(page: Path) -> None:
    """A page names no option of `mastwright` that its parser does not know."""
    shown = re.findall(r"^\$? ?mastwright .*$", "\n".join(blocks(page)), re.MULTILINE)
    named = {word for line in shown for word in line.split() if word.startswith("--")}
    assert named <= {*OPTIONS, "--help"}


# README's sessions.


@dataclass(frozen=True)
class Session:
    """A command of the README and what it is said to print; a line `...` stands for any lines."""

    command: tuple[str, ...]
    lines: tuple[str, ...]

    def pattern(self) -> str:
        """Return what the output must match."""
        parts = [".*" if line == "..." else re.escape(line) + "\n" for line in self.lines]
        return "".join(parts)


@cache
def sessions() -> list[Session]:
    """Return every session of the README: a fenced block that begins with `$ mastwright`."""
    found = []
    for block in blocks(ROOT / "README.md"):
        first, *lines = block.splitlines()
        if first.startswith("$ mastwright "):
            found.append(Session(tuple(shlex.split(first)[2:]), tuple(lines)))
    return found


def test_the_readme_has_sessions() -> None:
    """At least one session of each of the commonest jobs."""
    assert {s.command[:2] for s in sessions()} >= {
        ("chain", "identify"),
        ("chain", "limits"),
        ("chain", "judge"),
    }
    assert "judge" in {s.command[0] for s in sessions()}


@pytest.mark.parametrize("session", sessions(), ids=lambda s: " ".join(s.command)[:60])
def test_a_session_prints_what_the_readme_shows(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, session: Session
) -> None:
    """Run from the clone, the command prints those lines."""
    monkeypatch.chdir(ROOT)
    assert main(session.command) == 0
    printed = "".join(f"{line}\n" for line in capsys.readouterr().out.rstrip("\n").splitlines())
    assert any(line != "..." for line in session.lines)
    assert re.fullmatch(session.pattern(), printed, re.DOTALL), printed


def test_the_readmes_library_example_runs() -> None:
    """The Python of the README judges a visit."""
    (example,) = blocks(ROOT / "README.md", "python")
    names: dict[str, Any] = {"text": text_of(ROOT / "examples/visits/2-gas-truck-worn-strand.toml")}
    exec(compile(example, "README.md", "exec"), names)  # noqa: S102  our own page
    assert names["document"]["verdict"] == "withdraw"


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_links_lead_somewhere(page: Path) -> None:
    """Every link of a page to a file of the clone finds it."""
    links = re.findall(r"\]\((?!https?:|#)([^)#]+)", text_of(page))
    assert [link for link in links if not (page.parent / link).exists()] == []


def test_files_named_in_the_readme_are_there() -> None:
    """Paths that README writes as code exist."""
    named = re.findall(r"`((?:src|docs|examples|bench|tests)/[\w./-]*)`", text_of(ROOT / "README.md"))
    assert named
    assert [path for path in named if not (ROOT / path).exists()] == []


# Pages made from tables.


@pytest.mark.parametrize("name", ["checks", "conditions", "sources"])
def test_a_made_page_is_up_to_date(name: str) -> None:
    """The page is what its script makes today; if not, run `python docs/make_....py`."""
    spec = importlib.util.spec_from_file_location(f"make_{name}", ROOT / "docs" / f"make_{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    assert getattr(module, f"{name}_page")() == text_of(ROOT / "docs" / f"{name}.md")


_HAS_SOURCE = re.compile(r"^[^\n]*\bsource\b[^\n]*,|\b(?:source|reference) = \"")
SOURCED = [table for table in TABLES if _HAS_SOURCE.search(text_of(PRODUCT / table))]


@pytest.mark.parametrize("table", SOURCED)
def test_every_table_with_sources_is_in_the_list(table: str) -> None:
    """docs/sources.md names each table file of figures."""
    assert f"## {table}\n" in text_of(ROOT / "docs" / "sources.md")


def test_only_tables_of_words_have_no_source() -> None:
    """A table without sources holds sentences, never a figure to judge by."""
    words = [table for table in TABLES if table not in SOURCED]
    assert words
    assert [table for table in words if not re.search(r"(notes|words|es_checks)", table)] == []


VALUE_ALONE = [c for c in catalogue().values() if c.rule in {"at_most", "at_least"} and c.limit is not None]


@pytest.mark.parametrize("check", VALUE_ALONE, ids=lambda c: c.id)
def test_the_side_of_a_limit_is_the_side_that_is_judged(check: Check) -> None:
    """Where the page says `up to` a higher reading is worse, where it says `from` a lower one."""
    row = next(
        line for line in text_of(ROOT / "docs/checks.md").splitlines() if line.startswith(f"| {check.id} ")
    )
    instrument = common_instruments().find(check.instrument, check.reads)
    value = parse_quantity(f"1 {canonical_unit(check.reads).name}", Field("value", check.reads))
    facts = TruckFacts("counterbalance", "electric")
    outcome = weigh(check, {"value": value}, facts, (), instrument, date(2026, 1, 1))
    assert isinstance(outcome, Measured)
    words = {Worse.HIGHER: ("| up to ", "| below "), Worse.LOWER: ("| from ", "| above ")}
    assert any(word in row for word in words[outcome.limit.worse])


# Schemas.


def test_the_schemas() -> None:
    """One schema for each document that a command prints."""
    assert [p.stem for p in SCHEMAS] == [
        "chain_identify", "chain_judge", "chain_limits", "judgement", "mast_state", "mast_wear", "problems",
    ]  # fmt: skip


def tables(schema: Any) -> Iterator[dict[str, Any]]:
    """Yield every object schema, the outermost first."""
    if isinstance(schema, dict):
        if "properties" in schema:
            yield schema
        for value in schema.values():
            yield from tables(value)


@pytest.mark.parametrize("path", SCHEMAS, ids=lambda p: p.stem)
def test_a_schema_is_one_of_2020_12(path: Path) -> None:
    """Each is a valid schema of the draft it names."""
    schema = json.loads(text_of(path))
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    jsonschema.Draft202012Validator.check_schema(schema)


@pytest.mark.parametrize("path", SCHEMAS, ids=lambda p: p.stem)
def test_every_field_of_a_schema_is_described(path: Path) -> None:
    """Every field has one sentence, every table takes no other field and says which it needs."""
    objects = list(tables(json.loads(text_of(path))))
    assert objects
    for table in objects:
        assert table["additionalProperties"] is False
        assert set(table["required"]) == set(table["properties"])
        assert all(field["description"].strip().endswith(".") for field in table["properties"].values())


@pytest.mark.parametrize("path", SCHEMAS, ids=lambda p: p.stem)
def test_a_field_named_after_a_unit_says_it(path: Path) -> None:
    """A number whose name ends with its unit has the unit in its description."""
    units = {"_mm": "mm", "_percent": "percent", "_kN": "kN", "_lbf": "lbf"}
    for table in tables(json.loads(text_of(path))):
        for name, field in table["properties"].items():
            for ending, unit in units.items():
                assert not name.endswith(ending) or unit in field["description"], name


# The visit file.


def test_the_template_is_a_visit() -> None:
    """Copied as it is, the template reads, judges and tells."""
    document = tell(judge_visit(read_visit(TEMPLATE)))
    assert document["items"]


def test_the_template_with_its_refusal_is_read() -> None:
    """The fields that the template only shows behind a # are accepted too."""
    head, _, refusal = TEMPLATE.rpartition("# [[refusal]]")
    shown = "[[refusal]]" + refusal.replace("\n# ", "\n")
    worn = (head + shown).replace('length = "306.9 mm"', 'length = "314.9 mm"')
    visit = read_visit(worn.replace("# stops_at", "stops_at").replace('stops_at = "2 %"', 'stops_at = "1 %"'))
    assert visit.refusals


def test_the_template_shows_every_field(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every field that a visit may have stands in the template, if only behind a #."""
    asked: set[str] = set()

    def no_more(form: Form) -> None:
        asked.update(form._asked)

    monkeypatch.setattr(Form, "no_more", no_more)
    read_visit(TEMPLATE)
    shown = set(re.findall(r"^(?:# )?(?:\[+(?:\w+\.)?)?(\w+)(?:\]+)?", TEMPLATE, re.MULTILINE))
    named = set(re.findall(r"\b(\w+) =", TEMPLATE))
    assert asked - shown - named == set()


def test_the_limits_and_instruments_of_the_page_are_read() -> None:
    """Both TOML examples of docs/visit-file.md are taken as they stand."""
    examples = blocks(ROOT / "docs" / "visit-file.md", "toml")
    kinds = {next(iter(tomllib.loads(text))): text for text in examples}
    assert set(kinds) == {"limit", "instrument"}
    assert len(read_shop_limits({"page": kinds["limit"]})) == 1
    assert len(own_instruments(kinds["instrument"])) == 1


@pytest.mark.parametrize("letter", "ABCDE")
def test_the_chain_sets_of_a_mast_are_the_programs(letter: str) -> None:
    """docs/visit-file.md names the chain sets that the table of arrangements has, in its order."""
    page = text_of(ROOT / "docs" / "visit-file.md")
    (row,) = re.findall(rf"^\| {letter} \| (.*) \|$", page, re.MULTILINE)
    assert re.findall(r"`([\w-]+)`", row) == [s.name for s in arrangement(letter, "arrangement").sets]
