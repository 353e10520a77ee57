"""The plate height at which edge wear condemns a chain."""

from __future__ import annotations

from fractions import Fraction

import pytest

from mastwright.chains.edge_wear import edge_wear_limit
from mastwright.chains.standard import find_chain
from mastwright.quantity import LimitKind, Worse

TABLE = find_chain("BL634").plate_height_max


def test_a_measured_plate_is_the_reference() -> None:
    """Where an unworn plate was measured, the limit is 95 % of it."""
    wear = edge_wear_limit(Fraction("17.9"), TABLE)
    assert (wear.limit.at, wear.unworn, wear.from_table) == (Fraction("17.005"), Fraction("17.9"), False)


def test_the_table_stands_in() -> None:
    """Where none was measured the table's height stands in, and the limit says so."""
    wear = edge_wear_limit(None, TABLE)
    assert (wear.unworn, wear.from_table) == (TABLE, True)


def test_the_table_condemns_early() -> None:
    """A real plate is no higher than the table's, so that the stand-in condemns early rather than late."""
    assert edge_wear_limit(None, TABLE).limit.at >= edge_wear_limit(TABLE - 1, TABLE).limit.at


@pytest.mark.parametrize(("height", "over"), [("95", True), ("94.99", True), ("95.01", False)])
def test_five_percent_is_the_discard_mark(height: str, over: bool) -> None:
    """Telehandler manual and leaf-chain defect table (read): discard at 5 % loss of plate height."""
    assert edge_wear_limit(Fraction(100), TABLE).limit.reached_by(Fraction(height)) is over


def test_the_limit_says_which_way_is_worse() -> None:
    """A lower plate is the worse one, and the figure is the trade's own, with its source."""
    limit = edge_wear_limit(None, TABLE).limit
    assert (limit.worse, limit.dimension, limit.kind) == (Worse.LOWER, "length", LimitKind.POLICY)
    assert "5 % of plate height" in limit.source.text
