"""Quantities as people write them, and how the others are refused."""

from fractions import Fraction
from time import process_time

import pytest

from mastwright.quantity import BadInput, Field, Problem, UnitSystem, parse_quantity, unit

LENGTH = Field("span length", "length")
INCH_LENGTH = Field("span length", "length", UnitSystem.INCH)
MASS = Field("plate capacity", "mass")
TEMPERATURE = Field("oil temperature", "temperature", minimum=None)


def problem(given: object, field: Field) -> Problem:
    """Return the one problem with what was given."""
    with pytest.raises(BadInput) as caught:
        parse_quantity(given, field)
    (only,) = caught.value.problems
    return only


@pytest.mark.parametrize(
    ("text", "dimension", "value", "name"),
    [
        ("12 3/8 in", "length", "12.375", "in"),
        ('12-3/8"', "length", "12.375", "in"),
        ("12⅜ ″", "length", "12.375", "in"),
        ("12 3/8''", "length", "12.375", "in"),
        ("314,3 mm", "length", "314.3", "mm"),
        ("314.3mm", "length", "314.3", "mm"),
        ("31.4 cm", "length", "31.4", "cm"),
        ("2.5 m", "length", "2.5", "m"),
        ("1,200.5", "length", "1200.5", "mm"),
        ("7.5 ft", "length", "7.5", "ft"),
        ("5 1/2'", "length", "5.5", "ft"),
        ("3 000 kg", "mass", "3000", "kg"),
        ("3\u00a0000 kg", "mass", "3000", "kg"),
        ("3\u2009000\u202fkg", "mass", "3000", "kg"),
        ("3 000 lb", "mass", "3000", "lb"),
        ("1 1/2 lbs", "mass", "1.5", "lb"),
        ("2.5 t", "mass", "2.5", "t"),
        ("44,5 kN", "force", "44.5", "kN"),
        ("10,000.0 lbf", "force", "10000", "lbf"),
        ("-40 °F", "temperature", "-40", "°F"),
        ("−12.5 °C", "temperature", "-12.5", "°C"),
        ("150 bar", "pressure", "150", "bar"),
        ("2 200 psi", "pressure", "2200", "psi"),
        ("50 ft-lb", "torque", "50", "lbf·ft"),
        ("3%", "percent", "3", "%"),
        ("4", "ratio", "4", "1"),
    ],
)
def test_what_people_write(text: str, dimension: str, value: str, name: str) -> None:
    """A number and a unit in any usual spelling are read exactly."""
    read = parse_quantity(text, Field("reading", dimension, minimum=None))
    assert (read.value, read.unit) == (Fraction(value), unit(name))


@pytest.mark.parametrize(
    ("text", "value", "step"),
    [
        ("7' 2 1/2\"", "86.5", "1/2"),
        ("7’-2 1/2”", "86.5", "1/2"),
        ("7 ft 2 in", "86", "1"),
        ("7 FEET 2.25 Inches", "86.25", "1/100"),
        ("1 foot 2,5 in", "14.5", "1/10"),
        ("0' 3/4''", "0.75", "1/4"),
        ("6′11″", "83", "1"),
    ],
)
def test_feet_and_inches(text: str, value: str, step: str) -> None:
    """Feet and inches become inches, to the step of the inches."""
    read = parse_quantity(text, LENGTH)
    assert (read.value, read.unit, read.step) == (Fraction(value), unit("in"), Fraction(step))


@pytest.mark.parametrize(
    ("given", "field", "canonical"),
    [
        ("12 3/8", INCH_LENGTH, "314.325"),
        ("314.3", LENGTH, "314.3"),
        (12, INCH_LENGTH, "304.8"),
        (0.1, LENGTH, "0.1"),
        (1e-7, LENGTH, "0.0000001"),
        (1e11, LENGTH, "100000000000"),
        (-0.0, LENGTH, "0"),
        (20, Field("speed", "speed", shown="m/s"), "20"),
        (36, Field("speed", "speed"), "10"),
    ],
)
def test_a_bare_number_takes_the_shown_unit(given: object, field: Field, canonical: str) -> None:
    """Without a unit the field's own counts, for text and plain numbers, exactly as written."""
    assert parse_quantity(given, field).canonical == Fraction(canonical)


def test_the_step_goes_into_the_dimensions_own_unit() -> None:
    """The last written digit has a size in the unit kept, without a temperature's offset."""
    assert parse_quantity("12 3/8 in", LENGTH).canonical_step == Fraction("3.175")
    assert parse_quantity("50 °F", TEMPERATURE).canonical_step == Fraction(5, 9)


@pytest.mark.parametrize(
    ("given", "field", "message"),
    [
        (
            "1,200",
            LENGTH,
            "span length: '1,200' given; 1.200 or 1200: the comma may stand for the decimal or the thousand",
        ),
        (
            "5 tons",
            MASS,
            "plate capacity: '5 tons' given; t or kg, or lb: a ton may be 1000 kg, 2000 lb or 2240 lb",
        ),
        (
            "5 Ton",
            MASS,
            "plate capacity: '5 Ton' given; t or kg, or lb: a ton may be 1000 kg, 2000 lb or 2240 lb",
        ),
        (
            "5 tons",
            LENGTH,
            "span length: '5 tons' given; length in mm, cm, m, in, ft: the unit 'tons' is not known",
        ),
        (
            "5 kg",
            LENGTH,
            "span length: '5 kg' given; length in mm, cm, m, in, ft: kg measures mass",
        ),
        (
            "12 3/8 mm",
            LENGTH,
            "span length: '12 3/8 mm' given; a decimal: fractions are for inches, feet and pounds, not mm",
        ),
        (
            "7' 12\"",
            LENGTH,
            "span length: '7\\' 12\"' given; fewer than 12 inches after the feet, as in 7 ft 2 1/2 in",
        ),
        (
            "7' 1/3\"",
            LENGTH,
            "span length: '7\\' 1/3\"' given; a fraction in 2nds, 4ths, 8ths, 16ths, 32nds, 64ths or 128ths",
        ),
        ("", LENGTH, "span length: a quantity such as 31.5 mm"),
        ("long", INCH_LENGTH, "span length: 'long' given; a number and a unit, such as 12 3/8 in"),
        ("mm", LENGTH, "span length: 'mm' given; a number and a unit, such as 31.5 mm"),
        (
            "4 mm",
            Field("count", "ratio"),
            "count: '4 mm' given; a plain number without a unit: mm measures length",
        ),
        ("some", Field("count", "ratio"), "count: 'some' given; a number and a unit, such as 31.5"),
        (True, LENGTH, "span length: 'True' given; length in mm, cm, m, in, ft, as text or a number"),
        (None, LENGTH, "span length: 'None' given; length in mm, cm, m, in, ft, as text or a number"),
        ([12], LENGTH, "span length: 'a list' given; length in mm, cm, m, in, ft, as text or a number"),
        (float("nan"), LENGTH, "span length: 'nan' given; a number and a unit, such as 31.5 mm"),
        (float("-inf"), LENGTH, "span length: '-inf' given; a number and a unit, such as 31.5 mm"),
        (float("1e400"), LENGTH, "span length: 'inf' given; a number and a unit, such as 31.5 mm"),
        (1e300, LENGTH, "span length: '1e+300' given; a quantity such as 31.5 mm"),
        (5e-324, LENGTH, "span length: '5e-324' given; a quantity such as 31.5 mm"),
        (1e-40, LENGTH, "span length: '1e-40' given; a quantity such as 31.5 mm"),
        (10**13, LENGTH, "span length: 'a number of more than 12 digits' given; a quantity such as 31.5 mm"),
        ("1000000000000 mm", LENGTH, "span length: '1000000000000 mm' given; a quantity such as 31.5 mm"),
    ],
)
def test_refusals_name_field_value_and_what_would_be_right(given: object, field: Field, message: str) -> None:
    """Each refusal says which field, what was given and what to write instead."""
    assert str(problem(given, field)) == message


def test_a_number_too_long_to_print_is_refused() -> None:
    """A whole number of thousands of digits does not break the message that refuses it."""
    assert problem(-(10**5000), LENGTH).given == "a number of more than 12 digits"


BOUNDED = Field("fork heel", "length", minimum=Fraction(10), maximum=Fraction("127"))


@pytest.mark.parametrize("text", ["10 mm", "127 mm", "5 in"])
def test_bounds_themselves_are_possible(text: str) -> None:
    """A value at the lowest or highest possible is taken."""
    assert 10 <= parse_quantity(text, BOUNDED).canonical <= 127


@pytest.mark.parametrize(
    ("given", "field", "expected"),
    [
        ("9.99", BOUNDED, "at least 10 mm"),
        ("127.01", BOUNDED, "at most 127 mm"),
        ("5 1/64 in", Field("fork heel", "length", UnitSystem.INCH, maximum=Fraction(127)), "at most 5 in"),
        ("-1", LENGTH, "at least 0 mm"),
        ("-41 °F", Field("air", "temperature", UnitSystem.INCH, minimum=Fraction(-40)), "at least -40 °F"),
        ("0", Field("count", "ratio", minimum=Fraction(1)), "at least 1"),
        ("2000000 kg", Field("mass", "mass", maximum=Fraction(10**6)), "at most 1000000 kg"),
    ],
)
def test_impossible_values_are_told_the_bound(given: object, field: Field, expected: str) -> None:
    """The bound is shown in the unit that a bare number takes."""
    assert problem(given, field).expected == expected


@pytest.mark.parametrize(
    "text",
    [
        "12\x00mm",
        "12 mm\x1b[2J",
        "12\u200bmm",
        "12 👷",
        "👷",
        "\ud800",
        "12 \ud800",
        "٣١٤ mm",
        "⅓ in",
        "12 mm 5",
        "12..5 mm",
        "--5 mm",
        "12 mm; drop",
        "1e5 mm",
        "0x10",
        "1_000 mm",
        "12–14 mm",
        "1'200 kg",
        "7' 2",
        "-7' 2\"",
        "７' 2\"",
    ],
)
def test_odd_text_is_refused_in_one_printable_line(text: str) -> None:
    """Control characters, emoji, other scripts and half-read numbers give one clean line, never a value."""
    line = str(problem(text, LENGTH))
    assert line.startswith("span length: ")
    assert line.isprintable()


@pytest.mark.parametrize(
    "text",
    [
        "9" * 10_000,
        "1 " * 5_000,
        "½" * 10_000,
        "1/" * 5_000,
        "7'" * 5_000,
        " " * 10_000 + "x",
        "1," * 5_000 + "k",
    ],
)
def test_long_text_is_refused_at_once_and_cut_short(text: str) -> None:
    """Ten thousand characters cost no time to speak of and do not fill the message."""
    start = process_time()
    refused = problem(text, LENGTH)
    assert process_time() - start < 0.5
    assert len(refused.given) <= 61


def test_padding_does_not_count_as_length() -> None:
    """Spaces around and inside are no reason to refuse."""
    assert parse_quantity(" " * 500 + "12" + " " * 500 + "mm", LENGTH).value == 12
