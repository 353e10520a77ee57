"""Rules about capacity: what the moment balance says beside the plate, which alone counts."""

from __future__ import annotations

from fractions import Fraction

from mastwright.checks.answer import AnswerField
from mastwright.checks.capacity import at_load_centre, standard_load_centres, with_attachment
from mastwright.checks.case import Case
from mastwright.checks.catalogue import Check
from mastwright.checks.figures import constant
from mastwright.checks.outcome import Information, NotJudged, Outcome
from mastwright.checks.rule import Rule, quantity
from mastwright.quantity import Amount, Note


def _plate(case: Case) -> tuple[Fraction, Fraction] | None:
    capacity, centre = case.facts.rated_capacity, case.facts.load_centre
    return None if capacity is None or centre is None else (capacity, centre)


def _load_centre(case: Case) -> Outcome:
    plate = _plate(case)
    if plate is None:
        return NotJudged(Note("plate-capacity-missing"))
    wanted = case.answers.value("new_load_centre")
    left = at_load_centre(*plate, wanted, case.answers.value("axle_to_fork_face"))
    params = {"mass": Amount(left, "mass"), "centre": Amount(wanted, "length")}
    return Information((Note("capacity-at", params), Note("plate-governs")))


def _attachment(case: Case) -> Outcome:
    plate = _plate(case)
    if plate is None:
        return NotJudged(Note("plate-capacity-missing"))
    answers = case.answers
    new_centre = answers.optional("new_load_centre")
    left = with_attachment(
        *plate,
        answers.value("axle_to_fork_face"),
        answers.value("attachment_mass"),
        answers.value("attachment_centre"),
        answers.value("thrust_out"),
        plate[1] if new_centre is None else new_centre,
    )
    return Information(
        (Note("capacity-with-attachment", {"mass": Amount(left, "mass")}), Note("plate-governs"))
    )


def _standard_load_centre(case: Case) -> Outcome:
    plate = _plate(case)
    if plate is None:
        return NotJudged(Note("plate-capacity-missing"))
    centres = standard_load_centres(plate[0])
    near = constant("load_centre_nearness")
    code = "load-centre-usual" if any(abs(plate[1] - c) <= near for c in centres) else "load-centre-unusual"
    usual = " / ".join(f"{float(c):g}" for c in centres)
    return Information((Note(code, {"centre": Amount(plate[1], "length"), "usual": f"{usual} mm"}),))


def _none(_: Check) -> tuple[AnswerField, ...]:
    return ()


_AXLE = quantity("axle_to_fork_face", "length")

LOAD_CENTRE = Rule(lambda _: (quantity("new_load_centre", "length"), _AXLE), _load_centre)
ATTACHMENT = Rule(
    lambda _: (
        _AXLE,
        quantity("attachment_mass", "mass"),
        quantity("attachment_centre", "length"),
        quantity("thrust_out", "length"),
        quantity("new_load_centre", "length", required=False),
    ),
    _attachment,
)
STANDARD_LOAD_CENTRE = Rule(_none, _standard_load_centre)
