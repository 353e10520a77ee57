"""Leak classes and the cleanliness code of oil, read from what a technician or a laboratory writes.

No hand goes near a suspected pin-hole: oil under pressure cuts into skin.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from mastwright.checks.figures import constant
from mastwright.quantity import BadInput, Problem, Source, read_table, source_of

_TABLE = "leak_classes.csv"
_COUNTS = 3  # particles above 4, 6 and 14 µm


@dataclass(frozen=True)
class LeakClass:
    """One class of leak.

    Parameters
    ----------
    number
        0 for none, 1 to 3.
    roman
        As the source writes it.
    meaning_en, meaning_es
        What is seen.
    source
        How the class is known.
    """

    number: int
    roman: str
    meaning_en: str
    meaning_es: str
    source: Source


@cache
def leak_classes() -> tuple[LeakClass, ...]:
    """Return the classes of leak with what each means, the driest first.

    **Source**: US Army TM 10-3930-659-10 (read).

    Examples
    --------
    >>> leak_classes()[2].meaning_en
    'a drop forms, but does not fall'
    """
    return tuple(
        LeakClass(
            number=int(row["class"]),
            roman=row["roman"],
            meaning_en=row["meaning_en"],
            meaning_es=row["meaning_es"],
            source=source_of(row["source"], row["evidence"], f"{_TABLE} {row['class']}"),
        )
        for row in read_table("mastwright.checks", _TABLE)
    )


def leak_class(text_or_int: str | int, field: str) -> int:
    """Return the class of a leak as a number, from how somebody wrote it.

    Parameters
    ----------
    text_or_int
        0 to 3, ``I`` to ``III`` or ``none``; capitals do not count.
    field
        What it was given for; stands first in the message.

    Raises
    ------
    BadInput
        If it is none of the classes.

    **Source**: US Army TM 10-3930-659-10 (read).

    Examples
    --------
    >>> leak_class("II", "leak at the lift cylinder"), leak_class("none", "leak at the pump")
    (2, 0)
    """
    given = str(text_or_int).strip().lower()  # True becomes 'true', which is no class
    for known in leak_classes():
        if given in {str(known.number), known.roman.lower()}:
            return known.number
    meanings = "; ".join(f"{c.number} or {c.roman} = {c.meaning_en}" for c in leak_classes())
    raise BadInput(Problem(field, str(text_or_int), f"the class of the leak: {meanings}"))


def parse_cleanliness(text: str, field: str) -> tuple[int, int, int]:
    """Return the three numbers of a cleanliness code such as ``18/16/13``.

    They stand for the particles above 4, 6 and 14 µm, each step for twice as many, so none is larger
    than the one before it.

    Parameters
    ----------
    text
        As the laboratory writes it.
    field
        What it was given for; stands first in the message.

    Raises
    ------
    BadInput
        If it is no such code.

    **Source**: ISO 4406 as explained in a fluid-cleanliness guide (read); the largest number from memory.

    Examples
    --------
    >>> parse_cleanliness("18/16/13", "oil cleanliness")
    (18, 16, 13)
    """
    most = int(constant("cleanliness_most"))
    parts = [part.strip() for part in text.split("/")]
    if len(parts) == _COUNTS and all(_is_scale_number(part, most) for part in parts):
        above_4, above_6, above_14 = (int(part) for part in parts)
        if above_4 >= above_6 >= above_14:
            return above_4, above_6, above_14
    expected = (
        f"three whole numbers from 0 to {most}, none larger than the one before it, as in 18/16/13 (ISO 4406)"
    )
    raise BadInput(Problem(field, text, expected))


def _is_scale_number(text: str, most: int) -> bool:
    # The length first: a number of thousands of digits is refused by `int` itself.
    return text.isascii() and text.isdigit() and len(text) <= len(str(most)) and int(text) <= most


def cleaner_or_equal(code: tuple[int, int, int], target: tuple[int, int, int]) -> bool:
    """Say whether oil is as clean as the target in each of the three sizes.

    Parameters
    ----------
    code, target
        Of the sample and asked for, as `parse_cleanliness` returns them.

    **Source**: ISO 4406 as explained in a fluid-cleanliness guide: each number is held by itself (read).

    Examples
    --------
    >>> cleaner_or_equal((18, 16, 13), (20, 18, 15)), cleaner_or_equal((18, 17, 13), (18, 16, 13))
    (True, False)
    """
    return all(found <= asked for found, asked in zip(code, target, strict=True))
