"""The chain sets of a visit file: spans, first readings, edges and findings."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from mastwright.chains.standard import find_chain
from mastwright.visits import ChainSet, SpanReading
from visits.written import SPANS, chain, line_of, only, read, refused, text

RUST = '[[chain.finding]]\ncondition = "surface-rust"\n'


def the_set(*more: str, spans: str = SPANS, designation: str = "BL634") -> ChainSet:
    """Return the one chain set of a visit."""
    (chain_set,) = read(chain(*more, spans=spans, designation=designation)).chains
    return chain_set


def span_text(*fields: str, strand: str = "left") -> str:
    """Return one span with these fields."""
    return "\n".join(["[[chain.span]]", f'strand = "{strand}"', *fields]) + "\n"


def the_span(*fields: str) -> SpanReading:
    """Return the one span of a chain set."""
    (span,) = the_set(spans=span_text(*fields)).spans
    return span


def test_a_set_is_read_with_its_defaults() -> None:
    """A set has a left and a right strand unless it says otherwise."""
    chain_set = the_set()
    assert (chain_set.name, chain_set.chain) == ("main", find_chain("BL634"))
    assert chain_set.strands == ("left", "right")
    assert (chain_set.pitches_total, chain_set.minimum_strength, chain_set.fitted_on) == (None, None, None)


def test_a_set_is_read_whole() -> None:
    """Strands, length, ends, certificate and date of fitting stand in the set."""
    chain_set = the_set(
        'strands = ["one"]',
        "pitches_total = 112",
        'ends = "clevis"',
        'minimum_strength = "80 kN"',
        "fitted_on = 2024-02-01",
        spans=span_text('gauge = "1 %"', strand="one"),
    )
    assert (chain_set.strands, chain_set.pitches_total, chain_set.ends) == (("one",), 112, "clevis")
    assert chain_set.minimum_strength is not None
    assert chain_set.minimum_strength.canonical == 80_000
    assert chain_set.fitted_on == date(2024, 2, 1)


@pytest.mark.parametrize(
    ("fields", "percent", "written"),
    [
        (("pitches = 16", 'length = "313.944 mm"'), "3", "313.944 mm"),
        (("pitches = 16", 'length = "12 3/8 in"'), "3.125", "12.375 in"),
        (("pitches = 16", 'mean_pitch = "19.431 mm"'), "2", "19.431 mm"),
        (('mean_pitch = "19.431 mm"',), "2", "19.431 mm"),
        (('gauge = "1.75 %"',), "1.75", "1.75 %"),
        (('passes = "2 %"',), "2", "< 2 %"),
        (('stops_at = "3 %"',), "3", "≥ 3 %"),
        (('passes = "3 %"', 'stops_at = "2 %"'), "3", "< 3 %, ≥ 2 %"),
    ],
)
def test_each_way_of_reading(fields: tuple[str, ...], percent: str, written: str) -> None:
    """Length, mean pitch, graduated gauge and legs give an elongation, and keep the technician's words."""
    span = the_span(*fields)
    assert (span.reading.value, span.written) == (Fraction(percent), written)


@pytest.mark.parametrize(
    ("fields", "instrument"),
    [
        (("pitches = 16", 'length = "306 mm"'), "rule"),
        (("pitches = 16", 'length = "306 mm"', 'instrument = "vernier"'), "calliper"),
        (("pitches = 16", 'mean_pitch = "19.1 mm"', 'instrument = "calliper"'), "calliper"),
        (('gauge = "1.75 %"',), "graduated-gauge"),
        (('passes = "2 %"',), "leg-gauge"),
    ],
)
def test_each_way_has_its_instrument(fields: tuple[str, ...], instrument: str) -> None:
    """What was not said was read with the way's usual instrument."""
    assert the_span(*fields).reading.instrument.name == instrument


def test_a_mean_pitch_is_as_sure_as_its_span() -> None:
    """A mean over 16 pitches has the doubt of a length over 16 pitches."""
    mean = the_span("pitches = 16", 'mean_pitch = "19.1 mm"').reading
    whole = the_span("pitches = 16", 'length = "305.6 mm"').reading
    assert (mean.value, mean.standard_uncertainty) == (whole.value, whole.standard_uncertainty)


def test_a_mean_pitch_of_unsaid_length_is_taken_over_the_shortest() -> None:
    """Where nobody said over how many pitches, the doubt is that of two."""
    short = the_span('mean_pitch = "19.1 mm"').reading.standard_uncertainty
    long = the_span("pitches = 16", 'mean_pitch = "19.1 mm"').reading.standard_uncertainty
    assert short == pytest.approx(8 * long)


def test_a_first_reading_is_kept_by_strand() -> None:
    """The reading at fitting belongs to its strand."""
    first = 'first = [{ strand = "left", pitches = 16, length = "304.8 mm" }]'
    assert {strand: r.value for strand, r in the_set(first).first.items()} == {"left": 0}


def test_a_faulty_first_reading_is_told_alone() -> None:
    """A first reading over an odd count is told, and no other problem comes of it."""
    first = 'first = [{ strand = "left", pitches = 15, length = "304.8 mm" }]'
    assert only(text(chain(first))).field == "chain[1].first[1].pitches"


def test_an_edge_is_read() -> None:
    """Plate height by calliper, with the unworn plate where one was measured."""
    edge = '[[chain.edge]]\nstrand = "left"\nplate_height = "17.5 mm"\n'
    (bare,) = the_set(edge).edges
    (beside,) = the_set(edge + 'unworn = "18 mm"\n').edges
    assert (bare.written, bare.reading.value, bare.unworn) == ("17.5 mm", Fraction("17.5"), None)
    assert bare.reading.instrument.name == "calliper"
    assert beside.unworn is not None
    assert beside.unworn.canonical == 18


def test_a_finding_is_read() -> None:
    """What was seen, on which strand, where, with a note."""
    (finding,) = the_set(
        RUST + 'strand = "left"\nwhere = "anchor"\nnote = "light"\nput_right = true\n'
    ).findings
    assert (finding.condition.key, finding.strand) == ("surface-rust", "left")
    assert (finding.where, finding.note, finding.put_right) == ("anchor", "light", True)


def test_a_finding_may_be_of_the_whole_set() -> None:
    """A finding without strand is of the set, and not put right unless it says so."""
    (finding,) = the_set(RUST).findings
    assert (finding.strand, finding.put_right) == ("", False)


EDGE = '[[chain.edge]]\nstrand = "left"\n'
FAULTS = [
    (span_text('length = "306 mm"'), "[[chain.span]]", "span[1].pitches", "how many pitches"),
    (span_text("pitches = 15", 'length = "306 mm"'), "pitches", "span[1].pitches", "14 or 16"),
    (span_text("pitches = 15", 'gauge = "1 %"'), "pitches", "span[1].pitches", "articulating plates"),
    (span_text("pitches = 0", 'length = "306 mm"'), "pitches", "span[1].pitches", "an even number"),
    (span_text("pitches = 0", 'gauge = "1 %"'), "pitches", "span[1].pitches", "2 or more"),
    (span_text("pitches = 16", 'length = "306 kg"'), "length", "span[1].length", "kg measures mass"),
    (
        span_text("pitches = 16", 'length = "306 mm"', 'instrument = "x"'),
        "instrument",
        "span[1].instrument",
        "rule",
    ),
    (span_text('gauge = "1 %"', 'instrument = "x"'), "instrument", "span[1].instrument", "graduated-gauge"),
    (span_text('gauge = "1 mm"'), "gauge", "span[1].gauge", "percent"),
    (span_text('passes = "2 %"', 'instrument = "x"'), "instrument", "span[1].instrument", "leg-gauge"),
    (span_text('passes = "2 mm"'), "passes", "span[1].passes", "percent"),
    (span_text('passes = "2 %"', 'stops_at = "3 %"'), "passes", "span[1].passes", "a leg above stops_at"),
    (span_text("pitches = 16"), "[[chain.span]]", "span[1].length", "one way of reading"),
    (span_text('gauge = "1 %"', "taut = false"), "taut", "span[1].taut", "a slack chain can read new"),
    (
        span_text('gauge = "1 %"', strand="mid"),
        "strand",
        "span[1].strand",
        "one of the set's strands: left, right",
    ),
    (span_text('gauge = "1 %"', "start = -1"), "start", "span[1].start", "a whole number from 0"),
    (span_text('gauge = "1 %"', 'pitch = "a"'), "pitch =", "span[1].pitch", "did you mean 'pitches'?"),
    (EDGE, "[[chain.edge]]", "edge[1].plate_height", "is needed"),
    (EDGE + 'plate_height = "17 mm"\ninstrument = "x"\n', "instrument", "edge[1].instrument", "calliper"),
    (EDGE + 'plate_height = "17 mm"\nunworn = "16 mm"\n', "unworn", "edge[1].unworn", "at least the worn"),
    (
        EDGE + 'plate_height = "181 mm"\n',
        "plate_height",
        "edge[1].plate_height",
        "at most the 18.11 mm of a new",
    ),
    ('[[chain.finding]]\ncondition = "turned-pn"\n', "condition", "finding[1].condition", "turned-pin"),
    ("[[chain.finding]]\n", "[[chain.finding]]", "finding[1].condition", "is needed"),
    (RUST + 'strand = "mid"\n', "strand", "finding[1].strand", "left, right"),
    (
        '[[chain.finding]]\ncondition = "turned-pin"\nput_right = true\n',
        "put_right",
        "finding[1].put_right",
        "only new chains put it right",
    ),
]


@pytest.mark.parametrize(("block", "at", "field", "expected"), FAULTS)
def test_a_fault_is_told_with_its_line(block: str, at: str, field: str, expected: str) -> None:
    """Field, line and what would be right, for one fault at a time."""
    written = text(chain(spans=block))
    problem = only(written)
    assert (problem.field, problem.line) == (
        f"chain[1].{field}",
        line_of(written, block) + line_of(block, at) - 1,
    )
    assert expected in problem.expected


def test_two_ways_of_reading_are_refused() -> None:
    """One span is read one way; both that were given are named."""
    problem = only(text(chain(spans=span_text("pitches = 16", 'length = "306 mm"', 'gauge = "1 %"'))))
    assert (problem.field, problem.given) == ("chain[1].span[1].length", "length, gauge")


def test_two_faulty_legs_are_both_told() -> None:
    """Where neither leg can be read, both are told."""
    problems = refused(text(chain(spans=span_text('passes = "2 mm"', 'stops_at = "1 mm"'))))
    assert [p.field.rpartition(".")[2] for p in problems] == ["passes", "stops_at"]


def test_a_plate_within_a_graduation_of_new_is_taken() -> None:
    """A plate that reads as new by the last digit is no mistake."""
    edge = '[[chain.edge]]\nstrand = "left"\nplate_height = "18.12 mm"\n'
    assert the_set(edge).edges[0].reading.value == Fraction("18.12")


def test_a_higher_plate_is_taken_with_its_unworn_height() -> None:
    """A plate higher than the table's is taken where an unworn one was measured too."""
    edge = '[[chain.edge]]\nstrand = "left"\nplate_height = "18.5 mm"\nunworn = "18.6 mm"\n'
    assert the_set(edge).edges[0].reading.value == Fraction("18.5")


def test_a_chain_set_stands_once() -> None:
    """Two tables of one set are refused at the second."""
    written = text(chain(), chain())
    problem = only(written)
    assert (problem.field, problem.given) == ("chain[2].set", "main")
    assert problem.line == text(chain()).count("\n") + 3


def test_a_set_without_name_is_told_that_alone() -> None:
    """Two sets without a name are each told that it is needed, and nothing else."""
    nameless = chain().replace('set = "main"\n', "")
    assert [p.expected for p in refused(text(nameless, nameless))] == ["is needed", "is needed"]


def test_an_unknown_chain_is_refused() -> None:
    """A designation that no table holds is told with its field."""
    assert only(text(chain(designation="BL999"))).field == "chain[1].designation"


def test_a_chain_without_designation_is_told() -> None:
    """Nothing can be judged of a chain that nobody named."""
    written = text(chain().replace('designation = "BL634"\n', ""))
    assert only(written).field == "chain[1].designation"
