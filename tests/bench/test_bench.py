"""The bench with small counts: that it measures what it says, and that the product keeps to the bars."""

import subprocess
import sys
from datetime import date
from fractions import Fraction
from math import sqrt
from statistics import NormalDist

import false_accept
import judge_time
import marks
import pytest
import run
import start_time
from draws import Spread, normal_draws, written, written_pairs
from false_accept_chains import Subject, span_subjects
from section import Section, milliseconds, percent, thousands

from mastwright.chains import find_chain

DRAWS = 2000
SUBJECTS = {
    f"{s.group}: {s.name}": s
    for s in (
        *span_subjects(DRAWS, [find_chain("BL634")], {}),
        *(s for s in false_accept.subjects(DRAWS) if "ft" not in s.group),
    )
}


def slack(share: float, errors: int = 4) -> float:
    """Four standard errors of so many draws: one in 30 000 sound results would pass it."""
    return errors * sqrt(share * (1 - share) / DRAWS)


@pytest.mark.parametrize("subject", SUBJECTS.values(), ids=SUBJECTS)
def test_fit_at_the_limit_is_rare(subject: Subject) -> None:
    """`fit` goes to something at its limit in at most 2.5 % of readings, chance and graduation allowed for.

    The graduation may add up to 0.4 % where it is a fifth of u; none of the coarser instruments can say
    `fit` there at all.
    """
    assert subject.shares(0, Spread.WITHIN).fit <= 0.029 + slack(0.029)


@pytest.mark.parametrize("subject", SUBJECTS.values(), ids=SUBJECTS)
def test_nothing_passes_three_uncertainties_beyond(subject: Subject) -> None:
    """Past limit + 3u at most 0.1 % is let through in any way, chance allowed for."""
    assert subject.shares(3, Spread.WITHIN).accepted <= 0.001 + slack(0.001)


@pytest.mark.parametrize("spread", [Spread.WITHIN, Spread.ON_TOP])
def test_calliper_keeps_to_the_bar(spread: Spread) -> None:
    """With a fine graduation the share let through at the limit is what the guard promises, 2.5 %."""
    shares = [s.shares(0, spread).accepted for name, s in SUBJECTS.items() if name.startswith("calliper")]
    assert sum(shares) / len(shares) == pytest.approx(0.025, abs=slack(0.025) + 0.003)


@pytest.mark.parametrize("legs", ["2.75", "2.8"])
def test_leg_gauge_passes_as_often_as_the_normal_law_says(legs: str) -> None:
    """A leg before the limit lets a chain at the limit through when the gauge errs by the gap (u = 0.1 %)."""
    expected = NormalDist(3, 0.1).cdf(float(legs))
    found = SUBJECTS[f"leg-gauge, legs of {legs} %: {legs}"].shares(0, Spread.WITHIN).accepted
    assert found == pytest.approx(expected, abs=slack(expected))


@pytest.mark.parametrize(
    "name", ["calliper, about 1 ft: 16 x 0.75 in", "plate edge, unworn plate measured: LH0822"]
)
def test_a_drifted_instrument_shows(name: str) -> None:
    """With one and a half times the stated doubt the bar is missed: the bench can tell."""
    share = SUBJECTS[name].shares(0, Spread.DRIFTED).accepted
    assert not false_accept.met(share, false_accept.BAR_AT_LIMIT, DRAWS)


def test_sound_items_are_let_through() -> None:
    """Ten uncertainties before the limit every calliper reading lets the truck work."""
    shares = SUBJECTS["calliper, about 1 ft: 16 x 0.75 in"].shares(-10, Spread.WITHIN)
    assert shares.accepted == 1.0


def test_rows_name_the_worst_case() -> None:
    """A row shows the largest share of its group, and which case it is."""
    group = [s for s in false_accept.subjects(50) if s.group.startswith("tape, about 3 ft")]
    (row,) = false_accept.rows(group, Spread.ON_TOP, 50)
    worst = max(group, key=lambda s: s.shares(0, Spread.ON_TOP).accepted)
    assert (row[1], row[5], row[6]) == ("11", percent(worst.shares(0, Spread.ON_TOP).accepted), worst.name)


def test_coarse_rule_is_read_to_its_division() -> None:
    """A rule read to 1/16 in lets more through than one read to its own 1 mm, over 12 in."""
    coarse = {(s.group, s.name): s for s in false_accept.coarse_rules(DRAWS)}
    found = coarse["rule read to 1/16 in, about 1 ft", "32 x 0.375 in"].shares(0, Spread.ON_TOP)
    assert found.accepted > 0.025 + slack(0.025)


def test_written_counts_every_draw_once() -> None:
    """Each draw is written as the graduation nearest to it."""
    assert written([-1.0, -0.2, 0.1, 0.9], 10.0, 1.0, 0.5) == {18: 1, 20: 2, 22: 1}


def test_draws_are_the_same_again() -> None:
    """The same seed gives the same draws, another seed others."""
    assert normal_draws(9, "a") == normal_draws(9, "a") != normal_draws(9, "b")


def test_pairs_scatter_apart() -> None:
    """Both readings of a pair scatter about their own true value."""
    pairs = written_pairs(DRAWS, "pairs", (5.0, 9.0), 0.5, 0.1)
    firsts = [a / 10 for (a, _), n in pairs.items() for _ in range(n)]
    seconds = [b / 10 for (_, b), n in pairs.items() for _ in range(n)]
    means = [sum(of) / DRAWS for of in (firsts, seconds)]
    assert means == pytest.approx([5.0, 9.0], abs=4 * 0.5 / sqrt(DRAWS))


def test_spread_within_adds_up_to_the_stated() -> None:
    """Scatter and graduation, step/√12 (JCGM 100:2008, F.2.2.1), together are the stated uncertainty."""
    assert Spread.WITHIN.scatter(0.4, 1) ** 2 + 1 / 12 == pytest.approx(0.16)


DIFFERENCES = marks.differences(DRAWS)


@pytest.mark.parametrize("way", ["lengths, not rounded", "lengths, limits rounded up and the guard down"])
def test_marks_that_change_nothing(way: str) -> None:
    """Exact lengths, and marks rounded the way they are compared, give the product's verdicts."""
    assert DIFFERENCES[way] == marks.Differences(0, 0, 0, 0)


@pytest.mark.parametrize(
    ("way", "stricter", "laxer"),
    [
        ("lengths, all rounded down: to the safe side", True, False),
        ("lengths, all rounded up", False, True),
        (marks.FLOAT, False, True),
    ],
)
def test_rounded_marks_change_verdicts(way: str, stricter: bool, laxer: bool) -> None:
    """Rounding down condemns more, rounding up and floating point less."""
    found = DIFFERENCES[way]
    assert (found.stricter > 0, found.laxer > 0) == (stricter, laxer)


def test_half_the_readings_are_at_a_mark() -> None:
    """Every other reading lies within half a graduation of 2 % or 3 %."""
    every_other = list(marks.made_readings(100))[::2]
    nominals = [m.pitches * m.chain.pitch for m in every_other]
    off = [
        min(abs(m.quantity.canonical - n * share) for share in (1 + Fraction(2, 100), 1 + Fraction(3, 100)))
        for m, n in zip(every_other, nominals, strict=True)
    ]
    assert all(o <= m.graduation.millimetres / 2 for o, m in zip(off, every_other, strict=True))


def test_wall_medians_measure_a_process() -> None:
    """A command that sleeps takes at least as long as it sleeps."""
    sleeping = [sys.executable, "-c", "import time; time.sleep(0.05)"]
    assert start_time.wall_medians({"sleep": sleeping}, 1)["sleep"] >= 0.05


def test_wall_medians_refuse_a_failing_command() -> None:
    """A command that fails is no figure."""
    with pytest.raises(subprocess.CalledProcessError):
        start_time.wall_medians({"fails": [sys.executable, "-c", "raise SystemExit(3)"]}, 1)


def test_start_times_of_every_command() -> None:
    """Each command is timed and all but the bare interpreter have a bar."""
    bars = [(row[0], row[3]) for row in start_time.section(runs=1).rows]
    assert bars == [
        ("`python -c pass`", ""),
        ("`mastwright --version`", "150 ms"),
        ("`mastwright judge VISIT --json`", "700 ms"),
        ("`mastwright judge VISIT --json --out DIR`", "1500 ms"),
    ]


def test_judging_is_timed() -> None:
    """Judging a visit and printing its report are timed against their bars."""
    bars = {row[0]: row[3] for row in judge_time.section(rounds=1, paper_rounds=1).rows}
    assert (bars["`judge_visit`"], bars["`report_pdf`, warm"]) == ("5.00 ms", "300 ms")


def test_results_hold_every_section() -> None:
    """The file gives date and cores, and each table under its command."""
    one = Section("Title", "a command", "How.", ("what", "figure"), (("a", "1"),), ("a remark",))
    text = run.results([one], date(2026, 11, 3))
    table = "## Title\n\n`a command`\n\nHow.\n\n| what | figure |\n| --- | --- |\n| a | 1 |\n\n- a remark\n"
    assert ("on 2026-11-03" in text, " cores" in text, text.endswith(table)) == (True, True, True)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (percent(0.025), "2.50 %"),
        (thousands(200_000), "200 000"),
        (milliseconds(0.005), "5.00 ms"),
        (milliseconds(1.5), "1500 ms"),
    ],
)
def test_figures_as_text(text: str, expected: str) -> None:
    """Shares to two digits, counts with thousands apart, times in milliseconds."""
    assert text == expected
