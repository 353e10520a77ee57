"""Remarks in no language yet."""

from fractions import Fraction

from mastwright.quantity import Amount, Note


def test_a_note_without_figures_has_none() -> None:
    """Two notes of one code do not share their figures."""
    first, second = Note("span-odd"), Note("span-odd")
    assert first == second
    assert first.params == {}
    assert first.params is not second.params


def test_an_amount_keeps_its_dimension() -> None:
    """A figure in a note can be shown in the reader's units."""
    note = Note("too-short", {"least": Amount(Fraction(300), "length")})
    assert note.params["least"] == Amount(Fraction(300), "length")
