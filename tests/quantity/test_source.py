"""Sources: a figure without one does not load."""

import re

import pytest

from mastwright.quantity import Evidence, Source, TableError, read_rows, read_table, source_of

HEADER = "item,value,source,evidence\n"


def test_a_source_prints_with_its_evidence() -> None:
    """What stands beside a figure says how it is known."""
    assert str(Source("a handbook, table 4", Evidence.AS_QUOTED)) == "a handbook, table 4 [as quoted]"


@pytest.mark.parametrize("text", ["", "  ", "\n"])
def test_a_blank_source_cannot_be_built(text: str) -> None:
    """A source says something."""
    with pytest.raises(TableError, match="without a source"):
        Source(text, Evidence.READ)


@pytest.mark.parametrize("word", Evidence)
def test_every_evidence_word_loads(word: Evidence) -> None:
    """Each of the words is taken, and spaces around the cells are not part of them."""
    assert source_of(" x ", f" {word} ", "t") == Source("x", word)


@pytest.mark.parametrize(
    ("text", "evidence", "message"),
    [
        (None, "read", "t.csv line 2: no source"),
        ("  ", "read", "t.csv line 2: no source"),
        ("x", "hearsay", "t.csv line 2: evidence 'hearsay'; use one of 'read', 'as quoted'"),
        ("x", None, "t.csv line 2: evidence None; use one of"),
    ],
)
def test_cells_without_source_or_evidence_are_refused(
    text: str | None, evidence: str | None, message: str
) -> None:
    """The message names the row and the words that would be right."""
    with pytest.raises(TableError, match=re.escape(message)):
        source_of(text, evidence, "t.csv line 2")


def test_rows_are_read_with_their_quoted_cells() -> None:
    """A table comes back row by row, cells as written."""
    (row,) = read_rows(HEADER + '"1 1/2"" pin",3,"a, b",read\n', "t.csv")
    assert row == {"item": '1 1/2" pin', "value": "3", "source": "a, b", "evidence": "read"}


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("pin,3,,read", "t.csv line 3: no source"),
        ("pin,3,x,maybe", "t.csv line 3: evidence 'maybe'"),
        ("pin,3,x", "t.csv line 3: not as many cells"),
        ("pin,3,x,read,read", "t.csv line 3: not as many cells"),
    ],
)
def test_one_bad_row_stops_the_table(line: str, message: str) -> None:
    """The first row without source, evidence or all its cells is named by its line."""
    with pytest.raises(TableError, match=re.escape(message)):
        read_rows(f"{HEADER}plate,1,x,read\n{line}\n", "t.csv")


def test_a_table_without_source_columns_does_not_load() -> None:
    """The columns themselves must be there."""
    with pytest.raises(TableError, match="no source"):
        read_rows("item,value\npin,3\n", "t.csv")


@pytest.mark.parametrize("name", ["units.csv", "instruments.csv"])
def test_our_tables_load(name: str) -> None:
    """Every row of the tables of this room has a source and an evidence word."""
    rows = read_table("mastwright.quantity", name)
    assert len(rows) > 30
    assert all(row["source"] and Evidence(row["evidence"]) for row in rows)
