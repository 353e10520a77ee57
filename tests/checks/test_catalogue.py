"""The catalogue: which checks there are, what each says, for which trucks."""

from collections import Counter
from fractions import Fraction

import pytest

from mastwright.checks import (
    Check,
    CheckKind,
    Severity,
    TruckFacts,
    answer_fields,
    applicable,
    catalogue,
    equipment_tags,
    find_check,
)
from mastwright.checks.catalogue import check_from
from mastwright.checks.figures import constant
from mastwright.checks.rules import RULES
from mastwright.quantity import BadInput, TableError, common_instruments, read_table

# How many checks each system has, numbered from 1 without a gap.
NUMBERED = {
    "FRK": 20,
    "CAP": 5,
    "MST": 20,
    "HYD": 9,
    "BRK": 17,
    "STR": 7,
    "TYR": 11,
    "WHL": 3,
    "BAT": 20,
    "CHG": 2,
    "ELE": 9,
    "ENG": 7,
    "LPG": 5,
    "SAF": 8,
    "INT": 7,
}
IDS = {f"{system}-{number:02}" for system, count in NUMBERED.items() for number in range(1, count + 1)}
GROUPS = {
    "engine-counterbalance",
    "electric-counterbalance",
    "reach",
    "stacker",
    "order-picker",
    "pallet",
}
ALL = tuple(catalogue().values())
each = pytest.mark.parametrize("check", ALL, ids=lambda check: check.id)


def test_every_check_is_there_once() -> None:
    """There are 150 checks, and each has its id."""
    ids = [row["id"] for row in read_table("mastwright.checks", "checks.csv")]
    assert len(ids) == 150
    assert Counter(ids) == Counter(IDS)


def test_the_checks_stand_in_walking_order() -> None:
    """The stage of the walk never goes back."""
    stages = [check.stage for check in ALL]
    assert stages == sorted(stages)
    assert set(stages) == set(range(8))


@each
def test_a_check_is_for_known_trucks(check: Check) -> None:
    """Each applies to at least one group of trucks and to none that does not exist."""
    assert check.trucks
    assert check.trucks <= GROUPS


@each
def test_a_check_says_what_to_do(check: Check) -> None:
    """None stands without title, way of doing it, danger, action and source."""
    assert all((check.title, check.how, check.if_ignored, check.action, check.source.text))


@each
def test_a_check_is_read_with_an_instrument_of_its_dimension(check: Check) -> None:
    """The instrument that an entry need not name reads what the check asks."""
    assert common_instruments().find(check.instrument, check.reads).dimension == check.reads


@each
def test_a_makers_check_ships_no_limit(check: Check) -> None:
    """Nothing ships that could pass a truck in the maker's place, and what is seen has no figure."""
    kept = check.kind in {CheckKind.MAKER, CheckKind.OBSERVATION} or check.rule == "observe"
    assert not (kept and check.limit is not None)


@each
def test_a_range_is_the_makers(check: Check) -> None:
    """A rule that only holds against the maker's range has no limit in the table that it would overlook."""
    alone = {"between", "torque_range", "difference", "tip_difference_maker", "plate_range"}
    assert check.rule not in alone or check.limit is check.limit_high is None


@each
def test_no_check_lets_the_mark_pass_where_a_figure_is_missing(check: Check) -> None:
    """What is only seen has no mark that could be allowed."""
    assert check.rule != "observe" or not check.mark_allowed


@each
def test_a_check_asks_for_each_field_once(check: Check) -> None:
    """No two fields of an entry have one name, and the worse case is asked where there is one."""
    names = [field.name for field in answer_fields(check)]
    assert len(set(names)) == len(names)
    assert ("worse_case" in names) is bool(check.worse_case)


def test_every_rule_is_used() -> None:
    """No rule stands in the code without a check, and none is missing."""
    assert {check.rule for check in ALL} == set(RULES)


@pytest.mark.parametrize(
    ("check", "column", "figure"),
    [
        ("BAT-13", "limit", "insulation_per_volt"),
        ("BAT-13", "limit_high", "insulation_least"),
        ("BAT-08", "limit_high", "open_circuit_offset"),
        ("FRK-05", "limit_high", "fork_gap_height"),
        ("ENG-06", "limit_high", "work_air_strictest"),
    ],
)
def test_the_table_and_the_physics_agree(check: str, column: str, figure: str) -> None:
    """A figure that the table of checks repeats is the one that is worked with."""
    assert getattr(catalogue()[check], column) == constant(figure)


def test_the_catalogue_is_read_once() -> None:
    """Asking again costs nothing and gives the same."""
    assert catalogue() is catalogue()


@pytest.mark.parametrize("written", ["FRK-09", "frk-09", "  Frk-09 "])
def test_a_check_is_found_as_somebody_writes_it(written: str) -> None:
    """Capitals and blanks do not count."""
    assert find_check(written) is catalogue()["FRK-09"]


@pytest.mark.parametrize(
    ("written", "offered"),
    [
        ("FRK-9", "FRK-09 (Fork heel thickness)"),
        ("fork heel thicknes", "FRK-09 (Fork heel thickness)"),
        ("??", "such as FRK-09"),
    ],
)
def test_an_unknown_check_is_answered_with_the_nearest(written: str, offered: str) -> None:
    """The message names what was meant, by id or by title, or an example."""
    with pytest.raises(BadInput) as bad:
        find_check(written, "check.id")
    (problem,) = bad.value.problems
    assert (problem.field, problem.given) == ("check.id", written)
    assert offered in problem.expected


def _row(**cells: str) -> dict[str, str]:
    first = read_table("mastwright.checks", "checks.csv")[0]
    return {**first, **cells}


def test_a_check_without_source_does_not_load() -> None:
    """A row says where its limit is written."""
    with pytest.raises(TableError, match=r"checks\.csv CAP-01: no source"):
        check_from(_row(source=" "))


def test_a_row_is_read_cell_by_cell() -> None:
    """Rule and reference part at the colon, numbers are exact, lists part at blanks."""
    check = check_from(
        _row(rule="share_at_least:original", limit="0.9", limit_high="2", mark_allowed="yes", needs="a b")
    )
    assert (check.rule, check.reference) == ("share_at_least", "original")
    assert (check.limit, check.limit_high) == (Fraction(9, 10), Fraction(2))
    assert check.mark_allowed
    assert check.needs == {"a", "b"}
    assert check.severity is Severity.OUT_OF_SERVICE


def test_the_equipment_that_matters_is_listed() -> None:
    """Every tag that a check needs is offered, sorted, once."""
    tags = equipment_tags()
    assert list(tags) == sorted(set(tags))
    assert {"lead-acid", "lpg", "cushion-tyres", "attachment"} <= set(tags)


def ids(facts: TruckFacts) -> set[str]:
    """Return which checks are part of the walk."""
    return {check.id for check in applicable(facts)}


ENGINE = TruckFacts("counterbalance", "lpg")
BATTERY = TruckFacts("counterbalance", "electric")


@pytest.mark.parametrize(
    ("facts", "there", "not_there"),
    [
        (ENGINE, {"ENG-01", "LPG-01", "MST-12"}, {"BAT-09", "MST-16", "ENG-07", "INT-05"}),
        (TruckFacts("counterbalance", "diesel"), {"ENG-07"}, {"LPG-01", "LPG-02"}),
        (TruckFacts("counterbalance", "petrol"), {"ENG-01", "ENG-06"}, {"LPG-01", "ENG-07"}),
        (BATTERY, {"BAT-01", "BAT-09", "MST-02", "MST-12"}, {"ENG-01", "BAT-20", "STR-06"}),
        (
            TruckFacts("counterbalance", "electric", frozenset({"lithium"})),
            {"BAT-20", "BAT-13", "BAT-16"},
            {"BAT-01", "BAT-09", "CHG-02"},
        ),
        (TruckFacts("reach", "electric"), {"MST-16", "MST-20", "FRK-09"}, {"MST-12", "ENG-01", "BRK-10"}),
        (TruckFacts("pallet", "electric"), {"MST-19", "STR-06", "BRK-14"}, {"FRK-09", "MST-01", "BRK-01"}),
        (TruckFacts("stacker", "electric"), {"MST-01", "BRK-12"}, {"BRK-01", "SAF-01"}),
        (TruckFacts("order-picker", "electric"), {"SAF-01", "ELE-03"}, {"SAF-03", "MST-16"}),
    ],
)
def test_a_truck_gets_the_checks_of_its_kind(facts: TruckFacts, there: set[str], not_there: set[str]) -> None:
    """The walk round a truck has what it has, and nothing it does not have."""
    walk = ids(facts)
    assert there <= walk
    assert not not_there & walk


@pytest.mark.parametrize(
    ("country", "check"), [("GB", "INT-04"), ("DE", "INT-05"), ("FR", "INT-06"), ("JP", "INT-07")]
)
def test_a_countrys_check_is_for_that_country(country: str, check: str) -> None:
    """A legal interval is asked where it is law, and nowhere else."""
    legal = {"INT-04", "INT-05", "INT-06", "INT-07"}
    assert ids(TruckFacts("reach", "electric", country=country)) & legal == {check}


def test_equipment_that_is_not_fitted_is_not_asked() -> None:
    """Fork extensions are measured only where there are some."""
    assert "FRK-18" not in ids(BATTERY)
    assert "FRK-18" in ids(TruckFacts("counterbalance", "electric", frozenset({"fork-extensions"})))


def test_the_walk_keeps_the_order_of_the_catalogue() -> None:
    """What applies stands in walking order."""
    walk = applicable(BATTERY)
    assert [check.stage for check in walk] == sorted(check.stage for check in walk)


def test_every_check_is_for_some_truck() -> None:
    """No check stands in the table that no truck can be asked."""
    powers = {
        "engine-counterbalance": ("counterbalance", "lpg petrol diesel"),
        "electric-counterbalance": ("counterbalance", "electric"),
    }
    reached: set[str] = set()
    for group in GROUPS:
        kind, power = powers.get(group, (group, "electric"))
        for one in power.split():
            for country in ("GB", "DE", "FR", "JP"):
                reached |= ids(TruckFacts(kind, one, frozenset(equipment_tags()) - {"lithium"}, country))
    reached |= ids(TruckFacts("reach", "electric", frozenset({"lithium"})))
    assert reached == IDS
