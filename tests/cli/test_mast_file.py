"""A mast file instead of options, and the drawing that `mast wear` writes."""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from mastwright.cli.main import main

EXAMPLES = Path(__file__).parents[2] / "examples"
OPTIONS = [
    "--arrangement", "C", "--strands", "2", "--pitch", "19.05", "--plate-height", "18.1", "--sheave", "95.25",
    "--free-lift", "1500", "--load-kg", "2000", "--carriage-kg", "300", "--inner-kg", "250",
]  # fmt: skip


def printed(capsys: pytest.CaptureFixture[str], *arguments: str) -> object:
    """Return the JSON of a command that went well."""
    assert main([*arguments, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def refused(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    """Return what is said of a command whose input cannot be taken."""
    assert main(list(arguments)) == 2
    return capsys.readouterr().err


def mast_file(folder: Path, text: str) -> str:
    """Return the name of a mast file with this text."""
    path = folder / "mast.toml"
    path.write_text(text, encoding="utf-8")
    return str(path)


@pytest.mark.parametrize(
    ("command", "more"), [("wear", ["--moves", str(EXAMPLES / "moves.csv")]), ("state", ["--height", "3000"])]
)
def test_a_file_is_as_good_as_options(
    command: str, more: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """The same mast by file and by options gives the same document; one file serves both commands."""
    by_options = printed(capsys, "mast", command, *OPTIONS, *more)
    height = more if command == "state" else []
    assert printed(capsys, "mast", command, str(EXAMPLES / "mast.toml"), *height) == by_options


def test_an_option_goes_before_the_file(capsys: pytest.CaptureFixture[str]) -> None:
    """Trying another height or load needs no other file."""
    own = printed(capsys, "mast", "state", str(EXAMPLES / "mast.toml"), "--height", "3000", "--strands", "4")
    file = printed(capsys, "mast", "state", str(EXAMPLES / "mast.toml"), "--height", "3000")
    assert isinstance(own, dict)
    assert isinstance(file, dict)
    assert own["sets"][0]["strand_tension_n"] == pytest.approx(file["sets"][0]["strand_tension_n"] / 2)


def test_flags_and_lists_can_stand_in_the_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Sharp counting and readings are written as true and as a list."""
    text = (EXAMPLES / "mast.toml").read_text("utf-8").replace("moves.csv", str(EXAMPLES / "moves.csv"))
    more = 'sharp = true\nlacing = "3x4"\nplate_thickness = 3.3\nreading = ["main:1:16:306.5 mm"]\n'
    found = printed(capsys, "mast", "wear", mast_file(tmp_path, text + more))
    assert isinstance(found, dict)
    assert [entry["readings"] for entry in found["sets"]] == [0, 1]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('arangement = "C"', "did you mean 'arrangement'?"),
        ("colour = 3", "one of arrangement"),
        ("sharp = 1", "true or false"),
        ('reading = "x"', "a list of texts"),
        ("pitch = [1]", "a text or a number"),
        ("pitch = ", "valid TOML"),
    ],
)
def test_a_faulty_file_is_refused(
    text: str, said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The key, its value and what would be right are told."""
    assert said in refused(capsys, "mast", "wear", mast_file(tmp_path, text))


def test_a_missing_file_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    """No traceback, the name of the file."""
    assert "nowhere.toml" in refused(capsys, "mast", "state", "nowhere.toml")


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_drawing_shows_every_set(
    language: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """One valid SVG with a titled drawing for each of the two sets."""
    file = tmp_path / "path.svg"
    printed(capsys, "mast", "wear", str(EXAMPLES / "mast.toml"), "--svg", str(file), "--lang", language)
    root = ET.fromstring(file.read_text("utf-8"))  # noqa: S314  our own drawing
    assert len(root) == 2
    assert all(part[0].text for part in root)


def test_hidden_pins_move_the_best_span_down(capsys: pytest.CaptureFixture[str]) -> None:
    """What cannot be reached is not told as the place to measure."""
    file = str(EXAMPLES / "mast.toml")
    second = printed(capsys, "mast", "wear", file, "--hidden-pins", "5")
    assert isinstance(second, dict)
    assert [entry["best_span"]["first_pin"] > 5 for entry in second["sets"]] == [True, True]


def test_half_a_hidden_pin_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    """Pins are counted."""
    file = str(EXAMPLES / "mast.toml")
    assert "whole number of pins" in refused(capsys, "mast", "wear", file, "--hidden-pins", "2.5")


def test_a_chain_hidden_beyond_its_wear_has_no_span(capsys: pytest.CaptureFixture[str]) -> None:
    """Below the largest stroke nothing wears, and no span is told."""
    found = printed(capsys, "mast", "wear", str(EXAMPLES / "mast.toml"), "--hidden-pins", "900")
    assert isinstance(found, dict)
    assert [entry["best_span"] for entry in found["sets"]] == [None, None]


def test_masses_of_frames_that_the_mast_does_not_have_are_passed_over_and_said(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """One sheet of masses may serve several trucks: the result is the same, and says so."""
    file, more = str(EXAMPLES / "mast.toml"), ["--arrangement", "A", "--height", "1000"]
    plain = printed(capsys, "mast", "state", file, *more)
    both = printed(capsys, "mast", "state", file, *more, "--middle-kg", "200", "--first-kg", "0")
    assert isinstance(plain, dict)
    assert isinstance(both, dict)
    assert both["sets"] == plain["sets"]
    assert [said for said in both["assumed"] if "not used" in said] == [
        "--middle-kg is not used: mast A has no such moving frame"
    ]
