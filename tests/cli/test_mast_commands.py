"""`mastwright mast ...`: the published JSON, the text, the cautions, what is refused."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from mastwright.mast.duty import described_duties
from mastwright.wording import words_of

from .command import ROOT, call
from .test_bad_input import refused
from .test_fuzz import WRITTEN, seeded

CHAIN = ("--strands", "2", "--pitch", "19.05", "--plate-height", "18.0975", "--sheave", "95.25")
LOAD = ("--load-kg", "2000", "--carriage-kg", "300")
FRAMES = ("--inner-kg", "250", "--middle-kg", "280")
A = ("--arrangement", "A", *CHAIN, *LOAD, "--inner-kg", "250")
MASTS = {
    "A": A,
    "B": ("--arrangement", "b", *CHAIN, *LOAD, "--free-lift", "1500"),
    "C": ("--arrangement", "C", *CHAIN, *LOAD, *FRAMES, "--free-lift", "1500"),
    "D": ("--arrangement", "D", *CHAIN, *LOAD, *FRAMES),
    "E": ("--arrangement", "E", *CHAIN, *LOAD, *FRAMES, "--first-kg", "300", "--free-lift", "1500"),
}
MOVES = (
    "from_height_mm,to_height_mm,load_kg,count\n0,3000,2000,10\n3000,0,0,10\n0,150,1000,50\n150,0,1000,50\n"
)
G = 9.80665


@pytest.fixture
def moves(tmp_path: Path) -> Path:
    """Return a table of moves (demo data)."""
    path = tmp_path / "moves.csv"
    path.write_text(MOVES, encoding="utf-8")
    return path


def validate(name: str, document: object) -> None:
    """Hold a document against its published schema."""
    jsonschema.validate(document, json.loads((ROOT / "docs" / "schema" / f"{name}.json").read_text("utf-8")))


@pytest.mark.parametrize("letter", MASTS)
@pytest.mark.parametrize("language", ["en", "es"])
def test_wear_is_as_the_schema_says(
    capsys: pytest.CaptureFixture[str], moves: Path, letter: str, language: str
) -> None:
    """Every mast, both languages: the published shape, and every caution in text and JSON."""
    arguments = ("mast", "wear", *MASTS[letter], "--moves", moves, "--lang", language)
    document = call(capsys, *arguments, "--json").document
    validate("mast_wear", document)
    text = call(capsys, *arguments).out
    assert all(f"! {caution}" in text for caution in words_of("cautions", language))
    assert document["cautions"] == list(words_of("cautions", language))
    assert all(entry["title"] in text for entry in document["sets"])


@pytest.mark.parametrize("letter", MASTS)
def test_state_is_as_the_schema_says(capsys: pytest.CaptureFixture[str], letter: str) -> None:
    """Every mast: the published shape, the cautions, and the cylinder force by virtual work (computed)."""
    document = call(capsys, "mast", "state", *MASTS[letter], "--height", "2 m", "--json").document
    validate("mast_state", document)
    main = {"A": 2 * 2300 + 250, "C": 280 + 2 * 2550, "D": 280 + 2 * 250 + 3 * 2300,
            "E": 300 + 2 * 280 + 3 * 2550}  # fmt: skip
    if letter in main:
        assert document["cylinder_force_n"] == pytest.approx(G * main[letter])
    assert document["free_lift_cylinder_force_n"] == (None if letter in "AD" else pytest.approx(G * 4600))
    out = call(capsys, "mast", "state", *MASTS[letter], "--height", "2 m").out
    assert all(f"! {caution}" in out for caution in words_of("cautions", "en"))


def test_the_profile(capsys: pytest.CaptureFixture[str], moves: Path) -> None:
    """10 lifts to 1500 mm of stroke and 50 floor moves to 75 mm, by hand (worked from the counting rule)."""
    document = call(capsys, "mast", "wear", *A, "--moves", moves, "--json").document
    (only,) = document["sets"]
    at = {round(row["d_mm"], 3): row for row in only["profile"]}
    first, past, high = at[9.525], at[200.025], at[1400.175]
    loaded, empty, floor = (G * (300 + m) / 2 for m in (2000, 0, 1000))
    assert (first["articulations"], past["articulations"], high["articulations"]) == pytest.approx(
        (140, 40, 20)
    )
    assert first["weighted"] == pytest.approx(20 * (loaded + empty) + 100 * floor)
    assert (only["tension_loaded_n"], only["tension_empty_n"]) == pytest.approx((loaded, empty))
    assert (only["wrap_mm"], only["articulation_deg"]) == pytest.approx((179.71, 19.0808), rel=1e-5)
    assert sum(row["articulations"] for row in only["profile"]) * 19.05 == pytest.approx(
        2 * (20 * 1500 + 100 * 75)
    )
    assert first["elongation_percent"] is only["peak_elongation"] is only["pin_pressure_mpa"] is None


def test_a_sharp_profile(capsys: pytest.CaptureFixture[str], moves: Path) -> None:
    """With `--sharp` every joint has a whole number of bends."""
    document = call(capsys, "mast", "wear", *A, "--moves", moves, "--sharp", "--json").document
    counts = [row["articulations"] for row in document["sets"][0]["profile"]]
    assert all(count == int(count) for count in counts)
    assert set(counts) == {0, 20, 40, 120, 140}


def test_elongation_where_the_joint_is_known(capsys: pytest.CaptureFixture[str], moves: Path) -> None:
    """3x4 of 3.3 mm, pin 7.94: 107.60 N/mm² (worked example, computed), and elongation with its spread."""
    arguments = ("mast", "wear", *A, "--moves", moves, "--lacing", "3x4", "--plate-thickness", "3.3",
                 "--pin-diameter", "7.94")  # fmt: skip
    document = call(capsys, *arguments, "--json").document
    validate("mast_wear", document)
    (only,) = document["sets"]
    peak = only["peak_elongation"]
    assert only["pin_pressure_mpa"] == pytest.approx(107.60, abs=0.005)
    assert peak["median_percent"] == pytest.approx(max(r["elongation_percent"] for r in only["profile"]))
    assert (peak["low_percent"] * 3, peak["high_percent"] / 3) == pytest.approx((peak["median_percent"],) * 2)
    assert "until the chain itself has been read" in call(capsys, *arguments).out


JOINT = ("--lacing", "3x4", "--plate-thickness", "3.3")


def test_a_reading_corrects_the_wear(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """2 % read over two pitches after long even work: 2 % is what it tells of the worst joint, and surer."""
    path = tmp_path / "moves.csv"
    path.write_text("from_height_mm,to_height_mm,load_kg,count\n0,3000,2000,99999\n3000,0,0,99999\n", "utf-8")
    before = ("mast", "wear", *A, "--moves", path, *JOINT, "--instrument", "calliper")
    after = (*before, "--reading", "carriage:1:16:310.9 mm")
    prior, told = (call(capsys, *a, "--json").document["sets"][0] for a in (before, after))
    assert (prior["readings"], told["readings"]) == (0, 1)
    spread = [
        s["peak_elongation"]["high_percent"] / s["peak_elongation"]["low_percent"] for s in (prior, told)
    ]
    assert told["peak_elongation"]["median_percent"] == pytest.approx(2.0, abs=0.03)
    assert spread == pytest.approx([9, (2 + 0.153) / (2 - 0.153)], rel=0.02)
    assert "by its readings" in call(capsys, *after).out


def test_a_reading_of_a_chain_that_did_not_move(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Nothing can be told from a chain that these moves do not wear."""
    path = tmp_path / "low.csv"
    path.write_text("from_height_mm,to_height_mm,load_kg,count\n0,1000,500,9\n", encoding="utf-8")
    arguments = ("mast", "wear", *MASTS["C"], "--moves", path, *JOINT, "--reading", "main:1:16:306 mm")
    main = call(capsys, *arguments, "--json").document["sets"][1]
    assert main["peak_elongation"] == {"low_percent": 0, "median_percent": 0, "high_percent": 0}


def test_where_to_measure(capsys: pytest.CaptureFixture[str], moves: Path) -> None:
    """Floor moves make a short peak: a short span from the first pin; 12 in reads far less of it."""
    document = call(capsys, "mast", "wear", *A, "--moves", moves, "--json").document
    best, usual = document["sets"][0]["best_span"], document["sets"][0]["customary_span"]
    assert (best["first_pin"], best["pitches"]) == (1, 4)
    assert (usual["first_pin"], usual["pitches"], usual["last_pin"]) == (1, 16, 17)
    assert usual["dilution"] < best["dilution"]
    assert usual["miss_probability"] > best["miss_probability"]
    assert best["lift_past_sheave_mm"] == pytest.approx(2 * (best["end_mm"] + 179.71), abs=0.01)


def test_a_chain_that_does_not_move(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Work below the free lift leaves the main chain still: nothing to measure, and it says so."""
    path = tmp_path / "low.csv"
    path.write_text("from_height_mm,to_height_mm,load_kg,count\n0,1000,500,9\n", encoding="utf-8")
    arguments = ("mast", "wear", *MASTS["C"], "--moves", path)
    main = call(capsys, *arguments, "--json").document["sets"][1]
    assert (main["best_span"], main["customary_span"], main["take_up_mm"]) == (None, None, 0)
    assert "does not move in these moves" in call(capsys, *arguments).out


@pytest.mark.parametrize("words", described_duties())
def test_a_duty_in_words(capsys: pytest.CaptureFixture[str], words: str) -> None:
    """Work told in plain words is judgement, and the result says so."""
    document = call(capsys, "mast", "wear", *A, "--duty", words, "--cycles", "1000", "--lift-height", "4 m",
                    "--json").document  # fmt: skip
    validate("mast_wear", document)
    assert any("judgement" in text for text in document["assumed"])


def test_what_nobody_gave_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    """Sheave and plate height by rule of the standards, and no cylinder force without the frame's mass."""
    arguments = ("mast", "state", "--arrangement", "A", "--strands", "2", "--pitch", "3/4 in", *LOAD,
                 "--height", "1000")  # fmt: skip
    document = call(capsys, *arguments, "--json").document
    assert [text.split(":")[0] for text in document["assumed"]] == [
        "--sheave 95.25 mm", "--plate-height 18.0975 mm",
    ]  # fmt: skip
    assert document["cylinder_force_n"] is None
    assert "main cylinders" not in call(capsys, *arguments).out


@pytest.mark.parametrize(
    ("more", "wrap"), [(("--pin-circle", "95.25"), 148.61), (("--figure-eight",), 177.2)]
)
def test_other_ways_to_ride(capsys: pytest.CaptureFixture[str], more: tuple[str, ...], wrap: float) -> None:
    """A pin circle and waisted plates bend more, so less chain lies on the sheave (computed)."""
    mast = ("--arrangement", "B", "--strands", "2", "--pitch", "19.05", *LOAD, "--height", "0")
    document = call(capsys, "mast", "state", *mast, *more, "--json").document
    entry = document["sets"][0]
    assert entry["on_sheave_to_mm"] - entry["on_sheave_from_mm"] == pytest.approx(wrap, abs=0.05)


STATE = ("mast", "state", "--height", "1000")
WEAR = ("mast", "wear")
DUTY = ("--duty", "mixed", "--cycles", "9", "--lift-height", "3000")
BAD = [
    (STATE, ["--arrangement", "--strands", "--pitch", "--load-kg", "--carriage-kg"]),
    (("mast", "state", *A), ["--height"]),
    ((*STATE, *A, "--strands", "0"), ["--strands"]),
    ((*STATE, *A, "--strands", "9" * 5000), ["--strands"]),
    ((*STATE, *A, "--pitch", "1 mm"), ["--pitch"]),
    ((*STATE, *A, "--sheave", "0"), ["--sheave"]),
    ((*STATE, *A, "--pin-circle", "95"), ["--pin-circle"]),
    ((*STATE, *A, "--load-kg", "-1"), ["--load-kg"]),
    ((*STATE, *A, "--load-kg", "5 mm"), ["--load-kg"]),
    ((*STATE, *A, "--height", "1e9"), ["--height"]),
    ((*STATE, "--arrangement", "C", *CHAIN, *LOAD), ["--inner-kg"]),
    ((*STATE, "--arrangement", "E", *CHAIN, *LOAD), ["--inner-kg", "--middle-kg"]),
    ((*STATE, *A, "--sheave", "0.5", "--plate-height", "1", "--figure-eight"), ["--sheave"]),
    ((*STATE, "--arrangement", "B", "--strands", "2", "--pitch", "19", *LOAD, "--pin-circle", "10"),
     ["--pin-circle"]),
    ((*WEAR, *A), ["--moves"]),
    ((*WEAR, *A, *DUTY, "--moves", "x.csv"), ["--moves"]),
    ((*WEAR, *A, "--duty", "mixed"), ["--cycles", "--lift-height"]),
    ((*WEAR, *A, "--duty", "light", *DUTY[2:]), ["--duty"]),
    ((*WEAR, *A, *DUTY, "--lacing", "0x4"), ["--lacing"]),
    ((*WEAR, *A, *DUTY, "--instrument", "eye"), ["--instrument"]),
    ((*WEAR, *A, *DUTY, "--reading", "carriage:1:16:306 mm"), ["--reading"]),
    ((*WEAR, *A, *DUTY, *JOINT, "--reading", "carriage:1:15:306 mm"), ["--reading"]),
    ((*WEAR, *A, *DUTY, *JOINT, "--reading", "carriage"), ["--reading"]),
    ((*WEAR, *A, *DUTY, *JOINT, "--reading", "main:1:16:306 mm"), ["--reading"]),
    ((*WEAR, *A, *DUTY, *JOINT, "--reading", "carriage:1:16:long"), ["--reading"]),
    ((*WEAR, *A, "--moves", "nowhere.csv"), ["nowhere.csv"]),
]  # fmt: skip


@pytest.mark.parametrize(("arguments", "fields"), BAD, ids=lambda a: " ".join(a)[-60:])
def test_what_cannot_be_is_refused(
    capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], fields: list[str]
) -> None:
    """Exit status 2, and every option that is wrong or missing by its name."""
    assert refused(capsys, *arguments).fields == fields


def test_a_wrong_cell_is_told_by_its_line(capsys: pytest.CaptureFixture[str], moves: Path) -> None:
    """A table of moves is told by file, column and line."""
    moves.write_text(MOVES + "0,x,1,1\n", encoding="utf-8")
    answer = refused(capsys, "mast", "wear", *A, "--moves", moves)
    assert answer.fields == [f"{moves}, to_height_mm"]
    assert answer.document["problems"][0]["line"] == 6


def test_a_span_that_never_passes_the_sheave(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A free-lift chain of little stroke: the span stays on its side, and no height is named."""
    path = tmp_path / "moves.csv"
    path.write_text(MOVES, encoding="utf-8")
    arguments = ("mast", "wear", "--arrangement", "B", *CHAIN, *LOAD, "--free-lift", "200", "--moves", path)
    (only,) = call(capsys, *arguments, "--json").document["sets"]
    assert only["best_span"]["lift_past_sheave_mm"] is None
    assert "past the sheave" not in call(capsys, *arguments).out


_OPTIONS = [
    "arrangement", "strands", "pitch", "plate-height", "sheave", "free-lift", "load-kg", "carriage-kg",
    "inner-kg", "middle-kg", "first-kg", "pin-circle",
]  # fmt: skip
_OWN = {"wear": ["lacing", "plate-thickness", "pin-diameter", "duty", "cycles", "lift-height", "instrument",
                 "reading"],
        "state": ["height"]}  # fmt: skip


@pytest.mark.parametrize("command", _OWN)
def test_anything_in_an_option_is_answered_or_refused(
    capsys: pytest.CaptureFixture[str], command: str
) -> None:
    """Whatever is written behind one or two options, the command answers or says what is wrong."""
    rng = seeded(command)
    fill = {"wear": DUTY, "state": ("--height", "1000")}[command]
    for _ in range(60):
        names = rng.sample(_OPTIONS + _OWN[command], rng.randint(1, 2))
        spoilt = [f"--{name}={rng.choice(WRITTEN)}" for name in names]
        answer = call(capsys, "mast", command, *MASTS[rng.choice("ABCDE")], *fill, *spoilt, "--json")
        assert answer.err == ""
        assert bool(answer.document.get("problems")) == (answer.status == 2)
