"""Instruments: what each measures and how sure one reading with it is."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from math import hypot
from typing import TYPE_CHECKING

from mastwright.quantity.problem import BadInput, Problem
from mastwright.quantity.source import Source, read_table, source_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping


@dataclass(frozen=True)
class Instrument:
    """One kind of instrument.

    Parameters
    ----------
    name, aliases
        What a technician may write.
    dimension
        What it reads, a dimension of `mastwright.quantity.units`.
    standard_uncertainty
        Of one reading, in the dimension's own unit; its graduation, parallax and both ends are in it.
    relative_uncertainty
        The same as a share of the reading, added in quadrature.
    step
        Its graduation, in the dimension's own unit.
    source
        Where the figure comes from.
    """

    name: str
    aliases: tuple[str, ...]
    dimension: str
    standard_uncertainty: float
    relative_uncertainty: float
    step: Fraction
    source: Source

    def uncertainty_at(self, value: Fraction) -> float:
        """Return the standard uncertainty of a reading of this value, in the dimension's own unit."""
        return hypot(self.standard_uncertainty, self.relative_uncertainty * float(value))


class Instruments:
    """The instruments of a shop: the common ones, replaced by the shop's own where it has studied them.

    Of two of one name and dimension the first counts.
    """

    def __init__(self, items: Iterable[Instrument]) -> None:
        self._items: dict[tuple[str, str], Instrument] = {}
        for item in items:
            self._items.setdefault((item.name, item.dimension), item)

    def replaced_by(self, own: Iterable[Instrument]) -> Instruments:
        """Return a set in which the shop's own instruments stand before the common ones.

        An own instrument keeps the other names of the common one that it replaces, and wins where
        its name is another name of a common one.
        """
        named = []
        for item in own:
            common = self._items.get((item.name, item.dimension))
            named.append(replace(item, aliases=item.aliases or common.aliases) if common else item)
        return Instruments([*named, *self._items.values()])

    def find(self, word: str, dimension: str, *, field: str = "instrument") -> Instrument:
        """Return the instrument somebody meant.

        Raises
        ------
        BadInput
            If there is none of that name, or it reads another dimension.
        """
        key = word.strip().lower().replace(" ", "-")
        fitting = [i for i in self._items.values() if i.dimension == dimension]
        for item in fitting:
            if key == item.name or key in item.aliases:
                return item
        names = ", ".join(i.name for i in fitting) or "none"
        raise BadInput(Problem(field, word, f"an instrument that reads {dimension}: {names}"))

    def of(self, dimension: str) -> tuple[Instrument, ...]:
        """Return the instruments that read this dimension."""
        return tuple(i for i in self._items.values() if i.dimension == dimension)


def instrument_from(row: Mapping[str, str], where: str) -> Instrument:
    """Build an instrument from the cells of a table.

    Raises
    ------
    TableError
        If it has no source.
    """
    return Instrument(
        name=row["instrument"],
        aliases=tuple(row["aliases"].split()),
        dimension=row["dimension"],
        standard_uncertainty=float(row["standard_uncertainty"]),
        relative_uncertainty=float(row["relative_uncertainty"]),
        step=Fraction(row["step"]),
        source=source_of(row["source"], row["evidence"], where),
    )


@cache
def common_instruments() -> Instruments:
    """Return the instruments that ship with mastwright."""
    rows = read_table("mastwright.quantity", "instruments.csv")
    return Instruments(instrument_from(row, f"instruments.csv {row['instrument']}") for row in rows)
