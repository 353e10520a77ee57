"""The examples in the docstrings of this room run and give what they show."""

import doctest
import importlib
import pkgutil

import pytest

from mastwright import quantity

MODULES = [m.name for m in pkgutil.iter_modules(quantity.__path__, "mastwright.quantity.")]


@pytest.mark.parametrize("name", MODULES)
def test_examples_hold(name: str) -> None:
    """No example shows anything but what it gives."""
    assert doctest.testmod(importlib.import_module(name)).failed == 0


def test_there_are_examples() -> None:
    """The room has examples to run."""
    tried = [doctest.testmod(importlib.import_module(name)).attempted for name in MODULES]
    assert sum(tried) >= 5
