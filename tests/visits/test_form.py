"""A table read field by field: what is taken, and how each fault is told."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime
from fractions import Fraction

import pytest

from mastwright.quantity import Problem, UnitSystem
from mastwright.visits.form import Form
from mastwright.visits.positions import Path


def form(value: object, system: UnitSystem = UnitSystem.METRIC) -> tuple[Form, list[tuple[Path, Problem]]]:
    """Return a form whose field `x` holds the value, and where its problems go."""
    problems: list[tuple[Path, Problem]] = []
    return Form({"x": value}, ("chain", 0), problems, system), problems


TAKEN: list[tuple[Callable[[Form], object], object, object]] = [
    (lambda f: f.text("x"), "main", "main"),
    (lambda f: f.text("x", choices=("a", "b")), "b", "b"),
    (lambda f: f.texts("x"), ["a", "b"], ("a", "b")),
    (lambda f: f.whole("x"), 16, 16),
    (lambda f: f.whole("x", least=1, most=3), 3, 3),
    (lambda f: f.yes("x", otherwise=True), False, False),
    (lambda f: f.date("x"), date(2026, 11, 20), date(2026, 11, 20)),
    (lambda f: f.has("x"), "", True),
]


@pytest.mark.parametrize(("ask", "value", "answer"), TAKEN)
def test_a_right_value_is_taken(ask: Callable[[Form], object], value: object, answer: object) -> None:
    """A value of the right kind comes back, and nothing is held against it."""
    asked, problems = form(value)
    assert (ask(asked), problems) == (answer, [])


LEFT_OUT: list[tuple[Callable[[Form], object], object]] = [
    (lambda f: f.text("y"), ""),
    (lambda f: f.texts("y"), ()),
    (lambda f: f.whole("y"), None),
    (lambda f: f.yes("y", otherwise=True), True),
    (lambda f: f.date("y"), None),
    (lambda f: f.quantity("y", "length"), None),
    (lambda f: f.quantities("y", "length"), ()),
    (lambda f: f.tables("y"), ()),
    (lambda f: f.table("y").has("z"), False),
    (lambda f: f.has("y"), False),
]


@pytest.mark.parametrize(("ask", "answer"), LEFT_OUT)
def test_what_is_left_out_is_no_problem(ask: Callable[[Form], object], answer: object) -> None:
    """A field that is not needed may be left out."""
    asked, problems = form(1)
    assert (ask(asked), problems) == (answer, [])


NEEDED: list[Callable[[Form], object]] = [
    lambda f: f.text("y", required=True),
    lambda f: f.whole("y", required=True),
    lambda f: f.date("y", required=True),
    lambda f: f.quantity("y", "length", required=True),
    lambda f: f.table("y", required=True),
]


@pytest.mark.parametrize("ask", NEEDED)
def test_what_is_needed_is_asked_for(ask: Callable[[Form], object]) -> None:
    """A needed field that is missing is told by its full name."""
    asked, problems = form(1)
    ask(asked)
    assert problems == [(("chain", 0, "y"), Problem("chain[1].y", "", "is needed"))]


WRONG: list[tuple[Callable[[Form], object], object, str, object]] = [
    (lambda f: f.text("x"), 3, "a text in quotes", ""),
    (lambda f: f.text("x", choices=("a", "b")), 3, "a text in quotes: a, b", ""),
    (lambda f: f.text("x", choices=("a", "b")), "c", "one of a, b", ""),
    (lambda f: f.text("x", required=True), " ", "a text that is not blank", " "),
    (lambda f: f.texts("x"), "a", 'a list of texts, such as ["a", "b"]', ()),
    (lambda f: f.texts("x"), ["a", 1], 'a list of texts, such as ["a", "b"]', ()),
    (lambda f: f.whole("x", least=1, most=9), 0, "a whole number from 1 to 9", None),
    (lambda f: f.whole("x", least=1, most=9), 10, "a whole number from 1 to 9", None),
    (lambda f: f.whole("x", most=9), True, "a whole number from 0 to 9", None),
    (lambda f: f.whole("x", most=9), "3", "a whole number from 0 to 9", None),
    (lambda f: f.yes("x", otherwise=True), "yes", "true or false, without quotes", True),
    (lambda f: f.date("x"), "2026-11-20", "a date without quotes, such as 2026-11-20", None),
    (lambda f: f.date("x"), datetime(2026, 11, 20, 8), "a date without quotes, such as 2026-11-20", None),  # noqa: DTZ001  as the TOML reader gives it
    (lambda f: f.date("x"), date(26, 11, 20), "a date from 1950 to 2199", None),
    (lambda f: f.date("x"), date(9999, 12, 31), "a date from 1950 to 2199", None),
    (lambda f: f.quantities("x", "length"), "3 mm", "a list of readings in square brackets", ()),
    (lambda f: f.quantities("x", "length"), [], "a list of readings in square brackets", ()),
    (lambda f: f.tables("x"), {"a": 1}, "tables, each begun with [[chain.x]]", ()),
    (lambda f: f.tables("x"), [1], "tables, each begun with [[chain.x]]", ()),
]


@pytest.mark.parametrize(("ask", "value", "expected", "answer"), WRONG)
def test_a_wrong_value_is_told_with_what_would_be_right(
    ask: Callable[[Form], object], value: object, expected: str, answer: object
) -> None:
    """A value of the wrong kind leaves nothing behind but a problem with what would be right."""
    asked, problems = form(value)
    assert ask(asked) == answer
    assert problems == [(("chain", 0, "x"), Problem("chain[1].x", str(value), expected))]


def test_a_table_of_the_wrong_kind_is_told() -> None:
    """A value where a table belongs is told, and an empty table stands in for it."""
    problems: list[tuple[Path, Problem]] = []
    inner = Form({"mast": 3}, ("truck",), problems).table("mast")
    assert not inner.has("arrangement")
    assert problems == [(("truck", "mast"), Problem("truck.mast", "3", "a table, [truck.mast]"))]


def test_a_number_too_long_to_print_is_told() -> None:
    """A whole number of thousands of digits is refused, not printed."""
    asked, problems = form(16**5000)
    asked.whole("x")
    assert problems[0][1].given == "a number of thousands of digits"


@pytest.mark.parametrize(
    ("system", "millimetres"), [(UnitSystem.METRIC, Fraction(2)), (UnitSystem.INCH, Fraction("50.8"))]
)
def test_a_bare_number_takes_the_unit_of_the_file(system: UnitSystem, millimetres: Fraction) -> None:
    """What a number without unit means is decided by the file's units."""
    read = form(2, system)[0].quantity("x", "length")
    assert read is not None
    assert read.canonical == millimetres


@pytest.mark.parametrize("dimension", ["temperature", "angle"])
def test_temperatures_and_angles_may_be_negative(dimension: str) -> None:
    """Below zero is possible for a temperature and an angle."""
    read = form(-5)[0].quantity("x", dimension)
    assert read is not None
    assert read.value == -5


def test_a_length_may_not_be_negative() -> None:
    """Below zero is impossible for a length, and told so."""
    asked, problems = form("-5 mm")
    assert asked.quantity("x", "length") is None
    assert problems[0][1] == Problem("chain[1].x", "-5 mm", "at least 0 mm")


def test_a_list_keeps_what_can_be_read_and_tells_the_rest() -> None:
    """One wrong reading of a list is told; the others are still read."""
    asked, problems = form(["1 mm", "2 kg", "3 mm"])
    assert [q.value for q in asked.quantities("x", "length")] == [1, 3]
    assert [p.given for _, p in problems] == ["2 kg"]


def test_tables_are_numbered_from_one() -> None:
    """The field of an array's table is named as people count."""
    inner = form([{"a": 1}, {"b": 2}])[0].tables("x")
    assert [i.name("length") for i in inner] == ["chain[1].x[1].length", "chain[1].x[2].length"]


def test_a_misspelt_field_is_told_with_the_right_one() -> None:
    """A field near a known one is taken for a slip."""
    problems: list[tuple[Path, Problem]] = []
    asked = Form({"lenght": "3 mm"}, ("span",), problems)
    asked.quantity("length", "length")
    asked.no_more()
    assert problems[0][1] == Problem("span.lenght", "lenght", "did you mean 'length'?")


def test_an_unknown_field_is_told_with_the_known_ones() -> None:
    """A field near none is told with all that there are."""
    problems: list[tuple[Path, Problem]] = []
    asked = Form({"colour": "red"}, ("span",), problems)
    asked.text("strand")
    asked.whole("pitches")
    asked.no_more()
    assert problems[0][1] == Problem("span.colour", "colour", "a known field: pitches, strand")


@pytest.mark.parametrize(("key", "spoilt"), [("x", True), ("y", False)])
def test_a_spoilt_field_is_known(key: str, spoilt: bool) -> None:
    """A problem below a field spoils that field and no other."""
    asked, _ = form([{"a": 1}])
    asked.tables("x")[0].refuse("a", "something else")
    assert asked.spoilt(key) is spoilt


def test_a_table_is_faulty_by_its_own_problems() -> None:
    """A problem in one table leaves its neighbour sound."""
    first, second = form([{"a": 1}, {"a": 1}])[0].tables("x")
    first.refuse("a", "something else")
    assert (first.faulty, second.faulty) == (True, False)
