"""The ``[[check]]`` tables of a visit file: which check of the truck, where, and what was found."""

from __future__ import annotations

from datetime import date

from mastwright.checks import AnswerField, TruckFacts, answer_fields, find_check, weigh
from mastwright.quantity import BadInput, Instruments, Quantity
from mastwright.visits.form import Form
from mastwright.visits.read_chains import read_photos
from mastwright.visits.visit import Answer, CheckEntry


def read_checks(
    top: Form, facts: TruckFacts, on: date | None, instruments: Instruments
) -> tuple[CheckEntry, ...]:
    """Read every check entry of the visit; problems are kept in the form."""
    entries: dict[tuple[str, str], CheckEntry] = {}
    for form in top.tables("check"):
        entry = _entry(form, facts, on, instruments)
        if entry is None:
            continue
        key = (entry.check.id, entry.where)
        if key in entries:
            form.refuse("id", "each check once, or `where` to tell them apart", " ".join(key).strip())
        entries[key] = entry
    return tuple(entries.values())


def _entry(form: Form, facts: TruckFacts, on: date | None, instruments: Instruments) -> CheckEntry | None:
    name = form.text("id", required=True)
    check = form.checked("id", lambda: find_check(name, "id")) if name else None
    if check is None:
        return None
    chosen = form.text("instrument") or check.instrument
    instrument = form.checked("instrument", lambda: instruments.find(chosen, check.reads))
    fields = answer_fields(check)
    answers = {f.name: a for f in fields if (a := _answer(form, f)) is not None}
    value = answers.get("value")
    written = f"{float(value.value):g} {value.unit.name}" if isinstance(value, Quantity) else str(value or "")
    entry_by = form.date("by")
    if entry_by and on and entry_by < on:
        form.refuse("by", f"the visit's {on} or later", entry_by)
    where, note, photos = form.text("where"), form.text("note"), read_photos(form)
    form.no_more()
    if instrument is None or form.faulty:
        return None
    try:
        weigh(check, answers, facts, (), instrument, on or date.max)
    except BadInput as bad:
        names = {f.name for f in fields}
        for problem in bad.problems:
            form.refuse(problem.field if problem.field in names else "value", problem.expected, problem.given)
        return None
    return CheckEntry(check, where, answers, written, instrument, note, entry_by, photos)


def _answer(form: Form, field: AnswerField) -> Answer | None:
    """Return the answer to one field, or None where it was left out or is wrong."""
    name, required = field.name, field.required
    if not required and not form.has(name):
        return None
    match field.kind:
        case "quantity":
            return form.quantity(name, field.dimension, required=required)
        case "quantities":
            return form.quantities(name, field.dimension) or None
        case "choice":
            return form.text(name, required=required, choices=field.choices) or None
        case "yes-no" if not form.has(name):
            form.refuse(name, "is needed: true or false")
            return None
        case "yes-no":
            return form.yes(name, otherwise=False)
        case "text":
            return form.text(name, required=required) or None
        case "date":
            return form.date(name, required=required)
        case _:
            return form.whole(name, required=required)
