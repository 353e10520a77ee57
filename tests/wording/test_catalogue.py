"""Every remark and word that the product uses is in the catalogue, in both languages."""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from datetime import date
from fractions import Fraction
from importlib import resources
from string import Formatter

import pytest

from mastwright.chains.note import note_sentences
from mastwright.checks import CheckKind, Severity, catalogue
from mastwright.mast.hung_mass import arrangement
from mastwright.quantity import Amount, Evidence, Note, UnitSystem
from mastwright.verdict import Verdict
from mastwright.wording import LANGUAGES, say, word, words_of
from mastwright.wording.catalogue import _NOTE_TABLES, _words, note_texts

from .note_calls import NoteCall, note_calls

CALLS = note_calls()
SENTENCES = [
    *((code, note_texts()[code]) for code in note_texts()),
    *((f"card {code}", texts) for code, texts in note_sentences("card_notes.toml").items()),
]
WORDS = [(group, key) for group, rows in _words().items() for key in rows]


def places(text: str) -> set[str]:
    """Return the places of a sentence."""
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}


def known(call: NoteCall) -> dict[str, dict[str, str]]:
    """Return the sentences among which a remark must be."""
    if call.on_card:
        return note_sentences("card_notes.toml")
    return {code: dict(texts) for code, texts in note_texts().items()}


def test_the_scan_finds_the_remarks() -> None:
    """The scan sees the remarks of every room that makes some, so that the tests below look at something."""
    rooms = {call.file.partition("/")[0] for call in CALLS}
    assert rooms == {"chains", "checks", "verdict"}


@pytest.mark.parametrize("call", CALLS, ids=lambda c: f"{c.file}:{c.line}")
def test_every_remark_is_in_the_catalogue(call: NoteCall) -> None:
    """Each code that a remark may have has a sentence."""
    assert call.codes
    missing = [code for code in call.codes if not any(re.fullmatch(code, one) for one in known(call))]
    assert missing == []


@pytest.mark.parametrize(
    "call", [c for c in CALLS if c.places is not None], ids=lambda c: f"{c.file}:{c.line}"
)
def test_every_place_is_filled(call: NoteCall) -> None:
    """A remark brings what its sentence asks for."""
    texts = known(call)
    literal = {code for other in CALLS if other is not call for code in other.codes}
    meant = {one for code in call.codes for one in texts if re.fullmatch(code, one)} - literal | (
        set(call.codes) & set(texts)
    )
    asked = [places(texts[one]["en"]) for one in meant]
    assert all(wanted <= (call.places or set()) for wanted in asked)


@pytest.mark.parametrize("code", [c for c, _ in SENTENCES])
def test_no_sentence_is_left_over(code: str) -> None:
    """A sentence that no remark uses is none of the catalogue."""
    on_card = code.startswith("card ")
    used = [c for call in CALLS if call.on_card == on_card for c in call.codes]
    assert any(re.fullmatch(one, code.removeprefix("card ")) for one in used)


@pytest.mark.parametrize(("code", "texts"), SENTENCES, ids=[c for c, _ in SENTENCES])
def test_both_languages_have_the_same_places(code: str, texts: dict[str, str]) -> None:
    """English and Spanish show the same figures."""
    assert set(texts) == set(LANGUAGES), code
    assert places(texts["en"]) == places(texts["es"])


@pytest.mark.parametrize(("code", "texts"), SENTENCES, ids=[c for c, _ in SENTENCES])
def test_a_sentence_is_translated(code: str, texts: dict[str, str]) -> None:
    """No sentence is left in the other language."""
    assert texts["en"] != texts["es"], code


def test_no_two_tables_share_a_code() -> None:
    """A code in two tables would take the sentence of the table read last."""
    codes = Counter(
        code
        for package, name in _NOTE_TABLES
        for code in tomllib.loads(
            resources.files(package).joinpath("tables", name).read_text(encoding="utf-8")
        )
    )
    assert [code for code, count in codes.items() if count > 1] == []


@pytest.mark.parametrize(("group", "key"), WORDS)
def test_every_word_has_both_languages(group: str, key: str) -> None:
    """A word has an English and a Spanish text with the same places."""
    row = _words()[group][key]
    assert set(row) == set(LANGUAGES)
    assert all(text.strip() for text in row.values())
    assert places(row["en"]) == places(row["es"])


NEEDED = [
    *(("verdict", str(v)) for v in Verdict),
    *(("severity", str(s)) for s in Severity),
    *(("evidence", str(e)) for e in Evidence),
    *(
        (group, kind)
        for group in ("check", "ignored")
        for kind in ("elongation", "edge-wear", "set", "strength")
    ),
    *(("part", part) for part in sorted({c.order_part for c in catalogue().values() if c.order_part})),
    *(("outcome", key) for key in ("may-work", "may-work-until", "out-of-service")),
    *(("kind", kind) for kind in ("counterbalance", "reach", "stacker", "order-picker", "pallet")),
    *(("power", power) for power in ("electric", "lpg", "petrol", "diesel")),
    *(("origin", origin) for origin in ("marking", "maker", "shank")),
    *(("fluid", fluid) for fluid in ("hydraulic", "steering", "brake", "fuel")),
    *(("set", loading.name) for letter in "ABCDE" for loading in arrangement(letter, "arrangement").sets),
    *(("action", f"elongation-{str(v).replace(' ', '-')}") for v in Verdict if v is not Verdict.FIT),
]


@pytest.mark.parametrize(("group", "key"), sorted(set(NEEDED)))
def test_every_word_that_is_needed_is_there(group: str, key: str) -> None:
    """What the rooms below can hand up has a word; else the reader would see a key."""
    assert key in _words()[group]


def test_a_name_of_the_shops_own_stays() -> None:
    """A chain set that only the shop calls so keeps its name."""
    assert word("set", "side-lift", "es") == "side-lift"


def test_an_unknown_group_is_a_fault() -> None:
    """A group that is not in the table is a fault of ours, not a word."""
    with pytest.raises(KeyError):
        word("no-such-group", "x", "en")


@pytest.mark.parametrize("language", LANGUAGES)
def test_words_of_a_group_keep_the_order_of_the_table(language: str) -> None:
    """The cautions stand in one order in every language, the maker and the law last."""
    first = {"en": "manual, local law", "es": "manual del fabricante, la ley local"}
    cautions = words_of("cautions", language)
    assert len(cautions) == len(_words()["cautions"])
    assert first[language] in cautions[-1]


SAID = [
    ("en", UnitSystem.METRIC, "Plate height 17 mm, clear of the discard height of 15.9 mm."),
    (
        "en",
        UnitSystem.INCH,
        ("Plate height 0.669 in, clear of the discard height of 0.625 in (5/8)."),
    ),
    ("es", UnitSystem.METRIC, "Altura de placa 17 mm, lejos de la de descarte de 15.9 mm."),
    ("es", UnitSystem.INCH, "Altura de placa 0.669 in, lejos de la de descarte de 0.625 in (5/8)."),
]


@pytest.mark.parametrize(("language", "system", "text"), SAID)
def test_a_remark_is_said_in_language_and_units(language: str, system: UnitSystem, text: str) -> None:
    """One remark gives four texts; 17 mm is 0.6693 in, 15.875 mm is 5/8 in."""
    note = Note(
        "edge-fit",
        {"read": Amount(Fraction(17), "length"), "limit": Amount(Fraction("15.875"), "length")},
    )
    assert say(note, language, system) == text


WORD_PLACES = [
    ("strength-information", {"evidence": "from memory"}, "de memoria"),
    ("fork-original-from", {"original": "40 mm", "origin": "maker"}, "los datos del fabricante"),
    ("leak-of-this-fluid", {"fluid": "brake"}, "líquido de frenos"),
    ("due-item", {"item": "free-lift"}, "cadenas de elevación libre"),
]


@pytest.mark.parametrize(("code", "params", "part"), WORD_PLACES, ids=[p[0] for p in WORD_PLACES])
def test_a_word_in_a_place_is_translated(code: str, params: dict[str, str], part: str) -> None:
    """A place that holds a word of ours takes it from the catalogue."""
    assert part in say(Note(code, params), "es", UnitSystem.METRIC)


def test_a_date_and_a_number_are_said_as_they_are() -> None:
    """What is no amount is put in as text."""
    assert "2026-02-03" in say(Note("done-on", {"date": date(2026, 2, 3)}), "en", UnitSystem.METRIC)


def test_a_code_without_sentence_is_a_fault() -> None:
    """An unknown code never passes in silence."""
    with pytest.raises(KeyError):
        say(Note("no-such-remark"), "en", UnitSystem.METRIC)


def test_kinds_of_check_are_all_documented() -> None:
    """The catalogue uses every kind of limit setter at least once, so that none is a dead word."""
    assert {c.kind for c in catalogue().values()} == set(CheckKind)
