"""How often something over its limit is let through: every instrument, through the product's own verdict."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import sqrt

from draws import Spread
from false_accept_chains import (
    GAUGE_LEGS,
    Subject,
    chains_by_pitch,
    graduated_gauge,
    leg_gauge,
    span_subjects,
)
from false_accept_parts import edge_wear, fork_from_marking, fork_from_shank
from section import Section, percent, thousands

from mastwright.chains import find_chain

DRAWS = 200_000
OVER = (0.0, 0.01, 1.0, 2.0, 3.0)
"""How far over the limit the item truly is, in stated standard uncertainties."""
BAR_AT_LIMIT = 0.025
BAR_BEYOND_3U = 0.001
STANDARD_ERRORS = 3
"""By how many standard errors of the draws a share must pass its bar to count as missing it."""

_COMMAND = ".venv/bin/python bench/false_accept.py"
_INCH_RULES = {"rule read to 1/32 in": Fraction("25.4") / 32, "rule read to 1/16 in": Fraction("25.4") / 16}
_BARS = (
    f"Bars: at most {percent(BAR_AT_LIMIT)} anywhere over the limit, at most {percent(BAR_BEYOND_3U)} at "
    f"limit + 3u and beyond; missed means by more than {STANDARD_ERRORS} standard errors of the draws."
)
_WHY = (
    "Where a bar is missed at the limit: the guard mark leaves the whole half graduation and z times what "
    "is then left of the stated u. Readings that scatter by the whole stated u and are rounded on top are "
    "less sure than the table says. Where the last graduation let through lies close under the guard mark, "
    "more of them round down to it; elsewhere fewer do. Customary spans are multiples of a foot, so the "
    "place is the same for most chains."
)
_DRIFTED_REMARK = "No bar binds here: the table shows what an assumption costs that no longer holds."
_HEADER = (
    "reading",
    "cases",
    "stated u",
    "fit at limit, worst",
    "accepted at limit, mean",
    "accepted at limit, worst",
    "worst at",
    "+0.01 u",
    "+1 u",
    "+2 u",
    "+3 u",
    "fit: bar",
    "accepted: bar",
)


def subjects(draws: int) -> list[Subject]:
    """Return everything whose limit is measured here."""
    return [
        *span_subjects(draws, chains_by_pitch(), {}),
        graduated_gauge(draws),
        *(leg_gauge(draws, legs) for legs in GAUGE_LEGS),
        *(fork_from_marking(draws, original) for original in (35, 40, 50)),
        *(fork_from_shank(draws, original) for original in (35, 40, 50)),
        *(edge_wear(draws, find_chain(name)) for name in ("LH0822", "LH1234", "LH2444")),
    ]


def coarse_rules(draws: int) -> list[Subject]:
    """Return the rule read to coarser divisions than the product's table takes it to have."""
    return [
        Subject(f"{words}, {s.group.partition(', ')[2]}", s.name, s.uncertainty, s.shares)
        for words, step in _INCH_RULES.items()
        for s in span_subjects(draws, chains_by_pitch(), {"rule": step})
        if s.group.startswith("rule")
    ]


def met(share: float, bar: float, draws: int) -> bool:
    """Tell whether a share keeps to its bar, the chance in so many draws allowed for."""
    return share <= bar + STANDARD_ERRORS * sqrt(bar * (1 - bar) / draws)


def rows(of: Iterable[Subject], spread: Spread, draws: int) -> tuple[tuple[str, ...], ...]:
    """Return one row for each group of subjects."""
    groups: dict[str, list[Subject]] = {}
    for subject in of:
        groups.setdefault(subject.group, []).append(subject)
    return tuple(_row(group, members, spread, draws) for group, members in groups.items())


def _row(group: str, members: list[Subject], spread: Spread, draws: int) -> tuple[str, ...]:
    found = {over: [m.shares(over, spread) for m in members] for over in OVER}
    at_limit = found[0.0]
    worst = max(range(len(members)), key=lambda place: at_limit[place].accepted)
    mean = sum(s.accepted for s in at_limit) / len(members)
    uncertainties = list(dict.fromkeys(m.uncertainty for m in members))
    return (
        group,
        f"{len(members)}",
        " to ".join(dict.fromkeys((uncertainties[0], uncertainties[-1]))),
        percent(max(s.fit for s in at_limit)),
        percent(mean),
        percent(at_limit[worst].accepted),
        members[worst].name,
        *(percent(max(s.accepted for s in found[over])) for over in OVER[1:]),
        _bar([[s.fit for s in found[over]] for over in OVER], draws),
        _bar([[s.accepted for s in found[over]] for over in OVER], draws),
    )


def _bar(shares: list[list[float]], draws: int) -> str:
    bars = [BAR_AT_LIMIT] * (len(OVER) - 1) + [BAR_BEYOND_3U]
    late = sum(
        any(not met(at[case], bar, draws) for at, bar in zip(shares, bars, strict=True))
        for case in range(len(shares[0]))
    )
    return f"missed by {late} of {len(shares[0])}" if late else "met"


def sections(draws: int = DRAWS) -> list[Section]:
    """Return the tables, one for each way in which readings scatter."""
    every = subjects(draws)
    method = (
        f"{thousands(draws)} seeded readings of an item truly at its limit, or so many stated u "
        "past it, written to the instrument's graduation and judged by the product. `fit` is that verdict "
        "alone; `accepted` is fit, watch or replace at a date: the truck works on without being measured "
        "again. A row is one instrument over the customary spans of every pitch (or several forks or "
        "chains); mean and worst are over those cases."
    )
    made = [
        Section(
            f"False accept: {spread}",
            _COMMAND,
            method,
            _HEADER,
            rows(every, spread, draws),
            (_BARS, _DRIFTED_REMARK if spread is Spread.DRIFTED else _WHY),
        )
        for spread in Spread
    ]
    coarse = Section(
        "False accept: rule read to coarser divisions, its scatter as stated",
        _COMMAND,
        "The same with inch rules: the product takes the rule's own division, 1 mm, whatever was written. "
        "The whole stated u scatters, rounding on top of it.",
        _HEADER,
        rows(coarse_rules(draws), Spread.ON_TOP, draws),
    )
    return [*made, coarse]


if __name__ == "__main__":
    for one in sections():
        print(one.markdown())
