"""A shop's own instruments from TOML. The figures are demo data."""

from fractions import Fraction
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.quantity import BadInput, Evidence, Instrument, Problem, common_instruments, own_instruments

GOOD = {
    "name": '"Long Rule"',
    "dimension": '"length"',
    "standard_uncertainty": '"0.3 mm"',
    "step": '"0.5 mm"',
    "source": '"study of 10 spans by 3 people"',
    "evidence": '"demo data"',
}
KEYS = ("name", "dimension", "standard_uncertainty", "relative", "step", "source", "evidence")


def text(**cells: str | None) -> str:
    """Write one instrument, with some cells changed or (None) left out."""
    lines = [f"{key} = {value}" for key, value in {**GOOD, **cells}.items() if value is not None]
    return "\n".join(["[[instrument]]", *lines, ""])


def faults(toml: str) -> list[str]:
    """Return every problem of the text as its line."""
    with pytest.raises(BadInput) as caught:
        own_instruments(toml)
    return [str(problem) for problem in caught.value.problems]


def test_an_instrument_is_read_whole() -> None:
    """Every figure comes in the dimension's own unit, the name as it is looked up."""
    (item,) = own_instruments(text())
    assert (item.name, item.dimension, item.aliases) == ("long-rule", "length", ())
    assert (item.standard_uncertainty, item.relative_uncertainty, item.step) == (0.3, 0.0, Fraction(1, 2))
    assert str(item.source) == "study of 10 spans by 3 people [demo data]"
    assert item.source.evidence is Evidence.DEMO_DATA


def test_it_is_found_as_it_was_written() -> None:
    """The name works in a visit with the capitals and the space of the file."""
    mine = common_instruments().replaced_by(own_instruments(text()))
    assert mine.find("Long Rule", "length").standard_uncertainty == 0.3


def test_inches_become_millimetres() -> None:
    """A fraction of an inch is as good as a decimal."""
    (item,) = own_instruments(text(standard_uncertainty='"1/64 in"', step='"1/32 in"'))
    assert (item.standard_uncertainty, item.step) == (25.4 / 64, Fraction("25.4") / 32)


def test_a_degree_fahrenheit_of_doubt_is_five_ninths() -> None:
    """Doubt and step are differences: the offset of the scale is no part of them."""
    (item,) = own_instruments(
        text(dimension='"temperature"', standard_uncertainty='"1.8 °F"', step='"0.9 °F"')
    )
    assert (item.standard_uncertainty, item.step) == (1.0, Fraction(1, 2))


def test_relative_alone_keeps_the_doubt_of_the_graduation() -> None:
    """Near zero a share of the reading is nothing; the step still is something."""
    (item,) = own_instruments(
        text(dimension='"mass"', standard_uncertainty=None, relative='"1 %"', step='"5 kg"')
    )
    assert item.uncertainty_at(Fraction(0)) == pytest.approx(5 / sqrt(12))
    assert item.relative_uncertainty == 0.01


def test_absolute_and_relative_stand_together() -> None:
    """Both may be given."""
    (item,) = own_instruments(text(relative="0.5"))
    assert (item.standard_uncertainty, item.relative_uncertainty) == (0.3, 0.005)


def test_a_dimension_of_one_unit_needs_none_written() -> None:
    """A bare number is taken where it can mean only one unit."""
    (item,) = own_instruments(text(dimension='"percent"', standard_uncertainty="0.1", step='"0.25"'))
    assert item.step == Fraction(1, 4)


@pytest.mark.parametrize("empty", ["", "# none yet\n", "instrument = []"])
def test_no_instruments_is_no_fault(empty: str) -> None:
    """A file that is still empty gives none."""
    assert own_instruments(empty) == ()


@pytest.mark.parametrize(
    ("cells", "expected"),
    [
        ({"name": None}, "instrument 1 name: words on one line"),
        ({"name": '" "'}, "instrument 1 name: ' ' given; words on one line"),
        ({"name": "7"}, "instrument 1 name: '7' given; words on one line"),
        ({"source": None}, "instrument 1 source: words on one line"),
        ({"source": r'"a\nb"'}, r"instrument 1 source: 'a\nb' given; words on one line"),
        (
            {"evidence": '"hearsay"'},
            "instrument 1 evidence: 'hearsay' given; one of " + ", ".join(repr(str(e)) for e in Evidence),
        ),
        ({"step": None}, "instrument 1 step: a quantity such as 31.5 mm"),
        ({"step": '"0 mm"'}, "instrument 1 step: '0 mm' given; more than 0"),
        ({"step": '"1.5/8 in"'}, "instrument 1 step: '1.5/8 in' given; a fraction as 12 3/8 or 12-3/8"),
        ({"step": "0.5"}, "instrument 1 step: '0.5' given; its unit too, as in 0.5 mm"),
        (
            {"standard_uncertainty": None},
            "instrument 1 standard_uncertainty: a quantity with its unit; or relative as a percentage",
        ),
        (
            {"standard_uncertainty": '"-1 mm"'},
            "instrument 1 standard_uncertainty: '-1 mm' given; more than 0",
        ),
        (
            {"standard_uncertainty": '"0.1 mm"'},
            "instrument 1 standard_uncertainty: '0.1 mm' given; at least step/√12 = 0.144 mm, from its step",
        ),
        ({"relative": '"0 %"'}, "instrument 1 relative: '0 %' given; more than 0"),
        ({"relative": '"1 mm"'}, "instrument 1 relative: '1 mm' given; percent in %: mm measures length"),
        (
            {"colour": '"red"'},
            f"instrument 1: 'colour' given; only the keys {', '.join(KEYS)}",
        ),
    ],
)
def test_each_fault_names_instrument_key_and_what_would_be_right(
    cells: dict[str, str | None], expected: str
) -> None:
    """One fault gives one line."""
    assert faults(text(**cells)) == [expected]


def test_an_unknown_dimension_is_told_the_known_ones() -> None:
    """The message lists what can be measured."""
    (line,) = faults(text(dimension='"lenght"'))
    assert line.startswith("instrument 1 dimension: 'lenght' given; one of 'length', 'mass', ")


def test_every_problem_is_told_at_once() -> None:
    """The faults of all instruments come together, in the order of the file."""
    lines = faults(text(source=None, step='"long"') + text(name=None, evidence=None))
    assert [line.split(":")[0] for line in lines] == [
        "instrument 1 source",
        "instrument 1 step",
        "instrument 2 name",
        "instrument 2 evidence",
    ]


def test_two_of_one_name_are_refused() -> None:
    """The same name twice for one dimension would hide one of them; for another dimension it may stand."""
    assert faults(text() + text(name='"long-rule"')) == [
        "instrument 2 name: 'long-rule' given; a name of its own: another instrument that reads length has it"
    ]
    other = text(dimension='"angle"', standard_uncertainty='"1 deg"', step='"1 deg"')
    assert len(own_instruments(text() + other)) == 2


@pytest.mark.parametrize(
    ("toml", "start"),
    [
        ("[[instrument", "own instruments: TOML text: "),
        ("x = " + "9" * 5000, "own instruments: TOML text: "),
        ("x = " + "[" * 5000, "own instruments: TOML text, not nested so deeply"),
        ("[instrument]\nname = 'x'", "own instruments: 'instrument' given; only [[instrument]] tables"),
        ("[[gauge]]\nname = 'x'", "own instruments: 'gauge' given; only [[instrument]] tables"),
        ("instrument = 5", "own instruments: 'instrument' given; only [[instrument]] tables"),
        (f"{'k' * 500} = 1", f"own instruments: '{'k' * 60}…' given"),
        ("instrument = [5]", "instrument 1: '5' given; a table of name, dimension and so on"),
    ],
)
def test_text_of_another_shape_is_refused(toml: str, start: str) -> None:
    """What is no list of instruments is said in one line, however odd."""
    assert faults(toml)[0].startswith(start)


@given(
    st.dictionaries(st.sampled_from([*GOOD, "relative"]), st.text(max_size=12) | st.floats() | st.booleans())
)
def test_odd_cells_are_read_or_refused(cells: dict[str, str | float | bool]) -> None:
    """Whatever stands in the cells, the answer is instruments or named problems."""
    rows = {**GOOD, **{key: _toml(value) for key, value in cells.items()}}
    items, problems = _answer(text(**rows))
    assert bool(items) is not bool(problems)
    assert all(item.standard_uncertainty > 0 for item in items)
    assert all(problem.field.startswith("instrument 1") and problem.expected for problem in problems)


def _answer(toml: str) -> tuple[tuple[Instrument, ...], tuple[Problem, ...]]:
    """Return what was read, or the problems; any other error is a failure."""
    try:
        return own_instruments(toml), ()
    except BadInput as refusal:
        return (), refusal.problems


def _toml(value: str | float | bool) -> str:
    """Write a cell as TOML, every character of a text as an escape."""
    if isinstance(value, str):
        return '"' + "".join(f"\\U{ord(c):08x}" for c in value) + '"'
    return repr(value).lower()
