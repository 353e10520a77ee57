"""A visit as written down at the truck, and the file it is written in."""

from mastwright.visits.positions import key_lines
from mastwright.visits.read import read_visit
from mastwright.visits.visit import (
    ChainSet,
    CheckEntry,
    EdgeReading,
    Finding,
    MastUse,
    Photo,
    Policy,
    Refusal,
    SpanReading,
    Truck,
    Visit,
)

__all__ = [
    "ChainSet",
    "CheckEntry",
    "EdgeReading",
    "Finding",
    "MastUse",
    "Photo",
    "Policy",
    "Refusal",
    "SpanReading",
    "Truck",
    "Visit",
    "key_lines",
    "read_visit",
]
