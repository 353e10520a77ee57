"""What holds for every visit file, whatever somebody writes."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from mastwright.quantity import BadInput, Problem
from mastwright.visits import key_lines, read_visit
from mastwright.visits.form import Form
from mastwright.visits.positions import Path as Place
from strategies import typed
from visits.written import chain, check, line_of, text

EXAMPLES = sorted((Path(__file__).parents[2] / "examples" / "visits").glob("*.toml"))
TEXTS = [f.read_text(encoding="utf-8") for f in EXAMPLES]

whole_files = st.sampled_from(TEXTS)
bits = st.sampled_from(
    [
        "[",
        "]",
        "[[chain]]",
        '"',
        "=",
        "\n",
        "-1",
        "1e400",
        "true",
        "nan",
        "2026-11-20",
        '""',
        "''",
        "{",
        "}",
        "0x",
    ]
)


def taken_or_told(written: str) -> tuple[Problem, ...]:
    """Read a file; return its problems, none where it was taken."""
    try:
        read_visit(written)
    except BadInput as bad:
        return bad.problems
    return ()


@given(st.text(max_size=80))
def test_any_text_is_told_its_problems(written: str) -> None:
    """No text crashes the reader: what is no visit is refused in words."""
    problems = taken_or_told(written)
    assert problems
    assert all(p.field and p.expected for p in problems)


@settings(max_examples=60)
@given(whole_files, st.data())
def test_a_spoilt_example_is_taken_or_told(written: str, data: st.DataObject) -> None:
    """An example with a piece cut out or put in is read or told; each problem says what would be right."""
    start = data.draw(st.integers(0, len(written)))
    end = min(len(written), start + data.draw(st.integers(0, 30)))
    spoilt = written[:start] + data.draw(bits) + written[end:]
    assert all(p.field and p.expected for p in taken_or_told(spoilt))


@settings(max_examples=60)
@given(whole_files, st.data())
def test_a_problem_stands_on_a_line_of_the_file(written: str, data: st.DataObject) -> None:
    """With one value of an example spoilt, every line that is told is one of the file."""
    lines = written.splitlines()
    values = [n for n, line in enumerate(lines) if " = " in line]
    number = data.draw(st.sampled_from(values))
    lines[number] = lines[number].partition(" = ")[0] + " = [[]]"
    assert {p.line for p in taken_or_told("\n".join(lines))} <= {*range(1, len(lines) + 1), None}


@settings(max_examples=60)
@given(st.sampled_from(["pitches = ", "length = ", "start = ", "strand = "]), st.integers(-(10**20), 10**20))
def test_a_number_in_a_span_is_told_where_it_stands(field: str, number: int) -> None:
    """Whatever number stands in a field of a span, its problems are of that line or of none."""
    spans = '[[chain.span]]\nstrand = "left"\npitches = 16\nlength = "306 mm"\nstart = 1\n'
    line = next(x for x in spans.splitlines() if x.startswith(field))
    written = text(chain(spans=spans.replace(line, f"{field}{number}")))
    at = line_of(written, f"\n{field}{number}\n") + 1
    assert {p.line for p in taken_or_told(written)} <= {at}


ASKS: list[Callable[[Form], object | None]] = [
    lambda f: f.whole("x"),
    lambda f: f.date("x"),
    lambda f: f.quantity("x", "length"),
]


@pytest.mark.parametrize("ask", ASKS)
@given(value=typed.filter(lambda v: v is not None))
def test_any_value_is_taken_or_told(ask: Callable[[Form], object | None], value: object) -> None:
    """Each way of asking for a field either answers or keeps a problem."""
    problems: list[tuple[Place, Problem]] = []
    answer = ask(Form({"x": value}, (), problems))
    assert (answer is None) == bool(problems)


@given(whole_files, st.sampled_from(["\n", "\r\n"]))
def test_every_key_of_an_example_has_a_line(written: str, end: str) -> None:
    """Each table and field that the TOML reader finds is found with its line."""
    lines = key_lines(written.replace("\n", end))
    assert set(paths(tomllib.loads(written), ())) <= set(lines)


def paths(value: object, above: Place) -> list[Place]:
    """Return the place of every key and table below a value."""
    found: list[Place] = []
    if isinstance(value, dict):
        for key, inner in value.items():
            place = (*above, key)
            tables = isinstance(inner, list) and inner and isinstance(inner[0], dict)
            found += ([] if tables else [place]) + paths(inner, place)
    elif isinstance(value, list):
        for number, inner in enumerate(value):
            found += [(*above, number), *paths(inner, (*above, number))]
    return found


@given(st.lists(st.sampled_from(["CAP-01", "CAP-02", "ELE-01", "TYR-04"]), min_size=1, max_size=6))
def test_a_check_is_refused_exactly_where_it_repeats(names: list[str]) -> None:
    """Each entry of a check but its first is told."""
    told = [p.field for p in taken_or_told(text(*(check(n) for n in names)))]
    again = [f"check[{n + 1}].id" for n, name in enumerate(names) if name in names[:n]]
    assert told == again
