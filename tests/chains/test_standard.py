"""The chain table as data: loading, names, and finding a chain by what somebody wrote."""

from __future__ import annotations

from collections import Counter

import pytest

from mastwright.chains.standard import chain_from, find_chain, leaf_chains
from mastwright.quantity import BadInput, Evidence, TableError, read_table


def _row(name: str) -> dict[str, str]:
    rows = read_table("mastwright.chains", "leaf_chains.csv")
    return next(row for row in rows if name in {row["designation_iso"], row["designation_ansi"]})


def test_the_table_has_every_chain_once() -> None:
    """62 LH/BL, 30 LL and 30 AL rows, no designation twice."""
    assert Counter(chain.series for chain in leaf_chains()) == {"LH": 62, "LL": 30, "AL": 30}
    names = [name for chain in leaf_chains() for name in chain.designations]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("text", ["bl 634", "BL-634", "LH1234", "lh1234", "LH1234 / BL634", "BL634/LH1234"])
def test_a_chain_is_found_however_it_is_written(text: str) -> None:
    """Either designation or both, in any spelling."""
    assert find_chain(text).name == "LH1234 / BL634"


def test_a_bare_number_is_refused_with_the_chains_it_may_be() -> None:
    """834 may be LH0834 or BL834, and only chains that exist are named."""
    with pytest.raises(BadInput, match=r"834 alone may be LH0834 \(1/2 in pitch\) or BL834 \(1 in pitch\)$"):
        find_chain("834")


def test_a_number_of_no_chain_is_refused_with_an_example() -> None:
    """A bare number that is no chain at all still learns how a designation looks."""
    with pytest.raises(BadInput, match="such as BL834 or LH1634"):
        find_chain("99")


def test_an_unknown_designation_names_the_nearest() -> None:
    """A slip of one digit finds its neighbours."""
    with pytest.raises(BadInput, match=r"set\.chain: 'BL635' given; .*nearest: .*BL634"):
        find_chain("BL635", "set.chain")


def test_nonsense_names_no_neighbours() -> None:
    """Nothing near means no list."""
    with pytest.raises(BadInput, match=r"such as LH1234 or BL634$"):
        find_chain("???")


def test_two_different_chains_are_refused() -> None:
    """A pair of designations must name one chain."""
    with pytest.raises(BadInput, match="one chain: these are LH1634 / BL834 and LH1644 / BL844"):
        find_chain("LH1634 / BL844")


def test_plates_of_a_lacing() -> None:
    """3x4 has three plates in the weak pitch and four that articulate."""
    chain = find_chain("BL634")
    assert (chain.lacing_text, chain.weak_plates, chain.articulating_plates) == ("3x4", 3, 4)


def test_a_chain_with_one_designation_goes_by_it() -> None:
    """AL chains have no international designation, LL chains no American one."""
    assert (find_chain("AL644").name, find_chain("LL1244").short_name) == ("AL644", "LL1244")


def test_heavy_strengths_are_said_to_be_from_memory() -> None:
    """No LH/BL minimum strength was read in the standard: from memory, or computed for 8x8."""
    heavy = [chain for chain in leaf_chains() if chain.series == "LH"]
    from_memory = {
        chain.lacing_text for chain in heavy if chain.strength_source.evidence is Evidence.FROM_MEMORY
    }
    computed = {chain.lacing_text for chain in heavy if chain.strength_source.evidence is Evidence.COMPUTED}
    assert (from_memory, computed) == ({"2x2", "2x3", "3x4", "4x4", "4x6", "6x6"}, {"8x8"})


def test_the_strengths_of_the_light_series_say_what_they_are() -> None:
    """LL0822 and LL0844 and the AL rows are quoted, the rest of LL remembered."""
    light = {c.short_name for c in leaf_chains() if c.strength_source.evidence is Evidence.AS_QUOTED}
    assert {name for name in light if name.startswith("LL")} == {"LL0822", "LL0844"}
    assert sum(name.startswith("AL") for name in light) == 29


def test_heavy_eight_by_eight_rows_are_not_confirmed() -> None:
    """Exactly the LH..88 rows stand outside the standards."""
    assert {c.lacing_text for c in leaf_chains() if not c.in_standard} == {"8x8"}
    assert sum(not c.in_standard for c in leaf_chains()) == 8


@pytest.mark.parametrize("column", ["source", "strength_source", "evidence", "strength_evidence"])
def test_a_row_without_source_does_not_load(column: str) -> None:
    """Dimensions and strength each need a source and how it is known."""
    with pytest.raises(TableError, match="LH1234"):
        chain_from({**_row("BL634"), column: ""}, "an edition")


def test_an_edition_is_chosen_by_its_file() -> None:
    """The current edition is the one of that name, and a missing one is an error, not the current one."""
    assert leaf_chains("leaf_chains.csv") == leaf_chains()
    with pytest.raises(FileNotFoundError):
        leaf_chains("leaf_chains_1900.csv")


def test_unknown_dimensions_are_none() -> None:
    """AL1688 was cut off in the page read: no width, no mass."""
    chain = find_chain("AL1688")
    assert (chain.width_max, chain.mass_kg_per_m, chain.plate_hole_min) == (None, None, None)
