"""Drawings of the conditions: there, valid, wordless, each its own."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING
from xml.etree import ElementTree as ET

import pytest
import typst

from mastwright.chains.condition_drawings import draw_condition
from mastwright.chains.conditions import conditions
from mastwright.chains.drawing_parts import ACCENT, around, number, turning_arrow
from mastwright.quantity import BadInput

if TYPE_CHECKING:
    from pathlib import Path

_SVG = "{http://www.w3.org/2000/svg}"
_OKABE_ITO_VERMILION = "#d55e00"  # Okabe and Ito, Color Universal Design, 2008; from memory


@pytest.fixture(scope="module", params=list(conditions()))
def key(request: pytest.FixtureRequest) -> str:
    """Return each condition in turn."""
    return str(request.param)


def _root(key: str, language: str = "en") -> ET.Element:
    return ET.fromstring(draw_condition(key, language))  # noqa: S314  our own drawing


def test_title_and_description_come_from_the_condition(key: str) -> None:
    """Every condition has a drawing whose title and description are its own, in both languages."""
    condition = conditions()[key]
    for language in ("en", "es"):
        root = _root(key, language)
        assert root.findtext(f"{_SVG}title") == condition.title.of(language)
        assert root.findtext(f"{_SVG}desc") == condition.look_for.of(language)
        assert root.get("lang") == language


def test_title_and_description_are_announced(key: str) -> None:
    """The drawing names its title and description by their ids, which differ from drawing to drawing."""
    root = _root(key)
    ids = [root.find(f"{_SVG}{name}") for name in ("title", "desc")]
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == " ".join(e.get("id", "") for e in ids if e is not None)
    assert f"{key}-title" in str(root.get("aria-labelledby"))


def test_no_words_inside(key: str) -> None:
    """Nothing in the drawing needs translation."""
    assert not list(_root(key).iter(f"{_SVG}text"))


def test_one_accent_colour(key: str) -> None:
    """Greys and one accent of the Okabe-Ito palette, which marks the fault."""
    colours = set(re.findall(r"#[0-9a-f]{6}", draw_condition(key)))
    coloured = {c for c in colours if len({c[1:3], c[3:5], c[5:7]}) > 1}
    assert coloured == {_OKABE_ITO_VERMILION} == {ACCENT}


def test_accent_reads_without_colour() -> None:
    """The accent keeps a contrast of 3:1 to white (WCAG 2.2, 1.4.11 non-text contrast; from memory)."""
    channels = [int(ACCENT[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    luminance = 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    assert 1.05 / (luminance + 0.05) >= 3


def test_no_two_drawings_alike() -> None:
    """No two conditions share a drawing."""
    bodies = {draw_condition(k).split("</desc>")[1] for k in conditions()}
    assert len(bodies) == len(conditions())


def test_languages_share_the_picture(key: str) -> None:
    """The picture is the same in both languages, and the same each time."""
    first, second = (draw_condition(key, language).split("</desc>")[1] for language in ("en", "es"))
    assert first == second
    assert draw_condition(key) == draw_condition(key)


def test_coordinates_are_short_numbers(key: str) -> None:
    """No coordinate has more than two decimals, so that the bytes are the same on every machine."""
    assert not re.search(r"\d\.\d{3}|e[-+]\d", draw_condition(key).split("</desc>")[1])


def test_typesetter_takes_every_drawing(tmp_path: Path) -> None:
    """The typesetter of the papers renders all of them on one sheet."""
    for key in conditions():
        (tmp_path / f"{key}.svg").write_text(draw_condition(key), encoding="utf-8")
    grid = ",".join(f'image("{key}.svg", alt: "{key}")' for key in conditions())
    page = f"#set page(width: 500pt, height: auto)\n#grid(columns: 6, {grid})"
    (tmp_path / "sheet.typ").write_text(page, encoding="utf-8")
    sheet = typst.compile(tmp_path / "sheet.typ", format="png", ppi=30)
    assert sheet.startswith(b"\x89PNG")


def test_unknown_condition_is_refused() -> None:
    """An unknown key is refused with the nearest ones."""
    with pytest.raises(BadInput, match="turned-pin"):
        draw_condition("turned-pn")


@pytest.mark.parametrize(
    ("value", "text"), [(0, "0"), (-0.001, "0"), (1.5, "1.5"), (2.004, "2"), (-3.25, "-3.25")]
)
def test_numbers_are_short(value: float, text: str) -> None:
    """A coordinate loses needless zeros and its minus at nought."""
    assert number(value) == text


def test_turning_arrow_goes_the_long_way_round() -> None:
    """An arrow past half a turn asks for the larger arc."""
    assert " 0 1 1 " in turning_arrow((0, 0), 10, 0, 270)[0]
    assert " 0 0 1 " in turning_arrow((0, 0), 10, 0, 90)[0]


def test_angles_run_clockwise() -> None:
    """Ninety degrees is straight down, as a screen counts."""
    x, y = around((5, 5), 10, 90)
    assert (round(x, 9), round(y, 9)) == (5, 15)
