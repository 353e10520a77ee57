"""Static strength of a set at the plate load: information and a finding, never a reason to keep a chain."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.quantity import Amount, Evidence
from mastwright.verdict import JudgedVisit, SetStrength, Verdict, judge_visit
from visits.written import chain, read

MAST = '[truck.mast]\narrangement = "{letter}"\ncarriage_mass = "500 kg"\n'
CAPACITY = 'rated_capacity = "2500 kg"\n'


def judged(*more: str, name: str = "main", designation: str = "BL634", truck: str = "") -> JudgedVisit:
    """Return a visit with one chain set judged."""
    return judge_visit(read(chain(*more, name=name, designation=designation), truck=truck))


def strength(truck: str, *more: str, name: str = "main", designation: str = "BL634") -> SetStrength:
    """Return the strength of the one chain set."""
    (found,) = judged(*more, name=name, designation=designation, truck=truck).strengths
    return found


def test_the_factor_by_hand() -> None:
    """K = n MBF/(g m): 2 x 75 600 N on 3000 kg is 2 x 75 600/(9.80665 x 3000) = 5.139."""
    found = strength(CAPACITY + MAST.format(letter="A"))
    assert found.hung == 3000
    assert round(float(found.result.factor), 3) == 5.139


def test_a_certificate_goes_before_the_table() -> None:
    """The breaking load on the chain's certificate is used, and it counts as read."""
    found = strength(CAPACITY + MAST.format(letter="A"), 'minimum_strength = "80 kN"')
    assert found.result.min_tensile_source.evidence is Evidence.READ
    assert round(float(found.result.factor), 3) == round(2 * 80_000 / (9.80665 * 3000), 3)


@pytest.mark.parametrize(
    ("designation", "verdict", "reason"),
    [("BL834", "fit", "strength-enough"), ("BL434", "watch", "strength-low")],
)
def test_a_weak_set_is_watched(designation: str, verdict: str, reason: str) -> None:
    """ISO 3691-1 and ANSI/ITSDF B56.1 (from memory): 5; below it the set is watched, not stopped."""
    item = strength(CAPACITY + MAST.format(letter="A"), designation=designation).item
    assert (item.verdict, item.reasons[0].code) == (Verdict(verdict), reason)
    assert not item.blocks


def test_where_persons_ride_more_is_wanted() -> None:
    """ISO 3691-3 (from memory): at least 10 where the operator is lifted, more than for loads."""
    loads, people = (
        strength(f"{CAPACITY}lifts_people = {word}\n" + MAST.format(letter="A")).result
        for word in ("false", "true")
    )
    assert max(r.value for r in people.required) > max(r.value for r in loads.required)


def test_the_strength_says_that_it_is_information() -> None:
    """The note beside it says so, and how the breaking load is known."""
    item = strength(CAPACITY + MAST.format(letter="A")).item
    assert [n.code for n in item.notes] == ["strength-information"]


@pytest.mark.parametrize(
    ("truck", "name"),
    [
        ("", "main"),
        (MAST.format(letter="A"), "main"),
        (CAPACITY + '[truck.mast]\narrangement = "A"\n', "main"),
        (CAPACITY + '[truck.mast]\ncarriage_mass = "500 kg"\n', "main"),
        (CAPACITY + MAST.format(letter="C"), "main"),
        (CAPACITY + MAST.format(letter="C"), "middle"),
    ],
)
def test_what_is_not_known_is_not_reckoned(truck: str, name: str) -> None:
    """Without arrangement, load, carriage or frame mass, or for a set of no such mast: no figure."""
    assert judged(name=name, truck=truck).strengths == ()


def test_a_mast_of_one_set_takes_it_by_any_name() -> None:
    """A mast with one chain set has that one, whatever the shop calls it."""
    found = strength(CAPACITY + MAST.format(letter="A"), name="the chains")
    assert found.set_name == "the chains"
    assert found.hung == 3000


def test_the_frame_hangs_on_the_main_chains() -> None:
    """On a three-stage mast the inner frame hangs on the main chains too: 2500 + 500 + 400 kg."""
    found = strength(CAPACITY + MAST.format(letter="C") + 'inner_mass = "400 kg"\n')
    assert found.hung == 3400


def test_a_load_given_for_the_mast_goes_before_the_plate() -> None:
    """The mast's own load is what hangs, where it was given."""
    found = strength(CAPACITY + MAST.format(letter="A") + 'load_mass = "2000 kg"\n')
    assert found.hung == 2500


@pytest.mark.parametrize(("length", "worn"), [("306 mm", False), ("315 mm", True)])
def test_a_strong_set_is_not_kept_for_its_strength(length: str, *, worn: bool) -> None:
    """A chain past its limit is withdrawn however strong it is."""
    spans = f'[[chain.span]]\nstrand = "one"\npitches = 16\nlength = "{length}"\ninstrument = "calliper"\n'
    block = chain('strands = ["one"]', spans=spans, designation="BL634")
    visit = judge_visit(read(block, truck='rated_capacity = "100 kg"\n' + MAST.format(letter="A")))
    assert visit.strengths[0].item.verdict is Verdict.FIT
    assert (visit.verdict is Verdict.WITHDRAW) is worn


def test_a_set_that_nobody_measured_has_its_strength_when_new() -> None:
    """Without a reading the factor is still reckoned."""
    visit = judge_visit(read(chain(spans=""), truck=CAPACITY + MAST.format(letter="A")))
    assert visit.strengths[0].result.factor > Fraction(5)


def test_the_highest_of_several_wanted_factors_is_told() -> None:
    """Where more than one factor is asked for, the reason names the highest."""
    found = strength(CAPACITY + MAST.format(letter="A"))
    assert len({r.value for r in found.result.required}) > 1
    wanted = found.item.reasons[0].params["wanted"]
    assert isinstance(wanted, Amount)
    assert wanted.value == max(r.value for r in found.result.required)


def test_the_worst_span_tells_what_is_left() -> None:
    """What wear leaves is reckoned from the longest reading of the set: 2 %, not 1 %."""
    spans = "".join(
        f'[[chain.span]]\nstrand = "{strand}"\ngauge = "{read} %"\n'
        for strand, read in (("left", 1), ("right", 2))
    )
    visit = judge_visit(read(chain(spans=spans), truck=CAPACITY + MAST.format(letter="A")))
    residual = visit.strengths[0].result.residual
    assert residual is not None
    assert residual.elongation == Fraction(2, 100)
