"""The constants of the physics and their table."""

from fractions import Fraction

import pytest

from mastwright.checks.figures import (
    constant,
    figures,
    figures_from,
    given_text,
    refuse_negative,
    refuse_unless_positive,
)
from mastwright.quantity import BadInput, Evidence, TableError

ROW = {
    "name": "drag",
    "value": "1/4",
    "unit": "%",
    "meaning": "how hard it brakes",
    "source": "a made-up handbook",
    "evidence": "demo data",
}


def test_a_row_becomes_a_figure() -> None:
    """Value, unit, meaning and source of a row are all kept."""
    figure = figures_from([ROW], "a table")["drag"]
    assert (figure.value, figure.unit, figure.meaning) == (Fraction(1, 4), "%", "how hard it brakes")
    assert figure.source.evidence is Evidence.DEMO_DATA


@pytest.mark.parametrize(
    ("cell", "text", "says"),
    [
        ("source", " ", "no source"),
        ("evidence", "surely", "evidence 'surely'"),
        ("unit", "", "no unit"),
        ("meaning", " ", "no meaning"),
        ("value", "a lot", "value 'a lot'"),
        ("value", "1/0", "value '1/0'"),
    ],
)
def test_a_faulty_row_does_not_load(cell: str, text: str, says: str) -> None:
    """A row that lacks something or holds no number stops the table and names its place."""
    with pytest.raises(TableError, match=f"a table drag: {says}"):
        figures_from([ROW | {cell: text}], "a table")


def test_a_name_stands_once() -> None:
    """Two rows of one name stop the table."""
    with pytest.raises(TableError, match="a table drag: stands there twice"):
        figures_from([ROW, ROW], "a table")


def test_the_table_is_read_once() -> None:
    """The shipped table is kept after the first reading."""
    assert figures() is figures()


def test_a_constant_is_the_value_of_its_row() -> None:
    """A constant is found by name; there is none of another name."""
    assert constant("density_per_celsius") == Fraction(7, 10000)
    with pytest.raises(KeyError):
        constant("luck")


def test_what_is_remembered_says_so() -> None:
    """The drag rule is only remembered, and its rows keep that word."""
    remembered = {
        name for name, figure in figures().items() if figure.source.evidence is Evidence.FROM_MEMORY
    }
    assert {"drag_per_kmh", "drag_most", "stopping_knee", "open_circuit_offset"} <= remembered


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [(Fraction(-5), "mm", "-5 mm"), (Fraction(1, 3), "V", "1/3 V"), (Fraction("0.5"), "1", "0.5")],
)
def test_a_given_value_is_shown_unrounded(value: Fraction, unit: str, text: str) -> None:
    """A value in a message is exact, with its unit where it has one."""
    assert given_text(value, unit) == text


def test_zero_is_not_negative() -> None:
    """Zero passes where zero or more is right, and a negative value names field, value and bound."""
    refuse_negative("gap", Fraction(0), "mm")
    with pytest.raises(BadInput, match=r"^gap: '-1 mm' given; 0 mm or more$"):
        refuse_negative("gap", Fraction(-1), "mm")


@pytest.mark.parametrize("value", [Fraction(0), Fraction(-1)])
def test_zero_is_not_positive(value: Fraction) -> None:
    """Zero and below are refused where more than zero is right."""
    refuse_unless_positive("height", Fraction(1, 1000), "mm")
    with pytest.raises(BadInput, match=rf"^height: '{value} mm' given; more than 0 mm$"):
        refuse_unless_positive("height", value, "mm")
