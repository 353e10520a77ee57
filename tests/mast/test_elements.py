"""The chain path of every mast: motion, pulls and cylinder forces; another mast is data."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mastwright.mast import MastMasses, arrangement, arrangements, hung_mass
from mastwright.mast.elements import (
    ChainPath,
    MastElements,
    Ram,
    elements_from,
    mast_elements,
    solve_elements,
)
from mastwright.mast.state import (
    Place,
    Side,
    body_masses,
    hung_on,
    lift_for_stroke,
    lifted_by,
    place_of,
    set_stroke,
)
from mastwright.quantity import BadInput, TableError

SETS = [(letter, s.name) for letter, a in arrangements().items() for s in a.sets]
_MASS = st.fractions(min_value=0, max_value=10_000, max_denominator=10)
_HEIGHT = st.fractions(min_value=0, max_value=8000, max_denominator=10)


@pytest.mark.parametrize(("letter", "name"), SETS)
@given(load=_MASS, carriage=_MASS, inner=_MASS, middle=_MASS)
def test_what_hangs_follows_from_the_path(
    letter: str, name: str, load: Fraction, carriage: Fraction, inner: Fraction, middle: Fraction
) -> None:
    """The table of hung masses and the solved chain path agree, for every set of every mast."""
    table = hung_mass(arrangement(letter).chain_set(name), MastMasses(load, carriage, inner, middle))
    solved = hung_on(mast_elements(letter), name, body_masses(load, carriage, inner, middle, Fraction(0)))
    assert solved == table


def _heights(letter: str, height: Fraction, free: Fraction) -> dict[str, Fraction]:
    """Return where each body stands, written down for each mast by hand: outer frame fixed (computed)."""
    low, high = min(height, free), max(Fraction(0), height - free)
    return {
        "A": {"inner": height / 2, "carriage": height},
        "B": {"inner": high, "crosshead": high + low / 2, "carriage": height},
        "C": {"middle": high / 2, "inner": high, "crosshead": high + low / 2, "carriage": height},
        "D": {"middle": height / 3, "inner": 2 * height / 3, "carriage": height},
        "E": {"first": high / 3, "middle": 2 * high / 3, "inner": high, "crosshead": high + low / 2,
              "carriage": height},
    }[letter]  # fmt: skip


@pytest.mark.parametrize(("letter", "name"), SETS)
@given(height=_HEIGHT, free=_HEIGHT)
def test_strokes(letter: str, name: str, height: Fraction, free: Fraction) -> None:
    """Stroke is sheave less anchor, and the carried end has risen twice the sheave less the anchor."""
    elements = mast_elements(letter)
    at = {"fixed": Fraction(0), **_heights(letter, height, free)}
    path = next(p for p in elements.paths if p.name == name)
    assert set_stroke(elements, name, height, free) == at[path.sheave] - at[path.anchor]
    assert at[path.carried] == 2 * at[path.sheave] - at[path.anchor]


@pytest.mark.parametrize("letter", "ABCDE")
@given(masses=st.lists(_MASS, min_size=5, max_size=5), height=_HEIGHT, more=_HEIGHT, free=_HEIGHT)
def test_virtual_work(
    letter: str, masses: list[Fraction], height: Fraction, more: Fraction, free: Fraction
) -> None:
    """What the cylinders push, times their way, is the weight of every body times its rise."""
    elements = mast_elements(letter)
    bodies = body_masses(*masses)
    free = free if elements.has_free_lift else Fraction(0)
    before, after = (_heights(letter, h, free) for h in (height, height + more))
    work = sum(((bodies[b] or 0) * (after[b] - before[b]) for b in after), Fraction(0))
    pushed = Fraction(0)
    for ram in elements.rams:
        stroke = sum(
            sign * {"fixed": Fraction(0), **at}[body]
            for sign, body, at in ((1, ram.pushes, after), (-1, ram.stands, after),
                                   (-1, ram.pushes, before), (1, ram.stands, before))
        )  # fmt: skip
        pushed += (lifted_by(elements, ram.name, bodies) or 0) * stroke
    assert pushed == work


@pytest.mark.parametrize("letter", "ABCDE")
@given(masses=st.lists(_MASS, min_size=5, max_size=5))
def test_every_body_is_held(letter: str, masses: list[Fraction]) -> None:
    """Chains pull their ends up and their sheave down twice, cylinders push both ways: each body rests."""
    elements = mast_elements(letter)
    weights = body_masses(*masses)
    rest: dict[str, Fraction] = {}
    for path in elements.paths:
        pull = hung_on(elements, path.name, weights)
        for body, times in ((path.carried, 1), (path.anchor, 1), (path.sheave, -2)):
            rest[body] = rest.get(body, Fraction(0)) + times * pull
    for ram in elements.rams:
        force = lifted_by(elements, ram.name, weights) or Fraction(0)
        for body, times in ((ram.pushes, 1), (ram.stands, -1)):
            rest[body] = rest.get(body, Fraction(0)) + times * force
    assert {b: w for b, w in rest.items() if b != "fixed"} == {b: weights[b] for b in rest if b != "fixed"}


def _five_stage() -> MastElements:
    return solve_elements(
        [
            ChainPath("top", "second", "third", "carriage"),
            ChainPath("upper", "first", "second", "third"),
            ChainPath("lower", "fixed", "first", "second"),
        ],
        [Ram("main", "fixed", "first")],
        "example",
    )


def test_another_mast_is_data() -> None:
    """Three frames chained one on the other: the carriage rises four times the cylinder (computed)."""
    mast = _five_stage()
    assert mast.rises["main"]["carriage"] == 4
    assert {name: counts["carriage"] for name, counts in mast.hangs.items()} == {
        "top": 1, "upper": 2, "lower": 3,
    }  # fmt: skip
    assert [mast.stroke_rates(p.name)[1] for p in mast.paths] == [Fraction(1, 4)] * 3


MAIN = Ram("main", "fixed", "inner")
LIFT = ChainPath("carriage", "fixed", "inner", "carriage")


@pytest.mark.parametrize(
    ("paths", "rams", "said"),
    [
        ([], [MAIN], "a mast has a carriage"),
        ([LIFT], [], "a main cylinder"),
        ([LIFT], [MAIN, Ram("third", "fixed", "inner")], "at most a free-lift cylinder"),
        ([LIFT, ChainPath("x", "fixed", "middle", "carriage")], [MAIN, Ram("free-lift", "fixed", "middle")],
         "4 chain sets and cylinders for 3 moving bodies"),
        ([LIFT, ChainPath("x", "middle", "fixed", "first")], [MAIN, Ram("free-lift", "inner", "fixed")],
         "do not hold each other"),
    ],
)  # fmt: skip
def test_parts_that_are_no_mast(paths: list[ChainPath], rams: list[Ram], said: str) -> None:
    """A table whose parts do not hold each other does not load."""
    with pytest.raises(TableError, match=said):
        solve_elements(paths, rams, "example")


def test_a_table_of_masts() -> None:
    """A mast is read from a table by its letter."""
    text = """
[Z]
sets = [{ name = "carriage", path = { anchor = "fixed", sheave = "inner", carried = "carriage" } }]
rams = [{ name = "main", stands = "fixed", pushes = "inner" }]
"""
    assert elements_from(text, "example")["Z"].rises["main"] == {"carriage": 2, "inner": 1}


def test_an_unknown_mast() -> None:
    """A letter that is no mast is refused by its field."""
    with pytest.raises(BadInput, match=r"^mast: 'Q' given"):
        mast_elements("Q", "mast")


def test_a_missing_mass() -> None:
    """A frame that hangs on a chain needs its mass; a cylinder force without one is not known."""
    masses = body_masses(Fraction(1000), Fraction(300), None, None, None)
    with pytest.raises(BadInput, match=r"inner mass: .*hangs on the main chains"):
        hung_on(mast_elements("C"), "main", masses)
    assert lifted_by(mast_elements("C"), "main", masses) is None
    assert lifted_by(mast_elements("A"), "free-lift", masses) is None


@pytest.mark.parametrize(
    ("d", "stroke", "place"),
    [(100, 0, Place(Side.CARRIED, 100)), (100, 200, Place(Side.SHEAVE, 0)), (-10, 0, Place(Side.SHEAVE, 0)),
     (100, 500, Place(Side.ANCHOR, 220)), (-200, 0, Place(Side.ANCHOR, 20))],
)  # fmt: skip
def test_where_a_link_stands(d: float, stroke: float, place: Place) -> None:
    """A link goes up the carried side, over the sheave and down the anchor side."""
    assert place_of(d, stroke, 180) == place


@pytest.mark.parametrize(
    ("letter", "name", "stroke", "lift"),
    [("A", "carriage", 500, 1000), ("C", "free-lift", 500, 1000), ("C", "free-lift", 800, None),
     ("C", "main", 500, 2500), ("C", "main", 0, 0), ("D", "main", 500, 1500)],
)  # fmt: skip
def test_the_lift_for_a_stroke(letter: str, name: str, stroke: float, lift: float | None) -> None:
    """The least fork height with that stroke, 1500 mm of free lift; none for a chain that ends before."""
    assert lift_for_stroke(mast_elements(letter), name, stroke, 1500) == lift
