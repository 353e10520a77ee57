"""Problems: field, value given, what would be right."""

import pickle

from mastwright.quantity import BadInput, Problem

SPAN = Problem("span length", "12\n", "a number")


def test_a_problem_is_one_line() -> None:
    """Field, what was given and what would be right, with control characters spelt out."""
    assert str(SPAN) == "span length: '12\\n' given; a number"


def test_nothing_given_is_not_quoted() -> None:
    """A field left empty says only what would be right."""
    assert str(Problem("truck", "", "the name of a truck")) == "truck: the name of a truck"


def test_a_problem_can_be_placed_on_a_line() -> None:
    """The line comes first, and the problem itself stays as it was."""
    assert str(SPAN.at(0)) == "line 0: span length: '12\\n' given; a number"
    assert SPAN.line is None
    assert SPAN.at(7).at(None) == SPAN


def test_what_was_given_is_cut_to_fit() -> None:
    """Sixty characters are shown, more are cut with a sign of it, and a line does not cut again."""
    assert Problem("truck", "x" * 60, "").given == "x" * 60
    assert Problem("truck", "x" * 61, "").at(3).given == "x" * 60 + "…"


def test_bad_input_says_every_problem() -> None:
    """One line for each problem, in the order found."""
    both = BadInput(p for p in (SPAN, Problem("truck", "", "a name").at(3)))
    assert str(both) == "span length: '12\\n' given; a number\nline 3: truck: a name"
    assert len(both.problems) == 2


def test_bad_input_of_one_problem() -> None:
    """A single problem needs no list, and the error is a ValueError."""
    one = BadInput(SPAN)
    assert isinstance(one, ValueError)
    assert one.problems == (SPAN,)


def test_bad_input_survives_a_process_border() -> None:
    """Pickled and read again it holds the same problems."""
    again = pickle.loads(pickle.dumps(BadInput([SPAN])))  # noqa: S301  our own bytes
    assert (again.problems, str(again)) == ((SPAN,), str(SPAN))
