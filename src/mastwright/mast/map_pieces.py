"""A wear map in few pieces, as a drawing needs it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from mastwright.mast.path_drawing import WornPiece

if TYPE_CHECKING:
    from mastwright.mast.wear_map import WearMap


def map_pieces(chart: WearMap, most: int = 48) -> tuple[WornPiece, ...]:
    """Return the map in at most so many pieces, each as worn as its worst joint.

    Parameters
    ----------
    chart
        The wear map of a set whose duty wears it.
    most
        Number of pieces.

    Examples
    --------
    >>> import numpy as np
    >>> from mastwright.mast.wear_map import WearMap
    >>> joints, wear = np.array([-10.0, 10.0, 30.0]), np.array([1.0, 4.0, 2.0])
    >>> [(p.start, p.end, p.wear) for p in map_pieces(WearMap(joints, wear, wear, 20.0, 20.0), most=2)]
    [(-20.0, 20.0, 1.0), (20.0, 40.0, 0.5)]
    """
    peak = float(chart.weighted.max())
    step = max(1, -(-len(chart.d) // most))
    half = chart.pitch / 2
    return tuple(
        WornPiece(
            float(chart.d[i]) - half,
            float(chart.d[min(i + step, len(chart.d)) - 1]) + half,
            round(float(chart.weighted[i : i + step].max()) / peak, 4),
        )
        for i in range(0, len(chart.d), step)
    )
