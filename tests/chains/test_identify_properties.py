"""Identification: what holds whatever was observed."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from mastwright.chains.identify import Observed, identify
from mastwright.chains.standard import LeafChain, leaf_chains
from mastwright.quantity import Reading, common_instruments

CALLIPER = common_instruments().find("calliper", "length")


def _reading(value: Fraction) -> Reading:
    return Reading(value, value, value, "length", "mm", CALLIPER, 0.1)


lengths = st.fractions(min_value=Fraction(1, 2), max_value=Fraction(2000), max_denominator=100).map(_reading)
observations = st.builds(
    Observed,
    length=lengths,
    pitches=st.integers(1, 40),
    plate_height=st.none() | lengths,
    plate_thickness=st.none() | lengths,
    pin_diameter=st.none() | lengths,
    lacing=st.none() | st.tuples(st.integers(1, 9), st.integers(1, 9)),
    marking=st.sampled_from(["", "BL634", "834", "LL16", "LOT 7", "AL422 / LL0822"]),
    worn=st.sampled_from([None, True, False]),
)


@given(observations)
def test_probabilities_are_shares(observed: Observed) -> None:
    """Every probability lies in 0 to 1, likeliest first, and together they are no more than 1."""
    shares = [c.probability for c in identify(observed, leaf_chains()).candidates]
    assert all(0 < share <= 1 for share in shares)
    assert shares == sorted(shares, reverse=True)
    assert sum(shares) <= 1 + 1e-9


@given(observations)
def test_what_is_assumed_is_a_candidate_and_no_twin_is_weaker(observed: Observed) -> None:
    """The assumed chain is among the candidates, and none of its near-twins there is weaker."""
    result = identify(observed, leaf_chains())
    if result.assumed is None:
        return
    assert result.assumed in [c.chain for c in result.candidates]
    for pair in result.twins:
        if result.assumed in pair:
            assert result.assumed.min_tensile == min(row.min_tensile for row in pair)


@given(st.sampled_from(leaf_chains()), st.floats(0, 0.039), st.floats(0.935, 1), st.integers(1, 12))
def test_a_chain_measured_without_error_is_a_candidate(
    chain: LeafChain, elongation: float, height: float, half: int
) -> None:
    """True readings inside the wear that the model allows never rule the chain out."""
    observed = Observed(
        length=_reading(2 * half * chain.pitch * (1 + Fraction(elongation))),
        pitches=2 * half,
        plate_height=_reading(chain.plate_height_max * Fraction(height)),
        plate_thickness=_reading(chain.plate_thickness_max),
        pin_diameter=_reading(chain.pin_diameter_max),
        lacing=chain.lacing,
    )
    assert chain in [c.chain for c in identify(observed, leaf_chains()).candidates]
