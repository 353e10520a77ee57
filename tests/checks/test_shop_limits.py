"""A shop's files of limits: what is taken, and what each mistake is answered with."""

from fractions import Fraction

import pytest

from mastwright.checks import NO_LIMITS, ShopLimits, read_shop_limits
from mastwright.quantity import BadInput, Evidence, LimitKind, Problem, Worse

GOOD = {
    "check": '"MST-08"',
    "at_most": '"1.0 mm"',
    "kind": '"maker"',
    "source": '"service manual of an invented model"',
    "evidence": '"read"',
}


def toml(**changed: str | None) -> str:
    """Return one limit of a file; None leaves a field out."""
    row = {**GOOD, **changed}
    return "\n".join(["[[limit]]", *(f"{k} = {v}" for k, v in row.items() if v is not None)])


def read(*texts: str) -> ShopLimits:
    """Read limits from one file."""
    return read_shop_limits({"any.toml": "\n".join(texts)})


def problems(*texts: str) -> list[Problem]:
    """Return what is wrong with a file."""
    with pytest.raises(BadInput) as bad:
        read(*texts)
    return list(bad.value.problems)


def test_a_limit_is_read_with_its_source() -> None:
    """Figure, direction, who sets it and how that is known."""
    (found,) = read(toml()).for_check("MST-08", "Ormel 16")
    assert (found.check_id, found.model, found.governs) == ("MST-08", "", False)
    assert (found.limit.at, found.limit.dimension, found.limit.worse) == (Fraction(1), "length", Worse.HIGHER)
    assert found.limit.kind is LimitKind.MAKER
    assert found.limit.source.text == "service manual of an invented model"
    assert found.limit.source.evidence is Evidence.READ


def test_the_mark_itself_is_allowed() -> None:
    """At most 1 mm takes 1 mm."""
    (found,) = read(toml()).for_check("MST-08", "")
    assert not found.limit.reached_by(Fraction(1))
    assert found.limit.reached_by(Fraction(1001, 1000))


def test_an_inch_figure_is_exact() -> None:
    """The unit of the manual is taken as it is."""
    (found,) = read(toml(at_most='"1/16 in"')).for_check("MST-08", "")
    assert found.limit.at == Fraction("1.5875")


def test_kind_and_evidence_have_a_usual_word() -> None:
    """A figure copied from the maker's manual needs neither."""
    (found,) = read(toml(kind=None, evidence=None)).for_check("MST-08", "")
    assert (found.limit.kind, found.limit.source.evidence) == (LimitKind.MAKER, Evidence.READ)


def test_a_range_is_two_limits() -> None:
    """One on each side, of one source."""
    pair = read(toml(at_least='"0.1 mm"')).for_check("MST-08", "")
    assert {(s.limit.worse, s.limit.at) for s in pair} == {
        (Worse.HIGHER, Fraction(1)),
        (Worse.LOWER, Fraction(1, 10)),
    }


def test_a_limit_may_govern() -> None:
    """A maker's figure can be chosen over a tighter one."""
    (found,) = read(toml(governs="true")).for_check("MST-08", "")
    assert found.governs


@pytest.mark.parametrize(("model", "count"), [("Ormel 16", 2), ("Tolvane 30", 1), ("", 1)])
def test_a_limit_is_for_its_model(model: str, count: int) -> None:
    """One without model is for all trucks, one with a model for no other."""
    both = read(toml(), toml(model='"Ormel 16"'))
    assert len(both) == 2
    assert len(both.for_check("MST-08", model)) == count


def test_a_limit_is_for_its_check() -> None:
    """Another check is not held against it."""
    assert read(toml()).for_check("MST-09", "") == ()


def test_files_are_read_together() -> None:
    """Each file of the folder adds its limits; one that is empty adds none."""
    assert len(read_shop_limits({"a.toml": toml(), "b.toml": toml(), "c.toml": ""})) == 2


def test_no_limits_is_an_empty_set() -> None:
    """A shop without a file holds nothing."""
    assert len(NO_LIMITS) == 0
    assert NO_LIMITS.for_check("MST-08", "Ormel 16") == ()


@pytest.mark.parametrize(
    ("changed", "field", "expected"),
    [
        ({"check": '"MST-99"'}, "check", "the id of a check"),
        ({"check": None}, "check", "the id of a check"),
        ({"check": '"FRK-01"'}, "check", "takes no limit"),
        ({"check": '"HYD-06"'}, "check", "takes no limit"),
        ({"check": '"FRK-12"'}, "check", "takes no limit"),
        ({"kind": '"law"'}, "kind", "maker or shop"),
        ({"kind": '["maker"]'}, "kind", "maker or shop"),
        ({"evidence": '"certain"'}, "evidence", "one of read"),
        ({"source": None}, "source", "a limit without a source is not taken"),
        ({"source": '"  "'}, "source", "a limit without a source is not taken"),
        ({"at_most": None}, "at_most", "at_most or at_least is needed"),
        ({"at_most": '"1 kg"'}, "at_most", "mm"),
        ({"at_most": "[1]"}, "at_most", "mm"),
        ({"at_least": '"thin"'}, "at_least", "mm"),
        ({"at_least": '"2 mm"'}, "at_least", "no more than at_most"),
        ({"governs": '"yes"'}, "governs", "true or false"),
        ({"governs": "true", "kind": '"shop"'}, "governs", "only a maker's limit can govern"),
        ({"at_must": '"1 mm"'}, "at_must", "a known field"),
    ],
)
def test_a_mistake_is_named_with_its_place(changed: dict[str, str | None], field: str, expected: str) -> None:
    """The message says file, limit, field and what would be right."""
    (problem,) = problems(toml(**changed))
    assert problem.field == f"any.toml limit[1].{field}"
    assert expected in problem.expected


def test_every_problem_is_named_at_once() -> None:
    """Of all limits in all files, not only the first."""
    with pytest.raises(BadInput) as bad:
        read_shop_limits(
            {
                "a.toml": "\n".join([toml(), toml(check='"MST-99"', kind='"law"', source=None)]),
                "b.toml": "[[limit]\n",
                "c.toml": toml(at_most='"1 kg"', at_least='"1 s"'),
            }
        )
    assert [p.field for p in bad.value.problems] == [
        "a.toml limit[2].check",
        "a.toml limit[2].source",
        "a.toml limit[2].kind",
        "b.toml",
        "c.toml limit[1].at_most",
        "c.toml limit[1].at_least",
    ]


def test_a_file_that_is_no_toml_is_named() -> None:
    """The message says where in the file it breaks."""
    (problem,) = problems("check = MST-08")
    assert problem.field == "any.toml"
    assert "line 1" in problem.expected


@pytest.mark.parametrize("text", ['limit = "1 mm"', "limit = [1, 2]", "[limit]\ncheck = 'MST-08'"])
def test_limits_are_tables(text: str) -> None:
    """A limit written any other way is not quietly passed over."""
    (problem,) = problems(text)
    assert (problem.field, problem.expected) == ("any.toml", "tables, each begun with [[limit]]")


def test_a_number_without_end_is_refused() -> None:
    """A figure of thousands of digits is a mistake, not a crash."""
    (problem,) = problems(f"a = {'9' * 5000}")
    assert problem.field == "any.toml"
    assert problem.expected.startswith("valid TOML")


def test_a_file_nested_without_end_is_refused() -> None:
    """Brackets in brackets in brackets are no limit of a truck."""
    (problem,) = problems(f"a = {'[' * 20_000}")
    assert (problem.field, problem.expected) == ("any.toml", "valid TOML, not nested so deeply")


def test_a_misspelt_table_is_not_passed_over() -> None:
    """Limits under another heading would silently not be held against."""
    (problem,) = problems(toml().replace("[[limit]]", "[[limits]]"))
    assert problem.field == "any.toml limits"
