"""A remark in no language yet: a code and its figures, put into words by `mastwright.wording`."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date
    from fractions import Fraction


@dataclass(frozen=True)
class Amount:
    """A figure inside a remark, shown in the reader's units.

    Parameters
    ----------
    value
        In the dimension's own unit.
    dimension
        A dimension of `mastwright.quantity.units`.
    """

    value: Fraction
    dimension: str


@dataclass(frozen=True)
class Note:
    """A remark: which one, and what to fill in.

    Parameters
    ----------
    code
        Kebab-case key of the catalogue.
    params
        What stands in the sentence's places.
    """

    code: str
    params: Mapping[str, str | int | date | Amount] = field(default_factory=dict)
