"""Designations: what a marking says by the numbering rules."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.chains.designation import numbering, parse_designation, possible_designations
from mastwright.chains.standard import leaf_chains
from mastwright.quantity import BadInput


def test_bl523_is_five_eighths_two_by_three() -> None:
    """The worked example of ASME B29.8-2002 cl. 1.1-1.4 (read): BL523 = 5/8 in pitch, 2x3."""
    meant = parse_designation("BL523")
    assert (meant.pitch, meant.lacing) == (Fraction("15.875"), (2, 3))


def test_lh1634_is_bl834() -> None:
    """The worked example of ISO 4347:2015 cl. 3 (read): LH1634 = BL834, 1 in pitch, 3x4."""
    iso, american = parse_designation("LH1634"), parse_designation("BL834")
    assert (iso.series, iso.pitch, iso.lacing) == (american.series, american.pitch, american.lacing)
    assert iso.pitch == Fraction("25.4")


def test_the_same_number_means_two_pitches() -> None:
    """LH08.. is 1/2 in and BL8.. is 1 in: the prefix decides (ISO 4347 and ASME B29.8 numbering)."""
    assert parse_designation("LH0834").pitch * 2 == parse_designation("BL834").pitch


@pytest.mark.parametrize("text", ["bl 634", "BL-634", " Bl.634 ", "b l 6 3 4"])
def test_spelling_does_not_matter(text: str) -> None:
    """Spaces, hyphens, points and small letters are read over."""
    assert parse_designation(text).text == "BL634"


@pytest.mark.parametrize("chain", leaf_chains(), ids=lambda chain: chain.short_name)
def test_every_row_is_numbered_by_its_pitch_and_lacing(chain: object) -> None:
    """Each designation of the table, read by the rules, gives the row's own pitch, lacing and series."""
    row = next(c for c in leaf_chains() if c is chain)
    for name in row.designations:
        meant = parse_designation(name)
        assert (meant.series, meant.pitch, meant.lacing, meant.text) == (
            row.series,
            row.pitch,
            row.lacing,
            name,
        )


def test_a_bare_number_is_read_by_every_convention() -> None:
    """834 is 1/2 in as LH and LL, 1 in as BL and AL."""
    assert {d.text for d in possible_designations("834")} == {"LH0834", "LL0834", "BL834", "AL834"}


def test_prefix_and_pitch_alone_say_the_pitch() -> None:
    """BL8 on a broken plate is the 1 in size with its lacing gone."""
    (meant,) = possible_designations("BL8")
    assert (meant.text, meant.pitch, meant.lacing) == ("BL8", Fraction("25.4"), None)


def test_both_names_of_one_chain_are_read() -> None:
    """A tag with both designations gives both."""
    assert [d.text for d in possible_designations("LH1234 / BL634")] == ["LH1234", "BL634"]


@pytest.mark.parametrize(
    "text", ["", "made in", "12", "BL00", "BL630", "LH1", "LH163", "BL", "XX634", "12345"]
)
def test_what_is_no_designation_gives_nothing(text: str) -> None:
    """Lot numbers, pitches of zero, lacings with a zero and cut-off markings are no designation."""
    assert possible_designations(text) == ()


def test_a_bare_number_is_refused_with_the_reason() -> None:
    """Without prefix the pitch is open, and the message says which chains it may be."""
    with pytest.raises(
        BadInput, match=r"designation: '834' given; .*eighths.*sixteenths.*LH0834 \(1/2 in pitch\)"
    ):
        parse_designation("834")


def test_a_size_and_a_half_is_written_with_its_whole() -> None:
    """1 1/4 in is shown as a mixed number in the advice on a bare number."""
    with pytest.raises(BadInput, match=r"BL1022 \(1 1/4 in pitch\)"):
        parse_designation("1022")


@pytest.mark.parametrize("text", ["BL6", "XX634", "chain", ""])
def test_an_incomplete_designation_is_refused(text: str) -> None:
    """What is missing is named: prefix, pitch and lacing."""
    with pytest.raises(BadInput, match=r"chain: .*a prefix \(LH, LL, BL or AL\), the pitch and the lacing"):
        parse_designation(text, field="chain")


def test_every_rule_has_a_source() -> None:
    """Numbering rules carry their source and how it is known."""
    assert {str(rule.source.evidence) for rule in numbering().values()} == {"read", "as quoted"}


@given(st.text(max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    """No text makes the reader stumble, and all it reads has a positive pitch."""
    assert all(d.pitch > 0 for d in possible_designations(text))
    try:
        meant = parse_designation(text)
    except BadInput:
        return
    assert meant in possible_designations(text)
