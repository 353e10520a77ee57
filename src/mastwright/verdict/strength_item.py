"""Static strength of a chain set at the plate load: a finding when low, never a reason to keep it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from mastwright.chains.strength import Lifts, StrengthResult, static_strength
from mastwright.checks import Severity
from mastwright.mast import MastMasses, SetLoading, hung_mass
from mastwright.quantity import Amount, Evidence, Note, Source
from mastwright.verdict.chain_verdict import JudgedSet
from mastwright.verdict.item import JudgedItem
from mastwright.verdict.verdicts import Verdict
from mastwright.visits.visit import Truck

_CERTIFICATE = Source("minimum breaking load on the chain's certificate", Evidence.READ)


@dataclass(frozen=True)
class SetStrength:
    """The strength of one chain set and the item that it makes."""

    set_name: str
    hung: Fraction
    result: StrengthResult
    item: JudgedItem


def set_strength(judged: JudgedSet, truck: Truck) -> SetStrength | None:
    """Return the strength of a set at the plate load, or None where the mast's masses are not known.

    Parameters
    ----------
    judged
        The set; its worst span enters the residual band, as information.
    truck
        With mast arrangement, carriage mass and rated capacity (or the load given for the mast).
    """
    loading = _loading(judged.chain_set.name, truck)
    load = truck.masses.get("load", truck.facts.rated_capacity)
    if loading is None or load is None or "carriage" not in truck.masses:
        return None
    masses = MastMasses(load, truck.masses["carriage"], truck.masses.get("inner"), truck.masses.get("middle"))
    if any(getattr(masses, name) is None for name in loading.hangs):
        return None
    chain, certificate = judged.chain_set.chain, judged.chain_set.minimum_strength
    hung = hung_mass(loading, masses)
    readings = [s.span.reading.value / 100 for s in judged.spans]
    result = static_strength(
        len(judged.chain_set.strands),
        chain.min_tensile if certificate is None else certificate.canonical,
        chain.strength_source if certificate is None else _CERTIFICATE,
        hung,
        Lifts.OPERATOR if truck.lifts_people else Lifts.LOADS,
        max(readings, default=None),
    )
    return SetStrength(judged.chain_set.name, hung, result, _item(judged, result))


def _loading(name: str, truck: Truck) -> SetLoading | None:
    """Return the set's place in the arrangement; a mast with one chain set calls it what it likes."""
    if truck.arrangement is None:
        return None
    sets = truck.arrangement.sets
    if len(sets) == 1:
        return sets[0]
    return next((s for s in sets if s.name == name), None)


def _item(judged: JudgedSet, result: StrengthResult) -> JudgedItem:
    wanted = max(result.required, key=lambda r: r.value)
    low = bool(result.unmet)
    verdict = Verdict.WATCH if low else Verdict.FIT
    params = {"factor": Amount(result.factor, "ratio"), "wanted": Amount(wanted.value, "ratio")}
    evidence = str(result.min_tensile_source.evidence)
    return JudgedItem(
        key=judged.chain_set.name,
        kind="strength",
        name="",
        where="",
        system="chains",
        verdict=verdict,
        own_verdict=verdict,
        severity=Severity.MONITOR,
        reasons=(Note("strength-low" if low else "strength-enough", params),),
        notes=(Note("strength-information", {"evidence": evidence}),),
    )
