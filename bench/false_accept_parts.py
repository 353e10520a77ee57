"""Forks and plate edges truly at or past their limit, where the original is measured too."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from functools import cache
from math import hypot

from draws import Spread, normal_draws, written, written_pairs
from false_accept_chains import Shares, Subject

from mastwright.chains import LeafChain, edge_wear_limit
from mastwright.checks import NO_LIMITS, TruckFacts, find_check
from mastwright.quantity import Instrument, Quantity, Reading, common_instruments, unit
from mastwright.verdict import Verdict, judge_check, judge_set, shop_policy
from mastwright.visits import ChainSet, CheckEntry, EdgeReading

_ON = date(2026, 11, 3)  # demo data; no verdict here depends on the day
_FACTS = TruckFacts("counterbalance", "electric")
_STRAND = "left"


def _calliper() -> Instrument:
    return common_instruments().find("calliper", "length")


def _length(index: int, step: Fraction) -> Quantity:
    return Quantity(index * step, unit("mm"), step)


def _fork_verdict(thickness: Quantity, original: Quantity, origin: str) -> Verdict:
    entry = CheckEntry(
        check=find_check("FRK-09"),
        where="left fork",
        answers={"value": thickness, "original": original, "original_from": origin},
        written="",
        instrument=_calliper(),
        note="",
        by=None,
        photos=(),
    )
    return judge_check(entry, _FACTS, "", NO_LIMITS, shop_policy(), _ON).item.verdict


def _fork_limit(original: float) -> float:
    share = find_check("FRK-09").limit
    if share is None:
        raise ValueError("the fork thickness check has lost its limit")
    return float(share) * original


def fork_from_shank(draws: int, original: int) -> Subject:
    """Return a fork heel and its unworn shank, both read by calliper."""
    calliper = _calliper()
    step, single = float(calliper.step), calliper.standard_uncertainty
    limit = _fork_limit(original)
    stated = hypot(single, single * limit / original)

    @cache
    def verdict(thickness: int, shank: int) -> Verdict:
        return _fork_verdict(_length(thickness, calliper.step), _length(shank, calliper.step), "shank")

    def shares(over: float, spread: Spread) -> Shares:
        true = (limit - over * stated, float(original))
        pairs = written_pairs(draws, f"shank {original}", true, spread.scatter(single, step), step)
        return Shares.of((verdict(*pair), count) for pair, count in pairs.items())

    return Subject("fork heel, original from the shank", f"{original} mm", f"{stated:.3g} mm", shares)


def fork_from_marking(draws: int, original: int) -> Subject:
    """Return a fork heel read by calliper, its original thickness known from the marking."""
    calliper = _calliper()
    step, stated = float(calliper.step), calliper.standard_uncertainty
    new = Quantity(Fraction(original), unit("mm"), Fraction(1))
    sample = normal_draws(draws, f"marking {original}")

    @cache
    def verdict(thickness: int) -> Verdict:
        return _fork_verdict(_length(thickness, calliper.step), new, "marking")

    def shares(over: float, spread: Spread) -> Shares:
        true = _fork_limit(original) - over * stated
        counts = written(sample, true, spread.scatter(stated, step), step)
        return Shares.of((verdict(index), count) for index, count in counts.items())

    return Subject("fork heel, original from the marking", f"{original} mm", f"{stated:g} mm", shares)


def edge_wear(draws: int, chain: LeafChain) -> Subject:
    """Return a worn plate edge and an unworn plate of the same chain, both read by calliper."""
    calliper = _calliper()
    step, single = float(calliper.step), calliper.standard_uncertainty
    height = float(chain.plate_height_max)
    limit = float(edge_wear_limit(None, chain.plate_height_max).limit.at)
    stated = hypot(single, single * limit / height)

    @cache
    def verdict(worn: int, unworn: int) -> Verdict:
        reading = Reading.of(_length(worn, calliper.step), calliper)
        edge = EdgeReading(_STRAND, "", reading, _length(unworn, calliper.step))
        judged = judge_set(_chain_set(chain, edge), shop_policy(), _ON)
        return next(item.own_verdict for item in judged.items if item.kind == "edge-wear")

    def shares(over: float, spread: Spread) -> Shares:
        true = (limit - over * stated, height)
        pairs = written_pairs(draws, f"edge {chain.name}", true, spread.scatter(single, step), step)
        return Shares.of((verdict(*pair), count) for pair, count in pairs.items())

    return Subject("plate edge, unworn plate measured", chain.short_name, f"{stated:.3g} mm", shares)


def _chain_set(chain: LeafChain, edge: EdgeReading) -> ChainSet:
    return ChainSet(
        name="main",
        chain=chain,
        strands=(_STRAND,),
        pitches_total=None,
        ends="",
        minimum_strength=None,
        fitted_on=None,
        first={},
        spans=(),
        edges=(edge,),
        findings=(),
    )
