"""The figures that judge a truck, written down a second time from the sources that the table names.

A change in the table is a change in what is let back to work: it has to be made here too.
"""

from fractions import Fraction

import pytest

from mastwright.checks import Severity, catalogue

OUT_OF_SERVICE = {
    "FRK": "01 02 03 04 05 06 08 09 10 13 16 17 18 19",
    "CAP": "01 02",
    "MST": "05 10 12 20",
    "HYD": "02",
    "BRK": "01 02 07 10 11 12 14",
    "STR": "02 04 05 06 07",
    "TYR": "04 06 07 11",
    "WHL": "01",
    "BAT": "16 17 20",
    "ELE": "01 03 04 05 06",
    "ENG": "02 06",
    "LPG": "01 02 03 04",
    "SAF": "01 02 03 04 06 07 08",
    "INT": "04 05 06 07",
}
MONITOR = {
    "FRK": "11 12 20",
    "CAP": "03 04 05",
    "HYD": "03 06 08",
    "BAT": "01 02 04 08 11",
    "LPG": "05",
    "INT": "01 02 03",
}
# Less than out of service, but for one thing that stops the truck whatever else is read.
STOPPED_BY_ONE_THING = {
    "INT": "04 07",
    "HYD": "01 09",
    "WHL": "01",
    "ENG": "04 05",
    "TYR": "09 10",
    "BRK": "08 09 16",
    "STR": "01",
    "BAT": "17 18 19",
    "CHG": "01",
    "ELE": "02 09",
    "FRK": "19",
    "MST": "01 09 13 14 16 19",
}

# Limit, and whether a reading of just the limit passes.
FIGURES = [
    # ISO 5057:1993 and ANSI/ITSDF B56.1-2012 cl. 6.2.8 as quoted by fork makers; that a fork reduced
    # to the mark goes is from memory, and the safer of two readings.
    ("FRK-02", "0.005", True),
    ("FRK-03", "0.005", True),
    ("FRK-04", "3", True),
    ("FRK-06", "0.03", True),
    ("FRK-09", "0.9", False),
    ("FRK-10", "0.9", False),
    ("FRK-11", "0.9", False),
    ("FRK-20", "12", True),
    # A truck maker's planned-maintenance manual.
    ("FRK-05", "25", True),
    # Bending of a rectangle: 0.9 squared.
    ("FRK-12", "0.81", True),
    # ANSI/ITSDF B56.1 as quoted, or from memory.
    ("FRK-16", "0.5", True),
    ("FRK-18", "1.5", True),
    ("FRK-19", "2.5", True),
    ("BAT-17", "13", True),
    # A truck maker's service manual; EN 1726-1 and ISO 3691-1 from memory.
    ("MST-01", "100", True),
    ("MST-03", "5", True),
    # ILO Safety and health in dock work 19.3.2.
    ("MST-05", "0.6", True),
    # US Army TM 10-3930-659-10, TM 5-3805-290-23-2; New Zealand in-service inspection rules 9-1.
    ("HYD-01", "2", True),
    ("ENG-02", "0", True),
    ("STR-05", "1", True),
    # ISO 6292:2020 cl. 4.5, excerpt.
    ("BRK-03", "450", True),
    ("BRK-04", "300", True),
    ("BRK-05", "150", True),
    ("BRK-06", "200", True),
    # A truck maker's manual.
    ("TYR-06", "0.8", True),
    ("BAT-06", "0.2", False),
    ("BAT-14", "50000", True),
    ("BAT-15", "30", False),
    # US Army TM 55-2210-224-12, TM 9-6140-200-14; battery makers' manuals; a textbook rule.
    ("BAT-04", "0.02", True),
    ("BAT-05", "0.05", True),
    ("BAT-07", "2.08", True),
    ("BAT-08", "0.03", True),
    ("BAT-12", "80", True),
    ("BAT-13", "50", True),
    # 29 CFR 1910.1000 as quoted; AS 4983 as quoted; the legal intervals as quoted.
    ("ENG-06", "50", True),
    ("LPG-05", "12", True),
    ("INT-04", "12", True),
    ("INT-05", "12", True),
    ("INT-06", "6", True),
    ("INT-07", "12", True),
]


def ids(numbers: dict[str, str]) -> set[str]:
    """Return the ids of a list by system."""
    return {f"{system}-{number}" for system, text in numbers.items() for number in text.split()}


def test_what_takes_a_truck_out_of_service() -> None:
    """No check is quietly made milder or harsher.

    Source: DGUV Vorschrift 68 sec. 9, UK guidance on thorough examination and 29 CFR 1910.178(p)(1) and
    (q)(7) give examples; the rest is common practice, no source.
    """
    found = {c.id for c in catalogue().values() if c.severity is Severity.OUT_OF_SERVICE}
    assert found == ids(OUT_OF_SERVICE)


def test_what_is_only_watched() -> None:
    """Whatever is neither of the two is repaired by a date.

    Source: common practice, no source.
    """
    assert {c.id for c in catalogue().values() if c.severity is Severity.MONITOR} == ids(MONITOR)


def test_what_one_thing_stops() -> None:
    """Each of these asks for the worse case.

    Source: makers' manuals and US Army technical manuals, as the table names them.
    """
    assert {c.id for c in catalogue().values() if c.worse_case} == ids(STOPPED_BY_ONE_THING)


@pytest.mark.parametrize(("check", "limit", "mark"), FIGURES)
def test_a_figure_that_judges(check: str, limit: str, mark: bool) -> None:
    """The limit, and whether a reading of just the limit passes."""
    found = catalogue()[check]
    assert found.limit == Fraction(limit)
    assert found.mark_allowed is mark


def test_no_other_figure_judges() -> None:
    """A limit that is not in the list above is not in the table either.

    Source: the list above.
    """
    assert {c.id for c in catalogue().values() if c.limit is not None} == {check for check, _, _ in FIGURES}
