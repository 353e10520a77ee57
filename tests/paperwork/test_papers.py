"""Which papers a visit needs."""

from __future__ import annotations

import subprocess
import sys

import pytest
from samples import condemned_photos, condemned_truck, sound_truck, spanish_inch_truck

import mastwright.paperwork
from mastwright.paperwork import papers, report_pdf
from mastwright.paperwork.papers import file_stem
from mastwright.quantity import BadInput


def test_sound_truck_gets_a_report_only() -> None:
    """Nothing to order, nothing refused, may work: a report and no more."""
    assert papers(sound_truck()) == {"V-2026-0107-report.pdf": report_pdf(sound_truck())}


def test_condemned_truck_gets_all_four() -> None:
    """Out of service, parts to order and a refusal: report, order, tag and refusal sheet."""
    made = papers(condemned_truck(), condemned_photos())
    assert list(made) == [f"V-2026-0108-{name}.pdf" for name in ("report", "order", "tag", "refusal")]
    assert all(data.startswith(b"%PDF-") for data in made.values())


def test_working_truck_with_an_order_gets_no_tag() -> None:
    """A truck that may work until a date gets report and order."""
    assert list(papers(spanish_inch_truck())) == ["V-2026-0109-report.pdf", "V-2026-0109-order.pdf"]


def test_not_a_judgement_is_refused() -> None:
    """What is no judgement gets no papers."""
    with pytest.raises(BadInput, match="truck"):
        papers({**sound_truck(), "truck": None})


@pytest.mark.parametrize(
    ("visit_id", "stem"),
    [
        ("V-1", "V-1"),
        ("../../etc/x", "etc-x"),
        ("...", "visit"),
        ("", "visit"),
        ("a b\\c:d", "a-b-c-d"),
        ("é" * 99, "é" * 80),
    ],
)
def test_file_names_are_safe(visit_id: str, stem: str) -> None:
    """A visit's id can never lead out of the folder it is written to."""
    assert file_stem(visit_id) == stem


def test_public_names_are_sorted_and_there() -> None:
    """The room offers what it says it offers."""
    names = mastwright.paperwork.__all__
    assert names == sorted(names, key=lambda n: (n.islower(), n))
    assert all(hasattr(mastwright.paperwork, name) for name in names)


def test_typst_is_loaded_only_when_a_paper_is_made() -> None:
    """Importing the room does not load the compiler, so that other commands start fast."""
    code = "import sys, mastwright.paperwork; print('typst' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"
