"""The visit file: its head, truck, previous visit, policy and refusals, and how each fault is told."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from mastwright.quantity import BadInput, UnitSystem, common_instruments
from mastwright.quantity.own_instruments import own_instruments
from mastwright.visits import read_visit
from visits.written import chain, check, line_of, only, read, refused, text

REFUSAL = '[[refusal]]\nitem = "main"\nby = "Odell Marsh"\ninitials = "OM"\n'


def test_the_least_that_a_visit_needs() -> None:
    """Id, date, technician, customer, truck and one chain are enough; the rest has its defaults."""
    visit = read()
    assert (visit.id, visit.on, visit.technician) == ("V-1", date(2026, 11, 20), "Ines Calder")
    assert (visit.language, visit.system, visit.truck.duty) == ("en", UnitSystem.METRIC, "normal")
    assert (visit.truck.facts.country, visit.previous_on, visit.refusals) == ("other", None, ())


def test_a_whole_head_is_read() -> None:
    """Every field of the head stands in the visit."""
    visit = read(visit='language = "es"\nnote = "a note"', customer='site = "Yard B"\ncountry = "GB"')
    assert (visit.language, visit.note, visit.site) == ("es", "a note", "Yard B")
    assert visit.truck.facts.country == "GB"


def test_a_whole_truck_is_read() -> None:
    """Every field of the truck stands in the visit, in the dimension's own unit."""
    truck = read(
        truck="""rated_capacity = "3 t"
load_centre = "50 cm"
lift_height = "4.7 m"
battery_voltage = "80 V"
serial = "BD-1"
fitted = ["attachment"]
duty = "severe"
environment = "dust"
lifts_people = true
service_hours = "250 h"
service_months = 2
last_examination = 2026-02-20
[truck.mast]
arrangement = "C"
carriage_mass = "310 kg"
inner_mass = "260 kg"
middle_mass = "240 kg"
load_mass = "1500 kg"
"""
    ).truck
    facts = truck.facts
    assert [facts.rated_capacity, facts.load_centre, facts.battery_voltage] == [3000, 500, 80]
    assert facts.fitted == {"attachment"}
    assert (truck.duty, truck.environment, truck.serial) == ("severe", "dust", "BD-1")
    assert truck.lifts_people
    assert [truck.service_hours, truck.service_months] == [250, 2]
    assert truck.last_examination == date(2026, 2, 20)
    assert truck.arrangement is not None
    assert truck.arrangement.letter == "C"
    assert truck.masses == {"load": 1500, "carriage": 310, "inner": 260, "middle": 240}


def test_bare_numbers_are_inches_where_the_file_says_so() -> None:
    """A file in inch units reads a bare length as inches and a bare mass as pounds."""
    visit = read(units="inch", truck="load_centre = 24\nrated_capacity = 5000")
    assert visit.truck.facts.load_centre == Fraction("609.6")
    assert visit.truck.facts.rated_capacity == 5000 * Fraction("0.45359237")


def test_the_previous_visit_and_the_policy_are_read() -> None:
    """Date and meter of the visit before, and what the shop has set stricter."""
    previous = '[previous]\ndate = 2026-08-14\nhours = "9 000 h"\n'
    visit = read(chain(), previous, '[policy]\ndiscard_at = "2 %"\nhighest_doubt = "1 %"\n')
    assert (visit.previous_on, visit.previous_hours) == (date(2026, 8, 14), Fraction(9000))
    assert (visit.policy.discard_percent, visit.policy.highest_doubt) == (Fraction(2), 0.01)


def test_a_refusal_is_read() -> None:
    """What was refused, by whom, why and when; the visit's day where no other is given."""
    (refusal,) = read(chain(), REFUSAL + 'reason = "a quote first"\nwhere = "left"\n').refusals
    assert (refusal.item, refusal.where, refusal.by) == ("main", "left", "Odell Marsh")
    assert (refusal.initials, refusal.reason, refusal.at) == ("OM", "a quote first", date(2026, 11, 20))


def test_a_refusal_may_have_its_own_day() -> None:
    """A no that was signed later keeps its date."""
    assert read(chain(), REFUSAL + "date = 2026-11-22\n").refusals[0].at == date(2026, 11, 22)


def test_the_shops_own_instruments_are_used() -> None:
    """An instrument that the shop has studied goes before the common one of its name."""
    own = own_instruments(
        '[[instrument]]\nname = "calliper"\ndimension = "length"\nstandard_uncertainty = "0.05 mm"\n'
        'step = "0.02 mm"\nsource = "a study"\nevidence = "demo data"\n'
    )
    visit = read_visit(text(), common_instruments().replaced_by(own))
    assert visit.chains[0].spans[0].reading.instrument.source == own[0].source


@pytest.mark.parametrize("end", ["\r\n", "\n\n", " # a comment\n"])
def test_line_ends_blank_lines_and_comments_change_nothing(end: str) -> None:
    """The same visit is read whatever the editor made of its lines."""
    assert read_visit(text().replace("\n", end)) == read_visit(text())


def test_a_mark_before_the_text_changes_nothing() -> None:
    """A byte-order mark that some editors write first is passed over."""
    assert read_visit("\ufeff" + text()) == read_visit(text())


@pytest.mark.parametrize(
    ("fault", "line"), [("id = ", 3), ('id = "V-1', 3), ("id = 2026-02-30", 3), ("[visit]", 3)]
)
def test_a_fault_of_syntax_has_its_line(fault: str, line: int) -> None:
    """What is no TOML is told as such, with the line."""
    problem = only(f"# demo data\n[visit]\n{fault}\n")
    assert (problem.field, problem.line) == ("file", line)
    assert problem.expected.startswith("valid TOML: ")


def test_a_fault_of_syntax_does_not_tell_its_place_twice() -> None:
    """The line stands in front of the message, not in it again."""
    assert "at line" not in only("a = \n").expected


@pytest.mark.parametrize("hostile", ["a = " + "[" * 5000, "a = " + "9" * 5000])
def test_a_hostile_file_is_refused(hostile: str) -> None:
    """Brackets without end and numbers without end are refused in words."""
    problem = only(hostile)
    assert (problem.field, problem.line) == ("file", None)
    assert problem.expected.startswith("valid TOML")


def test_an_empty_file_is_told_all_that_it_needs() -> None:
    """A file without anything is told every table and field that is needed, at once."""
    fields = [p.field for p in refused("")]
    needed = ("visit", "customer", "truck", "visit.id", "visit.date", "customer.name", "truck.hours", "chain")
    assert set(needed) <= set(fields)
    assert len(fields) == len(set(fields))


HEAD_FAULTS = [
    ('id = "V-1"', 'id = "../V 1"', "visit.id", "letters, digits, points and hyphens"),
    ('id = "V-1"', 'id = ""', "visit.id", "a text that is not blank"),
    ("date = 2026-11-20", 'date = "20 Nov"', "visit.date", "a date without quotes"),
    ("date = 2026-11-20", "date = 9999-11-20", "visit.date", "a date from 1950 to 2199"),
    ('units = "metric"', 'units = "imperial"', "visit.units", "one of metric, inch"),
    ('kind = "counterbalance"', 'kind = "van"', "truck.kind", "one of counterbalance, reach"),
    ('power = "electric"', 'power = "steam"', "truck.power", "one of electric, lpg, petrol, diesel"),
    ('hours = "9 812 h"', 'hours = "9 812 km"', "truck.hours", "the unit 'km' is not known"),
    ('hours = "9 812 h"', "hours = inf", "truck.hours", "a number"),
]


@pytest.mark.parametrize(("right", "wrong", "field", "expected"), HEAD_FAULTS)
def test_a_fault_in_the_head_is_told_with_its_line(right: str, wrong: str, field: str, expected: str) -> None:
    """Field, line and what would be right, for one fault at a time."""
    written = text().replace(right, wrong, 1)
    problem = only(written)
    assert (problem.field, problem.line) == (field, line_of(written, wrong))
    assert expected in problem.expected


TRUCK_FAULTS = [
    ('duty = "hard"', "truck.duty", "one of normal, severe, extreme"),
    ("service_months = 0", "truck.service_months", "a whole number from 1 to 120"),
    ("service_months = 9999999", "truck.service_months", "a whole number from 1 to 120"),
    ('fitted = ["sideshifter"]', "truck.fitted", "equipment that a check depends on"),
    ("last_examination = 2026-11-21", "truck.last_examination", "at the latest the visit's 2026-11-20"),
    ("lifts_people = 1", "truck.lifts_people", "true or false"),
    ('rated_capacity = "3 tons"', "truck.rated_capacity", "a ton may be 1000 kg, 2000 lb or 2240 lb"),
    ('colour = "red"', "truck.colour", "a known field"),
    ('modell = "Tolvane 30"', "truck.modell", "did you mean 'model'?"),
    ('mast = { arrangement = "Z" }', "truck.mast.arrangement", "A"),
    ('mast = { carriage = "3 kg" }', "truck.mast.carriage", "did you mean 'carriage_mass'?"),
    ("mast = 3", "truck.mast", "a table, [truck.mast]"),
]


@pytest.mark.parametrize(("wrong", "field", "expected"), TRUCK_FAULTS)
def test_a_fault_of_the_truck_is_told_with_its_line(wrong: str, field: str, expected: str) -> None:
    """Field, line and what would be right, for one fault at a time."""
    written = text(truck=wrong)
    problem = only(written)
    assert (problem.field, problem.line) == (field, line_of(written, wrong))
    assert expected in problem.expected


OTHER_FAULTS = [
    ('[previous]\nhours = "9 813 h"', "hours", "previous.hours", "at most the 9812 h of this visit"),
    ("[previous]\ndate = 2026-11-20", "date", "previous.date", "a date before the visit's 2026-11-20"),
    ("[previous]\nday = 2026-01-01", "day", "previous.day", "a known field: date, hours"),
    ('[policy]\ndiscard = "2 %"', "discard", "policy.discard", "did you mean 'discard_at'?"),
    ('[policy]\ndiscard_at = "2 mm"', "discard_at", "policy.discard_at", "percent"),
    (REFUSAL.replace("main", "mast"), "item", "refusal[1].item", "a chain set or check of this visit: main"),
    (
        REFUSAL + 'where = "middle"',
        "where",
        "refusal[1].where",
        "written with: left, right",
    ),
    (REFUSAL.replace('by = "Odell Marsh"\n', ""), "[[refusal]]", "refusal[1].by", "is needed"),
    (REFUSAL.replace('initials = "OM"\n', ""), "[[refusal]]", "refusal[1].initials", "is needed"),
    (REFUSAL + 'why = "x"', "why", "refusal[1].why", "a known field"),
    ("[chains]\na = 1", "[chains]", "chains", "did you mean 'chain'?"),
]


@pytest.mark.parametrize(("block", "at", "field", "expected"), OTHER_FAULTS)
def test_a_fault_in_another_table_is_told_with_its_line(
    block: str, at: str, field: str, expected: str
) -> None:
    """Field, line and what would be right, for one fault at a time."""
    written = text(chain(), block)
    problem = only(written)
    line = line_of(written, block) + line_of(block, at) - 1
    assert (problem.field, problem.line) == (field, line)
    assert expected in problem.expected


@pytest.mark.parametrize(
    ("wrong", "field", "expected"),
    [
        ('nam = "x"', "customer.nam", "did you mean 'name'?"),
        ('country = "XX"', "customer.country", "one of US, GB, DE"),
        ("site = 4", "customer.site", "a text in quotes"),
    ],
)
def test_a_fault_of_the_customer_is_told_with_its_line(wrong: str, field: str, expected: str) -> None:
    """Field, line and what would be right, for one fault at a time."""
    written = text(customer=wrong)
    problem = only(written)
    assert (problem.field, problem.line) == (field, line_of(written, wrong))
    assert expected in problem.expected


def test_a_refusal_without_an_item_is_told_once() -> None:
    """A refusal of nothing is told that its item is needed, whatever its place."""
    block = '[[refusal]]\nwhere = "left"\nby = "Odell Marsh"\ninitials = "OM"\n'
    assert only(text(chain(), block)).field == "refusal[1].item"


def test_a_refusal_of_one_check_of_several_names_its_place() -> None:
    """A check that has a place of its own is refused there, and nowhere else."""
    forks = [check("FRK-01", f'where = "{side} fork"', "ok = false") for side in ("left", "right")]
    refusal = REFUSAL.replace("main", "FRK-01")
    assert read(*forks, refusal + 'where = "left fork"').refusals[0].where == "left fork"
    assert only(text(*forks, refusal + 'where = "left"')).expected.endswith("left fork, right fork")


def test_a_refusal_of_a_check_without_place_names_none() -> None:
    """Where there is only one, a place is told to be left out."""
    problem = only(text(check(), REFUSAL.replace("main", "CAP-01") + 'where = "left"'))
    assert problem.expected == "a place that CAP-01 was written with: nothing: it has no place of its own"


def test_nothing_to_judge_is_refused() -> None:
    """A visit without chain and check is refused."""
    assert only(text("")).expected.startswith("at least one [[chain]] or [[check]]")


def test_a_faulty_chain_is_something_to_judge() -> None:
    """A chain with a fault is told that fault alone, not that there is none."""
    assert only(text(chain(designation="XX99", spans=""))).field == "chain[1].designation"


def test_a_faulty_check_is_something_to_judge() -> None:
    """A check with a fault is told that fault alone, not that there is none."""
    assert only(text(check("ZZZ-99"))).field == "check[1].id"


def test_every_problem_is_told_at_once_in_the_order_of_lines() -> None:
    """Faults of head, truck, chain, check and refusal come together, each with its line."""
    written = text(
        chain("pitches_total = 0", spans="[[chain.span]]\nstrand = 1\npitches = 15\nlength = 3\n"),
        check("CAP-01", "ok = 1"),
        REFUSAL.replace("main", "x"),
        visit="langauge = 1",
        truck='duty = "hard"',
    )
    problems = refused(written)
    lines = [p.line for p in problems if p.line is not None]
    assert [p.field for p in problems] == [
        "visit.langauge",
        "truck.duty",
        "chain[1].pitches_total",
        "chain[1].span[1].strand",
        "chain[1].span[1].pitches",
        "check[1].ok",
        "refusal[1].item",
    ]
    assert lines == sorted(lines)
    assert len(lines) == len(problems)


def test_the_message_of_a_refused_file_has_a_line_for_each_problem() -> None:
    """The text of the error is one line a problem, as a technician reads it."""
    with pytest.raises(BadInput) as bad:
        read_visit(text(visit="langauge = 1", truck='duty = "hard"'))
    first, second = str(bad.value).splitlines()
    assert first == "line 7: visit.langauge: 'langauge' given; did you mean 'language'?"
    assert second.startswith("line 17: truck.duty: 'hard' given; one of normal")
