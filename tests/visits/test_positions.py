"""On which line each key of a visit file stands."""

from __future__ import annotations

import pytest

from mastwright.visits import key_lines

TEXT = """# a comment
top = 1
[visit]
date = 2026-11-20
"quoted key" = 2
a.b = 3
[[chain]]
set = "main"
first = [
  # of the left strand
  { strand = "left", pitches = 24 },
  { strand = "right", pitches = 24 },
]
[[chain.span]] # the first
pitches = 16
[[chain.span]]
# nothing but a comment before
pitches = 18
[chain.more]
deep = 1
[[chain]]
set = "free-lift"
[[chain.span]]
pitches = 20
"""


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("top",), 2),
        (("visit",), 3),
        (("visit", "date"), 4),
        (("visit", "quoted key"), 5),
        (("visit", "a", "b"), 6),
        (("chain", 0), 7),
        (("chain", 0, "set"), 8),
        (("chain", 0, "first"), 9),
        (("chain", 0, "first", 0), 11),
        (("chain", 0, "first", 1, "pitches"), 12),
        (("chain", 0, "span", 0), 14),
        (("chain", 0, "span", 0, "pitches"), 15),
        (("chain", 0, "span", 1, "pitches"), 18),
        (("chain", 0, "more", "deep"), 20),
        (("chain", 1, "set"), 22),
        (("chain", 1, "span", 0, "pitches"), 24),
    ],
)
def test_a_key_has_its_line(path: tuple[str | int, ...], line: int) -> None:
    """Tables, elements of arrays, keys and inline tables are found where they stand."""
    assert key_lines(TEXT)[path] == line


def test_windows_line_ends_count_once() -> None:
    """A file with CR LF has the same lines."""
    assert key_lines(TEXT.replace("\n", "\r\n")) == key_lines(TEXT)


def test_letters_of_more_than_one_byte_do_not_shift_lines() -> None:
    """Accents and signs before a key leave its line where it is."""
    assert key_lines('a = "ñ½″"\nb = 1\n')["b",] == 2


def test_text_that_the_grammar_does_not_know_has_no_lines() -> None:
    """Better no line than a wrong one."""
    assert key_lines("[visit]\nid = \n") == {}
