"""How long a command takes from cold: whole processes by the wall clock."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

from section import Section, milliseconds

RUNS = 11
ROOT = Path(__file__).parents[1]
VISIT = ROOT / "examples/visits/3-turned-pin.toml"
"""Out of service, with a photo: report, order and tag."""

_MASTWRIGHT = str(Path(sys.executable).with_name("mastwright"))


def wall_medians(commands: dict[str, list[str]], runs: int) -> dict[str, float]:
    """Return the median wall time of each command in seconds, after one warm-up of each.

    The commands take turns, so that a busy spell of the machine falls on all of them.

    Raises
    ------
    subprocess.CalledProcessError
        If a command fails.
    """
    times: dict[str, list[float]] = {name: [] for name in commands}
    for turn in range(runs + 1):
        for name, command in commands.items():
            begun = perf_counter()
            subprocess.run(command, check=True, capture_output=True)
            if turn:
                times[name].append(perf_counter() - begun)
    return {name: median(taken) for name, taken in times.items()}


def section(runs: int = RUNS) -> Section:
    """Return the table of start-up times."""
    with TemporaryDirectory() as out:
        judge = [_MASTWRIGHT, "judge", str(VISIT), "--json"]
        commands = {
            "python -c pass": [sys.executable, "-c", "pass"],
            "mastwright --version": [_MASTWRIGHT, "--version"],
            "mastwright judge VISIT --json": judge,
            "mastwright judge VISIT --json --out DIR": [*judge, "--out", out],
        }
        medians = wall_medians(commands, runs)
        papers = sorted(path.name for path in Path(out).iterdir())
    bars = dict(zip(list(commands)[1:], (0.15, 0.7, 1.5), strict=True))
    bare = medians["python -c pass"]
    return Section(
        "Start-up: whole commands",
        ".venv/bin/python bench/start_time.py",
        f"Wall time of a fresh process, median of {runs} after one warm-up, commands taking turns. "
        f"VISIT is `{VISIT.relative_to(ROOT)}`; its papers: {', '.join(papers)}.",
        ("command", "median", "times python -c pass", "bar", "met"),
        tuple(
            (
                f"`{name}`",
                milliseconds(taken),
                f"{taken / bare:.1f}",
                milliseconds(bars[name]) if name in bars else "",
                "" if name not in bars else "yes" if taken <= bars[name] else "no",
            )
            for name, taken in medians.items()
        ),
    )


if __name__ == "__main__":
    print(section().markdown())
