"""One table of figures, as it stands in RESULTS.md."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Section:
    """A table with what it shows, how it was got and what is to be said about it.

    Parameters
    ----------
    title, command
        What was measured, and the command that measures it again.
    method
        How, in a sentence or two.
    header, rows
        Of the table.
    remarks
        Below the table, one line each.
    """

    title: str
    command: str
    method: str
    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    remarks: tuple[str, ...] = ()

    def markdown(self) -> str:
        """Return the section as Markdown."""
        table = [self.header, tuple("---" for _ in self.header), *self.rows]
        lines = [f"## {self.title}", "", f"`{self.command}`", "", self.method, ""]
        lines += [f"| {' | '.join(row)} |" for row in table]
        if self.remarks:
            lines += ["", *(f"- {remark}" for remark in self.remarks)]
        return "\n".join([*lines, ""])


def percent(share: float) -> str:
    """Return a share in percent to two digits."""
    return f"{100 * share:.2f} %"


def thousands(count: int) -> str:
    """Return a count with its thousands apart."""
    return f"{count:,}".replace(",", " ")


def milliseconds(seconds: float) -> str:
    """Return a time in milliseconds, to two digits below ten."""
    return f"{1000 * seconds:.2f} ms" if seconds < 0.01 else f"{1000 * seconds:.0f} ms"
