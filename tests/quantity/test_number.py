"""Numbers as people write them, and those that could mean two things."""

from fractions import Fraction

import pytest

from mastwright.quantity.number import Written, read_number, tidy


@pytest.mark.parametrize(
    ("text", "value", "step"),
    [
        ("12", "12", "1"),
        ("007", "7", "1"),
        ("314.3", "314.3", "1/10"),
        ("314,3", "314.3", "1/10"),
        ("314.30", "314.3", "1/100"),
        (".5", "1/2", "1/10"),
        (",5", "1/2", "1/10"),
        ("0,125", "1/8", "1/1000"),
        ("1.250", "5/4", "1/1000"),
        ("1200,500", "1200.5", "1/1000"),
        ("1,2005", "1.2005", "1/10000"),
        ("1,200.5", "1200.5", "1/10"),
        ("1.200,5", "1200.5", "1/10"),
        ("1,200,300", "1200300", "1"),
        ("3 000", "3000", "1"),
        ("3 000.5", "3000.5", "1/10"),
        ("3 000,25", "3000.25", "1/100"),
        ("+5", "5", "1"),
        ("-12.5", "-12.5", "1/10"),
        ("-1 200", "-1200", "1"),
    ],
)
def test_decimal_numbers(text: str, value: str, step: str) -> None:
    """A decimal number keeps its exact value and the size of its last written digit."""
    assert read_number(text) == Written(Fraction(value), Fraction(step), is_fraction=False)


@pytest.mark.parametrize(
    ("text", "value", "step"),
    [
        ("3/8", "3/8", "1/8"),
        ("12 3/8", "99/8", "1/8"),
        ("12-3/8", "99/8", "1/8"),
        ("-12-3/8", "-99/8", "1/8"),
        ("12 4/8", "25/2", "1/8"),
        ("0/64", "0", "1/64"),
        ("127/128", "127/128", "1/128"),
    ],
)
def test_binary_fractions(text: str, value: str, step: str) -> None:
    """A fraction keeps the division it was read to, even where it could be shortened."""
    assert read_number(text) == Written(Fraction(value), Fraction(step), is_fraction=True)


@pytest.mark.parametrize("text", ["1,200", "12,500", "999,000", "-1,200"])
def test_a_comma_before_three_digits_is_refused(text: str) -> None:
    """A lone comma before three digits may be decimal or thousands; the message offers both."""
    whole, tail = text.removeprefix("-").split(",")
    message = read_number(text)
    assert isinstance(message, str)
    assert f"{whole}.{tail}" in message
    assert f"{whole}{tail}" in message


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "a number, as in"),
        ("-", "a number, as in"),
        ("12-14", "a number, as in"),
        ("12 34", "a number, as in"),
        ("1234 567", "a number, as in"),
        ("0 500", "a number, as in"),
        ("1,200 300,400", "a number, as in"),
        ("1 200,300.5", "a number, as in"),
        ("1,20,300", "a number, as in"),
        ("1,2-3", "one decimal mark"),
        ("12.", "one decimal mark"),
        ("12,", "one decimal mark"),
        ("1.2.3", "one decimal mark"),
        ("1.234.567", "one decimal mark"),
        ("12 .5", "a number, as in"),
        ("1.5/8", "a fraction as 12 3/8"),
        ("3/8/2", "a fraction as 12 3/8"),
        ("1 000 1/2", "a fraction as 12 3/8"),
        ("12 8/8", "smaller than one"),
        ("9/8", "smaller than one"),
        ("1/3", "2nds, 4ths"),
        ("1/0", "2nds, 4ths"),
        ("1/256", "2nds, 4ths"),
        ("٣١٤", "digits 0 to 9"),
        ("１２", "digits 0 to 9"),
        ("12 ３/8", "digits 0 to 9"),
    ],
)
def test_what_is_no_number(text: str, words: str) -> None:
    """What cannot be read is answered with what would be right."""
    message = read_number(text)
    assert isinstance(message, str)
    assert words in message


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("  3\u00a0000\tkg\r\n", "3 000 kg"),
        ("3\u2009000 kg", "3 000 kg"),
        ("3\u202f000 kg", "3 000 kg"),
        ("3\u2007000 kg", "3 000 kg"),
        ("−40 °C", "-40 °C"),
        ("- 40", "-40"),
        ("12½", "12 1/2"),
        ("12-½", "12-1/2"),
        ("−⅜", "-3/8"),
        ("12 3⁄8", "12 3/8"),
        ("7’ 2”", "7' 2\""),
        ("   ", ""),
    ],
)
def test_tidy_leaves_one_kind_of_each_sign(text: str, plain: str) -> None:
    """Spaces, minus, slash, quotes and fraction signs of phones and word processors become plain ones."""
    assert tidy(text) == plain
