"""Identification: which chains fit, which to assume, and what would settle it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.identify import (
    Identification,
    Observed,
    identification_document,
    identify,
    identify_figures,
)
from mastwright.chains.standard import find_chain, leaf_chains
from mastwright.quantity import BadInput, Field, Reading, common_instruments, parse_quantity, read_table


def read(text: str, instrument: str = "calliper") -> Reading:
    """Return a length as read off an instrument."""
    quantity = parse_quantity(text, Field("length", "length"))
    return Reading.of(quantity, common_instruments().find(instrument, "length"))


def named(observed: Observed) -> Identification:
    """Return the identification among all chains of the table."""
    return identify(observed, leaf_chains())


def codes(observed: Observed) -> set[str]:
    """Return the codes of all that is to be said about an identification."""
    result = named(observed)
    return {note.code for note in (*result.notes, *result.separate_by)}


def names(result: Identification) -> list[str]:
    """Return the candidates by name, likeliest first."""
    return [candidate.chain.short_name for candidate in result.candidates]


def assumed(observed: Observed) -> str | None:
    """Return the name of the chain to work with."""
    name = identification_document(named(observed))["assumed"]
    assert name is None or isinstance(name, str)
    return name


def test_pitch_and_lacing_name_a_heavy_chain() -> None:
    """3/4 in and 3x4 is made in one series only: BL634."""
    assert assumed(Observed(length=read("310 mm", "rule"), pitches=16, lacing=(3, 4))) == "LH1234"


def test_without_lacing_nothing_is_assumed() -> None:
    """Every lacing of the pitch stays open, and the plates are to be counted."""
    observed = Observed(length=read("310 mm", "rule"), pitches=16, plate_height=read("18.0 mm"))
    result = named(observed)
    assert result.assumed is None
    assert {c.chain.lacing_text for c in result.candidates} == {
        "2x2",
        "2x3",
        "3x4",
        "4x4",
        "4x6",
        "6x6",
        "8x8",
    }
    assert "count-plates" in codes(observed)


def test_three_series_of_one_pitch_stay_open() -> None:
    """1/2 in, 2x2 alone may be LH, LL or AL: no chain reaches the certainty to be assumed."""
    observed = Observed(length=read("306 mm", "rule"), pitches=24, lacing=(2, 2))
    assert set(names(named(observed))[:3]) == {"LH0822", "LL0822", "AL422"}
    assert assumed(observed) is None
    assert {"not-certain", "measure-height"} <= codes(observed)


@pytest.mark.parametrize(
    ("length", "pitches", "lacing", "thickness", "pair", "weaker"),
    [
        ("306 mm", 24, (2, 2), "1.50 mm", {"LL0822", "AL422"}, "AL422"),
        ("306 mm", 24, (4, 4), "1.52 mm", {"LL0844", "AL444"}, "AL444"),
        ("306 mm", 12, (6, 6), "3.20 mm", {"LL1666", "AL866"}, "AL866"),
    ],
)
def test_near_twins_are_both_shown_and_the_weaker_assumed(
    length: str, pitches: int, lacing: tuple[int, int], thickness: str, pair: set[str], weaker: str
) -> None:
    """Same pitch, lacing, plates: both stay, the weaker is worked with, what separates them is named."""
    observed = Observed(
        length=read(length, "rule"), pitches=pitches, lacing=lacing, plate_thickness=read(thickness)
    )
    result = named(observed)
    assert {chain.short_name for chain in result.twins[0]} == pair
    assert pair <= set(names(result))
    assert assumed(observed) == weaker
    assert {"weaker-assumed", "measure-pin", "measure-height", "find-marking", "ask-certificate"} <= codes(
        observed
    )


def test_a_twin_far_less_likely_is_still_the_one_assumed() -> None:
    """A plate height that favours the stronger twin does not decide while the weaker still fits."""
    observed = Observed(
        length=read("306 mm", "rule"), pitches=24, lacing=(2, 2),
        plate_thickness=read("1.5 mm"), plate_height=read("10.5 mm"),
    )  # fmt: skip
    assert names(named(observed))[0] == "LL0822"
    assert assumed(observed) == "AL422"


def test_a_marking_separates_twins() -> None:
    """The stamp is what tells LL0822 from AL422."""
    observed = Observed(length=read("306 mm", "rule"), pitches=24, lacing=(2, 2), marking="LL 0822")
    assert assumed(observed) == "LL0822"
    assert named(observed).twins == ()


def test_plate_height_alone_never_separates_near_twins() -> None:
    """A height above AL422's largest still shows both twins and assumes the weaker."""
    observed = Observed(length=read("12.7 mm"), lacing=(2, 2), plate_height=read("10.9 mm"))
    names = {c.chain.short_name for c in identify(observed, leaf_chains()).candidates}
    assert {"LL0822", "AL422"} <= names
    assert assumed(observed) == "AL422"


def test_a_pin_well_above_the_weaker_twin_separates() -> None:
    """A pin of 4.5 mm is out of reach of AL422's 3.96 mm even at an upset head."""
    observed = Observed(
        length=read("306 mm", "rule"), pitches=24, lacing=(2, 2),
        plate_thickness=read("1.5 mm"), pin_diameter=read("4.52 mm"),
    )  # fmt: skip
    assert assumed(observed) == "LL0822"


def test_a_swollen_head_does_not_separate() -> None:
    """A head of 4.2 mm may be either pin, so the weaker chain is assumed."""
    observed = Observed(
        length=read("306 mm", "rule"), pitches=24, lacing=(2, 2),
        plate_thickness=read("1.5 mm"), pin_diameter=read("4.2 mm"),
    )  # fmt: skip
    assert assumed(observed) == "AL422"
    assert "measure-pin" not in codes(observed)


def test_a_bare_number_is_read_both_ways() -> None:
    """834 alone is LH0834 as likely as BL834."""
    result = named(Observed(marking="834"))
    assert set(names(result)) == {"LH0834", "LH1634"}
    assert result.candidates[0].probability == pytest.approx(result.candidates[1].probability)
    assert result.assumed is None
    assert "bare-number" in codes(Observed(marking="834"))


def test_pitch_settles_a_bare_number() -> None:
    """834 on a 1 in chain is BL834."""
    observed = Observed(marking="834", length=read("308 mm", "rule"), pitches=12, lacing=(3, 4))
    assert assumed(observed) == "LH1634"


def test_a_full_marking_alone_names_the_chain_but_says_so() -> None:
    """Plates are restamped and misread, so a marking alone is strong, not certain."""
    result = named(Observed(marking="BL634"))
    assert 0.98 < result.candidates[0].probability < 1
    assert result.assumed == find_chain("BL634")
    assert "marking-alone" in codes(Observed(marking="BL634"))


def test_prefix_and_pitch_leave_the_lacing_open() -> None:
    """BL8 says the size; the plates decide."""
    assert named(Observed(marking="BL8")).assumed is None
    assert assumed(Observed(marking="BL8", lacing=(3, 4))) == "LH1634"


def test_a_marking_against_the_rule_is_not_believed() -> None:
    """A 3/4 in marking on a 1 in chain is contradicted, and both are to be looked at again."""
    observed = Observed(marking="BL634", length=read("308 mm", "rule"), pitches=12)
    assert "LH1234" not in names(named(observed))
    assert assumed(observed) is None
    assert "marking-disagrees" in codes(observed)


def test_an_unreadable_marking_is_left_aside() -> None:
    """A lot number beside measurements is kept out and mentioned."""
    observed = Observed(marking="LOT 7", length=read("310 mm", "rule"), pitches=16, lacing=(3, 4))
    assert assumed(observed) == "LH1234"
    assert "marking-not-read" in codes(observed)


def test_an_odd_count_names_the_chain() -> None:
    """One pitch will do to name a chain; for wear the count must be even."""
    observed = Observed(length=read("19.3 mm"), pitches=1, lacing=(3, 4))
    assert assumed(observed) == "LH1234"
    assert "odd-pitches" in codes(observed)


def test_one_articulating_pitch_may_have_grown_twice_as_much() -> None:
    """All growth sits in the articulating pitches: one of them at 4 % over an even count is 8 % long."""
    long, just = Observed(length=read("20.5 mm")), Observed(length=read("39.0 mm"), pitches=2)
    assert "LH1234" in names(named(long))
    assert "LH1234" in names(named(just))
    assert named(Observed(length=read("41.0 mm"), pitches=2)).candidates == ()


def test_nothing_that_fits_is_said() -> None:
    """22 mm over one pitch is no leaf chain: no candidates, a note, no error."""
    observed = Observed(length=read("22 mm"))
    assert identification_document(named(observed))["candidates"] == []
    assert {"nothing-fits", "maker-first"} <= codes(observed)


def test_an_unworn_piece_is_taken_at_its_word() -> None:
    """A piece that never met the sheave cannot be 3 % long."""
    length = read("313.5 mm")
    assert named(Observed(length=length, pitches=16, worn=False)).candidates == ()
    assert "LH1234" in names(named(Observed(length=length, pitches=16, worn=True)))


def test_an_unworn_height_separates_better() -> None:
    """17.0 mm is a worn BL6 plate, but too low for an unworn one."""
    low = read("17.0 mm")
    assert "LH1234" in names(named(Observed(plate_height=low, lacing=(3, 4))))
    assert "LH1234" not in names(named(Observed(plate_height=low, lacing=(3, 4), worn=False)))


def test_a_turned_lacing_is_read_the_right_way_round() -> None:
    """4x3 is 3x4 counted from the wrong pitch."""
    observed = Observed(length=read("310 mm", "rule"), pitches=16, lacing=(4, 3))
    assert assumed(observed) == "LH1234"
    assert "lacing-turned" in codes(observed)


def test_a_lacing_of_no_chain_is_said() -> None:
    """5x5 is a miscount, so the size is named and the lacing stays open."""
    observed = Observed(length=read("310 mm", "rule"), pitches=16, lacing=(5, 5))
    assert assumed(observed) is None
    assert "lacing-unknown" in codes(observed)


def test_a_row_outside_the_standards_is_less_likely() -> None:
    """8x8 rows start lower, and are never assumed without a word."""
    size = {"length": read("308 mm", "rule"), "plate_thickness": read("4.0 mm")}
    bare = named(Observed(length=size["length"], pitches=12, plate_thickness=size["plate_thickness"]))
    by_name = {c.chain.lacing_text: c.probability for c in bare.candidates}
    assert by_name["8x8"] == pytest.approx(identify_figures()["unconfirmed"] * by_name["6x6"])
    stamped = Observed(marking="BL888", lacing=(8, 8))
    assert assumed(stamped) == "LH1688"
    assert "not-in-standard" in codes(stamped)


def test_lacing_alone_asks_for_the_pitch() -> None:
    """Plates without pitch leave every size open."""
    assert "measure-pitch" in codes(Observed(lacing=(3, 4)))


def test_a_settled_chain_asks_for_nothing_more() -> None:
    """Marking, pitch and plates agree: nothing is left to measure."""
    observed = Observed(
        marking="BL634",
        length=read("310 mm", "rule"),
        pitches=16,
        lacing=(3, 4),
        plate_height=read("18.0 mm"),
    )
    assert named(observed).separate_by == ()


def test_nothing_observed_names_what_to_measure() -> None:
    """An empty observation is refused with what would do."""
    with pytest.raises(BadInput, match="observed: at least one of length over counted pitches, plate_height"):
        Observed()


def test_an_unreadable_marking_alone_is_refused() -> None:
    """A marking that is none, with nothing else, says what to give."""
    with pytest.raises(BadInput, match="marking: 'LOT 7' given; a designation such as LH1234 or BL634"):
        Observed(marking="LOT 7")


@pytest.mark.parametrize(
    ("part", "expected"),
    [
        ({"pitches": 0}, "pitches: '0' given"),
        ({"lacing": (0, 4)}, "lacing: '0x4' given"),
        ({"plate_height": read("0 mm")}, "plate_height: '0 mm' given; a length above 0"),
    ],
)
def test_impossible_values_are_refused(part: dict[str, object], expected: str) -> None:
    """The field and what would be right are named."""
    given: dict[str, object] = {"length": read("310 mm"), **part}
    with pytest.raises(BadInput, match=expected):
        Observed(**given)  # type: ignore[arg-type]


def test_the_document_has_the_agreed_names() -> None:
    """Names that others read."""
    document = identification_document(named(Observed(marking="BL634", lacing=(3, 4))))
    assert document["assumed"] == "LH1234"
    candidates = document["candidates"]
    assert isinstance(candidates, list)
    assert candidates[0].keys() == {"designation_iso", "designation_ansi", "probability"}
    assert (candidates[0]["designation_iso"], candidates[0]["designation_ansi"]) == ("LH1234", "BL634")


def test_no_chains_means_no_candidates() -> None:
    """An empty table fits nothing."""
    assert identify(Observed(lacing=(3, 4)), ()).candidates == ()


def test_one_chain_alone_is_found() -> None:
    """A table of one row, whatever the plates counted."""
    result = identify(Observed(lacing=(4, 4)), [find_chain("BL634")])
    assert result.candidates[0].probability == 1


def test_an_exact_reading_keeps_a_least_doubt() -> None:
    """A reading said to be exact is still taken to the hundredth, for dirt and burrs."""
    gauge = common_instruments().find("calliper", "length")
    exact = Reading.exact(Fraction("18.115"), "length", "mm", gauge)
    assert "LH1234" in names(named(Observed(plate_height=exact)))


def test_every_constant_of_the_model_has_a_source() -> None:
    """Judgement is called judgement."""
    rows = read_table("mastwright.chains", "identify.csv")
    assert {row["name"] for row in rows} == set(identify_figures())
    assert {row["evidence"] for row in rows} == {"common practice, no source", "computed"}
