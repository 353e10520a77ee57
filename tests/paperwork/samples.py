"""Judgement documents to print: an invented shop, invented trucks, invented people (demo data)."""

from __future__ import annotations

import io
import zlib
from copy import deepcopy
from typing import Any

Document = dict[str, Any]

_GROUPS = (
    ("Papers and plate", "CAP"),
    ("Cold walk-round", "SAF"),
    ("Levels and battery", "BAT"),
    ("Forks, carriage and mast", "MST"),
    ("Power on, standing", "ELE"),
    ("Driving, no load", "BRK"),
)


def item(number: int = 1, **changed: Any) -> Document:
    """Return one item of a judgement, fit unless changed."""
    group, letters = _GROUPS[(number - 1) * len(_GROUPS) // 60 % len(_GROUPS)]
    base: Document = {
        "item": f"{letters.lower()}-{number:02d}",
        "check": f"{letters}-{number:02d}",
        "title": f"Invented check {number}",
        "group": group,
        "verdict": "fit",
        "verdict_text": "fit",
        "own_verdict": "fit",
        "own_verdict_text": "fit",
        "severity": "repair",
        "reading": f"{40 + number}.5 mm",
        "uncertainty": "0.1 mm",
        "limit": f"at least {30 + number} mm",
        "limit_source": "demo limit of an invented shop",
        "limit_evidence": "demo data",
        "probability_over_limit": 0.0001,
        "probability_text": "below 0.1 %",
        "method": "calliper",
        "reasons": [],
        "notes": [],
        "action": "",
        "refused": False,
        "by": None,
        "photos": [],
    }
    return {**base, **changed}


def span(start: int, elongation: float, verdict: str, *, worst: bool = False, pitches: int = 16) -> Document:
    """Return one measured span of a strand of 19.05 mm pitch."""
    length = pitches * 19.05 * (1 + elongation / 100)
    return {
        "from_pitch": start,
        "pitches": pitches,
        "elongation_percent": elongation,
        "uncertainty_percent": 0.08,
        "length_text": f"{length:.1f} mm",
        "text": f"new {pitches * 19.05:.1f} mm",
        "worst": worst,
        "verdict": verdict,
    }


def sound_truck() -> Document:
    """Return a truck with nothing against it: 60 checks, two strands, no order."""
    items = [item(n) for n in range(1, 61)]
    items[20]["photos"] = [{"file": "fork heel.jpg", "caption": "Left fork heel, cleaned"}]
    items[26]["notes"] = ["Measured between mast stages, oil warm."]
    strand: Document = {
        "strand": "left",
        "title": "Left strand",
        "verdict": "fit",
        "verdict_text": "fit",
        "own_verdict": "fit",
        "pitches_total": 124,
        "spans": [span(2, 0.71, "fit"), span(18, 0.94, "fit", worst=True), span(34, 0.62, "fit")],
        "edge_wear_text": "18.0 mm of 18.1 mm plate height: 0.6 % worn, limit 5 %",
        "growth_text": "0.60 % since the first reading at fitting",
        "conditions": [],
    }
    right = {**deepcopy(strand), "strand": "right", "title": "Right strand"}
    right["spans"] = [span(2, 0.66, "fit"), span(18, 0.90, "fit", worst=True)]
    return {
        "format": "mastwright-judgement-1",
        "language": "en",
        "units": "metric",
        "program_version": "0.1.0",
        "visit": {
            "id": "V-2026-0107",
            "date": "2026-03-12",
            "technician": "Ines Halvorsen",
            "customer": "Brackwater Cold Store",
            "site": "Hall 3, Quay Road",
            "country": "GB",
            "note": "Truck washed by the customer before the visit.",
        },
        "truck": {
            "id": "Truck 14",
            "kind": "electric counterbalance truck",
            "power": "lead-acid battery, 48 V",
            "serial": "DEMO-48-0014",
            "model": "invented model C20",
            "rated_capacity": "2 000 kg",
            "load_centre": "500 mm",
            "lift_height": "4 500 mm",
            "hours": "6 412 h",
            "environment": "cold store, two shifts",
            "mast_arrangement": "B, two stages, no free lift",
        },
        "verdict": "fit",
        "verdict_text": "fit",
        "may_work": True,
        "may_work_until": "2026-06-12",
        "outcome_text": "May work until 2026-06-12",
        "reasons": [],
        "items": items,
        "chains": [
            {
                "set": "main",
                "title": "Main lift chains",
                "verdict": "fit",
                "verdict_text": "fit",
                "designation": "LH1234 / BL634",
                "pitch_mm": 19.05,
                "strands": [strand, right],
                "strength": [
                    "Static factor 5.41 on the plate load; strength from memory: ask for the certificate."
                ],
                "measured_how": "rule over 16 pitches, chain taut under the empty carriage",
                "limit_text": "3 % replace at once, 2 % plan to replace",
                "limit_source": "US Army TM 10-3930-671-24, a chain examiner's guidance",
            }
        ],
        "order": [],
        "refusals": [],
        "next_visit": {
            "by": "2026-06-12",
            "hours_text": "about 430 h from now",
            "because": "The three-month check comes before any item's wear does.",
            "bounds": [
                {"text": "Planned maintenance every 3 months", "by": "2026-06-12"},
                {"text": "Main lift chains reach 2 %", "by": "2028-01-30"},
                {"text": "Manual of the truck's maker not at hand", "by": None},
            ],
        },
        "legal": [
            {
                "text": "Lifting equipment is thoroughly examined at least every 12 months.",
                "reference": "LOLER 1998, regulation 9",
                "evidence": "as quoted",
            }
        ],
        "not_looked_at": [
            {"id": "MST-05", "title": "Lowering speed with rated load", "severity": "out of service"},
            {"id": "HYD-07", "title": "Oil cleanliness", "severity": "monitor"},
        ],
        "cautions": [
            "Load off, mast lowered or mechanically secured before a hand goes into it.",
            "Never stand under raised forks.",
        ],
        "assumptions": ["Chance limit for fit: 2.5 %.", "Maker's limits were not supplied."],
        "book_head": None,
    }


def condemned_truck() -> Document:
    """Return a truck out of service: a worn set, a turned pin, a refused withdrawal, an order."""
    document = sound_truck()
    main = document["chains"][0]
    left, right = main["strands"]
    left["spans"] = [
        span(2, 2.21, "replace"),
        span(10, 2.74, "remeasure"),
        span(18, 3.12, "withdraw", worst=True),
        span(34, 1.64, "watch"),
        span(50, 0.72, "fit"),
    ]
    left.update(verdict="withdraw", verdict_text="withdraw", own_verdict="withdraw")
    left["conditions"] = [
        {"key": "turned-pin", "title": "Turned pin at pitch 23"},
        {"key": "pitting-rust", "title": "Pitting rust in the joints"},
    ]
    right.update(verdict="withdraw", verdict_text="withdraw", own_verdict="watch")
    right["spans"] = [span(2, 1.40, "watch"), span(18, 1.77, "watch", worst=True, pitches=32)]
    main.update(verdict="withdraw", verdict_text="withdraw")
    items = document["items"]
    items[30].update(
        title="Main lift chains, elongation",
        verdict="withdraw",
        verdict_text="withdraw",
        own_verdict="withdraw",
        own_verdict_text="withdraw",
        reading="3.12 %",
        uncertainty="± 0.08 %",
        limit="3 %, replace at once",
        limit_source="US Army TM 10-3930-671-24, a chain examiner's guidance",
        limit_evidence="read",
        probability_over_limit=0.93,
        probability_text="93 %",
        method="rule over 16 pitches",
        reasons=[
            "Left strand at 3.12 % over pitches 18 to 34: past 3 %.",
            "One condemned strand condemns the set.",
        ],
        notes=["Plate edges are within their limit."],
        action="Replace both strands with new anchor pins, equalise, take the first reading.",
        refused=True,
        photos=[
            {"file": "chain-left.png", "caption": "Left strand, pitches 18 to 34 under the rule"},
            {"file": "pin.png", "caption": "Turned pin at pitch 23: the flats no longer stand in line"},
            {"file": "lost.png", "caption": "Right strand"},
        ],
    )
    items[31].update(
        item="mst-32",
        verdict="withdraw",
        verdict_text="withdraw",
        own_verdict="watch",
        own_verdict_text="watch",
    )
    items[44].update(
        title="Parking brake on a 15 % grade",
        verdict="replace",
        verdict_text="replace by 2026-04-12",
        own_verdict="replace",
        own_verdict_text="replace",
        action="Fit new linings.",
        by="2026-04-12",
    )
    items[12].update(
        verdict="not judged",
        verdict_text="not judged",
        own_verdict="not judged",
        own_verdict_text="not judged",
        limit="maker's limit missing",
        limit_source="",
        limit_evidence="",
        probability_text="",
        probability_over_limit=None,
    )
    document.update(
        verdict="withdraw",
        verdict_text="withdraw",
        may_work=False,
        may_work_until=None,
        outcome_text="Out of service",
        reasons=[
            {
                "rank": 1,
                "item": items[30]["item"],
                "check": "MST-31",
                "verdict": "withdraw",
                "verdict_text": "withdraw",
                "text": "Main lift chains: left strand stretched 3.12 %, limit 3 %",
                "if_ignored": "A worn chain can part without warning and drop load and carriage.",
                "action": "Replace both strands with new anchor pins before the truck lifts again.",
                "refused": True,
                "by": None,
            },
            {
                "rank": 2,
                "item": "main-left-turned-pin",
                "check": "chain",
                "verdict": "withdraw",
                "verdict_text": "withdraw",
                "text": "Main lift chains: turned pin in the left strand",
                "if_ignored": "The press fit is lost; the pin can walk out of its plate.",
                "action": "Replace the set. Never drive a pin back.",
                "refused": False,
                "by": None,
            },
            {
                "rank": 3,
                "item": items[44]["item"],
                "check": "BRK-45",
                "verdict": "replace",
                "verdict_text": "replace",
                "text": "Parking brake slips on the grade under a representative load",
                "if_ignored": "The parked truck can roll away.",
                "action": "Fit new linings and test again on the site's steepest grade.",
                "refused": False,
                "by": "2026-04-12",
            },
        ],
        order=[
            {
                "line": 1,
                "what": "Leaf chain",
                "designation": "LH1234 / BL634",
                "detail": "whole strands of one make for one set",
                "quantity": 2,
                "unit": "pieces",
                "length_text": "124 pitches, 2 362.2 mm",
                "ends": "one inner, one outer",
                "certificate": "minimum breaking load and proof load of each strand",
                "because": "main lift chains past 3 %",
                "needed_by": "before work",
            },
            {
                "line": 2,
                "what": "Anchor pin with cotter",
                "designation": "for LH1234",
                "detail": "",
                "quantity": 4,
                "unit": "pieces",
                "length_text": "",
                "ends": "",
                "certificate": "",
                "because": "new pins go with every new chain",
                "needed_by": "before work",
            },
            {
                "line": 3,
                "what": "Brake lining set",
                "designation": "",
                "detail": "parking brake",
                "quantity": 1,
                "unit": "set",
                "length_text": "",
                "ends": "",
                "certificate": "",
                "because": "parking brake slips",
                "needed_by": "2026-04-12",
            },
        ],
        refusals=[
            {
                "item": items[30]["item"],
                "verdict_text": "withdraw",
                "what": "Replacement of the main lift chains",
                "why_it_matters": "A worn chain can part without warning and drop load and carriage.",
                "may_not_do": "Start, drive or lift until both strands are replaced.",
                "reason_given": "Peak season; the customer wants to wait until April.",
                "initials": "M.O.",
                "by": "Marit Oduya, hall manager",
                "at": "2026-03-12 14:20",
            },
            {
                "item": items[44]["item"],
                "verdict_text": "replace",
                "what": "New linings for the parking brake",
                "why_it_matters": "The parked truck can roll away.",
                "may_not_do": "Park on a grade.",
                "reason_given": "",
                "initials": "",
                "by": "",
                "at": "",
            },
        ],
        book_head="3f6c1b9e0a7d52c48e11",
    )
    document["visit"].update(id="V-2026-0108")
    document["truck"].update(id="Truck 9")
    document["next_visit"] = {
        "by": None,
        "hours_text": "after repair",
        "because": "The truck comes back when the chains are fitted.",
        "bounds": [],
    }
    return document


def spanish_inch_truck() -> Document:
    """Return a truck that may work until a date, in Spanish and inches."""
    document = sound_truck()
    document.update(
        language="es",
        units="inch",
        verdict="replace",
        verdict_text="sustituir antes del 2026-05-02",
        may_work_until="2026-05-02",
        outcome_text="Puede trabajar hasta el 2026-05-02",
        items=[
            item(
                n,
                title=f"Comprobación inventada {n}",
                group="Recorrido en frío" if n < 9 else "Horquillas y mástil",
                verdict_text="apto",
                own_verdict_text="apto",
                reading="1 37/64 in",
                uncertainty="1/64 in",
                limit="al menos 1 27/64 in",
                limit_source="límite de muestra de un taller inventado",
                limit_evidence="datos de muestra",
                probability_text="menos del 0.1 %",
                method="calibre",
            )
            for n in range(1, 19)
        ],
        reasons=[
            {
                "rank": 1,
                "item": "forks",
                "check": "FRK-08",
                "verdict": "replace",
                "verdict_text": "sustituir",
                "text": "Horquilla izquierda gastada en el talón: queda el 91 % del espesor",
                "if_ignored": "La horquilla puede doblarse o romperse bajo carga.",
                "action": "Pedir un par de horquillas y montarlo antes de la fecha.",
                "refused": False,
                "by": "2026-05-02",
            }
        ],
        order=[
            {
                "line": 1,
                "what": "Par de horquillas",
                "designation": "",
                "detail": "clase 2, hoja de 42 in",
                "quantity": 1,
                "unit": "par",
                "length_text": "42 in",
                "ends": "",
                "certificate": "marca de capacidad de cada horquilla",
                "because": "desgaste del talón",
                "needed_by": "2026-05-02",
            }
        ],
        next_visit={
            "by": "2026-05-02",
            "hours_text": "unas 300 h",
            "because": "La fecha de las horquillas va primero.",
            "bounds": [],
        },
        legal=[
            {
                "text": "Una carretilla con defectos se retira del servicio hasta que se repare.",
                "reference": "29 CFR 1910.178(p)(1)",
                "evidence": "leído",
            }
        ],
        cautions=[
            "Sin carga y con el mástil bajado o asegurado antes de meter la mano.",
            "Nunca debajo de horquillas levantadas.",
        ],
        assumptions=["Probabilidad admitida para apto: 2.5 %."],
        not_looked_at=[{"id": "BAT-05", "title": "Densidad del electrolito", "severity": "reparar"}],
    )
    document["visit"].update(
        id="V-2026-0109",
        customer="Talleres Río Quieto",
        site="Nave 2",
        country="US",
        note="",
        technician="Noa Ferrán",
    )
    document["truck"].update(
        id="Carretilla 3",
        kind="carretilla contrapesada eléctrica",
        power="batería de 48 V",
        model="modelo inventado C20",
        rated_capacity="4 000 lb",
        load_centre="24 in",
        lift_height="188 in",
        hours="2 208 h",
        environment="almacén seco",
        mast_arrangement="B, dos etapas",
    )
    chain = document["chains"][0]
    chain.update(
        title="Cadenas principales",
        verdict_text="apto",
        strength=["Factor estático 5.41 con la carga de la placa."],
        measured_how="regla sobre 16 pasos, cadena tensa",
        limit_text="3 % sustituir ya, 2 % planear la sustitución",
        limit_source="US Army TM 10-3930-671-24",
    )
    for strand, side in zip(chain["strands"], ("izquierdo", "derecho"), strict=True):
        strand.update(
            title=f"Ramal {side}",
            verdict_text="apto",
            edge_wear_text="",
            growth_text="0.60 % desde el montaje",
        )
        for one in strand["spans"]:
            one.update(length_text="12 7/64 in", text="nueva 12 in")
    return document


def picture() -> bytes:
    """Return a small PNG with grey bands."""
    width, height = 240, 160
    rows = b"".join(
        b"\x00" + bytes((40 * (x // 24 + y // 20)) % 256 for x in range(width)) for y in range(height)
    )
    out = io.BytesIO(b"\x89PNG\r\n\x1a\n")
    out.seek(0, io.SEEK_END)
    header = width.to_bytes(4) + height.to_bytes(4) + b"\x08\x00\x00\x00\x00"
    for kind, data in ((b"IHDR", header), (b"IDAT", zlib.compress(rows)), (b"IEND", b"")):
        out.write(len(data).to_bytes(4) + kind + data + zlib.crc32(kind + data).to_bytes(4))
    return out.getvalue()


def condemned_photos() -> dict[str, bytes]:
    """Return the pictures of `condemned_truck` that are at hand; one is missing."""
    return {"chain-left.png": picture(), "pin.png": picture()}
