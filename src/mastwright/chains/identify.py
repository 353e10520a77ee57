"""Which chain is this: candidates with probabilities from what was measured, counted and read on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import erfc, sqrt

from mastwright.chains.designation import Designation, plain_marking, possible_designations
from mastwright.chains.elongation import elongation_figures
from mastwright.chains.standard import LeafChain
from mastwright.quantity import BadInput, Note, Problem, Reading, read_table


@dataclass(frozen=True)
class Observed:
    """What is known of a chain; every part may be missing, but not all of them.

    Parameters
    ----------
    length
        Over `pitches` pitches, mm. Any count from 1 will do to name the chain.
    pitches
        How many pitches `length` covers.
    plate_height, plate_thickness, pin_diameter
        mm; the pin at its head or an unworn end.
    lacing
        Plates counted in the outer and in the inner pitch.
    marking
        As stamped, or empty.
    worn
        Whether the piece runs over the sheave; None if not known.

    Raises
    ------
    BadInput
        If nothing was observed, or a value is impossible.
    """

    length: Reading | None = None
    pitches: int = 1
    plate_height: Reading | None = None
    plate_thickness: Reading | None = None
    pin_diameter: Reading | None = None
    lacing: tuple[int, int] | None = None
    marking: str = ""
    worn: bool | None = None

    def __post_init__(self) -> None:
        """Refuse an empty or impossible observation."""
        problems = [
            Problem(name, f"{float(reading.value):g} {reading.unit_name}", "a length above 0")
            for name, reading in self._readings()
            if reading.dimension != "length" or reading.value <= 0
        ]
        if self.pitches < 1:
            right = "the number of pitches that the length covers, 1 or more"
            problems.append(Problem("pitches", str(self.pitches), right))
        if self.lacing and min(self.lacing) < 1:
            right = "plates in the outer and in the inner pitch, as in 3x4"
            problems.append(Problem("lacing", _lacing_text(self.lacing), right))
        if not self.measured and not self.lacing and not possible_designations(self.marking):
            parts = "length over counted pitches, plate_height, plate_thickness, pin_diameter, lacing"
            if self.marking.strip():
                right = f"a designation such as LH1234 or BL634; or give one of {parts}"
                problems.append(Problem("marking", self.marking, right))
            else:
                problems.append(Problem("observed", "", f"at least one of {parts}, marking"))
        if problems:
            raise BadInput(problems)

    def _readings(self) -> Iterator[tuple[str, Reading]]:
        for name in ("length", "plate_height", "plate_thickness", "pin_diameter"):
            reading: Reading | None = getattr(self, name)
            if reading is not None:
                yield name, reading

    @property
    def measured(self) -> bool:
        """Whether anything was measured."""
        return any(True for _ in self._readings())


@dataclass(frozen=True)
class Candidate:
    """A chain that it may be, and how probably."""

    chain: LeafChain
    probability: float


@dataclass(frozen=True)
class Identification:
    """What the chain may be.

    Parameters
    ----------
    candidates
        Likeliest first; chains below the probability worth showing are left out.
    assumed
        The chain to work with until more is known: the weaker of near-twins; None if it is open.
    twins
        Pairs among the candidates that measuring hardly separates.
    separate_by
        What to measure or see next, codes of `identify_notes.toml`.
    notes
        What else is to be said, from the same table.
    """

    candidates: tuple[Candidate, ...]
    assumed: LeafChain | None
    twins: tuple[tuple[LeafChain, LeafChain], ...]
    separate_by: tuple[Note, ...]
    notes: tuple[Note, ...]


@cache
def identify_figures() -> dict[str, float]:
    """Return the constants of the model by name; their sources stand in `identify.csv`."""
    return {row["name"]: float(row["value"]) for row in read_table("mastwright.chains", "identify.csv")}


def identify(observed: Observed, chains: Iterable[LeafChain]) -> Identification:
    """Tell which chains of a table fit what was observed, and which to assume.

    Every chain starts equal, one that no standard confirms lower. A measured dimension is taken as even
    between its least and its largest, smeared by its uncertainty: pitch from the shortest new chain to
    one worn past discard, plate height down to edge wear past discard. Plates may be miscounted and
    markings may lie, each with a small probability.

    Parameters
    ----------
    observed
        What was measured, counted and read.
    chains
        The rows to choose from.

    Source
    ------
    Bayes' rule; constants of `identify.csv`, ASME B29.8 cl. 1.6 for the length of a new chain.
    """
    rows = tuple(chains)
    meant = possible_designations(observed.marking)
    lacings = len({row.lacing for row in rows})
    weights = [
        _prior(row)
        * _measured(observed, row)
        * _counted(observed, row, lacings)
        * _marked(meant, row, len(rows))
        for row in rows
    ]
    total = sum(weights)
    if not total:
        percent = f"{identify_figures()['most_elongation']:g}"
        notes = (Note("nothing-fits", {"percent": percent}), *_notes(observed, meant, rows))
        return Identification((), None, (), _next_steps(observed, (), ()), (*notes, Note("maker-first")))
    least = identify_figures()["shown"] * max(weights)
    kept = {row.short_name for row, weight in zip(rows, weights, strict=True) if weight >= least}
    if observed.pin_diameter is None:
        kept |= _silent_twins(rows, kept, meant)
    found = [
        Candidate(row, weight / total)
        for row, weight in zip(rows, weights, strict=True)
        if row.short_name in kept
    ]
    candidates = tuple(sorted(found, key=lambda c: (-c.probability, c.chain.short_name)))
    twins = _twins([c.chain for c in candidates])
    assumed, why = _assume(observed, meant, candidates, twins)
    notes = (*_notes(observed, meant, rows), *why)
    if meant and not any(_matches(d, c.chain) for d in meant for c in candidates):
        notes = (*notes, Note("marking-disagrees", {"marking": observed.marking}))
    return Identification(
        candidates, assumed, twins, _next_steps(observed, candidates, twins), (*notes, Note("maker-first"))
    )


def identification_document(result: Identification) -> dict[str, object]:
    """Return an identification as plain values for JSON."""
    return {
        "candidates": [
            {
                "designation_iso": c.chain.designation_iso,
                "designation_ansi": c.chain.designation_ansi,
                "probability": c.probability,
            }
            for c in result.candidates
        ],
        "assumed": result.assumed.short_name if result.assumed else None,
        "twins": [[a.short_name, b.short_name] for a, b in result.twins],
        "separate_by": [note.code for note in result.separate_by],
        "notes": [note.code for note in result.notes],
    }


def _prior(row: LeafChain) -> float:
    return 1.0 if row.in_standard else identify_figures()["unconfirmed"]


def _measured(observed: Observed, row: LeafChain) -> float:
    """Return the density of everything measured, were it this chain."""
    figures = identify_figures()
    unworn = observed.worn is False
    n = observed.pitches
    tolerance = float(elongation_figures().new_tolerance.at) / 100
    # All growth sits in the articulating pitches, of which an odd count may hold one more than its half.
    longest = tolerance if unworn else figures["most_elongation"] / 100 * (n + n % 2) / n
    nominal = float(n * row.pitch)
    height = figures["least_height_unworn" if unworn else "least_height"]
    result = _even(observed.length, nominal * (1 - tolerance), nominal * (1 + longest))
    for reading, largest, least, most in (
        (observed.plate_height, row.plate_height_max, height, 1.0),
        (observed.plate_thickness, row.plate_thickness_max, figures["least_thickness"], 1.0),
        (observed.pin_diameter, row.pin_diameter_max, figures["least_pin"], figures["most_pin"]),
    ):
        result *= _even(reading, float(largest) * least, float(largest) * most)
    return result


def _counted(observed: Observed, row: LeafChain, lacings: int) -> float:
    if not observed.lacing:
        return 1.0
    wrong = identify_figures()["lacing_miscounted"]
    return 1 - wrong if row.lacing == _turned(observed.lacing) else wrong / max(lacings - 1, 1)


def _even(reading: Reading | None, low: float, high: float) -> float:
    """Return the density of a reading of something even between two bounds, or 0 when it is out of reach."""
    if reading is None:
        return 1.0
    figures = identify_figures()
    doubt = max(reading.standard_uncertainty, figures["least_uncertainty"])
    below, above = (float(reading.value) - low) / doubt, (float(reading.value) - high) / doubt
    if below < -figures["sigmas"] or above > figures["sigmas"]:
        return 0.0
    return (_normal(below) - _normal(above)) / (high - low)


def _normal(z: float) -> float:
    return erfc(-z / sqrt(2)) / 2


def _marked(meant: tuple[Designation, ...], row: LeafChain, rows: int) -> float:
    if not meant:
        return 1.0
    wrong = identify_figures()["marking_wrong"]
    return 1 - wrong if any(_matches(d, row) for d in meant) else wrong / rows


def _matches(meant: Designation, row: LeafChain) -> bool:
    return (
        meant.series == row.series
        and meant.pitch == row.pitch
        and (meant.lacing is None or meant.lacing == row.lacing)
    )


def _silent_twins(rows: tuple[LeafChain, ...], kept: set[str], meant: tuple[Designation, ...]) -> set[str]:
    """Return the near-twins of what is kept: only pin or marking decide between the two."""
    twins = set()
    for pair in _twins(list(rows)):
        named = [row for row in pair if any(_matches(d, row) for d in meant)]
        if not named and any(row.short_name in kept for row in pair):
            twins |= {row.short_name for row in pair}
    return twins


def _twins(chains: list[LeafChain]) -> tuple[tuple[LeafChain, LeafChain], ...]:
    reach = Fraction(str(identify_figures()["twin_thickness"]))
    return tuple(
        (a, b)
        for number, a in enumerate(chains)
        for b in chains[number + 1 :]
        if a.series != b.series
        and (a.pitch, a.lacing) == (b.pitch, b.lacing)
        and abs(a.plate_thickness_max - b.plate_thickness_max) <= reach
    )


def _assume(
    observed: Observed,
    meant: tuple[Designation, ...],
    candidates: tuple[Candidate, ...],
    twins: tuple[tuple[LeafChain, LeafChain], ...],
) -> tuple[LeafChain | None, tuple[Note, ...]]:
    """Return the chain to work with, the weaker of near-twins, and what is to be said about it."""
    best = candidates[0].chain
    pair = next((pair for pair in twins if best in pair), (best,))
    share = sum(c.probability for c in candidates if c.chain in pair)
    if not observed.lacing and not any(d.lacing and _matches(d, best) for d in meant):
        return None, ()
    if share < identify_figures()["certain"]:
        return None, (Note("not-certain", {"percent": f"{100 * share:.0f}"}),)
    weaker = min(pair, key=lambda row: row.min_tensile)
    notes = []
    if len(pair) > 1:
        names = ", ".join(row.short_name for row in pair)
        notes.append(Note("weaker-assumed", {"names": names, "name": weaker.short_name}))
    if not weaker.in_standard:
        notes.append(Note("not-in-standard", {"name": weaker.name}))
    if not observed.measured and not observed.lacing:
        notes.append(Note("marking-alone"))
    return weaker, tuple(notes)


def _notes(
    observed: Observed, meant: tuple[Designation, ...], rows: tuple[LeafChain, ...]
) -> tuple[Note, ...]:
    notes = []
    marking = observed.marking.strip()
    if observed.length is not None and observed.pitches % 2:
        notes.append(Note("odd-pitches", {"pitches": str(observed.pitches)}))
    if observed.lacing:
        turned = _turned(observed.lacing)
        if turned != observed.lacing:
            texts = {"lacing": _lacing_text(observed.lacing), "turned": _lacing_text(turned)}
            notes.append(Note("lacing-turned", texts))
        if all(row.lacing != turned for row in rows):
            notes.append(Note("lacing-unknown", {"lacing": _lacing_text(turned)}))
    if marking and not meant:
        notes.append(Note("marking-not-read", {"marking": marking}))
    if meant and plain_marking(marking).isdecimal():
        notes.append(Note("bare-number", {"marking": marking}))
    return tuple(notes)


def _next_steps(
    observed: Observed,
    candidates: tuple[Candidate, ...],
    twins: tuple[tuple[LeafChain, LeafChain], ...],
) -> tuple[Note, ...]:
    """Return what to measure or see next, the surest first."""
    steps = []
    if observed.length is None and len(candidates) != 1:
        steps.append(Note("measure-pitch"))
    if not observed.lacing:
        steps.append(Note("count-plates"))
    if twins and observed.pin_diameter is None:
        best = [pair for pair in twins if candidates[0].chain in pair] or twins
        names = ", ".join(sorted({row.short_name for pair in best for row in pair}))
        steps.append(Note("measure-pin", {"names": names}))
    if len({c.chain.series for c in candidates}) > 1 and observed.plate_height is None:
        steps.append(Note("measure-height"))
    if len(candidates) != 1:
        if not observed.marking.strip():
            steps.append(Note("find-marking"))
        steps.append(Note("ask-certificate"))
    return tuple(steps)


def _turned(lacing: tuple[int, int]) -> tuple[int, int]:
    """Return the lacing with the fewer plates outside, as every leaf chain has them."""
    return min(lacing), max(lacing)


def _lacing_text(lacing: tuple[int, int]) -> str:
    return f"{lacing[0]}x{lacing[1]}"
