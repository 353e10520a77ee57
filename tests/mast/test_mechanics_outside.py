"""The mast's mechanics against worked examples and published figures, the source beside each number."""

from __future__ import annotations

from math import radians

import numpy as np
import pytest

from mastwright.mast.articulation import Articulation, PlateShape, on_pin_circle, on_rim
from mastwright.mast.best_span import MapSpan, best_span, span_at
from mastwright.mast.chain_length import strand_length
from mastwright.mast.figures import mast_figures
from mastwright.mast.moves import SetMoves
from mastwright.mast.state import on_sheave
from mastwright.mast.wear_map import WearMap, wear_map
from mastwright.mast.wear_rate import elongation_percent, pin_pressure, usual_course

# Worked examples in our own notes (computed there by hand and by an independent prototype): 3/4 in chain
# 3x4, plate 18.0975 x 3.30, pin 7.94, sheave five pitches; 2000 kg on a carriage of 300 kg, two strands.
PITCH, BEARING = 19.05, 13.2
X = on_rim(PITCH, 95.25, 18.0975)
LOADED, EMPTY = 11_277.65, 1471.00
PER_NEWTON = elongation_percent(1, X.angle, PITCH, BEARING, 1e-8)


def _moves(*rows: tuple[float, float, float, float]) -> SetMoves:
    table = np.array(rows, dtype=np.float64)
    return SetMoves(table[:, 0], table[:, 1], table[:, 2], table[:, 3])


def _uniform(highest: float, parts: int = 3000) -> WearMap:
    """Return the map of lifts from the bottom whose strokes are spread evenly up to the highest."""
    strokes = (np.arange(parts) + 0.5) * highest / parts
    rows = [(0.0, float(x), 1.0, 1.0) for x in strokes] + [(float(x), 0.0, 1.0, 1.0) for x in strokes]
    return wear_map(_moves(*rows), PITCH, X.wrap)


def _shape(highest: float) -> tuple[WearMap, float]:
    """Return that map, and its highest joint over the wear right at the sheave, where no joint is.

    The examples take the peak of a continuous chain, 2n(1 + S(w)); the first joint is half a pitch below.
    """
    chart = _uniform(highest)
    return chart, float(chart.weighted.max()) / (2 * 3000 * (1 + 1 - X.wrap / highest))


def test_bend_and_wrap() -> None:
    """19.0808°, 0.333022 rad, 179.71 mm or 9.434 pitches (worked example, computed)."""
    assert X.angle == pytest.approx(0.333022, abs=5e-7)
    assert X.angle_deg == pytest.approx(19.0808, abs=5e-5)
    assert pytest.approx(179.71, abs=5e-3) == X.wrap
    assert X.wrap / PITCH == pytest.approx(9.434, abs=5e-4)


@pytest.mark.parametrize(
    ("diameters", "straight", "waisted", "pitches"),
    [(3, 28.41, 29.33, 6.34), (4, 22.84, 23.31, 7.88), (5, 19.08, 19.35, 9.43),
     (6, 16.38, 16.55, 10.99), (8, 12.75, 12.83, 14.12)],
)  # fmt: skip
def test_bend_by_sheave_diameter(diameters: int, straight: float, waisted: float, pitches: float) -> None:
    """Sheaves of 3 to 8 pitches, plate height 0.95 of the pitch (table in our notes, computed)."""
    flat = on_rim(PITCH, diameters * PITCH, 0.95 * PITCH)
    eyes = on_rim(PITCH, diameters * PITCH, 0.95 * PITCH, PlateShape.FIGURE_EIGHT)
    assert flat.angle_deg == pytest.approx(straight, abs=0.005)
    assert eyes.angle_deg == pytest.approx(waisted, abs=0.005)
    assert flat.wrap / PITCH == pytest.approx(pitches, abs=0.005)


def test_a_pin_circle_is_not_a_rim() -> None:
    """Five pitches taken as pin circle: 23.07°, 21 % more (computed)."""
    assert on_pin_circle(PITCH, 95.25).angle_deg == pytest.approx(23.07, abs=0.005)
    assert on_pin_circle(PITCH, 95.25).angle / X.angle == pytest.approx(1.21, abs=0.005)


def test_the_usual_sheave() -> None:
    """95.25 mm for 19.05 pitch (pulley guide citing ISO 4347, read)."""
    assert float(mast_figures()["sheave_pitches"].value) * PITCH == pytest.approx(95.25)


def test_pressure() -> None:
    """107.60 N/mm² (worked example, computed)."""
    assert pin_pressure(LOADED, 7.94, BEARING) == pytest.approx(107.60, abs=0.005)


def test_six_articulating_plates_bear_half_again_as_much_as_four() -> None:
    """4x6 has 50 % more bearing area than 4x4 (leaf-chain system design page, read)."""
    assert pin_pressure(LOADED, 7.94, 4 * 3.3) / pin_pressure(LOADED, 7.94, 6 * 3.3) == pytest.approx(1.5)


def test_one_joint_over_a_full_cycle() -> None:
    """3.21635e-6 mm for loaded up, empty down past both tangents; 2 % after 118 457 cycles (computed)."""
    chart = wear_map(_moves((0, 1500, LOADED, 1), (1500, 0, EMPTY, 1)), PITCH, X.wrap)
    first = float(chart.weighted[(chart.d > 0).argmax()]) * PER_NEWTON
    assert first * PITCH / 100 == pytest.approx(3.21635e-6, rel=2e-6)
    assert 2 / first == pytest.approx(118_457, abs=1)
    assert 3 / first == pytest.approx(177_686, abs=1)


def test_friction_of_the_sheave() -> None:
    """Efficiency 0.95 multiplies that joint's wear by 1.0204 (worked example, computed)."""
    moves = _moves((0, 1500, LOADED, 1), (1500, 0, EMPTY, 1))
    plain, rough = (wear_map(moves, PITCH, X.wrap, efficiency=e) for e in (1.0, 0.95))
    first = (plain.d > 0).argmax()
    assert rough.weighted[first] / plain.weighted[first] == pytest.approx(1.0204, abs=5e-5)


def test_dilution_of_sixteen_pitches() -> None:
    """Strokes evenly up to 1500 mm: 16 pitches read 0.8919 of the peak, 2.943 % of 3.3 % (computed)."""
    chart, first = _shape(1500)
    span = span_at(chart, 1, 16)
    assert span is not None
    assert span.dilution * first == pytest.approx(0.8919, abs=1e-4)
    assert 3.3 * span.dilution * first == pytest.approx(2.943, abs=5e-4)


@pytest.mark.parametrize(
    ("highest", "dilutions"),
    [(750, (0.885, 0.827, 0.769, 0.711)), (1000, (0.916, 0.874, 0.833, 0.791, 0.749)),
     (1500, (0.946, 0.919, 0.892, 0.865, 0.838)), (3500, (0.978, 0.966, 0.955, 0.944, 0.933))],
)  # fmt: skip
def test_dilution_by_length(highest: float, dilutions: tuple[float, ...]) -> None:
    """8 to 24 pitches from the sheave down (table in our notes for a continuous chain, computed)."""
    chart, first = _shape(highest)
    spans = [span_at(chart, 1, n) for n in (8, 12, 16, 20, 24)[: len(dilutions)]]
    assert [s.dilution * first for s in spans if s] == pytest.approx(list(dilutions), abs=0.001)


@pytest.mark.parametrize(("doubt", "length"), [(0.4, 194), (0.2, 137), (0.1, 97)])
def test_the_best_length(doubt: float, length: float) -> None:
    """Least mean square error at 3 %, strokes to 1500 mm: 194, 137, 97 mm (computed), within a pitch."""
    span = best_span(_uniform(1500), 3, doubt)
    assert span is not None
    assert span.first_pin == 1
    assert span.length == pytest.approx(length, abs=PITCH)


@pytest.mark.parametrize(
    ("mean", "percent", "found"),
    [(2.943, 0.05, 0.129), (2.943, 0.15, 0.353), (2.709, 0.05, 0.0), (2.709, 0.15, 0.026)],
)
def test_the_chance_to_find_a_worn_strand(mean: float, percent: float, found: float) -> None:
    """16 pitches on a strand at 3.3 % (table in our notes, checked there by 200 000 draws; computed)."""
    span = MapSpan(16, 1, 0, 304.8, mean / 3.3)
    miss = span.miss_probability(3.3, 3, percent * 3.048)
    assert 1 - miss == pytest.approx(found, abs=0.002)


def test_take_up() -> None:
    """Strokes evenly to 1500 mm, worst joint 3.3 %: the anchors took up 26.33 mm (computed)."""
    chart, first = _shape(1500)
    assert 0.033 * chart.take_up * first == pytest.approx(26.33, abs=0.005)


def test_take_up_is_tonne_metres() -> None:
    """2300 kg up 3 m and 300 kg down, two strands: 2.5326e-4 mm a cycle, 1500 times the worst joint."""
    chart = wear_map(_moves((0, 1500, LOADED, 1), (1500, 0, EMPTY, 1)), PITCH, X.wrap)
    assert chart.weighted.sum() * PITCH * PER_NEWTON / 100 == pytest.approx(2.5326e-4, rel=2e-5)
    assert chart.take_up == pytest.approx(1500)


def test_pitches_of_a_strand() -> None:
    """1200 + 1750 + wrap = 3129.7 mm: 165 pitches, odd for equal ends, 13.5 mm to spare (computed)."""
    strand = strand_length(1200, 1750, X.wrap, PITCH, 1500, same_ends=True)
    assert strand.pitches == 165
    assert strand.nominal == pytest.approx(3129.7, abs=0.05)
    assert strand.spare == pytest.approx(13.5, abs=0.05)


def test_links_on_the_sheave_when_travelling() -> None:
    """Forks 150 mm up, 2:1 set, wrap 180: from -105 to 75 mm (worked example, computed)."""
    assert on_sheave(75, 180) == (-105, 75)


def test_forks_low_wear_the_links_at_the_sheave() -> None:
    """Most stretched where it lies on the pulley, forks about 150 mm up (Japanese repair shop page, read)."""
    chart = wear_map(_moves((0, 75, LOADED, 500), (75, 0, LOADED, 500), (0, 1500, LOADED, 100),
                            (1500, 0, EMPTY, 100)), PITCH, X.wrap)  # fmt: skip
    first, last = on_sheave(75, X.wrap)
    assert first < chart.d[chart.worst] < last
    assert 0 < chart.d[chart.worst] < 75


def test_the_case_is_through_at_the_usual_mark() -> None:
    """0.3 mm of case, nine tenths of the wear on the pin, 19.05 pitch: 1.75 % (worked example, computed)."""
    course = usual_course(PITCH, 0.9)
    assert course.case_gone == pytest.approx(1.75, abs=0.005)


def test_running_in_stays_below_a_tenth_of_a_percent() -> None:
    """A roller chain runs in below 0.1 % and then wears in a straight line (roller-chain guide, read)."""
    course = usual_course(PITCH, 0.9)
    assert course.elongation(0) == 0
    assert course.elongation(0.5) - 0.5 == pytest.approx(0.1, abs=1e-6)
    assert course.elongation(1.0) - course.elongation(0.5) == pytest.approx(0.5, abs=1e-6)


def test_dry_wears_sixty_times_faster() -> None:
    """A properly oiled chain lasts sixty times longer than a dry one (UK chain guidance, read)."""
    assert float(mast_figures()["dry_factor"].value) == 60


def test_angle_and_wrap_make_half_a_turn() -> None:
    """The joints on the sheave turn by 180° together (geometry, computed)."""
    assert X.wrap / PITCH * X.angle == pytest.approx(radians(180))
    assert Articulation(0.5, 10).angle_deg == pytest.approx(28.6479, abs=1e-4)
