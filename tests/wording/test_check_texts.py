"""The Spanish texts of the checks stand beside the English ones, one for one."""

from __future__ import annotations

import re

import pytest

from mastwright.checks import catalogue
from mastwright.wording.check_texts import _spanish, check_text

FIGURE = re.compile(r"\d+(?:\.\d+)?")
TEXTS = ("title", "how", "action", "worse_case", "if_ignored")


def test_the_same_checks_in_the_same_order() -> None:
    """No check lacks its Spanish row, and no row lacks its check."""
    assert list(_spanish()) == list(catalogue())


@pytest.mark.parametrize("check_id", catalogue())
@pytest.mark.parametrize("name", TEXTS)
def test_a_text_is_there_in_both_languages_or_in_none(check_id: str, name: str) -> None:
    """What is said in English is said in Spanish."""
    english, spanish = check_text(check_id, name, "en"), check_text(check_id, name, "es")
    assert bool(english.strip()) == bool(spanish.strip())
    assert spanish != english or not english


@pytest.mark.parametrize("check_id", catalogue())
@pytest.mark.parametrize("name", TEXTS)
def test_both_languages_have_the_same_figures(check_id: str, name: str) -> None:
    """A figure of a text is in its translation too, with a decimal point or comma."""
    english, spanish = check_text(check_id, name, "en"), check_text(check_id, name, "es")
    assert sorted(FIGURE.findall(english)) == sorted(FIGURE.findall(spanish.replace(",", ".")))


@pytest.mark.parametrize("check_id", catalogue())
def test_every_check_says_what_it_is_and_what_it_can_lead_to(check_id: str) -> None:
    """Title and consequence are never empty."""
    assert all(check_text(check_id, name, "en").strip() for name in ("title", "if_ignored"))


def test_an_unknown_check_is_a_fault() -> None:
    """A check that is not in the catalogue is a fault of ours."""
    with pytest.raises(KeyError):
        check_text("ZZZ-99", "title", "es")
