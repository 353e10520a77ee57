"""A visit's photos."""

from __future__ import annotations

from visits.written import SPANS, chain, check, read

FINDING = '[[chain.finding]]\ncondition = "dry-chain"\nphotos = ["b.png", "c.png"]\n'


def test_photos_are_listed_once_in_order() -> None:
    """Photos of spans, findings and checks are listed, each once."""
    spans = SPANS + 'photo = "a.png"\n'
    visit = read(chain(FINDING, spans=spans), check("CAP-01", "ok = true", 'photos = ["c.png", "d.png"]'))
    assert visit.photo_files == ("a.png", "b.png", "c.png", "d.png")


def test_a_photo_has_its_caption() -> None:
    """The caption goes with every photo of its table."""
    visit = read(check("CAP-01", "ok = true", 'photo = "a.png"', 'photos = ["b.png"]', 'caption = "plate"'))
    assert [(p.file, p.caption) for p in visit.checks[0].photos] == [("a.png", "plate"), ("b.png", "plate")]


def test_an_empty_photo_is_none() -> None:
    """A photo field left blank is no photo."""
    assert read(check("CAP-01", "ok = true", 'photo = ""')).photo_files == ()
