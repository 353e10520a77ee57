"""Edge wear: plate height lost by running on the sheave, whatever the elongation."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from mastwright.chains.elongation import elongation_figures
from mastwright.quantity import Limit, Worse


@dataclass(frozen=True)
class EdgeWearLimit:
    """The plate height at which a chain is discarded, and what it was reckoned from.

    Parameters
    ----------
    limit
        On the plate height, mm; reaching it condemns.
    unworn
        Plate height as new, mm.
    from_table
        True where no unworn plate of this chain was measured and the table's maximum stands in for it,
        which condemns early rather than late.
    """

    limit: Limit
    unworn: Fraction
    from_table: bool


def edge_wear_limit(unworn: Fraction | None, plate_height_max: Fraction) -> EdgeWearLimit:
    """Tell at which plate height edge wear condemns a chain.

    Parameters
    ----------
    unworn
        Height of a plate of the same chain that never meets the sheave, mm, if measured.
    plate_height_max
        Of the standard table, mm.

    Source
    ------
    Telehandler manual and leaf-chain defect table: discard at 5 % loss of plate height.

    Examples
    --------
    >>> float(edge_wear_limit(Fraction("18.11"), Fraction("18.11")).limit.at)
    17.2045
    """
    figure = elongation_figures().edge_wear
    height = plate_height_max if unworn is None else unworn
    limit = Limit(height * (1 - figure.at), "length", Worse.LOWER, figure.kind, figure.source)
    return EdgeWearLimit(limit, height, from_table=unworn is None)
