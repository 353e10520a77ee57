"""What the document says of why a truck stops, and why it must be seen again."""

from __future__ import annotations

from typing import Any

from mastwright.verdict import judge_visit
from mastwright.visits import read_visit
from mastwright.wording import tell

_VISIT = """
[visit]
id = "v"
date = 2026-11-20
technician = "Ines Calder"
[customer]
name = "Fennmoor Cold Stores"
[truck]
id = "t"
kind = "reach"
power = "electric"
hours = 100
[[check]]
id = "HYD-01"
value = "II"
fluid = "{fluid}"
"""


def told(fluid: str, language: str = "en") -> dict[str, Any]:
    """Return the document of a visit that found a leak (demo data)."""
    document: dict[str, Any] = tell(judge_visit(read_visit(_VISIT.format(fluid=fluid))), language)
    return document


def test_a_leak_says_which_and_of_what() -> None:
    """A class II leak of brake fluid stops the truck, and the reason says so."""
    (reason,) = told("brake")["reasons"]
    assert reason["verdict"] == "withdraw"
    assert "Class II" in reason["text"]
    assert "no leak of any class" in reason["text"]


def test_the_next_visit_names_the_check_by_its_title() -> None:
    """Nobody at the site knows an id; a repair by a date is due under the check's own name."""
    text = _VISIT.replace('id = "HYD-01"\nvalue = "II"\nfluid = "{fluid}"', 'id = "ELE-09"\nok = false')
    judged = judge_visit(read_visit(text))
    english, spanish = (tell(judged, language)["next_visit"] for language in ("en", "es"))
    assert isinstance(english, dict)
    assert isinstance(spanish, dict)
    assert "ELE-09" not in english["because"]
    assert "Wiring harness" in english["because"]
    assert "ELE-09" not in spanish["because"]
