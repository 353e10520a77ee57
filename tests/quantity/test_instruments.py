"""Instruments: found by any name, with the doubt of one reading."""

from fractions import Fraction
from math import inf

import pytest

from mastwright.quantity import (
    BadInput,
    Evidence,
    Instrument,
    Instruments,
    Source,
    TableError,
    common_instruments,
    dimensions,
    instrument_from,
    read_table,
)

ROWS = read_table("mastwright.quantity", "instruments.csv")
ALL = [item for dimension in dimensions() for item in common_instruments().of(dimension)]


def own(name: str, dimension: str = "length", uncertainty: float = 0.25) -> Instrument:
    """Build a shop's own instrument (demo data)."""
    source = Source("a study of this shop", Evidence.DEMO_DATA)
    return Instrument(name, (), dimension, uncertainty, 0.0, Fraction(1, 2), source)


def test_every_row_is_found_by_each_of_its_names() -> None:
    """The table's names and other names all lead to their row, and each dimension is a known one."""
    found = common_instruments()
    for row in ROWS:
        for word in (row["instrument"], *row["aliases"].split()):
            assert found.find(word, row["dimension"]).name == row["instrument"]
    assert len(ALL) == len(ROWS)


@pytest.mark.parametrize("item", ALL, ids=lambda i: i.name)
def test_every_instrument_has_source_step_and_a_sane_doubt(item: Instrument) -> None:
    """No figure is without a source; a doubt of nothing is only for what is no measurement."""
    assert item.source.text
    assert item.step > 0
    assert 0 <= item.uncertainty_at(Fraction(10)) < inf
    measured = item.standard_uncertainty > 0
    assert measured is ("no measurement" not in item.source.text)


@pytest.mark.parametrize("word", ["Chain Gauge", " chain-gauge ", "PERCENT-GAUGE"])
def test_spelling_of_names_is_free(word: str) -> None:
    """Case and spaces do not count."""
    assert common_instruments().find(word, "percent").name == "graduated-gauge"


def test_unknown_name_is_answered_with_those_that_fit() -> None:
    """The message lists the instruments that read the quantity."""
    with pytest.raises(BadInput) as caught:
        common_instruments().find("ruler of thumb", "density", field="acid instrument")
    expected = (
        "acid instrument: 'ruler of thumb' given; an instrument that reads density: hydrometer, refractometer"
    )
    assert str(caught.value) == expected


def test_an_instrument_of_another_dimension_is_refused() -> None:
    """A thermometer reads no length, whatever it is called."""
    with pytest.raises(BadInput, match="reads length: rule, rule-16ths"):
        common_instruments().find("thermometer", "length")


def test_a_dimension_without_instruments_says_so() -> None:
    """Nothing that fits is said in words."""
    with pytest.raises(BadInput, match="reads charge: none"):
        common_instruments().find("rule", "charge")


def test_absolute_doubt_is_the_same_everywhere() -> None:
    """A rule is as sure at one end as at the other."""
    rule = common_instruments().find("rule", "length")
    assert rule.uncertainty_at(Fraction(10)) == rule.uncertainty_at(Fraction(1000)) == 0.4


def test_relative_doubt_grows_with_the_reading_in_quadrature() -> None:
    """Share of the reading and fixed part add as squares, on either side of zero."""
    item = Instrument("x", (), "force", 3.0, 0.02, Fraction(1), Source("x", Evidence.DEMO_DATA))
    assert item.uncertainty_at(Fraction(200)) == pytest.approx(5)
    assert item.uncertainty_at(Fraction(-200)) == pytest.approx(5)


def test_own_instruments_stand_before_the_common_ones() -> None:
    """An own rule replaces the common one under each of its names, and leaves the set it came from alone."""
    mine = common_instruments().replaced_by([own("rule")])
    assert {mine.find(word, "length").standard_uncertainty for word in ("rule", "ruler")} == {0.25}
    assert common_instruments().find("rule", "length").standard_uncertainty == 0.4
    assert len(mine.of("length")) == len(common_instruments().of("length"))


def test_an_own_name_wins_over_another_name_of_a_common_one() -> None:
    """A shop's own `caliper` is meant when that is written, though the common calliper is called so too."""
    mine = common_instruments().replaced_by([own("caliper")])
    assert mine.find("caliper", "length").standard_uncertainty == 0.25
    assert mine.find("calliper", "length").standard_uncertainty == 0.1


def test_own_instrument_of_another_dimension_replaces_nothing() -> None:
    """An own `rule` for angles leaves the rule for lengths."""
    mine = common_instruments().replaced_by([own("rule", "angle")])
    assert mine.find("rule", "length").standard_uncertainty == 0.4
    assert mine.find("rule", "angle").standard_uncertainty == 0.25


def test_of_two_alike_the_first_counts() -> None:
    """A set holds one instrument of each name and dimension."""
    (only,) = Instruments([own("rule", uncertainty=0.3), own("rule", uncertainty=0.9)]).of("length")
    assert only.standard_uncertainty == 0.3


def test_a_row_without_source_builds_no_instrument() -> None:
    """The row that lacks a source is named."""
    with pytest.raises(TableError, match="row 9: no source"):
        instrument_from({**ROWS[0], "source": " "}, "row 9")
