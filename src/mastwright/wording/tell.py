"""A judged visit as one plain document: every text ready to show, every figure with limit, source and doubt.

The document is what ``mastwright judge --json`` prints and what the papers are made from; its schema is
published in ``docs/schema/judgement.json``.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from mastwright import __version__
from mastwright.chains.conditions import conditions
from mastwright.checks import Severity, catalogue
from mastwright.quantity import Amount, Note, Source, UnitSystem, decimal_text
from mastwright.verdict import JudgedItem, JudgedVisit, OrderLine
from mastwright.visits import Refusal
from mastwright.wording.amounts import amount_text
from mastwright.wording.catalogue import say, words_of
from mastwright.wording.check_texts import check_text
from mastwright.wording.tell_chains import chain_documents
from mastwright.wording.teller import Document, Teller


def tell(judged: JudgedVisit, language: str = "en", system: UnitSystem = UnitSystem.METRIC) -> Document:
    """Return the judgement document of a visit.

    Parameters
    ----------
    judged
        By `mastwright.verdict.judge_visit`.
    language
        ``en`` or ``es``.
    system
        Units in which figures are shown; verdicts do not depend on it.
    """
    teller = Teller(judged, language, system)
    return {
        "format": "mastwright-judgement-1",
        "program_version": __version__,
        "language": language,
        "units": str(system),
        "visit": _visit(judged),
        "truck": _truck(teller),
        "verdict": str(judged.verdict),
        "verdict_text": teller.word("verdict", str(judged.verdict)),
        "may_work": judged.may_work,
        "may_work_until": None if judged.may_work_until is None else judged.may_work_until.isoformat(),
        "outcome_text": _outcome(teller),
        "reasons": _reasons(teller),
        "items": [teller.item(i) for i in judged.items],
        "chains": chain_documents(teller),
        "order": [_order_line(teller, n, line) for n, line in enumerate(judged.order, 1)],
        "refusals": [r for refusal in judged.visit.refusals for r in _refusals(teller, refusal)],
        "next_visit": _next_visit(teller),
        "legal": [
            _duty(teller, d.english if language == "en" else d.spanish, d.source) for d in judged.duties
        ],
        "not_looked_at": [
            {
                "id": c.id,
                "title": check_text(c.id, "title", language),
                "severity": teller.word("severity", str(c.severity)),
                "stops_the_truck": c.severity is Severity.OUT_OF_SERVICE,
            }
            for c in judged.not_looked_at
        ],
        "cautions": list(words_of("cautions", language)),
        "assumptions": [say(n, language, system) for n in judged.next_visit.assumptions],
        "policy": {
            "highest_doubt": judged.policy.highest_doubt,
            "discard_percent": float(judged.policy.discard.at),
            "discard_source": str(judged.policy.discard.source),
        },
        "book_head": None,
    }


def _visit(judged: JudgedVisit) -> Document:
    visit = judged.visit
    return {
        "id": visit.id,
        "date": visit.on.isoformat(),
        "technician": visit.technician,
        "customer": visit.customer,
        "site": visit.site,
        "country": visit.truck.facts.country,
        "note": visit.note,
    }


def _truck(teller: Teller) -> Document:
    truck = teller.judged.visit.truck
    facts = truck.facts

    def shown(value: Amount | None) -> str:
        return "" if value is None else amount_text(value, teller.system)

    capacity = None if facts.rated_capacity is None else Amount(facts.rated_capacity, "mass")
    centre = None if facts.load_centre is None else Amount(facts.load_centre, "length")
    height = None if truck.lift_height is None else Amount(truck.lift_height.canonical, "length")
    return {
        "id": truck.id,
        "kind": teller.word("kind", facts.kind),
        "power": teller.word("power", facts.power),
        "serial": truck.serial,
        "model": truck.model,
        "rated_capacity": shown(capacity),
        "load_centre": shown(centre),
        "lift_height": shown(height),
        "hours": f"{decimal_text(truck.hours, 0)} h",
        "environment": truck.environment,
        "mast_arrangement": "" if truck.arrangement is None else truck.arrangement.letter,
    }


def _outcome(teller: Teller) -> str:
    judged = teller.judged
    if not judged.may_work:
        return teller.word("outcome", "out-of-service")
    if judged.may_work_until is None:
        return teller.word("outcome", "may-work")
    return teller.word("outcome", "may-work-until").format(date=judged.may_work_until.isoformat())


def _reasons(teller: Teller) -> list[Document]:
    reasons = []
    for rank, item in enumerate(_named_once(teller.judged.dangers), 1):
        told = teller.item(item)
        # Of what was only seen, the remarks say what it was: which leak, of which fluid.
        seen = item.kind == "check" and item.limit is None
        said = [*_list(told["reasons"]), *(_list(told["notes"]) if seen else [])]
        sentences = " ".join(str(s) for s in said)
        reasons.append(
            {
                "rank": rank,
                **{
                    k: told[k]
                    for k in ("item", "key", "check", "title", "verdict", "verdict_text", "stops_the_truck")
                },
                "text": sentences,
                "if_ignored": teller.if_ignored(item),
                **{k: told[k] for k in ("action", "refused", "by")},
            }
        )
    return reasons


def _named_once(dangers: Iterable[JudgedItem]) -> list[JudgedItem]:
    """Leave out a set whose strands, edges and findings already say why."""
    items = list(dangers)
    told = {i.key for i in items if i.kind in {"elongation", "edge-wear", "finding"}}
    return [i for i in items if not (i.kind == "set" and i.key in told)]


def _list(value: object) -> list[object]:
    return value if isinstance(value, list) else []


def _order_line(teller: Teller, number: int, line: OrderLine) -> Document:
    chain = line.what == "leaf-chain"
    length = "" if line.length is None else amount_text(Amount(line.length, "length"), teller.system)
    missing = teller.word("order", "not-counted") if chain and line.pitches is None else ""
    return {
        "line": number,
        "what": _part(teller, line) if line.what == "part" else teller.word("order", line.what),
        "designation": "" if line.what == "part" else line.name,
        "detail": " ".join(say(n, teller.language, teller.system) for n in line.notes),
        "quantity": line.quantity,
        "unit": teller.word("order", "piece"),
        "pitches": line.pitches,
        "length_mm": None if line.length is None else float(line.length),
        "length_text": (length and f"{line.pitches} {teller.word('order', 'pitches')} = {length}") or missing,
        "ends": line.ends,
        "certificate": teller.word("order", "certificate") if chain else "",
        "because": "; ".join(dict.fromkeys(teller.name(i) for i in line.because)),
        "needed_by": teller.word("order", "before-work") if line.by is None else line.by.isoformat(),
    }


def _part(teller: Teller, line: OrderLine) -> str:
    item = line.because[0]
    if item.kind == "finding":
        return conditions()[item.name].order_part.of(teller.language)
    return teller.word("part", line.name)


def _refusals(teller: Teller, refusal: Refusal) -> list[Document]:
    hit = [
        i
        for i in teller.judged.items
        if i.refused
        and i.kind in {"set", "check"}
        and i.key == refusal.item
        and refusal.where in {"", i.where}
    ]
    documents = []
    for item in hit:
        told = teller.item(item)
        why = " ".join(_why_refused(teller, item))
        kind = "withdraw" if item.blocks else "replace" if teller.judged.may_work else "replace-beside"
        date = item.by.isoformat() if item.by is not None else ""
        documents.append(
            {
                "item": told["item"],
                "verdict": told["verdict"],
                "verdict_text": told["verdict_text"],
                "what": told["action"] or told["title"],
                "why_it_matters": f"{why} {teller.if_ignored(item)}".strip(),
                "may_not_do": teller.word("refusal", kind).format(date=date),
                "reason_given": refusal.reason,
                "initials": refusal.initials,
                "by": refusal.by,
                "at": refusal.at.isoformat(),
            }
        )
    return documents


def _why_refused(teller: Teller, item: JudgedItem) -> list[str]:
    """Return why a refused item matters: of a chain set also what condemned it."""
    notes = list(item.reasons)
    if item.kind == "set":
        notes += [
            n for i in teller.judged.dangers if i.key == item.key and i.kind != "set" for n in i.reasons[:1]
        ]
    return list(dict.fromkeys(say(n, teller.language, teller.system) for n in notes))


def _next_visit(teller: Teller) -> Document:
    due = teller.judged.next_visit
    bounds = [
        {"text": say(_named(teller, b.why), teller.language, teller.system), "by": b.by.isoformat()}
        for b in due.bounds
    ]
    return {
        "by": due.by.isoformat(),
        "hours_text": amount_text(Amount(due.service_hours, "hours"), teller.system),
        "because": say(_named(teller, due.because), teller.language, teller.system),
        "bounds": bounds,
    }


def _named(teller: Teller, why: Note) -> Note:
    """Return a reason for the next visit with a check's title for its id."""
    item = why.params.get("item")
    if item not in catalogue():
        return why
    return replace(why, params={"item": check_text(str(item), "title", teller.language)})


def _duty(teller: Teller, text: str, source: Source) -> Document:
    reference, evidence = teller.source(source)
    return {"text": text, "reference": reference, "evidence": evidence}
