"""The chain table checked against itself: what breaks is exactly what is known to be doubtful."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest

from mastwright.chains.self_check import check_table, relations
from mastwright.chains.standard import LeafChain, find_chain, leaf_chains

KNOWN = {
    # Printed pounds of the AL table read do not convert from its kilonewtons.
    ("pounds", "AL322"), ("pounds", "AL344"),
    # 5/8 in: the widths fit plates of 2.44 mm, the table has 2.48 mm.
    *(("width", f"LH10{x}") for x in (22, 23, 34, 44, 46, 66)),
    # 1 3/4 in: widths remembered 0.15 to 0.55 mm below the rule.
    *(("width", f"LH28{x}") for x in (22, 23, 34, 44, 46, 66)),
    # 2 in: width of LH3222; width and strength of LH3266.
    ("width", "LH3222"), ("width", "LH3266"), ("whole-pounds", "LH3266"), ("proportion", "LH3266"),
    # LL08: the widths of the maker's table read grow by 1.525 mm a plate, its thickness is 1.55 mm.
    ("width-step", "LL0844"), ("width-step", "LL0866"),
}  # fmt: skip


def _breaches(rows: tuple[LeafChain, ...]) -> set[tuple[str, str]]:
    return {(breach.relation.name, breach.row.split(" / ")[0]) for breach in check_table(rows)}


def test_only_the_known_doubtful_rows_break_a_relation() -> None:
    """The table breaks its relations where its flags say so, and nowhere else."""
    assert _breaches(leaf_chains()) == KNOWN


def test_a_breach_says_what_was_expected() -> None:
    """LH3222 is 40.0 mm wide where the width rule gives 39.0."""
    breach = next(b for b in check_table(leaf_chains()) if b.row.startswith("LH3222"))
    assert (round(float(breach.expected), 1), float(breach.found)) == (39.0, 40.0)


@pytest.mark.parametrize(
    ("name", "field", "value", "relation"),
    [
        ("BL634", "pitch", "19.5", "number"),
        ("BL634", "pitch_in", "0.7", "inches"),
        ("BL634", "min_tensile", "76600", "pounds"),
        ("BL634", "plate_height_max", "18.31", "plate-height"),
        ("BL634", "plate_hole_min", "7.99", "hole"),
        ("BL634", "width_max", "28.5", "width"),
        ("LL1244", "width_max", "18.9", "width-step"),
        ("BL644", "min_tensile_lbf", "22100", "whole-pounds"),
        ("BL644", "min_tensile", "99000", "proportion"),
        ("BL634", "min_tensile", "82000", "proportion-3x4"),
        ("AL644", "min_tensile", "67700", "proportion"),
        ("BL634", "plate_thickness_max", "3.7", "next-plate"),
        ("BL634", "pin_diameter_max", "8.04", "next-pin"),
        ("BL822", "min_tensile", "86000", "next-strength"),
    ],
)
def test_a_wrong_digit_is_caught(name: str, field: str, value: str, relation: str) -> None:
    """A digit changed in one cell breaks the relation that guards it."""
    wrong = replace(find_chain(name), **{field: Fraction(value)})  # type: ignore[arg-type]
    rows = tuple(wrong if chain == find_chain(name) else chain for chain in leaf_chains())
    assert (relation, wrong.short_name) in _breaches(rows)
    assert (relation, wrong.short_name) not in KNOWN


def test_a_designation_that_cannot_be_read_is_a_breach() -> None:
    """A row with a spoilt designation is reported, not stumbled over."""
    spoilt = replace(find_chain("AL644"), designation_ansi="A644")
    assert ("number", "A644") in _breaches((spoilt,))


def test_a_wrong_lacing_is_a_breach() -> None:
    """A lacing that the designation does not say is reported."""
    assert ("number", "AL644") in _breaches((replace(find_chain("AL644"), lacing=(4, 6)),))


def test_relations_look_only_among_the_rows_given() -> None:
    """One chain alone has no neighbour to disagree with."""
    assert _breaches((find_chain("BL1644"),)) == set()


def test_unknown_cells_are_not_judged() -> None:
    """A width or a hole that is not known breaks nothing."""
    bare = replace(find_chain("BL634"), width_max=None, plate_hole_min=None)
    light = replace(find_chain("LL1244"), width_max=None)
    assert _breaches((bare, light)) == set()


def test_every_relation_is_used_and_has_a_source() -> None:
    """Relations are named in one table, each with its source."""
    names = Counter(relation.name for relation in relations())
    assert len(names) == 13
    assert all(relation.source.text and relation.meaning for relation in relations())
