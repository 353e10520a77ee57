"""Laws of reading quantities: nothing but a quantity or a clear refusal, and no digit lost."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.quantity import (
    BadInput,
    Field,
    Quantity,
    UnitSystem,
    inch_text,
    parse_quantity,
    unit,
    written_text,
)
from mastwright.quantity.number import Written, read_number
from strategies import decimals, fields, inches, quantities, typed


def free(dimension: str) -> Field:
    """Return a field without bounds."""
    return Field("reading", dimension, minimum=None)


def _answer(given_: object, field: Field) -> tuple[Quantity | None, str]:
    """Return the quantity read, or the refusal's words; any other error is a failure."""
    try:
        return parse_quantity(given_, field), ""
    except BadInput as refusal:
        return None, str(refusal)


@given(quantities())
def test_what_we_write_reads_the_same(quantity: Quantity) -> None:
    """Writing any quantity in its unit and reading it again gives the same value and unit."""
    again = parse_quantity(written_text(quantity.value, quantity.unit), free(quantity.unit.dimension))
    assert (again.value, again.unit) == (quantity.value, quantity.unit)


@given(typed, fields())
def test_a_quantity_or_a_clear_refusal(given_: object, field: Field) -> None:
    """Whatever arrives is read, and then writes and reads the same, or is refused by name in one line."""
    read, message = _answer(given_, field)
    if read is None:
        assert message.startswith("reading: ")
        assert message.isprintable()
    else:
        again = parse_quantity(written_text(read.value, read.unit), field)
        assert (again.value, again.unit) == (read.value, read.unit)


@given(inches)
def test_inches_through_millimetres_and_back(length: Quantity) -> None:
    """A length read in inches is exact in millimetres, and reads back from them as the same inches."""
    through = parse_quantity(written_text(length.canonical, unit("mm")), free("length"))
    assert unit("in").from_canonical(through.canonical) == length.value


@given(st.integers(0, 64 * 400))
def test_rule_readings_survive_as_fractions(count: int) -> None:
    """Every 64th up to 400 in, written as whole and fraction, reads as itself."""
    value = Fraction(count, 64)
    assert parse_quantity(f"{inch_text(value)} in", free("length")).value == value


@given(decimals, st.sampled_from([".", ","]))
def test_either_decimal_mark_reads_the_same(value: Fraction, mark: str) -> None:
    """Four decimals are never thousands: point and comma mean the same."""
    text = f"{float(abs(value) % 10**6):.4f}"
    assert read_number(text.replace(".", mark)) == Written(
        Fraction(text), Fraction(1, 10**4), is_fraction=False
    )


@given(st.integers(1000, 10**11), st.sampled_from(["\u00a0", "\u2009", "\u202f", " "]))
def test_any_thousands_space_reads_the_same(value: int, space: str) -> None:
    """Thousands parted by any kind of space are read as one number."""
    assert parse_quantity(f"{value:,}".replace(",", space) + " kg", free("mass")).value == value


@given(st.floats(min_value=1e-9, max_value=1e9))
def test_a_float_is_taken_as_it_prints(value: float) -> None:
    """A float means the shortest decimal that it prints as, with or without exponent."""
    assert parse_quantity(value, free("ratio")).value == Fraction(repr(value))


@given(decimals, st.sampled_from(UnitSystem))
def test_a_bare_number_and_the_shown_unit_agree(value: Fraction, system: UnitSystem) -> None:
    """Leaving the unit out means the unit shown."""
    field = Field("reading", "length", system, minimum=None)
    bare = written_text(value, unit("1"))
    assert parse_quantity(bare, field) == parse_quantity(f"{bare} {field.unit.name}", field)
