"""What each package promises in `__all__` is what it exports, in one order."""

import importlib
import pkgutil
from types import ModuleType

import pytest

import mastwright

PACKAGES = [
    "mastwright",
    *(m.name for m in pkgutil.walk_packages(mastwright.__path__, "mastwright.") if m.ispkg),
]


def _order(name: str) -> tuple[int, str]:
    """Constants first, then types, then functions: the order that the linter keeps."""
    return (0 if name.isupper() else 1 if name[0].isupper() else 2, name)


@pytest.mark.parametrize("name", PACKAGES)
def test_all_is_sorted_and_complete(name: str) -> None:
    """A package lists every public name that it holds, sorted, and no other."""
    package = importlib.import_module(name)
    public = [
        member
        for member, value in vars(package).items()
        if not member.startswith("_") and not isinstance(value, ModuleType)
    ]
    assert list(getattr(package, "__all__", [])) == sorted(public, key=_order)


def test_every_floor_is_walked() -> None:
    """The walk finds the packages, so that the test above cannot pass on an empty list."""
    assert {"mastwright.quantity", "mastwright.chains", "mastwright.cli"} <= set(PACKAGES)
