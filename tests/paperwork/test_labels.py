"""The catalogues of fixed words."""

from __future__ import annotations

import re
import tomllib
from importlib import resources
from typing import Any

import pytest

from mastwright.paperwork import languages
from mastwright.paperwork.judgement import VERDICTS
from mastwright.paperwork.labels import labels
from mastwright.quantity import BadInput


def keys(given: dict[str, Any]) -> set[str]:
    """Return section and key of every label."""
    return {f"{section}.{key}" for section, words in given.items() for key in words}


def test_english_and_spanish_are_there() -> None:
    """Both languages of the papers ship."""
    assert languages() == ("en", "es")


def test_all_languages_have_the_same_keys() -> None:
    """A label of one language stands in every other."""
    for language in languages():
        assert keys(labels(language)) == keys(labels("en"))


def test_no_label_is_empty_or_left_in_english() -> None:
    """Every label says something, and Spanish says it in Spanish."""
    english, spanish = labels("en"), labels("es")
    same = set()
    for section, words in english.items():
        for key, word in words.items():
            assert word
            assert spanish[section][key]
            if word == spanish[section][key]:
                same.add(f"{section}.{key}")
    assert same == {"card.at_1", "card.at_2", "card.at_3"}


def test_every_verdict_and_signal_word_is_named() -> None:
    """Verdicts and signal words are complete."""
    assert set(labels("es")["verdict"]) == set(VERDICTS)
    assert set(labels("es")["signal"]) == {"danger", "warning", "caution"}


PAPERS = ("report", "order", "tag", "refusal", "card")


def printed_labels() -> set[str]:
    """Return section and key of every label that a template or drawing asks for."""
    folder = resources.files("mastwright.paperwork")
    templates = {
        f.name.removesuffix(".typ"): f.read_text("utf-8") for f in folder.joinpath("templates").iterdir()
    }
    found = {f"{name}.{key}" for name in PAPERS for key in re.findall(r"\bw\.(\w+)", templates[name])}
    everywhere = "".join(templates.values())
    found |= {f"common.{key}" for key in re.findall(r"\bcommon\.(\w+)", everywhere)}
    found |= {".".join(pair) for pair in re.findall(r"\bwords\.(\w+)\.(?!at\b)(\w+)", everywhere)}
    for name in ("report.py", "chain_drawing.py"):
        code = folder.joinpath(name).read_text("utf-8")
        found |= {".".join(pair) for pair in re.findall(r"words\[[\"'](\w+)[\"']\]\[[\"'](\w+)[\"']\]", code)}
    return found


def test_every_label_is_printed_and_no_other() -> None:
    """A heading that no paper prints, or that no catalogue has, is found here."""
    # Handed over whole: the verdict and signal words, and those of the drawn chain path.
    whole = ("verdict", "signal", "path")
    looked_up = {f"{section}.{key}" for section in whole for key in labels("en")[section]}
    assert printed_labels() | looked_up == keys(labels("en"))


def test_unknown_language_is_refused() -> None:
    """A language the papers do not speak is refused, with those they do."""
    with pytest.raises(BadInput, match="'de' given; one of en, es"):
        labels("de")


def test_catalogues_hold_each_key_once() -> None:
    """The files are valid: a key given twice would not load."""
    for language in languages():
        text = (
            resources.files("mastwright.paperwork").joinpath("labels", f"{language}.toml").read_text("utf-8")
        )
        assert tomllib.loads(text) == labels(language)
