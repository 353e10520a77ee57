"""Visit files for the tests, written as at the truck. Invented customer, people and readings: demo data."""

from __future__ import annotations

import pytest

from mastwright.quantity import BadInput, Problem
from mastwright.visits import Visit, read_visit

SPANS = """
[[chain.span]]
strand = "left"
start = 1
pitches = 16
length = "306 mm"
instrument = "calliper"
[[chain.span]]
strand = "right"
start = 1
pitches = 16
length = "306 mm"
instrument = "calliper"
"""


def chain(*more: str, name: str = "main", designation: str = "BL634", spans: str = SPANS) -> str:
    """Return a chain set with what else stands in it: fields first, then tables."""
    fields = [m for m in more if not m.lstrip().startswith("[")]
    tables = [m for m in more if m.lstrip().startswith("[")]
    head = f'[[chain]]\nset = "{name}"\ndesignation = "{designation}"\n'
    return "\n".join([head.rstrip(), *fields, spans, *tables]) + "\n"


def check(name: str = "CAP-01", *fields: str) -> str:
    """Return a check entry, one that is in order unless its fields are given."""
    return "\n".join(["[[check]]", f'id = "{name}"', *(fields or ("ok = true",))]) + "\n"


def text(*blocks: str, visit: str = "", customer: str = "", truck: str = "", units: str = "metric") -> str:
    """Return a visit file with these blocks, and more fields in its head."""
    return f"""# demo data
[visit]
id = "V-1"
date = 2026-11-20
technician = "Ines Calder"
units = "{units}"
{visit}
[customer]
name = "Larkspur Lumber Yard"
{customer}
[truck]
id = "B30-11"
kind = "counterbalance"
power = "electric"
model = "Tolvane 30"
hours = "9 812 h"
{truck}
""" + "\n".join(blocks or (chain(),))


def read(*blocks: str, visit: str = "", customer: str = "", truck: str = "", units: str = "metric") -> Visit:
    """Return the visit of such a file."""
    return read_visit(text(*blocks, visit=visit, customer=customer, truck=truck, units=units))


def refused(written: str) -> tuple[Problem, ...]:
    """Return the problems for which a visit file is refused."""
    with pytest.raises(BadInput) as bad:
        read_visit(written)
    return bad.value.problems


def only(written: str) -> Problem:
    """Return the one problem for which a visit file is refused."""
    (problem,) = refused(written)
    return problem


def line_of(written: str, part: str) -> int:
    """Return the line, from 1, on which a part of the file first stands."""
    return written[: written.index(part)].count("\n") + 1
