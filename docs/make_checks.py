"""Write docs/checks.md: every check of the truck, with its limit, who sets it and how that is known."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from mastwright.checks import AnswerField, Check, CheckKind, answer_fields, catalogue
from mastwright.quantity import canonical_unit, decimal_text, written_text

HEAD = """# Checks

What a technician writes as `id` in a `[[check]]`, in walking order. Load off, mast and carriage
mechanically secured, key out; never under raised forks. The truck maker's manual, local law and competent
persons come first.

A check whose limit is **the maker's** is judged only with the maker's figure in a limits folder
([visit-file.md](visit-file.md)); without one the reading is kept and the verdict is `not judged`. Where the
maker's or the shop's figure is tighter than the one here, the tighter governs. *From* and *up to* include the
figure itself; *above* and *below* do not. Fields in square brackets may be left out. `worse_case = true` says
that the worse case was seen, which puts the truck out of service.

This page is made from the catalogue by `python docs/make_checks.py`.
"""
COLUMNS = (
    "id", "title", "stage", "trucks", "fields", "limit", "severity", "worse case", "source", "evidence",
)  # fmt: skip

# Of what a limit is a share, and how it is worked out where no one figure holds.
_SHARE_OF = {
    "fork_thickness": "original thickness",
    "thickness_forecast": "original thickness",
    "fork_strength": "strength as new",
    "tip_difference": "blade length",
    "fork_capacity": "rated capacity",
    "proof_load": "marked capacity",
}
_WORKED_OUT = {
    "battery_insulation": "from {limit} for each volt of the battery, and from {high}",
    "leak_class": "up to class {number}",
    "stopping_distance": "worked out from the speed",
    "brake_drag": "worked out from the speed",
    "electrolyte_temperature": "by state of the battery",
    "fork_angle_gap": "up to {limit} at a height of {high}",
    "fork_angle": "up to {limit} away from the original angle",
    "voltage_density": "up to {limit} away from density plus {high}",
    "work_air": "up to {limit} in US; elsewhere the local law's",
    "lift_drift": "up to {limit} in 10 minutes",
    "tilt_drift": "up to {limit} in 10 minutes",
}
_LOWER = {
    "at_least", "share_at_least", "cell_voltage", "fork_thickness", "thickness_forecast", "fork_strength",
    "fork_capacity", "proof_load",
}  # fmt: skip


def checks_page() -> str:
    """Return the page."""
    lines = ["| " + " | ".join(COLUMNS) + " |", "| " + " | ".join("---" for _ in COLUMNS) + " |"]
    lines += ["| " + " | ".join(_cell(text) for text in _row(check)) + " |" for check in catalogue().values()]
    return HEAD + "\n" + "\n".join(lines) + "\n"


def limit_text(check: Check) -> str:
    """Return the limit of a check in words, with its unit."""
    if check.kind is CheckKind.MAKER and check.limit is None:
        return "the maker's"
    if check.rule == "observe":
        return "in order or not"
    if check.rule in _WORKED_OUT:
        figures = {"limit": check.limit, "high": check.limit_high}
        shown = {name: _shown(value, check) for name, value in figures.items() if value is not None}
        return _WORKED_OUT[check.rule].format(**shown, number=check.limit)
    if check.limit is None:
        return "for information" if check.kind is CheckKind.INFORMATION else "the local rule"
    words = {True: {True: "from", False: "above"}, False: {True: "up to", False: "below"}}
    side = words[check.rule in _LOWER][check.mark_allowed]
    whole = _SHARE_OF.get(check.rule) or check.reference.replace("_", " ")
    if whole:
        return f"{side} {decimal_text(100 * check.limit, 1).removesuffix('.0')} % of {whole}"
    return f"{side} {_shown(check.limit, check)}"


def _shown(value: Fraction, check: Check) -> str:
    return written_text(value, canonical_unit(check.reads))


def _row(check: Check) -> tuple[str, ...]:
    every = frozenset().union(*(c.trucks for c in catalogue().values()))
    where = f" ({', '.join(sorted(check.countries))})" if check.countries else ""
    needs = f", with {', '.join(sorted(check.needs))}" if check.needs else ""
    return (
        check.id,
        check.title + where,
        str(check.stage),
        ("all" if check.trucks == every else ", ".join(sorted(check.trucks))) + needs,
        ", ".join(_field(field) for field in answer_fields(check)),
        limit_text(check),
        str(check.severity),
        check.worse_case,
        check.source.text,
        str(check.source.evidence),
    )


def _field(field: AnswerField) -> str:
    choices = f" ({', '.join(field.choices)})" if field.choices else ""
    return f"`{field.name}`{choices}" if field.required else f"[`{field.name}`]{choices}"


def _cell(text: str) -> str:
    return text.replace("|", "\\|").replace("\n", " ")


if __name__ == "__main__":
    (Path(__file__).parent / "checks.md").write_text(checks_page(), encoding="utf-8")
