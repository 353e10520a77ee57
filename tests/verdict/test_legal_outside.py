"""The legal frames against the texts they stand for."""

from __future__ import annotations

from datetime import date

import pytest

from mastwright.quantity import Evidence
from mastwright.verdict import legal_frame

COUNTRIES = ("US", "GB", "DE", "FR", "JP", "other")


@pytest.mark.parametrize(
    ("country", "people", "due"),
    [
        ("GB", False, date(2027, 2, 28)),
        ("GB", True, date(2026, 8, 28)),
        ("DE", False, date(2027, 2, 28)),
        ("DE", True, date(2027, 2, 28)),
        ("FR", False, date(2026, 8, 28)),
        ("JP", False, date(2027, 2, 28)),
        ("other", False, date(2027, 2, 28)),
    ],
)
def test_when_the_next_examination_is_due(country: str, people: bool, due: date) -> None:
    """LOLER 1998 reg. 9(3): 12 months, 6 for persons (as quoted); DGUV Vorschrift 68 § 37: 12 (read).

    France, order of 1 March 2004: 6 months (from memory); Japan, art. 151-21: yearly (as quoted).
    """
    assert legal_frame(country).examination_due(date(2026, 2, 28), lifts_people=people) == due


def test_the_us_rule_sets_no_interval() -> None:
    """29 CFR 1910.178(q)(7) (as quoted) asks for a daily examination and sets no statutory interval."""
    assert legal_frame("US").examination_due(date(2026, 2, 28), lifts_people=True) is None


@pytest.mark.parametrize(
    ("reference", "words"),
    [
        ("29 CFR 1910.178(p)(1), (q)(1)", "in need of repair, defective or in any way unsafe"),
        ("29 CFR 1910.178(q)(1), (q)(5)", "authorized personnel"),
        ("29 CFR 1910.178(q)(1), (q)(5)", "equivalent as to safety"),
        ("29 CFR 1910.178(q)(7)", "at least daily"),
        ("29 CFR 1910.178(q)(7)", "after each shift where used round the clock"),
        ("29 CFR 1910.178(a)(4), (q)(6)", "without the maker's written approval"),
    ],
)
def test_the_words_of_the_us_rule(reference: str, words: str) -> None:
    """29 CFR 1910.178 (a)(4), (p)(1), (q)(1), (q)(5)-(7) as reprinted: what is asked, and where it stands."""
    assert any(
        words in duty.english for duty in legal_frame("US").duties if duty.source.text.startswith(reference)
    )


@pytest.mark.parametrize(
    ("country", "reference"),
    [
        ("GB", "LOLER 1998 reg. 10"),
        ("GB", "LOLER 1998 reg. 9"),
        ("DE", "DGUV Vorschrift 68 § 9"),
        ("DE", "DGUV Vorschrift 68 §§ 37-39"),
        ("JP", "art. 151-21 to 151-23"),
    ],
)
def test_where_a_duty_stands(country: str, reference: str) -> None:
    """Each duty names the clause that it comes from."""
    assert any(reference in duty.source.text for duty in legal_frame(country).duties)


@pytest.mark.parametrize(
    ("out_of_service", "planned", "whens"),
    [
        (False, False, {"always"}),
        (True, False, {"always", "out-of-service"}),
        (False, True, {"always", "planned"}),
        (True, True, {"always", "out-of-service", "planned"}),
    ],
)
def test_a_duty_is_told_where_it_applies(out_of_service: bool, planned: bool, whens: set[str]) -> None:
    """What the law says of a truck out of service is not told of a sound one."""
    duties = legal_frame("GB").duties_for(out_of_service=out_of_service, planned=planned)
    assert {d.when for d in duties} == whens


def test_a_country_without_frame_has_the_general_one() -> None:
    """Where mastwright holds no frame, local law is named as coming first."""
    frame = legal_frame("AU")
    assert frame == legal_frame("other")
    assert "Local law" in frame.duties[0].english
    assert frame.source.evidence is Evidence.COMMON_PRACTICE


@pytest.mark.parametrize("country", COUNTRIES)
def test_every_duty_is_written_in_both_languages(country: str) -> None:
    """No customer is left without the words, and they are not the same words."""
    duties = legal_frame(country).duties
    assert duties
    assert all(d.english and d.spanish and d.english != d.spanish for d in duties)


@pytest.mark.parametrize("country", COUNTRIES)
def test_persons_are_never_examined_less_often(country: str) -> None:
    """Where persons are lifted the interval is no longer than elsewhere."""
    frame = legal_frame(country)
    assert frame.months_people <= frame.months
