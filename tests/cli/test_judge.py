"""`mastwright judge`: the same judgement as through the library, its papers, its text."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from mastwright.checks import read_shop_limits
from mastwright.quantity import UnitSystem, common_instruments, own_instruments
from mastwright.verdict import judge_visit
from mastwright.visits import read_visit
from mastwright.wording import LANGUAGES, tell, words_of

from .command import EXAMPLES, VISITS, call


def through_the_library(path: Path, language: str, system: UnitSystem) -> object:
    """Return the document of a visit as a user of the library makes it."""
    limits = read_shop_limits({f.name: f.read_text("utf-8") for f in (path.parent / "limits").glob("*.toml")})
    return tell(judge_visit(read_visit(path.read_text("utf-8")), limits), language, system)


@pytest.mark.parametrize("path", VISITS, ids=lambda p: p.stem)
@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("system", UnitSystem)
def test_library_and_command_agree_to_the_last_digit(
    capsys: pytest.CaptureFixture[str], path: Path, language: str, system: UnitSystem
) -> None:
    """The command prints the library's document, every figure bit for bit."""
    answer = call(capsys, "judge", path, "--json", "--lang", language, "--units", system)
    assert (answer.status, answer.err) == (0, "")
    assert answer.document == through_the_library(path, language, system)


@pytest.mark.parametrize("path", VISITS, ids=lambda p: p.stem)
def test_language_and_units_of_the_visit_are_the_default(
    capsys: pytest.CaptureFixture[str], path: Path
) -> None:
    """Without options a visit is told as it asks to be."""
    visit = read_visit(path.read_text("utf-8"))
    document = call(capsys, "judge", path, "--json").document
    assert (document["language"], document["units"]) == (visit.language, visit.system)


def test_several_visits_are_a_list(capsys: pytest.CaptureFixture[str]) -> None:
    """Several visits come in the order in which they were named."""
    documents = call(capsys, "judge", *VISITS, "--json").document
    alone = [call(capsys, "judge", path, "--json").document for path in VISITS]
    assert documents == alone


@pytest.mark.parametrize("path", VISITS, ids=lambda p: p.stem)
def test_what_the_json_must_name(capsys: pytest.CaptureFixture[str], path: Path) -> None:
    """Truck, verdict, whether it may work, items with item, check and verdict, order, cautions."""
    document = call(capsys, "judge", path, "--json").document
    assert {"truck", "verdict", "may_work", "items", "order", "cautions"} <= set(document)
    assert all({"item", "check", "verdict"} <= set(item) for item in document["items"])
    assert document["truck"]["id"]


@pytest.mark.parametrize("path", VISITS, ids=lambda p: p.stem)
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_text_ends_with_every_caution(
    capsys: pytest.CaptureFixture[str], path: Path, language: str
) -> None:
    """Whatever the verdict, every caution stands on a line of its own."""
    answer = call(capsys, "judge", path, "--lang", language)
    marked = [line.removeprefix("! ") for line in answer.out.splitlines() if line.startswith("! ")]
    assert answer.status == 0
    assert marked == list(words_of("cautions", language))


@pytest.mark.parametrize("path", VISITS, ids=lambda p: p.stem)
def test_the_text_begins_with_truck_and_outcome(capsys: pytest.CaptureFixture[str], path: Path) -> None:
    """The first line names the truck, the second the outcome."""
    document = call(capsys, "judge", path, "--json").document
    first, second, *_ = call(capsys, "judge", path).out.splitlines()
    assert first.startswith(document["truck"]["id"])
    assert second == f"== {document['outcome_text'].upper()} =="


@pytest.mark.parametrize("path", VISITS, ids=lambda p: p.stem)
def test_the_text_gives_every_reason_in_order(capsys: pytest.CaptureFixture[str], path: Path) -> None:
    """Each reason has its number, its verdict and what it can lead to."""
    document = call(capsys, "judge", path, "--json").document
    text = " ".join(call(capsys, "judge", path).out.split())
    places = [text.index(f"{r['rank']}. {r['item']}") for r in document["reasons"]]
    assert places == sorted(places)
    assert all(" ".join(r["if_ignored"].split()) in text for r in document["reasons"])


@pytest.mark.parametrize("path", VISITS, ids=lambda p: p.stem)
def test_the_papers_are_written(capsys: pytest.CaptureFixture[str], tmp_path: Path, path: Path) -> None:
    """Report always; order, tag and refusal where the judgement asks for them; each file is named."""
    answer = call(capsys, "judge", path, "--lang", "en", "--out", tmp_path / "new" / "papers")
    document = call(capsys, "judge", path, "--json").document
    wanted = {
        "report": True,
        "order": bool(document["order"]),
        "tag": not document["may_work"],
        "refusal": bool(document["refusals"]),
    }
    names = {f"{document['visit']['id']}-{kind}.pdf" for kind, asked in wanted.items() if asked}
    written = list((tmp_path / "new" / "papers").iterdir())
    assert {p.name for p in written} == names
    assert all(p.read_bytes().startswith(b"%PDF-") for p in written)
    assert all(f"written: {p}" in answer.out for p in written)


def test_papers_can_be_written_with_json(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """With --json the papers are written too, and nothing but JSON is printed."""
    answer = call(capsys, "judge", VISITS[0], "--out", tmp_path, "--json")
    assert answer.document["visit"]["id"]
    assert [p.suffix for p in tmp_path.iterdir()] == [".pdf"]


def test_limits_beside_the_visit_are_found(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A folder `limits` beside the visit counts without being named; without it the check is not judged."""
    alone = tmp_path / VISITS[0].name
    shutil.copy(VISITS[0], alone)
    with_limits = call(capsys, "judge", VISITS[0], "--json").document["items"]
    without = call(capsys, "judge", alone, "--json").document["items"]
    named = call(capsys, "judge", alone, "--json", "--limits", EXAMPLES / "limits").document["items"]
    verdicts = {i["check"]: i["verdict"] for i in without}
    assert verdicts["MST-07"] == "not judged"
    assert {i["check"]: i["verdict"] for i in with_limits}["MST-07"] != "not judged"
    assert named == with_limits


GAUGES = """
[[instrument]]
name = "calliper"
dimension = "length"
step = "0.5 mm"
standard_uncertainty = "0.5 mm"
source = "the shop's own trial, see its sheet"
evidence = "demo data"
"""


def test_the_shops_own_gauge_takes_the_place_of_the_common_one(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """A worse calliper of the shop gives a larger doubt, as the library does with the same instruments."""
    gauges = tmp_path / "gauges.toml"
    gauges.write_text(GAUGES, "utf-8")
    document = call(capsys, "judge", VISITS[0], "--json", "--gauges", gauges).document
    common = call(capsys, "judge", VISITS[0], "--json").document
    span, better = (d["chains"][0]["strands"][0]["spans"][0] for d in (document, common))
    instruments = common_instruments().replaced_by(own_instruments(GAUGES))
    read = read_visit(VISITS[0].read_text("utf-8"), instruments)
    assert span["uncertainty_percent"] > better["uncertainty_percent"]
    assert span["uncertainty_percent"] == read.chains[0].spans[0].reading.standard_uncertainty


def test_a_file_with_a_byte_order_mark_is_read(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Some editors begin a file with a mark and end its lines with CR LF; the judgement is the same."""
    marked = tmp_path / VISITS[4].name
    text = VISITS[4].read_text("utf-8").replace("\n", "\r\n")
    marked.write_bytes(b"\xef\xbb\xbf" + text.encode())
    plain = tmp_path / "plain.toml"
    plain.write_bytes(VISITS[4].read_bytes())
    assert call(capsys, "judge", marked, "--json").out == call(capsys, "judge", plain, "--json").out


def test_the_json_is_plain_utf_8(capsys: pytest.CaptureFixture[str]) -> None:
    """Letters stand as they are, and no figure is NaN or infinite."""
    out = call(capsys, "judge", VISITS[1], "--json", "--lang", "es").out
    assert "á" in out
    assert json.loads(out, parse_constant=pytest.fail)
