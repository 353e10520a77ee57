"""A text file that the user named, or a clear problem."""

from __future__ import annotations

from pathlib import Path

from mastwright.quantity import BadInput, Problem


def read_text_file(path: Path) -> str:
    """Return the text of a file.

    Raises
    ------
    BadInput
        If it is missing, no file, unreadable or not UTF-8; the field is the path.
    """
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        raise BadInput(Problem(str(path), "", "a text file in UTF-8")) from None
    except OSError as error:
        raise BadInput(Problem(str(path), "", f"a file that can be read ({error.strerror})")) from None
