"""Leak classes and cleanliness codes as people write them."""

import pytest

from mastwright.checks.hydraulics import cleaner_or_equal, leak_class, leak_classes, parse_cleanliness
from mastwright.quantity import BadInput


@pytest.mark.parametrize(
    ("written", "number"),
    [
        (0, 0),
        (3, 3),
        ("0", 0),
        ("none", 0),
        ("None", 0),
        ("I", 1),
        ("ii", 2),
        (" III ", 3),
        ("2", 2),
    ],
)
def test_a_class_is_read_as_people_write_it(written: str | int, number: int) -> None:
    """Figures, Roman numerals and the word for nothing all count."""
    assert leak_class(written, "leak") == number


@pytest.mark.parametrize("written", [4, -1, True, "IV", "", "drip", "²"])
def test_another_class_is_refused(written: str | int) -> None:
    """What is no class is told every class with its meaning."""
    with pytest.raises(BadInput, match=r"^leak: .*3 or III = drops form and fall$"):
        leak_class(written, "leak")


def test_every_class_has_a_meaning_in_both_languages() -> None:
    """Numbers run from 0 to 3, and no two classes mean the same."""
    classes = leak_classes()
    assert [c.number for c in classes] == [0, 1, 2, 3]
    assert len({c.meaning_en for c in classes} | {c.meaning_es for c in classes}) == 8


def test_spaces_in_a_code_do_not_count() -> None:
    """A code is read with spaces around its numbers."""
    assert parse_cleanliness(" 20 / 18 / 15 ", "oil") == (20, 18, 15)


@pytest.mark.parametrize("text", ["0/0/0", "28/28/28"])
def test_the_ends_of_the_scale_are_codes(text: str) -> None:
    """The scale holds from 0 to 28, and equal numbers are possible."""
    assert parse_cleanliness(text, "oil") == tuple(int(part) for part in text.split("/"))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "18/16",
        "18/16/13/10",
        "16/18/13",
        "18/13/16",
        "29/16/13",
        "18/16/-1",
        "18/16/1.5",
        "18/16/",
        "18-16-13",
        "١٨/16/13",
        "9" * 5000 + "/16/13",
    ],
)
def test_another_code_is_refused(text: str) -> None:
    """What is no code is named with its field and told how a code looks."""
    with pytest.raises(BadInput, match=r"^oil: .*as in 18/16/13 \(ISO 4406\)$"):
        parse_cleanliness(text, "oil")


@pytest.mark.parametrize(
    ("code", "clean"),
    [
        ((18, 16, 13), True),
        ((17, 15, 12), True),
        ((19, 16, 13), False),
        ((18, 17, 13), False),
        ((18, 16, 14), False),
    ],
)
def test_each_of_the_three_sizes_counts(code: tuple[int, int, int], clean: bool) -> None:
    """One size that is dirtier than its target is enough."""
    assert cleaner_or_equal(code, (18, 16, 13)) is clean
