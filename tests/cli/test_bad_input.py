"""Input that cannot be taken: exit status 2, every problem in a clear line, never a traceback."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

import jsonschema
import pytest

from .command import EXAMPLES, ROOT, VISITS, Answer, call

GOOD = VISITS[0]


@cache
def validator() -> jsonschema.Draft202012Validator:
    """Return the published schema of problems."""
    schema = json.loads((ROOT / "docs" / "schema" / "problems.json").read_text("utf-8"))
    return jsonschema.Draft202012Validator(schema)


def refused(capsys: pytest.CaptureFixture[str], *arguments: object) -> Answer:
    """Run a command that must be refused, as text and as JSON; return the JSON's answer."""
    told = call(capsys, *arguments)
    assert told.status == 2
    assert told.err.strip()
    assert "Traceback" not in told.err
    answer = call(capsys, *arguments, "--json")
    assert (answer.status, answer.err) == (2, "")
    validator().validate(answer.document)
    problems = answer.document["problems"]
    assert all(p["expected"] in told.err and p["field"] in told.err for p in problems)
    return answer


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a folder with a sound visit, its photo and limits, to be spoilt."""
    shutil.copytree(EXAMPLES, tmp_path / "visits")
    return tmp_path / "visits"


def test_a_missing_file(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A file that is not there is named."""
    assert refused(capsys, "judge", tmp_path / "none.toml").fields == [str(tmp_path / "none.toml")]


def test_a_folder_instead_of_a_file(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A folder is no visit."""
    assert refused(capsys, "judge", tmp_path).fields == [str(tmp_path)]


CONTENTS = [
    ("not UTF-8", "customer = 'Señor'".encode("latin-1"), "UTF-8"),
    ("UTF-16", "[visit]".encode("utf-16"), "UTF-8"),
    ("a picture", b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\xff", "UTF-8"),
    ("zeros", b"\x00" * 64, "valid TOML"),
    ("no TOML", b"a visit to the truck", "valid TOML"),
    ("a number of 5000 digits", b"x = " + b"1" * 5000, "valid TOML"),
    ("100 000 brackets", b"x = " + b"[" * 100_000, "nested"),
]


@pytest.mark.parametrize(("content", "expected"), [c[1:] for c in CONTENTS], ids=[c[0] for c in CONTENTS])
def test_a_file_that_is_no_visit(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, content: bytes, expected: str
) -> None:
    """What is no text in TOML is said to be none, in one line."""
    path = tmp_path / "v.toml"
    path.write_bytes(content)
    problems = refused(capsys, "judge", path).document["problems"]
    assert len(problems) == 1
    assert expected in problems[0]["expected"]


def test_an_empty_file_lacks_everything_that_is_needed(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """An empty file is told every needed field at once."""
    path = tmp_path / "v.toml"
    path.write_bytes(b"")
    fields = set(refused(capsys, "judge", path).fields)
    assert {"visit.id", "visit.date", "visit.technician", "customer.name", "truck.id", "chain"} <= fields


def test_every_problem_is_told_with_its_line(capsys: pytest.CaptureFixture[str], shop: Path) -> None:
    """Two faults in one file are both told, each with its line."""
    path = shop / GOOD.name
    text = path.read_text("utf-8").replace('units = "metric"', 'units = "furlongs"')
    path.write_text(
        text.replace('pitches = 24\nlength = "306.9 mm"', 'pitches = 23\nlength = "306.9 mm"'), "utf-8"
    )
    problems = refused(capsys, "judge", path).document["problems"]
    lines = path.read_text("utf-8").splitlines()
    assert {lines[p["line"] - 1] for p in problems} == {'units = "furlongs"', "pitches = 23"}


def test_problems_of_several_visits_are_all_told(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """With several files each problem says in which it is, and a sound file does not hide it."""
    empty = tmp_path / "empty.toml"
    empty.write_text("", "utf-8")
    fields = refused(capsys, "judge", GOOD, tmp_path / "none.toml", empty).fields
    assert str(tmp_path / "none.toml") in fields
    assert f"{empty}: visit.id" in fields


def test_a_photo_that_is_not_there(capsys: pytest.CaptureFixture[str], shop: Path) -> None:
    """A photo that the visit names must be beside it."""
    (shop / "photos" / "turned-pin.png").unlink()
    answer = refused(capsys, "judge", shop / "3-turned-pin.toml")
    assert answer.document["problems"][0]["given"] == "photos/turned-pin.png"


def test_a_photo_that_is_no_picture_by_its_name(capsys: pytest.CaptureFixture[str], shop: Path) -> None:
    """A photo is a JPEG or PNG file."""
    path = shop / "3-turned-pin.toml"
    path.write_text(path.read_text("utf-8").replace("turned-pin.png", "turned-pin.svg"), "utf-8")
    assert "picture" in refused(capsys, "judge", path).document["problems"][0]["expected"]


def test_a_photo_that_cannot_be_printed(
    capsys: pytest.CaptureFixture[str], shop: Path, tmp_path: Path
) -> None:
    """A spoilt photo is refused when it should go into the papers."""
    (shop / "photos" / "turned-pin.png").write_bytes(b"not a picture")
    answer = refused(capsys, "judge", shop / "3-turned-pin.toml", "--out", tmp_path / "out")
    assert "photos/turned-pin.png" in answer.fields[0]


def test_limits_with_faults(capsys: pytest.CaptureFixture[str], shop: Path) -> None:
    """Faults of the limits beside a visit are told with those of the visit."""
    (shop / "limits" / "own.toml").write_text('[[limit]]\ncheck = "ZZZ-01"\nat_most = "1 mm"\n', "utf-8")
    path = shop / GOOD.name
    path.write_text(path.read_text("utf-8").replace('kind = "reach"', 'kind = "rocket"'), "utf-8")
    fields = refused(capsys, "judge", path).fields
    assert {"truck.kind", "own.toml limit[1].check", "own.toml limit[1].source"} <= set(fields)


SPOILT = [
    ("not UTF-8", b"\xff\xfe", "UTF-8"),
    ("no TOML", b"[[limit", "valid TOML"),
    ("100 000 brackets", b"x = " + b"[" * 100_000, "nested"),
    ("a number of 5000 digits", b"x = " + b"1" * 5000, "valid TOML"),
    ("no tables", b"limit = 3", "[[limit]]"),
]


@pytest.mark.parametrize(("content", "expected"), [c[1:] for c in SPOILT], ids=[c[0] for c in SPOILT])
def test_a_limits_file_that_cannot_be_read(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, content: bytes, expected: str
) -> None:
    """A spoilt limits file is never left aside in silence."""
    (tmp_path / "own.toml").write_bytes(content)
    answer = refused(capsys, "judge", GOOD, "--limits", tmp_path)
    assert "own.toml" in answer.fields[0]
    assert expected in answer.document["problems"][0]["expected"]


@pytest.mark.parametrize("name", ["nowhere", "empty", "file"])
def test_limits_that_were_asked_for_must_be_there(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, name: str
) -> None:
    """A folder named by --limits that holds none would leave the truck without its maker's limits."""
    (tmp_path / "empty").mkdir()
    (tmp_path / "file").write_text("", "utf-8")
    assert refused(capsys, "judge", GOOD, "--limits", tmp_path / name).fields == ["--limits"]


def test_gauges_with_faults(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Faults of the shop's own instruments are told with the file's name."""
    gauges = tmp_path / "gauges.toml"
    gauges.write_text('[[instrument]]\nname = "long rule"\n', "utf-8")
    fields = refused(capsys, "judge", GOOD, "--gauges", gauges).fields
    assert fields
    assert all(field.startswith(f"{gauges}: ") for field in fields)


def test_gauges_and_limits_are_both_told(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Two files that are not there are two problems."""
    gauges = tmp_path / "gauges.toml"
    fields = refused(capsys, "judge", GOOD, "--gauges", gauges, "--limits", tmp_path / "none").fields
    assert fields == [str(gauges), "--limits"]


def test_papers_cannot_go_into_a_file(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A folder for the papers that is a file is named."""
    blocked = tmp_path / "file"
    blocked.write_text("", "utf-8")
    assert refused(capsys, "judge", GOOD, "--out", blocked).fields == [str(blocked)]


def test_two_visits_of_one_id_do_not_overwrite_each_other(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """Papers are named after the visit's id, so two visits of one call may not share it."""
    answer = refused(capsys, "judge", GOOD, GOOD, "--out", tmp_path)
    assert answer.fields == [f"{GOOD}: visit.id"]


JUDGE = ("chain", "judge", "--designation", "BL634")
IDENTIFY = ("chain", "identify")
CHAIN = [
    (("chain", "limits", "BL999"), ["designation"]),
    (("chain", "limits", ""), ["designation"]),
    (JUDGE, ["--length"]),
    (("chain", "judge", "--designation", "634", "--pitches", "16", "--length", "305 mm"), ["--designation"]),
    ((*JUDGE, "--pitches", "15", "--length", "305 mm"), ["--pitches"]),
    ((*JUDGE, "--pitches", "0", "--length", "305 mm"), ["--pitches"]),
    ((*JUDGE, "--pitches", "16", "--length", "long"), ["--length"]),
    ((*JUDGE, "--pitches", "16", "--length", "305 kg"), ["--length"]),
    ((*JUDGE, "--length", "305 mm"), ["--pitches"]),
    ((*JUDGE, "--pitch", "0 0 0"), ["--pitch"]),
    ((*JUDGE, "--gauge", "2 %", "--passes", "2 %"), ["--length"]),
    ((*JUDGE, "--passes", "2 %", "--stops-at", "3 %"), ["--passes"]),
    ((*JUDGE, "--gauge", "2 %", "--instrument", "eye"), ["--instrument"]),
    ((*JUDGE, "--gauge", "2 %", "--slack"), ["--slack"]),
    ((*JUDGE, "--gauge", "2 %", "--discard-at", "4 %"), ["--discard-at"]),
    ((*JUDGE, "--gauge", "2 %", "--discard-at", "low"), ["--discard-at"]),
    ((*JUDGE, "--span", "left"), ["--span"]),
    ((*JUDGE, "--span", "left:x:305 mm"), ["--span"]),
    ((*JUDGE, "--span", "left:" + "9" * 5000 + ":305 mm"), ["--span"]),
    ((*JUDGE, "--span", "left:15:305 mm"), ["--span"]),
    ((*JUDGE, "--span", "left:16:305 kg"), ["--span"]),
    (
        (*JUDGE, "--pitches", "15", "--gauge", "x", "--discard-at", "5 %"),
        ["--discard-at", "--pitches", "--gauge"],
    ),
    (
        (*JUDGE, "--pitches", "16", "--length", "305 mm", "--first-length", "z"),
        ["--first-length"],
    ),
    (IDENTIFY, ["observed"]),
    ((*IDENTIFY, "--length", "305 mm"), ["--pitches"]),
    ((*IDENTIFY, "--length", "305 mm", "--pitches", "0"), ["pitches"]),
    ((*IDENTIFY, "--pitch", "19 mm", "--pitches", "16"), ["--pitches"]),
    ((*IDENTIFY, "--pitch", "19 mm", "--length", "305 mm", "--pitches", "16"), ["--pitch"]),
    ((*IDENTIFY, "--pitch", "x", "--plate-height", "y"), ["--pitch", "--plate-height"]),
    ((*IDENTIFY, "--pitch", "19 mm", "--lacing", "many"), ["--lacing"]),
    ((*IDENTIFY, "--pitch", "19 mm", "--instrument", "eye"), ["--instrument"]),
]


@pytest.mark.parametrize(("arguments", "fields"), CHAIN, ids=lambda a: " ".join(a)[:70])
def test_a_chain_command_names_the_option(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], fields: list[str]
) -> None:
    """What is wrong is told by the option that it was given by."""
    assert refused(capsys, *arguments).fields == fields


def test_a_card_cannot_go_where_there_is_no_folder(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """A card that cannot be written is a problem of its file."""
    path = tmp_path / "no" / "card.pdf"
    assert refused(capsys, "chain", "limits", "BL634", "--pdf", path).fields == [str(path)]


USAGE = [
    (),
    ("weld",),
    ("chain",),
    ("chain", "weld"),
    ("judge",),
    ("judge", "x.toml", "--units", "furlongs"),
    ("judge", "x.toml", "--lang", "la"),
    ("chain", "judge"),
    ("chain", "identify", "--pitches", "many"),
    ("chain", "identify", "--worn", "--unworn"),
    ("chain", "limits", "BL634", "--no-such-option"),
]


@pytest.mark.parametrize("arguments", USAGE, ids=" ".join)
def test_arguments_that_are_no_command(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...]
) -> None:
    """Wrong arguments are one problem, and as text the usage is shown with it."""
    assert call(capsys, *arguments).err.startswith("usage: mastwright")
    assert refused(capsys, *arguments).fields == ["arguments"]


def test_a_file_name_that_is_no_text_is_told_too(tmp_path: Path) -> None:
    """A name with bytes outside UTF-8 is shown with escapes, on a pipe of any encoding."""
    command = [sys.executable, "-c", "from mastwright.cli.main import run; run()", "judge", "--json"]
    done = subprocess.run(
        [*(c.encode() for c in command), b"\xff.toml"],
        capture_output=True,
        check=False,
        cwd=tmp_path,
        env={"PYTHONIOENCODING": "ascii"},
    )
    assert done.returncode == 2
    assert json.loads(done.stdout)["problems"][0]["field"] == "\udcff.toml"
    assert done.stderr == b""
