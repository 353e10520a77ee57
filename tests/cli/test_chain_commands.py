"""`mastwright chain ...`: the published JSON, the text, the cautions."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from mastwright.wording import LANGUAGES, words_of

from .command import ROOT, call

JUDGE = ("chain", "judge", "--designation", "BL634")
COMMANDS = [
    ("chain_limits", ("chain", "limits", "BL634")),
    ("chain_limits", ("chain", "limits", "LH1234", "--units", "inch")),
    ("chain_limits", ("chain", "limits", "BL834", "--lang", "es")),
    ("chain_identify", ("chain", "identify", "--pitch", "19.05 mm", "--plate-height", "18 mm")),
    ("chain_identify", ("chain", "identify", "--length", "12 1/8 in", "--pitches", "16", "--lacing", "3x4")),
    ("chain_identify", ("chain", "identify", "--marking", "BL634", "--lang", "es")),
    ("chain_identify", ("chain", "identify", "--pitch", "190 mm")),
    ("chain_identify", ("chain", "identify", "--pitch", "19.05 mm", "--pin-diameter", "9 mm", "--unworn")),
    ("chain_identify", ("chain", "identify", "--plate-thickness", "3.2 mm", "--worn")),
    ("chain_judge", (*JUDGE, "--pitches", "16", "--length", "305 mm")),
    ("chain_judge", (*JUDGE, "--pitches", "16", "--length", "311 mm", "--instrument", "calliper")),
    ("chain_judge", (*JUDGE, "--pitches", "16", "--length", "12 3/8 in", "--units", "inch", "--lang", "es")),
    ("chain_judge", (*JUDGE, "--pitch", "19.2 mm", "--instrument", "calliper")),
    ("chain_judge", (*JUDGE, "--gauge", "2.1 %")),
    ("chain_judge", (*JUDGE, "--passes", "2 %")),
    ("chain_judge", (*JUDGE, "--passes", "3 %", "--stops-at", "2 %", "--discard-at", "2.5 %")),
    ("chain_judge", (*JUDGE, "--pitches", "16", "--length", "306 mm", "--first-length", "304.9 mm")),
    ("chain_judge", (*JUDGE, "--span", "left:16:12 1/8 in", "--span", "right:16:12 3/8 in")),
]  # fmt: skip
IDS = [" ".join(arguments) for _, arguments in COMMANDS]


@pytest.mark.parametrize(("name", "arguments"), COMMANDS, ids=IDS)
def test_the_json_is_as_the_schema_says(
    capsys: pytest.CaptureFixture[str], name: str, arguments: tuple[str, ...]
) -> None:
    """Exit status 0 whatever the verdict, and the published shape without a field beyond it."""
    schema = json.loads((ROOT / "docs" / "schema" / f"{name}.json").read_text("utf-8"))
    answer = call(capsys, *arguments, "--json")
    errors = jsonschema.Draft202012Validator(schema).iter_errors(answer.document)
    assert (answer.status, answer.err) == (0, "")
    assert [f"{e.json_path}: {e.message}" for e in errors] == []


@pytest.mark.parametrize(("name", "arguments"), COMMANDS, ids=IDS)
def test_the_cautions_are_in_text_and_json(
    capsys: pytest.CaptureFixture[str], name: str, arguments: tuple[str, ...]
) -> None:
    """Every caution stands in every output, in the language asked for."""
    language = "es" if "es" in arguments else "en"
    text = call(capsys, *arguments).out.splitlines()
    marked = [line.removeprefix("! ") for line in text if line.startswith("! ")]
    assert name.startswith("chain_")
    assert marked == list(words_of("cautions", language))
    assert call(capsys, *arguments, "--json").document["cautions"] == marked


def test_the_limits_of_a_chain(capsys: pytest.CaptureFixture[str]) -> None:
    """16 pitches of 3/4 in: 12.36 in at 3 % (telehandler manual: 12.36 in per 12.00 in, read)."""
    document = call(capsys, "chain", "limits", "BL634", "--json").document
    span = next(s for s in document["spans"] if s["pitches"] == 16)
    assert document["designation"] == "LH1234 / BL634"
    assert (document["pitch_mm"], document["evidence"]) == (19.05, "read")
    assert (span["new_mm"], span["at_3_percent_mm"]) == (304.8, pytest.approx(12.36 * 25.4, abs=1e-9))
    assert (span["at_1_percent_mm"], span["at_2_percent_mm"]) == pytest.approx((307.848, 310.896), abs=1e-9)


def test_the_limits_as_text_are_on_the_safe_side(capsys: pytest.CaptureFixture[str]) -> None:
    """313.944 mm is shown as 313.9, 12.36 in as 12 23/64 (12.359 in)."""
    metric = call(capsys, "chain", "limits", "BL634").out.splitlines()
    inch = call(capsys, "chain", "limits", "BL634", "--units", "inch").out.splitlines()
    assert metric[2].split() == ["16", "304.8", "307.8", "310.8", "313.9"]
    assert " ".join(inch[2].split()) == "16 12 12 7/64 12 15/64 12 23/64"


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("units", ["metric", "inch"])
def test_the_card_is_written(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, language: str, units: str
) -> None:
    """A card to hang up is a PDF, in either language and units."""
    path = tmp_path / "card.pdf"
    answer = call(capsys, "chain", "limits", "BL634", "--pdf", path, "--lang", language, "--units", units)
    assert answer.status == 0
    assert path.read_bytes().startswith(b"%PDF-")


def test_identification_names_what_was_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    """Candidates carry both designations and a probability, nearly 1 together; one is assumed."""
    arguments = ("chain", "identify", "--length", "12 1/8 in", "--pitches", "16", "--lacing", "3x4",
                 "--plate-height", "0.71 in")  # fmt: skip
    document = call(capsys, *arguments, "--json").document
    best = document["candidates"][0]
    assert (best["designation_iso"], best["designation_ansi"]) == ("LH1234", "BL634")
    assert 0.99 < sum(c["probability"] for c in document["candidates"]) <= 1
    assert document["assumed"] == "LH1234"
    assert "assumed: LH1234 / BL634" in call(capsys, *arguments).out


def test_nothing_is_assumed_where_nothing_fits(capsys: pytest.CaptureFixture[str]) -> None:
    """A pitch that no chain of the table has gives no candidate, and says so."""
    document = call(capsys, "chain", "identify", "--pitch", "190 mm", "--json").document
    assert (document["candidates"], document["assumed"]) == ([], None)
    assert any("No leaf chain of the table fits" in text for text in document["notes_text"])


VERDICTS = [
    # 12.375 in over 12 pitches of 1 in is past 3 % (US Army TM 10-3930-671-24, read).
    (("chain", "judge", "--designation", "BL834", "--pitches", "12", "--length", "12.375 in"), "withdraw"),
    ((*JUDGE, "--pitches", "16", "--length", "305 mm"), "fit"),
    ((*JUDGE, "--pitches", "16", "--length", "311 mm", "--instrument", "calliper"), "replace"),
    ((*JUDGE, "--pitches", "16", "--length", "313.9 mm"), "remeasure"),
    ((*JUDGE, "--pitches", "16", "--length", "313.944 mm"), "withdraw"),
    ((*JUDGE, "--gauge", "3 %"), "withdraw"),
    ((*JUDGE, "--passes", "2 %"), "fit"),
    ((*JUDGE, "--passes", "3 %"), "remeasure"),
    ((*JUDGE, "--stops-at", "3 %"), "withdraw"),
]  # fmt: skip


@pytest.mark.parametrize(("arguments", "verdict"), VERDICTS, ids=[" ".join(a) for a, _ in VERDICTS])
def test_the_verdict_of_one_reading(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], verdict: str
) -> None:
    """Readings round the marks of 2 and 3 %."""
    document = call(capsys, *arguments, "--json").document
    assert document["verdict"] == verdict
    assert document["limit_percent"] == 3.0
    assert document["reasons"]


def test_the_worst_strand_condemns_the_set(capsys: pytest.CaptureFixture[str]) -> None:
    """One strand past the mark takes the other with it; figures are those of the worst."""
    arguments = (*JUDGE, "--span", "left:16:12 1/8 in", "--span", "right:16:12 3/8 in", "--json")
    document = call(capsys, *arguments).document
    assert [s["own_verdict"] for s in document["strands"]] == ["fit", "withdraw"]
    assert [s["verdict"] for s in document["strands"]] == ["withdraw", "withdraw"]
    assert document["elongation_percent"] == 3.125


def test_a_planned_replacement_has_its_months(capsys: pytest.CaptureFixture[str]) -> None:
    """Past 2 % the set is replaced within three months (UK chain guidance, read), and the text says so."""
    arguments = (*JUDGE, "--pitches", "16", "--length", "311 mm", "--instrument", "calliper")
    assert call(capsys, *arguments, "--json").document["replace_within_months"] == 3
    assert "date: at most 3 months after this reading" in call(capsys, *arguments).out


def test_no_months_without_a_planned_replacement(capsys: pytest.CaptureFixture[str]) -> None:
    """A chain that is fit, or out of service now, has no such date."""
    lengths = ("305 mm", "314 mm")
    documents = [call(capsys, *JUDGE, "--pitches", "16", "--length", x, "--json").document for x in lengths]
    assert [d["replace_within_months"] for d in documents] == [None, None]


def test_a_first_reading_takes_away_the_tolerance(capsys: pytest.CaptureFixture[str]) -> None:
    """Growth since fitting is surer when the length at fitting is known."""
    arguments = (*JUDGE, "--pitches", "16", "--length", "306 mm", "--instrument", "calliper", "--json")
    unknown = call(capsys, *arguments).document["strands"][0]
    known = call(capsys, *arguments, "--first-length", "305 mm").document["strands"][0]
    assert (unknown["first_reading_known"], known["first_reading_known"]) == (False, True)
    assert known["growth_uncertainty_percent"] < unknown["growth_uncertainty_percent"]
    assert known["growth_since_fitting_percent"] == pytest.approx(100 * 1 / 304.8, rel=0.01)


def test_a_stricter_mark_is_the_shops_own(capsys: pytest.CaptureFixture[str]) -> None:
    """2 % as the discard mark withdraws a chain of 2.03 %, and the source says whose mark it is."""
    arguments = (*JUDGE, "--pitches", "16", "--length", "311 mm", "--discard-at", "2 %", "--json")
    document = call(capsys, *arguments).document
    assert (document["verdict"], document["limit_percent"]) == ("withdraw", 2.0)
    assert "shop's own" in document["limit_source"]


@pytest.mark.parametrize("units", ["metric", "inch"])
def test_a_bare_number_takes_the_units(capsys: pytest.CaptureFixture[str], units: str) -> None:
    """A number without unit is read in the units asked for."""
    length = {"metric": "314.325", "inch": "12.375"}[units]
    arguments = (*JUDGE, "--pitches", "16", "--length", length, "--units", units, "--json")
    assert call(capsys, *arguments).document["elongation_percent"] == 3.125
