"""What holds for every reading, whatever its figure."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.checks import TruckFacts

from .weighing import GAS, limits, measured, passes

tenths = st.integers(0, 10_000).map(lambda n: Fraction(n, 10))


def mm(value: Fraction) -> str:
    """Write a length down."""
    return f"{float(value):.1f} mm"


@given(tenths, tenths)
def test_more_drift_is_never_better(one: Fraction, other: Fraction) -> None:
    """Of two drifts the larger passes only where the smaller does."""
    less, more = sorted((one, other))
    good = [passes(measured("MST-01", {"value": mm(v)})) for v in (less, more)]
    assert good in ([True, True], [True, False], [False, False])


@given(st.integers(300, 400), st.integers(300, 400))
def test_a_thinner_fork_is_never_better(one: int, other: int) -> None:
    """Of two thicknesses the smaller passes only where the larger does."""
    thin, thick = sorted((Fraction(one, 10), Fraction(other, 10)))
    fork: dict[str, object] = {"original": "40 mm", "original_from": "marking"}
    good = [passes(measured("FRK-09", {**fork, "value": mm(v)})) for v in (thin, thick)]
    assert good in ([True, True], [False, True], [False, False])


@given(tenths, tenths)
def test_a_limit_more_never_helps(at: Fraction, reading: Fraction) -> None:
    """What the standard condemns, no further limit lets pass, unless it is chosen to govern."""
    own = limits("MST-01", at_most=mm(at))
    alone = measured("MST-01", {"value": mm(reading)})
    beside = measured("MST-01", {"value": mm(reading)}, GAS, own)
    assert passes(alone) or not passes(beside)
    assert beside.limit.at == min(at, 100)


@given(tenths, tenths)
def test_sides_have_no_order(left: Fraction, right: Fraction) -> None:
    """Which fork is called left changes nothing."""
    blade: dict[str, object] = {"blade_length": "1200 mm"}
    one = measured("FRK-06", {"left": mm(left), "right": mm(right), **blade})
    other = measured("FRK-06", {"left": mm(right), "right": mm(left), **blade})
    assert one == other


@given(st.integers(1, 60), tenths)
def test_a_drift_goes_by_its_rate(minutes: int, drift: Fraction) -> None:
    """The same rate gives the same drift in ten minutes, however long it was watched."""
    timed = measured("MST-01", {"value": f"{float(drift * minutes):.1f} mm", "time": f"{minutes} min"})
    assert timed.reading.value == 10 * drift


@given(st.integers(1, 400), st.integers(1, 10**7))
def test_insulation_is_held_at_fifty_ohm_a_volt(volts: int, ohms: int) -> None:
    """And never under 1000 ohm, whatever the battery."""
    facts = TruckFacts("reach", "electric", battery_voltage=Fraction(volts))
    found = measured("BAT-13", {"value": f"{ohms} ohm"}, facts)
    assert passes(found) is (ohms >= max(50 * volts, 1000))
