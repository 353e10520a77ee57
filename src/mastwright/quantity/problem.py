"""What is wrong with an input: the field, what was given, what would be right.

Error tree::

    ValueError
    └── BadInput      one or more problems with what somebody wrote
    Exception
    └── TableError    a table of ours that must not load (`mastwright.quantity.source`)
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

_LONGEST = 60


@dataclass(frozen=True)
class Problem:
    """One fault in one field, with what would be right.

    What was given is kept to its first 60 characters, so that no message outgrows its page.
    """

    field: str
    given: str
    expected: str
    line: int | None = None

    def __post_init__(self) -> None:
        """Cut what was given to a length that fits a message."""
        if len(self.given) > _LONGEST:
            object.__setattr__(self, "given", f"{self.given[:_LONGEST]}…")

    def at(self, line: int | None) -> Problem:
        """Return the same problem with the line it stands on."""
        return replace(self, line=line)

    def __str__(self) -> str:
        """Say it in one line: line, field, what was given, what would be right."""
        where = f"line {self.line}: " if self.line is not None else ""
        given = f"{self.given!r} given; " if self.given else ""
        return f"{where}{self.field}: {given}{self.expected}"


class BadInput(ValueError):  # noqa: N818  it is what it is called to the user, not an error of the program
    """An input that cannot be taken, with every problem found in it."""

    def __init__(self, problems: Problem | Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = (problems,) if isinstance(problems, Problem) else tuple(problems)
        super().__init__(self.problems)

    def __str__(self) -> str:
        """Say every problem, one a line."""
        return "\n".join(str(p) for p in self.problems)
