"""The report of a visit."""

from __future__ import annotations

import json
import re
from typing import Any

import pikepdf
import pytest
from pdf_text import open_pdf, page_text, runs
from samples import condemned_photos, condemned_truck, item, picture, sound_truck, span, spanish_inch_truck

from mastwright.paperwork import report_pdf
from mastwright.quantity import BadInput


def without_spaces(text: str) -> str:
    """Return text as `page_text` gives it."""
    return re.sub(r"\s", "", text)


def attachment(pdf: pikepdf.Pdf) -> bytes:
    """Return the only file attached to a PDF."""
    (spec,) = pdf.attachments.values()
    return spec.get_file().read_bytes()


def alternatives(pdf: pikepdf.Pdf) -> list[str]:
    """Return the alternative texts of the pictures of a PDF."""
    return [str(o["/Alt"]) for o in pdf.objects if isinstance(o, pikepdf.Dictionary) and "/Alt" in o]


@pytest.mark.parametrize("make", [sound_truck, condemned_truck, spanish_inch_truck])
def test_attachment_is_the_judgement(make: Any) -> None:
    """The data of the visit travel inside the report, unchanged."""
    assert json.loads(attachment(open_pdf(report_pdf(make())))) == make()


def test_same_bytes_twice() -> None:
    """The same judgement and pictures give the same bytes."""
    first = report_pdf(condemned_truck(), condemned_photos())
    assert report_pdf(condemned_truck(), condemned_photos()) == first


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            condemned_truck,
            (
                "DANGER",
                "Out of service",
                "Truck 9",
                "Brackwater Cold Store",
                "Reasons, in order of danger",
                "If ignored: A worn chain can part without warning",
                "REFUSED BY THE CUSTOMER",
                "2 pieces",
                "Leaf chain LH1234 / BL634",
                "no date set",
            ),
        ),
        (
            spanish_inch_truck,
            (
                "ADVERTENCIA",
                "Puede trabajar hasta el 2026-05-02",
                "Motivos, por orden de peligro",
                "Si se ignora:",
                "Por pedir",
                "Próxima visita",
                "Ramal izquierdo",
            ),
        ),
        (
            sound_truck,
            ("May work until 2026-06-12", "Nothing was found against work", "Order lines none", "60 fit"),
        ),
    ],
)
def test_first_page_tells_the_outcome(make: Any, words: tuple[str, ...]) -> None:
    """Outcome, truck, reasons, next visit and order stand on page 1, in the language of the judgement."""
    first = page_text(report_pdf(make()), 1)
    for word in words:
        assert without_spaces(word) in first


def test_fit_truck_has_no_signal_word_in_its_outcome() -> None:
    """A signal word on page 1 is kept for trucks that need one."""
    first = page_text(report_pdf(sound_truck()), 1)
    assert not any(word in first for word in ("DANGER", "WARNING", "CAUTION"))


def test_every_section_is_printed() -> None:
    """Readings, limits, sources, what was not looked at, refusals, law, cautions and signatures are there."""
    text = page_text(report_pdf(condemned_truck()))
    for word in (
        "3.12 % ± 0.08 %",
        "3 %, replace at once",
        "93 %",
        "source 2, read",
        "by itself: watch",
        "in its set: withdraw",
        "maker's limit missing",
        "Lowering speed with rated load",
        "Peak season",
        "LOLER 1998, regulation 9",
        "Never stand under raised forks",
        "standard uncertainty",
        "demo limit of an invented shop [demo data]",
        "Received for the customer",
        "Turned pin at pitch 23",
        "Record head 3f6c1b9e0a7d52c48e11",
        "page 1 of",
        "Static factor 5.41",
        "withdraw · WORST",
        "Chance limit for fit",
        "To do: Fit new linings. (by 2026-04-12)",
        "picture not supplied: lost.png",
    ):
        assert without_spaces(word) in text, word


def test_book_head_only_when_there_is_one() -> None:
    """Without a head of the record no line speaks of it."""
    document = sound_truck()
    assert "Recordhead" not in page_text(report_pdf(document))
    del document["book_head"]
    assert "Recordhead" not in page_text(report_pdf(document))


def test_one_source_is_listed_once() -> None:
    """A limit's source is numbered where it is first met; the chain's own line points to the same number."""
    text = page_text(report_pdf(condemned_truck()))
    assert text.count("achainexaminer'sguidance") == 1
    assert without_spaces("2 % plan to replace (source 2)") in text


def test_chain_without_source_has_no_number() -> None:
    """A chain limit given without a source points to none."""
    document = sound_truck()
    document["chains"][0]["limit_source"] = ""
    assert without_spaces("2 % plan to replace Strength") in page_text(report_pdf(document))


def test_pages_of_letter_and_a4() -> None:
    """An inch shop prints on US letter."""
    pdf = open_pdf(report_pdf(spanish_inch_truck()))
    assert [float(v) for v in pdf.pages[0].mediabox] == pytest.approx([0, 0, 612, 792], abs=0.1)


def test_table_head_repeats_on_every_page() -> None:
    """Whoever opens a page in the middle of the readings sees what the columns are."""
    data = report_pdf(sound_truck())
    pages = len(open_pdf(data).pages)
    with_rows = [n for n in range(1, pages + 1) if "Inventedcheck" in page_text(data, n)]
    assert len(with_rows) >= 3
    assert all("Chancepastlimit" in page_text(data, n) for n in with_rows)


def test_rows_keep_their_walking_order() -> None:
    """The readings come in the order the technician walked."""
    text = page_text(report_pdf(sound_truck()))
    places = [
        text.index(f"Inventedcheck{n}{letters}") for n, letters in ((1, "CAP"), (11, "SAF"), (41, "ELE"))
    ]
    assert places == sorted(places)


def test_pictures_have_alternative_texts() -> None:
    """Every drawing and photo can be heard: strand, spans with elongation, caption."""
    texts = alternatives(open_pdf(report_pdf(condemned_truck(), condemned_photos())))
    assert any("Left strand" in t and "18-34: 3.12 ± 0.08 % · withdraw · worst" in t for t in texts)
    assert any("Turned pin at pitch 23: the flats" in t for t in texts)
    assert len(texts) == 2 + 2 + 2


def test_photo_without_words_still_has_an_alternative_text() -> None:
    """A photo with neither caption nor title is announced as a photo."""
    document = sound_truck()
    document["items"] = [item(title="", photos=[{"file": "a", "caption": ""}])]
    assert "Photos: ." in alternatives(open_pdf(report_pdf(document, {"a": picture()})))


def test_same_photo_twice_is_kept_once() -> None:
    """One picture shown for two items is held once in the file."""
    document = sound_truck()
    for one in document["items"][:2]:
        one["photos"] = [{"file": "same.png", "caption": "Both forks"}]
    once = sound_truck()
    once["items"][0]["photos"] = [{"file": "same.png", "caption": "Both forks"}]

    def pictures(given: dict[str, Any]) -> int:
        pdf = open_pdf(report_pdf(given, {"same.png": picture()}))
        return sum(1 for o in pdf.objects if isinstance(o, pikepdf.Stream) and o.get("/Subtype") == "/Image")

    assert pictures(document) == pictures(once) > 0


@pytest.mark.parametrize("data", [b"", b"GIF89a...", b"\xff\xd8\xff\xe0 broken", b"\x89PNG\r\n\x1a\n broken"])
def test_unreadable_photo_is_named(data: bytes) -> None:
    """A picture that cannot be printed is refused by its name."""
    with pytest.raises(BadInput, match=r"photo pin\.png: .*a JPEG or PNG picture"):
        report_pdf(condemned_truck(), {"pin.png": data})


def test_photo_nobody_asked_for_is_let_be() -> None:
    """A supplied picture that the judgement does not name changes nothing."""
    assert report_pdf(sound_truck(), {"other.txt": b"no picture"}) == report_pdf(sound_truck())


def test_condition_without_drawing_is_told_in_words() -> None:
    """A condition this version has no drawing of is printed by its title."""
    document = condemned_truck()
    document["chains"][0]["strands"][0]["conditions"] = [
        {"key": "from-a-later-version", "title": "Chewed by goats"}
    ]
    data = report_pdf(document)
    assert "Chewedbygoats" in page_text(data)
    assert len(alternatives(open_pdf(data))) == 2


def test_truck_without_chains_or_anything() -> None:
    """A visit that looked at nothing still makes a report that says so."""
    document = sound_truck()
    for key in ("items", "chains", "legal", "not_looked_at", "cautions", "assumptions"):
        document[key] = []
    document["truck"] = dict.fromkeys(document["truck"], "")
    document["visit"].update(note="", customer="", site="", technician="")
    document["next_visit"] = {"by": None, "hours_text": "", "because": "", "bounds": []}
    text = page_text(report_pdf(document))
    assert "Lookedat0" in text
    assert "Liftchains" not in text


def test_chain_never_measured() -> None:
    """A chain set of which nothing was read is drawn without bars."""
    document = sound_truck()
    chain = document["chains"][0]
    chain.update(strength=[], measured_how="", designation="")
    for strand in chain["strands"]:
        strand.update(spans=[], pitches_total=None, edge_wear_text="", growth_text="")
    text = page_text(report_pdf(document))
    assert "Mainliftchains" in text
    assert "Frompitch" not in text


def test_many_reasons_and_spans_stay_on_the_page() -> None:
    """Forty reasons and thirty spans, long texts included, print inside the paper's edges."""
    document = condemned_truck()
    document["reasons"] = [{**document["reasons"][0], "rank": n, "text": "very " * n} for n in range(1, 41)]
    document["chains"][0]["strands"][0]["spans"] = [span(4 * n, 1 + n / 20, "watch") for n in range(30)]
    pdf = open_pdf(report_pdf(document))
    assert len(pdf.pages) > 6
    assert all(run.size >= 5 for run in runs(pdf) if run.text.strip())


def test_not_a_judgement_is_refused() -> None:
    """What is no judgement gets no report."""
    with pytest.raises(BadInput, match="format"):
        report_pdf({})
