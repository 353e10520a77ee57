"""Whatever text a judgement carries, its papers can be made."""

from __future__ import annotations

import json

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pdf_text import open_pdf
from samples import condemned_truck

from mastwright.paperwork import report_pdf, tag_pdf
from mastwright.paperwork.compile import shown_text

TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=80)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(TEXTS, TEXTS)
def test_any_text_makes_whole_papers(name: str, reason: str) -> None:
    """Any characters in names and reasons give a report with the exact data attached, and one tag."""
    document = condemned_truck()
    document["truck"]["id"] = document["visit"]["customer"] = document["chains"][0]["strands"][0]["title"] = (
        name
    )
    document["reasons"][0]["text"] = document["items"][3]["notes"] = reason
    document["items"][3]["notes"] = [reason]
    pdf = open_pdf(report_pdf(document))
    (spec,) = pdf.attachments.values()
    assert json.loads(spec.get_file().read_bytes()) == document
    assert len(open_pdf(tag_pdf(document)).pages) == 1


@settings(max_examples=60, deadline=None)
@given(TEXTS)
def test_making_printable_is_done_once(text: str) -> None:
    """What is printable already, long words aside, stays as it is."""
    once, _ = shown_text(text)
    joined = once.replace("\u200b", "")
    assert shown_text(joined)[0].replace("\u200b", "") == joined
