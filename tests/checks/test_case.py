"""Which limit governs: the catalogue's, the maker's or the shop's."""

from datetime import date
from fractions import Fraction

import pytest

from mastwright.checks import NotJudged, ShopLimit, TruckFacts
from mastwright.quantity import LimitKind, Worse

from .weighing import GAS, codes, entry, limits, measured, passes

MAST = {"value": "60 mm"}


def test_the_catalogues_limit_governs_alone() -> None:
    """Without a file of limits the standard's figure is held against, and nothing else is named."""
    found = measured("MST-01", MAST)
    assert (found.limit.at, found.limit.kind, found.others) == (Fraction(100), LimitKind.STANDARD, ())


@pytest.mark.parametrize(
    ("check", "given", "kind"),
    [
        (
            "BAT-03",
            {"value": "1.28 kg/l", "electrolyte_temperature": "30 °C", "lowest": "1.27 kg/l"},
            LimitKind.MAKER,
        ),
        ("FRK-02", {"value": "1 mm", "blade_length": "1000 mm"}, LimitKind.STANDARD),
        ("INT-05", {"value": date(2026, 5, 1)}, LimitKind.LAW),
    ],
)
def test_a_limit_says_who_sets_it(check: str, given: dict[str, object], kind: LimitKind) -> None:
    """The kind of the check is the kind of its limit."""
    assert measured(check, given).limit.kind is kind


@pytest.mark.parametrize(
    ("at_most", "governs", "other"), [("50 mm", 50, 100), ("150 mm", 100, 150), ("100 mm", 100, 100)]
)
def test_the_tighter_limit_governs(at_most: str, governs: int, other: int) -> None:
    """Whoever sets it; the other is kept beside it."""
    found = measured("MST-01", MAST, own=limits("MST-01", at_most=at_most))
    assert found.limit.at == governs
    assert [limit.at for limit in found.others] == [other]


def test_a_limit_that_must_not_be_less_is_tighter_when_higher() -> None:
    """For a thickness the higher figure condemns first."""
    given = {"value": "38 mm", "original": "40 mm", "original_from": "marking"}
    assert measured("FRK-09", given, own=limits("FRK-09", at_least="37 mm")).limit.at == 37
    assert measured("FRK-09", given, own=limits("FRK-09", at_least="35 mm")).limit.at == 36


def test_a_makers_limit_that_governs_stands_alone_and_says_so() -> None:
    """The looser figure is used by choice, and the tighter one is still named."""
    found = measured("MST-01", {"value": "120 mm"}, own=limits("MST-01", at_most="150 mm", governs=True))
    assert passes(found)
    assert found.limit.at == 150
    assert [limit.at for limit in found.others] == [100]
    assert codes(found) == ["makers-limit-governs"]


def test_without_that_choice_nothing_is_said_of_it() -> None:
    """A limit that only stands beside the others is no remark."""
    assert codes(measured("MST-01", MAST, own=limits("MST-01", at_most="50 mm"))) == []


def test_a_governing_limit_leaves_the_other_side_alone() -> None:
    """A maker's figure for how thick a fork may be does not lift the one for how thin."""
    given = {"value": "35 mm", "original": "40 mm", "original_from": "marking"}
    found = measured("FRK-09", given, own=limits("FRK-09", at_most="45 mm", governs=True))
    assert (found.limit.at, found.limit.worse) == (Fraction(36), Worse.LOWER)
    assert not passes(found)


def test_no_maker_loosens_the_law() -> None:
    """A legal limit stays beside a maker's that governs."""
    own = limits("ENG-06", at_most="90 ppm", governs=True)
    found = measured("ENG-06", {"value": "60 ppm"}, TruckFacts("counterbalance", "lpg", country="US"), own)
    assert (found.limit.at, found.limit.kind) == (Fraction(50), LimitKind.LAW)


@pytest.mark.parametrize(
    ("value", "governs"), [("540 N·m", 520), ("590 N·m", 600), ("500 N·m", 520), ("700 N·m", 600)]
)
def test_of_a_range_the_nearer_end_governs(value: str, governs: int) -> None:
    """The end that is nearer to being passed, or already is, is the one that is named."""
    own = limits("WHL-01", at_least="520 N·m", at_most="600 N·m")
    found = measured("WHL-01", {"value": value}, own=own)
    assert found.limit.at == governs
    assert len(found.others) == 1


@pytest.mark.parametrize(("value", "good"), [("519", False), ("520", True), ("600", True), ("601", False)])
def test_both_ends_of_a_range_may_be_reached(value: str, good: bool) -> None:
    """What the maker writes as a range includes its ends."""
    own = limits("WHL-01", at_least="520 N·m", at_most="600 N·m")
    assert passes(measured("WHL-01", {"value": f"{value} N·m"}, own=own)) is good


def test_a_reading_without_limit_is_kept() -> None:
    """It is not judged, and what was read is not lost."""
    outcome = entry("MST-08", {"value": "0.8 mm"})
    assert isinstance(outcome, NotJudged)
    assert outcome.reading is not None
    assert outcome.reading.value == Fraction("0.8")


def test_a_reading_is_half_a_graduation_wide() -> None:
    """A rule of 1 mm reads to half a millimetre either side."""
    reading = measured("MST-01", MAST).reading
    assert (reading.low, reading.high) == (Fraction("59.5"), Fraction("60.5"))


def test_the_value_when_new_is_left_out_where_it_is_the_limit() -> None:
    """An allowance of nothing has no share that is used up."""
    own = limits("MST-01", at_most="0 mm")
    assert measured("MST-01", MAST, own=own).as_new is None
    assert measured("MST-01", MAST).as_new == 0


def test_limits_of_both_kinds_stand_together() -> None:
    """The shop's tighter one governs over maker and standard, which are both named."""
    own: tuple[ShopLimit, ...] = (
        *limits("MST-01", at_most="80 mm"),
        *limits("MST-01", at_most="70 mm", kind="shop"),
    )
    found = measured("MST-01", MAST, GAS, own)
    assert (found.limit.at, found.limit.kind) == (Fraction(70), LimitKind.SHOP)
    assert [limit.at for limit in found.others] == [100, 80]
