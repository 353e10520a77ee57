"""Strength of a chain set: what it says, what it asks for, what it never does."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.strength import (
    Lifts,
    bearing_area,
    edge_residual,
    joint_pressure,
    likely_pin_share,
    residual_band,
    residual_modes,
    static_factor,
    static_strength,
    strand_factor,
)
from mastwright.quantity import BadInput, Evidence, Source

_MBF = Fraction(75600)
_TABLE = Source("ISO 4347 table", Evidence.FROM_MEMORY)
_CERTIFICATE = Source("chain certificate of the set, demo data", Evidence.READ)
_JOINT = (Fraction("19.05"), Fraction("7.94"), Fraction("18.0975"))


def test_remembered_strength_asks_for_the_certificate() -> None:
    """A strength from memory says so and asks for the chain's certificate, in both languages."""
    result = static_strength(2, _MBF, _TABLE, Fraction(2300))
    assert result.min_tensile_source is _TABLE
    assert result.certificate is not None
    assert "from memory" in result.certificate.en
    assert "certificate" in result.certificate.en
    assert "certificado" in result.certificate.es


def test_certified_strength_asks_for_nothing() -> None:
    """A strength read off the certificate asks for none."""
    assert static_strength(2, _MBF, _CERTIFICATE, Fraction(2300)).certificate is None


def test_always_information_only() -> None:
    """Every result and every band says that it never keeps a chain past a limit."""
    result = static_strength(2, _MBF, _TABLE, Fraction(2300), elongation=Fraction(2, 100))
    assert result.caution.en.startswith("Information only")
    assert result.residual is not None
    assert result.residual.caution == result.caution
    assert "assumed" in result.residual.assumption.en


def test_below_five_is_a_finding() -> None:
    """Below 5 on the plate load both requirements of 5 are unmet, and each names its source."""
    result = static_strength(2, _MBF, _TABLE, Fraction(3400))
    assert result.factor < 5
    assert [r.value for r in result.unmet] == [5, 5]
    assert {r.source.evidence for r in result.unmet} == {Evidence.FROM_MEMORY, Evidence.AS_QUOTED}


def test_exactly_five_is_enough() -> None:
    """A factor of exactly 5 meets the requirement of at least 5."""
    mass = 2 * _MBF / (5 * Fraction("9.80665"))
    result = static_strength(2, _MBF, _TABLE, mass)
    assert result.factor == 5
    assert result.unmet == ()


def test_operator_needs_ten() -> None:
    """Chains that lift the operator need 10."""
    result = static_strength(2, _MBF, _TABLE, Fraction(2300), Lifts.OPERATOR)
    assert [r.value for r in result.unmet] == [10]


def test_new_chain_alone_has_no_worn_factor() -> None:
    """Without an elongation there is no residual strength."""
    result = static_strength(2, _MBF, _TABLE, Fraction(2300))
    assert result.worn is None
    assert result.residual is None


def test_worn_factor_does_not_change_the_finding() -> None:
    """Wear lowers the shown factor; the finding stays with the new chain and the limits of wear."""
    new = static_strength(2, _MBF, _TABLE, Fraction(2300))
    worn = static_strength(2, _MBF, _TABLE, Fraction(2300), elongation=Fraction(3, 100))
    assert worn.worn is not None
    assert worn.worn[0] < worn.worn[1] < new.factor == worn.factor
    assert worn.unmet == new.unmet


def test_band_ends() -> None:
    """A chain at or below nominal counts as new, one worn beyond sense has nothing left."""
    assert residual_band(Fraction(-1, 1000)).low == 1
    assert residual_band(Fraction(0)).high == 1
    assert residual_band(Fraction(1, 2)).low == 0


def test_band_says_when_it_is_past_the_published_point() -> None:
    """Past 3 % the band is only the line carried on, and says so."""
    assert not residual_band(Fraction(3, 100)).beyond_published
    assert residual_band(Fraction(31, 1000)).beyond_published


def test_unworn_joint_is_whole() -> None:
    """Without growth nothing is lost; a chain shorter than nominal counts the same."""
    for elongation in (Fraction(0), Fraction(-1, 500)):
        modes = residual_modes(elongation, *_JOINT, Fraction(1, 2))
        assert modes.weakest == modes.pin_shear == modes.eye_crown == 1


def test_weakest_part_is_taken() -> None:
    """With the wear on the pin it bends first; with the wear in the hole the eye goes first."""
    on_pin = residual_modes(Fraction(3, 100), *_JOINT, Fraction(1))
    in_hole = residual_modes(Fraction(3, 100), *_JOINT, Fraction(0))
    assert on_pin.weakest == on_pin.pin_bending
    assert in_hole.weakest == in_hole.eye_crown


def test_joint_worn_through_has_nothing_left() -> None:
    """Wear deeper than the part leaves nothing, never less."""
    assert residual_modes(Fraction(2), *_JOINT, Fraction(1)).weakest == 0
    assert edge_residual(Fraction(15), *reversed(_JOINT[1:])) == 0


def test_pin_share_says_that_it_is_computed() -> None:
    """The likely share of wear on the pin is a computed figure."""
    assert likely_pin_share().source.evidence is Evidence.COMPUTED


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: static_factor(0, _MBF, Fraction(2300)), "strands"),
        (lambda: static_factor(2, Fraction(0), Fraction(2300)), "minimum breaking force"),
        (lambda: static_factor(2, _MBF, Fraction(0)), "hung mass"),
        (lambda: strand_factor(_MBF, Fraction(2300), Fraction(0)), "share of the load"),
        (lambda: strand_factor(_MBF, Fraction(2300), Fraction(2)), "share of the load"),
        (lambda: residual_modes(Fraction(0), Fraction(0), *_JOINT[1:], Fraction(1)), "pitch"),
        (lambda: residual_modes(Fraction(0), *_JOINT, Fraction(2)), "share of the wear on the pin"),
        (
            lambda: residual_modes(Fraction(0), _JOINT[0], Fraction(18), Fraction(18), Fraction(1)),
            "plate height",
        ),
        (lambda: edge_residual(Fraction(-1), Fraction(18), Fraction(8)), "loss of plate height"),
        (lambda: edge_residual(Fraction(1), Fraction(18), Fraction(0)), "hole diameter"),
        (lambda: bearing_area(Fraction(8), Fraction(3), 0), "articulating plates"),
        (lambda: joint_pressure(Fraction(0), Fraction(1)), "strand tension"),
    ],
)
def test_impossible_figure_is_refused(call: object, field: str) -> None:
    """A figure that cannot be is refused by name."""
    assert callable(call)
    with pytest.raises(BadInput) as caught:
        call()
    assert caught.value.problems[0].field == field
