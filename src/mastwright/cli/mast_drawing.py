"""The drawing that `mastwright mast wear --svg` writes: every chain set's path with its wear."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from mastwright.mast.map_pieces import map_pieces
from mastwright.mast.path_drawing import MarkedSpan, draw_path, stacked
from mastwright.mast.wear_map import WearMap
from mastwright.paperwork import labels

_PAST_SHEAVE = 1.1


def mast_drawing(sets: Sequence[dict[str, Any]], pitch: float, language: str) -> str:
    """Return one SVG of all sets that wear, lowered beside raised.

    Parameters
    ----------
    sets
        As the document of `mast wear` holds them.
    pitch
        Of the chains, mm.
    language
        ``en`` or ``es``.
    """
    words: dict[str, str] = labels(language)["path"]
    return stacked([_set(entry, pitch, words) for entry in sets if entry["best_span"] is not None])


def _set(entry: dict[str, Any], pitch: float, words: dict[str, str]) -> str:
    joints, counts, pulls = (
        np.array([joint[key] for joint in entry["profile"]]) for key in ("d_mm", "articulations", "weighted")
    )
    chart = WearMap(joints, counts, pulls, pitch, entry["wrap_mm"])
    span = entry["best_span"]
    label = f"{words['pins']} {span['first_pin']}-{span['last_pin']}"
    longest = float(joints[-1]) + pitch / 2
    clear = (span["end_mm"] + entry["wrap_mm"]) * _PAST_SHEAVE
    marked = [MarkedSpan(span["first_pin"], span["pitches"], label)]
    pieces = map_pieces(chart)
    return draw_path(entry["title"], pitch, chart.wrap, longest, min(clear, longest), pieces, marked, words)
