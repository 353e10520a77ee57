"""The examples in the docstrings of the physics run and give what they show."""

import doctest
import importlib

import pytest

MODULES = (
    "battery",
    "brakes",
    "capacity",
    "dates",
    "figures",
    "forks",
    "hydraulics",
    "mast_drift",
    "tyres",
)


@pytest.mark.parametrize("name", MODULES)
def test_examples_hold(name: str) -> None:
    """Each file has examples and none shows anything but what it gives."""
    result = doctest.testmod(importlib.import_module(f"mastwright.checks.{name}"))
    assert result.attempted > 0
    assert result.failed == 0
