"""Write docs/conditions.md: what can be seen on lift chains, and what follows from it."""

from __future__ import annotations

from pathlib import Path

from mastwright.chains import Condition, Consequence, conditions

HEAD = """# Conditions of lift chains

What a technician writes as `condition` in a `[[chain.finding]]`. Each has a small drawing that the report
shows beside it. Before you look: load off, mast and carriage mechanically secured, key out; never under
raised forks. The truck maker's manual, local law and competent persons come first.

This page is made from the table by `python docs/make_conditions.py`.
"""
WORDS = {
    Consequence.CONDEMN_SET: "condemns the whole set, now",
    Consequence.REPLACE_PART: "replace or put right before the truck works",
    Consequence.CLEAN_AND_LOOK_AGAIN: "clean, oil, look again; unsafe until then",
    Consequence.CORRECT: "put right by a date",
    Consequence.SHORTEN_INTERVAL: "look more often",
}


def conditions_page() -> str:
    """Return the page."""
    parts = [HEAD]
    for consequence in Consequence:
        parts.append(f"\n## {WORDS[consequence].capitalize()}\n")
        parts += [_entry(c) for c in conditions().values() if c.consequence is consequence]
    return "\n".join(parts) + "\n"


def _entry(condition: Condition) -> str:
    return (
        f"- `{condition.key}`: **{condition.title.en}**. {condition.look_for.en} "
        f"Usual cause: {condition.cause.en} If ignored: {condition.if_ignored.en} "
        f"To do: {condition.action.en} ({condition.source})"
    )


if __name__ == "__main__":
    (Path(__file__).parent / "conditions.md").write_text(conditions_page(), encoding="utf-8")
