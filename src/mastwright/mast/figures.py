"""The figures that the mast's calculations take where nobody gave a better one."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from mastwright.quantity import Source, read_table, source_of

if TYPE_CHECKING:
    from collections.abc import Mapping

_TABLE = "wear.csv"


@dataclass(frozen=True)
class MastFigure:
    """One figure with its unit, what it means and where it comes from."""

    value: Fraction
    unit: str
    meaning: str
    source: Source


@cache
def mast_figures() -> Mapping[str, MastFigure]:
    """Return the figures that ship with mastwright, by name.

    Examples
    --------
    >>> str(mast_figures()["travel_height"].source.evidence)
    'read'
    """
    return MappingProxyType(
        {
            row["name"]: MastFigure(
                Fraction(row["value"]),
                row["unit"],
                row["meaning"],
                source_of(row["source"], row["evidence"], f"{_TABLE} {row['name']}"),
            )
            for row in read_table("mastwright.mast", _TABLE)
        }
    )


def mast_figure(name: str) -> float:
    """Return the value of one figure, in its own unit."""
    return float(mast_figures()[name].value)
