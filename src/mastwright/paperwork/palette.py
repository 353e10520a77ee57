"""Colours of verdicts and signal words; each stands beside a word and a shape, never alone.

**Source**: the eight colours for all kinds of colour vision by M. Okabe and K. Ito (from memory); the
order danger, warning, caution and their words follow ANSI Z535.4 and ISO 3864-2 (from memory).
"""

from __future__ import annotations

BLACK = "#000000"
ORANGE = "#E69F00"
GREEN = "#009E73"
YELLOW = "#F0E442"
BLUE = "#0072B2"
VERMILLION = "#D55E00"
PURPLE = "#CC79A7"
WHITE = "#FFFFFF"

VERDICT_COLOURS = {
    "fit": GREEN,
    "watch": BLUE,
    "remeasure": PURPLE,
    "replace": ORANGE,
    "withdraw": VERMILLION,
    "not judged": WHITE,
}

# Ground and letters of a signal word's panel.
SIGNAL_COLOURS = {
    "danger": (VERMILLION, WHITE),
    "warning": (ORANGE, BLACK),
    "caution": (YELLOW, BLACK),
}
