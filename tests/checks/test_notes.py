"""The remarks of the checks: each has its sentence in both languages, with the same places."""

import ast
import inspect
import pkgutil
import tomllib
from importlib import import_module, resources
from string import Formatter

import pytest

from mastwright import checks
from mastwright.checks import NotJudged, TruckFacts, catalogue
from mastwright.quantity import Note

from .answers import FACTS, PAIRS, SIDES
from .weighing import entry, limits

TABLE: dict[str, dict[str, str]] = tomllib.loads(
    resources.files("mastwright.checks").joinpath("tables", "notes.toml").read_text(encoding="utf-8")
)
BARE = TruckFacts("counterbalance", "electric")


def places(sentence: str) -> set[str]:
    """Return the names of the places that are filled in."""
    return {name for _, name, _, _ in Formatter().parse(sentence) if name is not None}


def _note_codes() -> set[str]:
    """Return the codes that stand first in a `Note` in the code of the room."""
    found = set()
    for module in pkgutil.iter_modules(checks.__path__, "mastwright.checks."):
        for node in ast.walk(ast.parse(inspect.getsource(import_module(module.name)))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Note":
                found |= {n.value for n in ast.walk(node.args[0]) if isinstance(n, ast.Constant)}
    return {str(code) for code in found} - {"leak-"}


def _said() -> list[Note]:
    """Return the remarks of a good and a bad entry of every check, with and without the maker's limit."""
    said: list[Note] = []
    for check in catalogue().values():
        takes_limit = check.reads != "ratio" and check.kind != "information"
        side = SIDES.get(check.rule, {"at_most": "10"})
        own = limits(check.id, **side, governs=True) if takes_limit else ()
        for given in PAIRS[check.rule](check):
            for facts in (FACTS, BARE):
                outcome = entry(check.id, given, facts, own)
                said += outcome.notes
                said += [outcome.why] if isinstance(outcome, NotJudged) else []
    said += entry("MST-01", {"value": "30 mm", "time": "5 min", "measured_at": "mast-stages"}).notes
    for found in ("I", "II"):
        said += entry("HYD-01", {"value": found, "fluid": "brake"}).notes
    missing = entry("MST-08", {"value": "1 mm"})
    assert isinstance(missing, NotJudged)
    oddly_rated = TruckFacts(
        "reach", "electric", rated_capacity=FACTS.rated_capacity, load_centre=FACTS.battery_voltage
    )
    return [*said, missing.why, *entry("CAP-05", {}, oddly_rated).notes]


SAID = _said()


@pytest.mark.parametrize("code", sorted(TABLE))
def test_both_languages_have_the_same_places(code: str) -> None:
    """A figure that one language shows, the other shows too."""
    row = TABLE[code]
    assert row["en"].strip()
    assert row["es"].strip()
    assert places(row["en"]) == places(row["es"])


@pytest.mark.parametrize("code", sorted(_note_codes()))
def test_a_remark_in_the_code_has_its_sentence(code: str) -> None:
    """No rule makes a remark that nobody can read."""
    assert code in TABLE


@pytest.mark.parametrize("code", sorted(TABLE))
def test_a_sentence_is_used(code: str) -> None:
    """Every sentence of the table is said by some entry, with just the figures that it has places for."""
    params = [set(note.params) for note in SAID if note.code == code]
    assert params
    assert all(given == places(TABLE[code]["en"]) for given in params)


def test_nothing_is_said_without_a_sentence() -> None:
    """Codes that are put together while weighing stand in the table too."""
    assert {note.code for note in SAID} <= set(TABLE)
