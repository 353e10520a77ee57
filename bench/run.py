"""Every figure of RESULTS.md, measured again: prints them and rewrites that file."""

from __future__ import annotations

import os
import platform
import sys
from collections.abc import Iterable
from datetime import UTC, date, datetime
from pathlib import Path

import false_accept
import judge_time
import marks
import start_time
import wear_map
from section import Section

from mastwright import __version__

RESULTS = Path(__file__).with_name("RESULTS.md")


def results(sections: Iterable[Section], on: date) -> str:
    """Return the whole of RESULTS.md.

    Parameters
    ----------
    sections
        The tables, in order.
    on
        Day of the measurement.
    """
    head = (
        "# Figures\n\n"
        f"Measured by `make bench` on {on.isoformat()} with mastwright {__version__}, "
        f"Python {platform.python_version()} on {platform.system()} {platform.machine()}, "
        f"{os.cpu_count()} cores. Each section names the command that measures it alone.\n"
        "Times are medians and depend on the machine and what else runs on it; shares and counts are "
        "seeded and come out the same again.\n"
    )
    return "\n".join([head, *(section.markdown() for section in sections)])


def main() -> int:
    """Measure everything; times first, before the long draws."""
    sections = [
        start_time.section(),
        judge_time.section(),
        wear_map.section(),
        *false_accept.sections(),
        marks.section(),
    ]
    text = results(sections, datetime.now(UTC).date())
    print(text)
    RESULTS.write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
