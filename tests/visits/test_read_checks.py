"""The other checks of a visit file: answers of each kind, and how each fault is told."""

from __future__ import annotations

from datetime import date

import pytest

from mastwright.quantity import Quantity
from mastwright.visits import CheckEntry
from visits.written import check, line_of, only, read, refused, text

FORK = ('original = "40 mm"', 'original_from = "marking"')


def entry(name: str, *fields: str) -> CheckEntry:
    """Return the one check of a visit."""
    (found,) = read(check(name, *fields), truck='fitted = ["cushion-tyres"]').checks
    return found


@pytest.mark.parametrize(
    ("name", "fields", "field", "answer"),
    [
        ("CAP-01", ("ok = false",), "ok", False),
        ("FRK-09", ('value = "39 mm"', *FORK), "original_from", "marking"),
        ("FRK-20", ("value = 2026-01-05",), "value", date(2026, 1, 5)),
        ("HYD-06", ('value = "18/16/13"',), "value", "18/16/13"),
        ("BAT-07", ('value = "50 V"', "cells = 24"), "cells", 24),
        ("HYD-01", ('value = "I"', "worse_case = true"), "worse_case", True),
    ],
)
def test_each_kind_of_answer(name: str, fields: tuple[str, ...], field: str, answer: object) -> None:
    """Seen, chosen, dated, worded and counted answers come through as what they are."""
    assert entry(name, *fields).answers[field] == answer


def test_a_quantity_is_an_answer() -> None:
    """A measured answer keeps its unit, and the technician's words."""
    found = entry("FRK-09", 'value = "1.5 in"', *FORK)
    value = found.answers["value"]
    assert isinstance(value, Quantity)
    assert (value.unit.name, found.written) == ("in", "1.5 in")


def test_a_list_of_cells_is_an_answer() -> None:
    """Readings of several cells are kept in their order."""
    cells = entry("BAT-04", 'cells = ["1.285", "1.280", "1.283"]').answers["cells"]
    assert isinstance(cells, tuple)
    assert [float(c.value) for c in cells if isinstance(c, Quantity)] == [1.285, 1.28, 1.283]


def test_what_may_be_left_out_is_no_answer() -> None:
    """A field that is not needed and not there is not among the answers."""
    assert set(entry("HYD-01", 'value = "I"').answers) == {"value"}


def test_the_instrument_is_the_checks_own_unless_said() -> None:
    """What was not said was read with the check's usual instrument."""
    usual = entry("FRK-09", 'value = "39 mm"', *FORK).instrument.name
    said = entry("FRK-09", 'value = "39 mm"', *FORK, 'instrument = "tape"').instrument.name
    assert (usual, said) == (entry("FRK-09", 'value = "39 mm"', *FORK).check.instrument, "tape")


def test_an_entry_is_read_whole() -> None:
    """Place, note, photo and date stand in the entry."""
    found = entry(
        "CAP-01", "ok = false", 'where = "mast"', 'note = "n"', 'photo = "a.png"', "by = 2026-12-01"
    )
    assert (found.where, found.note, found.by) == ("mast", "n", date(2026, 12, 1))
    assert [p.file for p in found.photos] == ["a.png"]
    assert found.written == ""


FAULTS = [
    (check("ZZZ-99"), "id", "id", "the id of a check"),
    (check("CAP-01", 'note = "x"'), "[[check]]", "ok", "is needed: true or false"),
    (check("CAP-01", 'ok = "yes"'), "ok", "ok", "true or false, without quotes"),
    (check("CAP-01", "ok = true", "by = 2026-11-19"), "by", "by", "the visit's 2026-11-20 or later"),
    (check("CAP-01", "ok = true", 'wher = "x"'), "wher", "wher", "did you mean 'where'?"),
    (
        check("CAP-01", "ok = true", 'instrument = "x"'),
        "instrument",
        "instrument",
        "an instrument that reads",
    ),
    (check("FRK-09", *FORK), "[[check]]", "value", "is needed"),
    (check("FRK-09", 'value = "39 kg"', *FORK), "value", "value", "kg measures mass"),
    (check("FRK-09", 'value = "44 mm"', *FORK), "original", "original", "at least the thickness"),
    (
        check("FRK-09", 'value = "39 mm"', 'original = "40 mm"', 'original_from = "x"'),
        "original_from",
        "original_from",
        "marking",
    ),
    (check("FRK-20", "value = 2026-11-21"), "value", "value", "a day not after 2026-11-20"),
    (check("FRK-20", 'value = "today"'), "value", "value", "a date without quotes"),
    (check("BAT-04", "cells = []"), "cells", "cells", "a list of readings"),
    (check("BAT-04", 'instrument = "hydrometer"'), "[[check]]", "cells", "is needed for this check"),
    (check("BAT-07", 'value = "50 V"', "cells = true"), "cells", "cells", "a whole number"),
    (check("HYD-06", 'value = "clean"'), "value", "value", "three whole numbers"),
    (check("HYD-06", "value = 3"), "value", "value", "a text in quotes"),
]


@pytest.mark.parametrize(("block", "at", "field", "expected"), FAULTS)
def test_a_fault_is_told_with_its_line(block: str, at: str, field: str, expected: str) -> None:
    """Field, line and what would be right, for one fault at a time."""
    written = text(block)
    problem = only(written)
    assert (problem.field, problem.line) == (
        f"check[1].{field}",
        line_of(written, block) + line_of(block, at) - 1,
    )
    assert expected in problem.expected


def test_a_check_without_id_is_told() -> None:
    """An entry that names no check is told so."""
    assert only(text("[[check]]\nok = true\n")).field == "check[1].id"


def test_a_check_stands_once() -> None:
    """Two entries of one check without a place are refused at the second."""
    problem = only(text(check(), check()))
    assert (problem.field, problem.given) == ("check[2].id", "CAP-01")


def test_a_check_of_one_place_stands_once() -> None:
    """Two entries of one check at one place are refused at the second."""
    left = check("FRK-01", "ok = true", 'where = "left fork"')
    assert only(text(left, left)).given == "FRK-01 left fork"


def test_places_tell_checks_apart() -> None:
    """One check at two places is two entries."""
    forks = [check("FRK-01", "ok = true", f'where = "{side} fork"') for side in ("left", "right")]
    assert [c.where for c in read(*forks).checks] == ["left fork", "right fork"]


def test_a_date_is_not_held_against_a_visit_without_one() -> None:
    """Where the visit's own date is missing, only that is told."""
    written = text(check("CAP-01", "ok = true", "by = 2026-12-01")).replace("date = 2026-11-20\n", "")
    assert [p.field for p in refused(written)] == ["visit.date"]
