"""What a leaf-chain designation says: series, pitch and lacing, by the numbering rules."""

from __future__ import annotations

import re
from collections.abc import Container
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from mastwright.quantity import BadInput, Problem, Source, read_table, source_of, unit

_MARK = re.compile(r"([A-Z]{2})?(\d{1,4})")
_FULL = 3  # a pitch of one digit and two digits of lacing
_LONGEST = 40


@dataclass(frozen=True)
class Numbering:
    """How the designations of one prefix are numbered.

    Parameters
    ----------
    prefix
        `LH`, `LL`, `BL` or `AL`.
    series
        The table series that it belongs to: BL chains are the LH chains.
    parts_of_inch
        The pitch number counts this part of an inch: 16 for sixteenths.
    pitch_digits
        How many digits of pitch there may be, fewest and most.
    source
        Where the rule is written.
    """

    prefix: str
    series: str
    parts_of_inch: int
    pitch_digits: tuple[int, int]
    source: Source


@dataclass(frozen=True)
class Designation:
    """What a marking says.

    Parameters
    ----------
    prefix, series
        As in `Numbering`.
    pitch
        mm.
    lacing
        Plates in the outer (pin-link) and in the inner (articulating) pitch; None where the marking
        stops after the pitch.
    """

    prefix: str
    series: str
    pitch: Fraction
    lacing: tuple[int, int] | None

    @property
    def text(self) -> str:
        """The designation as the standard writes it."""
        rule = numbering()[self.prefix]
        size = unit("in").from_canonical(self.pitch) * rule.parts_of_inch
        plates = "".join(map(str, self.lacing)) if self.lacing else ""
        return f"{self.prefix}{int(size):0{rule.pitch_digits[0]}}{plates}"


@cache
def numbering() -> dict[str, Numbering]:
    """Return the numbering rules by prefix."""
    rules = {}
    for row in read_table("mastwright.chains", "numbering.csv"):
        fewest, _, most = row["pitch_digits"].partition("-")
        rules[row["prefix"]] = Numbering(
            prefix=row["prefix"],
            series=row["series"],
            parts_of_inch=int(row["parts_of_inch"]),
            pitch_digits=(int(fewest), int(most or fewest)),
            source=source_of(row["source"], row["evidence"], f"numbering.csv {row['prefix']}"),
        )
    return rules


def plain_marking(text: str) -> str:
    """Return a marking in capitals without the spaces, hyphens and points that people put into it."""
    return re.sub(r"[\s.\-_–]+", "", text.upper())


def possible_designations(text: str) -> tuple[Designation, ...]:
    """Tell everything that a marking may mean.

    Parameters
    ----------
    text
        As stamped or written: ``BL634``, ``LH1234 / BL634``, ``BL6`` where the lacing is gone, or a bare
        ``834``, which is read by every convention: eighths of an inch or sixteenths.

    Returns
    -------
    tuple of Designation
        Empty if it is no designation of a leaf chain.

    Examples
    --------
    >>> [(d.prefix, float(d.pitch)) for d in possible_designations("834")]
    [('LH', 12.7), ('LL', 12.7), ('BL', 25.4), ('AL', 25.4)]
    """
    found: list[Designation] = []
    for part in text[:_LONGEST].split("/"):
        match = _MARK.fullmatch(plain_marking(part))
        if match is None:
            continue
        prefix, digits = match.groups()
        rules = [r for r in numbering().values() if prefix in {None, r.prefix}]
        for rule in rules:
            # A bare number has often lost the leading zero of 08.
            whole = digits if prefix else digits.rjust(rule.pitch_digits[0] + 2, "0")
            meant = _read(whole, rule)
            if meant is not None and (prefix or len(digits) >= _FULL):
                found.append(meant)
    return tuple(dict.fromkeys(found))


def parse_designation(text: str, *, field: str = "designation") -> Designation:
    """Read a complete designation with its prefix.

    Raises
    ------
    BadInput
        If the prefix is missing or unknown, or pitch and lacing cannot be told from the digits.

    Examples
    --------
    >>> d = parse_designation("BL523")
    >>> float(d.pitch), d.lacing
    (15.875, (2, 3))
    """
    plain = plain_marking(text)
    if plain.isdecimal():
        raise BadInput(Problem(field, text, bare_number_advice(text)))
    match = _MARK.fullmatch(plain)
    rule = numbering().get(match[1]) if match else None
    meant = _read(match[2], rule) if match and rule else None
    if meant is None or meant.lacing is None:
        raise BadInput(
            Problem(
                field, text, "a prefix (LH, LL, BL or AL), the pitch and the lacing, such as LH1234 or BL634"
            )
        )
    return meant


def bare_number_advice(text: str, known: Container[str] | None = None) -> str:
    """Say why a number without prefix is no designation, and what it might stand for.

    Parameters
    ----------
    text
        The number.
    known
        The designations that exist; None names every reading.
    """
    inch = unit("in")
    meant = [d for d in possible_designations(text) if known is None or d.text in known]
    names = " or ".join(f"{d.text} ({_inches(inch.from_canonical(d.pitch))} in pitch)" for d in meant)
    rule = "BL and AL count the pitch in eighths of an inch, LH and LL in sixteenths"
    alone = f"{plain_marking(text)} alone may be {names}" if names else "such as BL834 or LH1634"
    return f"the designation with its prefix, since {rule}; {alone}"


def _inches(value: Fraction) -> str:
    whole, rest = divmod(value, 1)
    return f"{whole} {rest}" if whole and rest else f"{whole or rest}"


def _read(digits: str, rule: Numbering) -> Designation | None:
    fewest, most = rule.pitch_digits
    if len(digits) <= most and len(digits) >= fewest:
        size, lacing = digits, None
    elif fewest <= len(digits) - 2 <= most:
        size, lacing = digits[:-2], (int(digits[-2]), int(digits[-1]))
    else:
        return None
    if int(size) == 0 or (lacing and 0 in lacing):
        return None
    pitch = unit("in").to_canonical(Fraction(int(size), rule.parts_of_inch))
    return Designation(rule.prefix, rule.series, pitch, lacing)
