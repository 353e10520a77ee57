"""Numbers as people write them: `12 3/8`, `12-3/8`, `314,3`, `1,200.5`, `3 000`.

A point is always a decimal point unless a comma follows it; a lone comma before exactly three
digits may be either a decimal comma or a thousands comma, so it is refused. Only the digits 0 to 9
are read: another script's digits keep other marks for the decimal.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

_SPACES = re.compile(r"\s+")  # no-break, thin and figure spaces among them
_VULGAR = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_SIGNS = str.maketrans({"−": "-", "⁄": "/", "’": "'", "‘": "'", "“": '"', "”": '"'})
_FRACTION = re.compile(r"(?:([0-9]+)[ -])?([0-9]+)/([0-9]+)")
_DENOMINATORS = (2, 4, 8, 16, 32, 64, 128)
_DIGITS = re.compile(r"[0-9]+")
_THOUSANDS = re.compile(r"[0-9]{3}")
_LEADING = re.compile(r"[1-9][0-9]{0,2}")


@dataclass(frozen=True)
class Written:
    """A number and the size of its last written digit."""

    value: Fraction
    step: Fraction
    is_fraction: bool


def tidy(text: str) -> str:
    """Return the text with one kind of space, minus, slash, quote and fraction sign."""
    for sign, plain in _VULGAR.items():
        text = text.replace(sign, f" {plain}")
    return _SPACES.sub(" ", text.translate(_SIGNS)).replace("- ", "-").strip()


def read_number(text: str) -> Written | str:
    """Read one number; return it, or the words for what would be right.

    Parameters
    ----------
    text
        The number alone, already passed through `tidy`, without a unit.

    Examples
    --------
    >>> read_number("12 3/8")
    Written(value=Fraction(99, 8), step=Fraction(1, 8), is_fraction=True)
    """
    if not text.isascii():
        return "a number in the digits 0 to 9"
    negative = text.startswith("-")
    body = text[1:].strip() if negative else text.removeprefix("+").strip()
    written = _fraction(body) if "/" in body else _decimal(body)
    if isinstance(written, str) or not negative:
        return written
    return Written(-written.value, written.step, written.is_fraction)


def _fraction(body: str) -> Written | str:
    match = _FRACTION.fullmatch(body)
    if not match:
        return "a fraction as 12 3/8 or 12-3/8"
    whole, top, bottom = (int(g) if g else 0 for g in match.groups())
    if bottom not in _DENOMINATORS:
        return "a fraction in 2nds, 4ths, 8ths, 16ths, 32nds, 64ths or 128ths"
    if top >= bottom:
        return "a fraction smaller than one, as in 12 3/8"
    return Written(whole + Fraction(top, bottom), Fraction(1, bottom), is_fraction=True)


def _decimal(body: str) -> Written | str:
    comma, point = body.rfind(","), body.rfind(".")
    if comma >= 0 and point >= 0:
        mark, group = (".", ",") if point > comma else (",", ".")
        return _grouped(body, mark, group)
    if comma >= 0:
        return _with_comma(body)
    if point >= 0:
        return _grouped(body, ".", " ")
    return _whole(body, " ")


def _with_comma(body: str) -> Written | str:
    parts = body.split(",")
    if len(parts) > 2:  # noqa: PLR2004  two commas can only be thousands
        return _whole(body, ",")
    head, tail = parts
    if _LEADING.fullmatch(head) and _THOUSANDS.fullmatch(tail):
        return f"{head}.{tail} or {head}{tail}: the comma may stand for the decimal or the thousand"
    return _grouped(body, ",", " ")


def _grouped(body: str, mark: str, group: str) -> Written | str:
    head, _, tail = body.rpartition(mark)
    if mark in head or not _DIGITS.fullmatch(tail):
        return "one decimal mark and digits after it, as in 314.3 or 314,3"
    whole = _whole(head or "0", group)
    if isinstance(whole, str):
        return whole
    step = Fraction(1, 10 ** len(tail))
    return Written(whole.value + int(tail) * step, step, is_fraction=False)


def _whole(body: str, group: str) -> Written | str:
    first, *rest = body.split(group)
    head = _LEADING if rest else _DIGITS
    if not head.fullmatch(first) or not all(_THOUSANDS.fullmatch(part) for part in rest):
        return "a number, as in 314.3, 314,3, 1,200.5, 3 000 or 12 3/8"
    return Written(Fraction("".join([first, *rest])), Fraction(1), is_fraction=False)
