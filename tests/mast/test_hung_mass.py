"""What hangs on each chain set."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.mast import MastMasses, arrangement, arrangements, hung_mass
from mastwright.mast.hung_mass import arrangements_from
from mastwright.quantity import BadInput, TableError

_FULL = MastMasses(load=Fraction(2000), carriage=Fraction(300), inner=Fraction(250), middle=Fraction(280))


def _row(hangs: str, source: str = "a page") -> str:
    return (
        f'[A]\ntitle_en = "t"\ntitle_es = "t"\nsource = "{source}"\nevidence = "read"\n'
        f'[[A.sets]]\nname = "main"\ntitle_en = "m"\ntitle_es = "m"\nhangs = {hangs}\n'
    )


@pytest.mark.parametrize(
    ("letter", "name", "mass"),
    [
        ("A", "carriage", 2300),
        ("B", "free-lift", 2300),
        ("C", "free-lift", 2300),
        ("C", "main", 2550),
        ("D", "carriage", 2300),
        ("D", "main", 4850),
        ("E", "free-lift", 2300),
        ("E", "upper-main", 2550),
        ("E", "lower-main", 5380),
    ],
)
def test_hung_mass(letter: str, name: str, mass: int) -> None:
    """Every set of every arrangement carries what its row says (worked by hand)."""
    assert hung_mass(arrangement(letter).chain_set(name), _FULL) == mass


def test_arrangements_are_a_to_e() -> None:
    """Five arrangements, each with a title in both languages and different set names."""
    found = arrangements()
    assert list(found) == list("ABCDE")
    for a in found.values():
        assert a.title_en != a.title_es
        assert len({s.name for s in a.sets}) == len(a.sets)
        assert all(s.title_en != s.title_es for s in a.sets)


def test_mass_that_does_not_hang_is_not_asked_for() -> None:
    """The carriage chains of a three-stage mast need no frame masses."""
    bare = MastMasses(load=Fraction(2000), carriage=Fraction(300))
    assert hung_mass(arrangement("d").chain_set("carriage"), bare) == 2300


def test_missing_and_negative_masses_are_named_together() -> None:
    """Every bad mass of a set is named at once, with its field."""
    bad = MastMasses(load=Fraction(2000), carriage=Fraction(-1))
    with pytest.raises(BadInput) as caught:
        hung_mass(arrangement("E").chain_set("lower-main"), bad, "truck T1")
    assert [p.field for p in caught.value.problems] == [
        "truck T1, carriage",
        "truck T1, inner",
        "truck T1, middle",
    ]


def test_unknown_letter_explains_the_letters() -> None:
    """An unknown letter is refused with what each letter stands for."""
    with pytest.raises(
        BadInput, match=r"truck T1, mast: 'F' given; .*D = three-stage mast without free-lift"
    ):
        arrangement("F", "truck T1, mast")


def test_set_name_is_forgiving() -> None:
    """A set is found whatever its capitals and spaces."""
    assert arrangement("E").chain_set(" Lower main ").name == "lower-main"


def test_unknown_set_names_the_sets() -> None:
    """A set that the mast does not have is refused with those it has."""
    with pytest.raises(BadInput, match=r"mast arrangement C .*: free-lift, main"):
        arrangement("C").chain_set("upper-main")


def test_table_without_source_does_not_load() -> None:
    """An arrangement without a source does not load."""
    assert arrangements_from(_row("{ load = 1 }"), "t")["A"].sets[0].hangs == {"load": 1}
    with pytest.raises(TableError, match="t A: no source"):
        arrangements_from(_row("{ load = 1 }", " "), "t")


@pytest.mark.parametrize("hangs", ["{ roof = 1 }", '"load"'])
def test_unknown_mass_does_not_load(hangs: str) -> None:
    """A set that names a mass there is not does not load."""
    with pytest.raises(TableError, match="use the masses load, carriage, inner, middle"):
        arrangements_from(_row(hangs), "t")


def test_arrangement_without_sets_does_not_load() -> None:
    """An arrangement without chain sets does not load."""
    text = '[A]\ntitle_en = "t"\ntitle_es = "t"\nsource = "a page"\nevidence = "read"\nsets = []\n'
    with pytest.raises(TableError, match="no chain sets"):
        arrangements_from(text, "t")
