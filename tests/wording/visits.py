"""The example visits, judged; and a visit of any text."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from mastwright.checks import NO_LIMITS, read_shop_limits
from mastwright.verdict import JudgedVisit, judge_visit
from mastwright.visits import read_visit

EXAMPLES = Path(__file__).parents[2] / "examples" / "visits"
NAMES = sorted(path.stem for path in EXAMPLES.glob("*.toml"))

HEAD = """
[visit]
id = "V1"
date = 2026-11-20
technician = "Ines Calder"
[customer]
name = "Fennmoor Cold Stores"
country = "GB"
[truck]
id = "T1"
kind = "reach"
power = "electric"
hours = "1000 h"
rated_capacity = "1600 kg"
load_centre = "600 mm"
"""


@cache
def example(name: str) -> JudgedVisit:
    """Return an example visit, judged with the limits beside it."""
    limits = read_shop_limits({f.name: f.read_text("utf-8") for f in (EXAMPLES / "limits").glob("*.toml")})
    return judge_visit(read_visit((EXAMPLES / f"{name}.toml").read_text("utf-8")), limits)


def judged(body: str) -> JudgedVisit:
    """Return a visit of this body under one head, judged without limits of a shop. demo data."""
    return judge_visit(read_visit(HEAD + body), NO_LIMITS)
