"""Strength against published figures and worked examples."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.strength import (
    bearing_area,
    edge_residual,
    joint_pressure,
    likely_pin_share,
    residual_band,
    residual_modes,
    standard_gravity,
    static_factor,
    static_strength,
    strand_factor,
)
from mastwright.quantity import Evidence, Source

# The chain of the worked examples: 3/4 in pitch, 3x4. Pitch, pin and H = 0.95 p as in the inch table of
# ASME B29.8 (reproduction, read); minimum strength 75.6 kN of ISO 4347 (from memory).
_PITCH, _PIN, _HEIGHT, _THICKNESS = (Fraction(x) for x in ("19.05", "7.94", "18.0975", "3.30"))
_MBF = Fraction(75600)
_MEMORY = Source("ISO 4347", Evidence.FROM_MEMORY)
_LIMIT = Fraction(3, 100)


def test_standard_gravity() -> None:
    """Source: 3rd CGPM (1901), 9.80665 m/s² exactly, in NIST SP 811 App. B (from memory)."""
    assert standard_gravity() == Fraction(980665, 100000)


@pytest.mark.parametrize(
    ("hung", "factor"),
    [
        (2500 + 350, 5.41),
        (3000 + 400, 4.53),
        (2500 + 350 + 250, 4.97),
    ],
)
def test_factor_of_worked_examples(hung: int, factor: float) -> None:
    """Source: worked examples in longhand, two strands of 75.6 kN: 2·75.6/(9.80665·m) (computed)."""
    assert float(static_factor(2, _MBF, Fraction(hung))) == pytest.approx(factor, abs=0.005)


def test_friction_of_worked_example() -> None:
    """Source: 5.41 at no friction is 4.92 with 10 % friction, in longhand (computed)."""
    result = static_strength(2, _MBF, _MEMORY, Fraction(2850))
    by_share = {figure.value: factor for figure, factor in result.with_friction}
    assert float(by_share[Fraction(1, 10)]) == pytest.approx(4.92, abs=0.005)


def test_tension_pressure_and_factor() -> None:
    """Source: 2300 kg on two strands: 11 277.65 N each, 107.60 N/mm², factor 6.704 (computed)."""
    tension = standard_gravity() * 2300 / 2
    area = bearing_area(_PIN, _THICKNESS, 4)
    assert float(tension) == pytest.approx(11277.65, abs=0.005)
    assert float(joint_pressure(tension, area)) == pytest.approx(107_600, abs=5)
    assert float(static_factor(2, _MBF, Fraction(2300))) == pytest.approx(6.704, abs=0.0005)


def test_factor_worn_and_uneven() -> None:
    """Source: 0.82·6.704 = 5.497; a strand with 75 % of the load has 4.469, below 5 (computed)."""
    result = static_strength(2, _MBF, _MEMORY, Fraction(2300), elongation=_LIMIT)
    assert result.worn is not None
    assert float(result.worn[0]) == pytest.approx(5.497, abs=0.001)
    assert float(strand_factor(_MBF, Fraction(2300), Fraction(3, 4))) == pytest.approx(4.469, abs=0.0005)


def test_published_loss_at_three_percent() -> None:
    """Sources: a chain guidance page, 18 %; dealer pages, 15 % lost at 3 % elongation (both as quoted)."""
    band = residual_band(_LIMIT)
    assert (1 - band.low, 1 - band.high) == (Fraction(18, 100), Fraction(15, 100))
    assert {s.evidence for s in band.sources} == {Evidence.AS_QUOTED}


@pytest.mark.parametrize(("percent", "share"), [(1, "0.94"), (2, "0.88"), (3, "0.82")])
def test_straight_line(percent: int, share: str) -> None:
    """Source: R = 1 - 6·e through the published 18 % at 3 % (an assumption; common practice, no source)."""
    assert residual_band(Fraction(percent, 100)).low == Fraction(share)


def test_pin_share_gives_the_published_loss() -> None:
    """Source: the published 18 % at 3 % (as quoted) follows from bending of a 7.94 mm pin, β = 0.889."""
    modes = residual_modes(_LIMIT, _PITCH, _PIN, _HEIGHT, likely_pin_share().value)
    assert float(modes.pin_bending) == pytest.approx(0.82, abs=0.0005)


def test_modes_of_worked_example() -> None:
    """Source: half the wear on the pin: 0.8959, 0.9542, 0.9437; all of it: 0.7992, 0.9084 (computed)."""
    half = residual_modes(_LIMIT, _PITCH, _PIN, _HEIGHT, Fraction(1, 2))
    assert [float(x) for x in (half.pin_bending, half.pin_shear, half.eye_crown)] == pytest.approx(
        [0.8959, 0.9542, 0.9437], abs=0.00005
    )
    full = residual_modes(_LIMIT, _PITCH, _PIN, _HEIGHT, Fraction(1))
    assert [float(full.pin_bending), float(full.pin_shear)] == pytest.approx([0.7992, 0.9084], abs=0.00006)


@pytest.mark.parametrize(
    ("pitch", "pin", "bending", "half_bending", "shear", "crown", "half_crown"),
    [
        ("12.70", "5.09", 0.792, 0.892, 0.905, 0.891, 0.945),
        ("15.875", "5.96", 0.779, 0.885, 0.898, 0.896, 0.948),
        ("25.40", "9.54", 0.779, 0.885, 0.898, 0.896, 0.948),
        ("31.75", "11.11", 0.764, 0.877, 0.891, 0.900, 0.950),
        ("38.10", "12.71", 0.754, 0.871, 0.886, 0.903, 0.951),
    ],
)
def test_modes_over_the_pitches(
    pitch: str, pin: str, bending: float, half_bending: float, shear: float, crown: float, half_crown: float
) -> None:
    """Source: worn joints at 3 % by size, worked apart (computed); pins of the inch table (read)."""
    size = (Fraction(pitch), Fraction(pin), Fraction(pitch) * Fraction("0.95"))
    full, half, none = (residual_modes(_LIMIT, *size, Fraction(b)) for b in ("1", "0.5", "0"))
    found = [full.pin_bending, half.pin_bending, full.pin_shear, none.eye_crown, half.eye_crown]
    assert [float(x) for x in found] == pytest.approx(
        [bending, half_bending, shear, crown, half_crown], abs=0.00055
    )


def test_edge_wear_takes_more_section_than_height() -> None:
    """Source: 5 % of the height of a 3/4 in plate is 0.905 mm and leaves 0.911 of the section (computed)."""
    loss = _HEIGHT / 20
    assert float(loss) == pytest.approx(0.905, abs=0.0005)
    assert float(edge_residual(loss, _HEIGHT, _PIN)) == pytest.approx(0.911, abs=0.0005)


def test_bearing_area_by_lacing() -> None:
    """Source: a leaf-chain system design page, 4x6 has 50 % more bearing area than 4x4 (read)."""
    four, six = (bearing_area(_PIN, _THICKNESS, plates) for plates in (4, 6))
    assert six / four == Fraction(3, 2)
