"""A finding that was put right at the visit and looked at again."""

from __future__ import annotations

import pytest

from mastwright.quantity import BadInput
from mastwright.verdict import Verdict, judge_visit
from mastwright.visits import read_visit

_VISIT = """
[visit]
id = "v1"
date = 2026-11-20
technician = "Ines Calder"
[customer]
name = "Fennmoor Cold Stores"
[truck]
id = "H16-04"
kind = "reach"
power = "electric"
hours = 100
[[chain]]
set = "main"
designation = "LH1234"
strands = ["left"]
[[chain.span]]
strand = "left"
pitches = 16
length = "305 mm"
[[chain.finding]]
condition = "{condition}"
put_right = {put_right}
"""


def visit_text(condition: str, *, put_right: bool) -> str:
    """Return a visit with one finding (demo data)."""
    return _VISIT.format(condition=condition, put_right=str(put_right).lower())


@pytest.mark.parametrize(
    "condition", ["surface-rust", "tight-joint-dirt", "anchor-cotter-missing", "unequal-tension"]
)
def test_a_finding_put_right_is_fit_and_still_told(condition: str) -> None:
    """What was put right at the visit stays in the report and no longer stops the truck."""
    left = judge_visit(read_visit(visit_text(condition, put_right=False)))
    mended = judge_visit(read_visit(visit_text(condition, put_right=True)))
    item = next(i for i in mended.items if i.kind == "finding")
    assert left.verdict.rank > Verdict.FIT.rank
    assert mended.verdict is Verdict.FIT
    assert item.reasons[0].code == "finding-put-right"


def test_a_condemning_finding_cannot_be_put_right() -> None:
    """A turned pin condemns the set whatever was done to it."""
    with pytest.raises(BadInput, match="only new chains put it right"):
        read_visit(visit_text("turned-pin", put_right=True))
