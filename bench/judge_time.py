"""How long one visit takes inside the library, once it is loaded."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from statistics import median
from time import perf_counter

from section import Section, milliseconds

from mastwright.chains import Observed, identify, leaf_chains
from mastwright.paperwork import papers, report_pdf
from mastwright.quantity import Quantity, Reading, UnitSystem, common_instruments, unit
from mastwright.verdict import judge_visit
from mastwright.visits import read_visit
from mastwright.wording import tell

ROUNDS = 200
PAPER_ROUNDS = 21
ROOT = Path(__file__).parents[1]
VISIT = ROOT / "examples/visits/1-sound-reach-truck.toml"
"""The longest of the examples."""
WITH_PAPERS = ROOT / "examples/visits/3-turned-pin.toml"
"""Out of service, with a photo: report, order and tag."""


def median_time(work: Callable[[], object], rounds: int) -> float:
    """Return the median time of a piece of work in seconds, after one warm-up."""
    work()
    times = []
    for _ in range(rounds):
        begun = perf_counter()
        work()
        times.append(perf_counter() - begun)
    return median(times)


def observed_chain() -> Observed:
    """Return a chain as a technician would describe it: length over 12 pitches, plate height, lacing."""
    calliper = common_instruments().find("calliper", "length")

    def read(text: str) -> Reading:
        return Reading.of(Quantity(Fraction(text), unit("mm"), calliper.step), calliper)

    return Observed(length=read("230.4"), pitches=12, plate_height=read("17.9"), lacing=(3, 4))


def section(rounds: int = ROUNDS, paper_rounds: int = PAPER_ROUNDS) -> Section:
    """Return the table of times in the library."""
    instruments = common_instruments()
    text = VISIT.read_text(encoding="utf-8")
    visit = read_visit(text, instruments)
    judged = judge_visit(visit)
    printed = read_visit(WITH_PAPERS.read_text(encoding="utf-8"), instruments)
    document = tell(judge_visit(printed), "en", UnitSystem.METRIC)
    photos = {name: (WITH_PAPERS.parent / name).read_bytes() for name in printed.photo_files}
    observed, chains = observed_chain(), leaf_chains()
    work: tuple[tuple[str, Callable[[], object], int, float | None], ...] = (
        ("`read_visit`", lambda: read_visit(text, instruments), rounds, None),
        ("`judge_visit`", lambda: judge_visit(visit), rounds, 0.005),
        ("`tell`", lambda: tell(judged, "en", UnitSystem.METRIC), rounds, None),
        ("`identify` a chain", lambda: identify(observed, chains), rounds, None),
        ("`report_pdf`, warm", lambda: report_pdf(document, photos), paper_rounds, 0.3),
        ("`papers`, all of them, warm", lambda: papers(document, photos), paper_rounds, None),
    )
    rows = []
    for name, done, count, bar in work:
        taken = median_time(done, count)
        judged_by = ("", "") if bar is None else (milliseconds(bar), "yes" if taken <= bar else "no")
        rows.append((name, milliseconds(taken), f"{count}", *judged_by))
    return Section(
        "One visit in the library",
        ".venv/bin/python bench/judge_time.py",
        f"Median after one warm-up; the visit is `{VISIT.relative_to(ROOT)}` with {len(visit.chains)} chain "
        f"sets and {len(visit.checks)} checks; the papers are those of `{WITH_PAPERS.relative_to(ROOT)}`.",
        ("work", "median", "rounds", "bar", "met"),
        tuple(rows),
    )


if __name__ == "__main__":
    print(section().markdown())
