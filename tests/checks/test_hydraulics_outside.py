"""Leaks and oil against published classes and targets."""

import pytest

from mastwright.checks.hydraulics import cleaner_or_equal, leak_class, leak_classes, parse_cleanliness
from mastwright.quantity import Evidence


# US Army TM 10-3930-659-10, leak classes, read.
@pytest.mark.parametrize(("roman", "falls"), [("I", False), ("II", False), ("III", True)])
def test_only_the_third_class_drops(roman: str, falls: bool) -> None:
    """Drops fall in class III and in no other."""
    found = leak_classes()[leak_class(roman, "leak")]
    assert found.source.evidence is Evidence.READ
    assert ("fall" in found.meaning_en and "not fall" not in found.meaning_en) is falls


# A fluid-cleanliness guide to ISO 4406, read: 16/14/11 to 18/16/13 for proportional valves and variable
# pumps, 20/18/15 for basic low pressure.
@pytest.mark.parametrize(
    ("cleaner", "dirtier"), [("16/14/11", "18/16/13"), ("18/16/13", "20/18/15"), ("16/14/11", "20/18/15")]
)
def test_the_guides_targets_are_in_order(cleaner: str, dirtier: str) -> None:
    """The finer target holds for the coarser one and not the other way round."""
    fine, coarse = parse_cleanliness(cleaner, "oil"), parse_cleanliness(dirtier, "oil")
    assert cleaner_or_equal(fine, coarse)
    assert not cleaner_or_equal(coarse, fine)


def test_the_standards_own_example_is_a_code() -> None:
    """22/18/13 is the code that ISO 4406 explains (from memory)."""
    assert parse_cleanliness("22/18/13", "oil") == (22, 18, 13)
