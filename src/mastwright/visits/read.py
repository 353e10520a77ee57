"""A visit from the text of its TOML file; the fields are explained in ``examples/template.toml``."""

from __future__ import annotations

import re
import tomllib
from datetime import date
from fractions import Fraction

from mastwright.checks import TruckFacts, equipment_tags
from mastwright.mast import Arrangement, arrangement
from mastwright.quantity import BadInput, Instruments, Problem, Quantity, UnitSystem, common_instruments
from mastwright.visits.form import Form
from mastwright.visits.positions import Path, key_lines
from mastwright.visits.read_chains import read_chain_sets
from mastwright.visits.read_checks import read_checks
from mastwright.visits.visit import ChainSet, CheckEntry, MastUse, Policy, Refusal, Truck, Visit

_COUNTRIES = ("US", "GB", "DE", "FR", "JP", "ES", "MX", "CA", "AU", "other")
_KINDS = ("counterbalance", "reach", "stacker", "order-picker", "pallet")
_POWERS = ("electric", "lpg", "petrol", "diesel")
_DUTIES = ("normal", "severe", "extreme")
_MASSES = ("load", "carriage", "inner", "middle")
_LONGEST_SCHEDULE = 120  # months
_LINE = re.compile(r"\(at line (\d+), column (\d+)\)")


def read_visit(text: str, instruments: Instruments | None = None) -> Visit:
    """Read a visit as written down at the truck.

    Parameters
    ----------
    text
        Of the TOML file.
    instruments
        The shop's own; the common ones where None.

    Raises
    ------
    BadInput
        With every problem in the file: field, line, what was given, what would be right.
    """
    text = text.removeprefix("\ufeff")  # some editors begin a file with this mark
    try:
        table = tomllib.loads(text)
    except ValueError as error:
        raise BadInput(_syntax(str(error))) from None
    except RecursionError:
        raise BadInput(Problem("file", "", "valid TOML, not nested so deeply")) from None
    problems: list[tuple[Path, Problem]] = []
    visit = _visit(Form(table, (), problems), instruments or common_instruments())
    if problems or visit is None:
        raise BadInput(_with_lines(problems, text))
    return visit


def _syntax(message: str) -> Problem:
    place = _LINE.search(message)
    line = int(place[1]) if place else None
    return Problem("file", "", f"valid TOML: {_LINE.sub('', message).strip()}", line)


def _with_lines(problems: list[tuple[Path, Problem]], text: str) -> list[Problem]:
    lines = key_lines(text)

    def line_of(path: Path) -> int | None:
        while path and path not in lines:
            path = path[:-1]
        return lines.get(path)

    placed = [problem.at(line_of(path)) for path, problem in problems]
    return sorted(placed, key=lambda p: p.line or 0)


def _visit(top: Form, instruments: Instruments) -> Visit | None:
    head = top.table("visit", required=True)
    units = head.text("units", choices=tuple(UnitSystem)) or UnitSystem.METRIC
    for form in (top, head):
        form.system = UnitSystem(units)
    visit_id = head.text("id", required=True)
    if visit_id and not re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9._-]{0,59}", visit_id):
        head.refuse("id", "letters, digits, points and hyphens: the papers are named after it", visit_id)
    on = head.date("date", required=True)
    technician = head.text("technician", required=True)
    language = head.text("language", choices=("en", "es")) or "en"
    note = head.text("note")
    head.no_more()
    customer = top.table("customer", required=True)
    customer_name, site = customer.text("name", required=True), customer.text("site")
    country = customer.text("country", choices=_COUNTRIES) or "other"
    customer.no_more()
    truck_form = top.table("truck", required=True)
    truck = _truck(truck_form, country)
    if on and truck and truck.last_examination and truck.last_examination > on:
        truck_form.refuse("last_examination", f"at the latest the visit's {on}", truck.last_examination)
    previous_on, previous_hours = _previous(top.table("previous"), on, truck)
    policy = _policy(top.table("policy"))
    chains = read_chain_sets(top, instruments)
    # A file with a faulty head is still read to its end, so that every problem is told at once.
    facts = truck.facts if truck else TruckFacts("counterbalance", "electric")
    checks = read_checks(top, facts, on, instruments)
    refusals = _refusals(top, _places(chains, checks), on)
    top.no_more()
    if not chains and not checks and not top.spoilt("chain") and not top.spoilt("check"):
        top.refuse("chain", "at least one [[chain]] or [[check]]: there is nothing to judge")
    if truck is None or on is None:
        return None
    return Visit(
        id=visit_id,
        on=on,
        technician=technician,
        customer=customer_name,
        site=site,
        note=note,
        system=UnitSystem(units),
        language=language,
        truck=truck,
        previous_on=previous_on,
        previous_hours=previous_hours,
        policy=policy,
        chains=chains,
        checks=checks,
        refusals=refusals,
    )


def _truck(form: Form, country: str) -> Truck | None:
    kind = form.text("kind", required=True, choices=_KINDS)
    power = form.text("power", required=True, choices=_POWERS)
    capacity = form.quantity("rated_capacity", "mass")
    load_centre = form.quantity("load_centre", "length")
    battery = form.quantity("battery_voltage", "voltage")
    hours = form.quantity("hours", "hours", required=True)
    months = form.whole("service_months", least=1, most=_LONGEST_SCHEDULE)
    service_hours = form.quantity("service_hours", "hours")
    mast = form.table("mast")
    masses = {key: q.canonical for key in _MASSES if (q := mast.quantity(f"{key}_mass", "mass")) is not None}
    chosen = _arrangement(mast)
    use = _use(mast)
    mast.no_more()
    truck = Truck(
        id=form.text("id", required=True),
        facts=TruckFacts(
            kind=kind or "counterbalance",
            power=power or "electric",
            fitted=_fitted(form),
            country=country,
            rated_capacity=_value(capacity),
            load_centre=_value(load_centre),
            battery_voltage=_value(battery),
        ),
        model=form.text("model"),
        serial=form.text("serial"),
        lift_height=form.quantity("lift_height", "length"),
        hours=hours.canonical if hours else Fraction(0),
        duty=form.text("duty", choices=_DUTIES) or "normal",
        environment=form.text("environment"),
        lifts_people=form.yes("lifts_people", otherwise=False),
        arrangement=chosen,
        masses=masses,
        use=use,
        service_hours=_value(service_hours),
        service_months=months,
        last_examination=form.date("last_examination"),
    )
    form.no_more()
    return truck if kind and power and hours else None


def _use(form: Form) -> MastUse:
    """Return how the mast is built and used, for the map of where its chains wear."""
    levels = []
    for level in form.tables("level"):
        height = level.quantity("height", "length", required=True)
        share = level.quantity("share", "percent", required=True)
        level.no_more()
        if height is not None and share is not None:
            levels.append((height.canonical, share.canonical / 100))
    if sum(share for _, share in levels) > 1:
        form.refuse("level", "shares that add up to at most 100 %: the rest stays at travel height")
    use = MastUse(
        sheave=_value(form.quantity("sheave", "length")),
        free_lift=_value(form.quantity("free_lift", "length")),
        travel_height=_value(form.quantity("travel_height", "length")),
        work=_work(form),
        levels=tuple(levels),
    )
    if use.sheave == 0:
        form.refuse("sheave", "the running diameter of the rim, above 0", "0")
    return use


def _work(form: Form) -> str:
    if not form.has("work"):
        return ""
    from mastwright.mast.duty import described_duties  # noqa: PLC0415  it brings numpy, which few visits need

    return form.text("work", choices=described_duties())


def _fitted(form: Form) -> frozenset[str]:
    """Return what is fitted; a mistyped tag would silently hide the checks that depend on it."""
    fitted, known = form.texts("fitted"), equipment_tags()
    for tag in fitted:
        if tag not in known:
            form.refuse("fitted", f"equipment that a check depends on: {', '.join(known)}", tag)
    return frozenset(fitted)


def _value(quantity: Quantity | None) -> Fraction | None:
    return None if quantity is None else quantity.canonical


def _arrangement(form: Form) -> Arrangement | None:
    letter = form.text("arrangement")
    return form.checked("arrangement", lambda: arrangement(letter, "arrangement")) if letter else None


def _previous(form: Form, on: date | None, truck: Truck | None) -> tuple[date | None, Fraction | None]:
    before, meter = form.date("date"), form.quantity("hours", "hours")
    if before and on and before >= on:
        form.refuse("date", f"a date before the visit's {on}", before)
    if meter and truck and meter.canonical > truck.hours:
        right = f"at most the {float(truck.hours):g} h of this visit; if the meter was replaced, leave it out"
        form.refuse("hours", right, float(meter.canonical))
    form.no_more()
    return before, _value(meter)


def _policy(form: Form) -> Policy:
    discard = form.quantity("discard_at", "percent")
    doubt = form.quantity("highest_doubt", "percent")
    form.no_more()
    return Policy(_value(discard), None if doubt is None else float(doubt.canonical / 100))


def _places(chains: tuple[ChainSet, ...], checks: tuple[CheckEntry, ...]) -> dict[str, set[str]]:
    """Return what can be refused: every chain set and check of the visit, and its places."""
    places: dict[str, set[str]] = {c.name: set(c.strands) for c in chains}
    for entry in checks:
        places.setdefault(entry.check.id, set()).add(entry.where)
    return places


def _refusals(top: Form, places: dict[str, set[str]], on: date | None) -> tuple[Refusal, ...]:
    refusals = []
    for form in top.tables("refusal"):
        item = form.text("item", required=True)
        where = form.text("where")
        if item and item not in places:
            form.refuse("item", f"a chain set or check of this visit: {', '.join(sorted(places))}", item)
        elif item and where and where not in places[item]:
            known = ", ".join(sorted(p for p in places[item] if p)) or "nothing: it has no place of its own"
            form.refuse("where", f"a place that {item} was written with: {known}", where)
        refusal = Refusal(
            item=item,
            where=where,
            reason=form.text("reason"),
            by=form.text("by", required=True),
            initials=form.text("initials", required=True),
            at=form.date("date") or on or date.min,
        )
        form.no_more()
        refusals.append(refusal)
    return tuple(refusals)
