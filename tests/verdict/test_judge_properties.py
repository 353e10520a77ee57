"""What holds for every visit file that can be written: it is judged, or it is told what would be right."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from mastwright.quantity import BadInput, Problem
from mastwright.verdict import JudgedVisit, judge_visit
from mastwright.visits import read_visit

FOLDER = Path(__file__).parents[2] / "examples" / "visits"
TEXTS = [f.read_text(encoding="utf-8") for f in sorted(FOLDER.glob("*.toml"))]

numbers = st.one_of(
    st.integers(-3, 10**13).map(str),
    st.sampled_from(["0", "0.000001", "1/2", "12 3/8", "999999999999", "3,5"]),
)
units = st.sampled_from(
    ["", " mm", " in", " kg", " lb", " h", " V", " %", " kN", " km/h", " m", " kPa", " months"]
)
written = st.one_of(
    st.builds(lambda number, of: f'"{number}{of}"', numbers, units),
    st.integers(-3, 200_000).map(str),
    st.dates().map(str),
    st.sampled_from(["true", "false", '""', '"left"', "[]", "{}"]),
)


def judged(text: str) -> JudgedVisit | tuple[Problem, ...]:
    """Return a visit judged, or the problems that it was told."""
    try:
        return judge_visit(read_visit(text))
    except BadInput as bad:
        return bad.problems


@settings(max_examples=200)
@given(st.sampled_from(TEXTS), st.data())
def test_an_example_with_other_values_is_judged_or_told(text: str, data: st.DataObject) -> None:
    """Up to three values replaced by others: whatever they are, the visit is judged or refused in words."""
    lines = text.splitlines()
    fields = [n for n, line in enumerate(lines) if " = " in line and "{" not in line and line[0] not in "# "]
    for number in data.draw(st.lists(st.sampled_from(fields), min_size=1, max_size=3)):
        key = lines[number].partition(" = ")[0]
        lines[number] = f"{key} = {data.draw(written)}"
    found = judged("\n".join(lines))
    if isinstance(found, JudgedVisit):
        assert found.verdict.rank == max(i.verdict.rank for i in found.items)
    else:
        assert found
        assert all(p.field and p.expected for p in found)


@pytest.mark.parametrize("text", TEXTS)
def test_judging_twice_is_the_same(text: str) -> None:
    """The same file has the same judgement, whatever was judged in between."""
    first = judge_visit(read_visit(text))
    for other in TEXTS:
        judge_visit(read_visit(other))
    assert judge_visit(read_visit(text)) == first
