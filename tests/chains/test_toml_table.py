"""Our tables in TOML."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.toml_table import Words, figure_of, rows_in, rows_of
from mastwright.quantity import Evidence, TableError


def test_figure_carries_its_source() -> None:
    """A figure is read exactly and keeps its source."""
    row = rows_of('[a]\nvalue = "0.1"\nsource = "a page"\nevidence = "read"', "t")["a"]
    figure = figure_of(row, "t a")
    assert figure.value == Fraction(1, 10)
    assert figure.source.evidence is Evidence.READ


def test_figure_without_source_does_not_load() -> None:
    """A figure without a source is refused, with its place."""
    with pytest.raises(TableError, match="t a: source is missing"):
        figure_of({"value": "1"}, "t a")


def test_stray_value_is_refused() -> None:
    """A value outside a row is refused."""
    with pytest.raises(TableError, match="stray stands outside a row"):
        rows_of("stray = 1", "t")


def test_stray_value_in_a_group_is_refused() -> None:
    """A value inside a group but outside a row is refused."""
    with pytest.raises(TableError, match=r"g\.stray stands outside a row"):
        rows_in(rows_of("[g]\nstray = 1", "t"), "g", "t")


def test_missing_group_is_refused() -> None:
    """A group that is not there is refused, not taken as empty."""
    with pytest.raises(TableError, match=r"no rows g\.\*"):
        rows_in({}, "g", "t")


def test_words_in_each_language() -> None:
    """Words answer in the language asked for."""
    words = Words("oil", "aceite")
    assert (words.of("en"), words.of("es")) == ("oil", "aceite")
