"""One judged visit's words and figures: in one language and one system of units."""

from __future__ import annotations

from mastwright.chains.conditions import conditions
from mastwright.quantity import Amount, Limit, Source, UnitSystem
from mastwright.verdict import JudgedItem, JudgedVisit, Verdict
from mastwright.wording.amounts import amount_text, doubt_text, percent_text
from mastwright.wording.catalogue import say, word
from mastwright.wording.check_texts import check_text

Document = dict[str, object]


class Teller:
    """Puts one judged visit into one language and one system of units."""

    def __init__(self, judged: JudgedVisit, language: str, system: UnitSystem) -> None:
        self.judged = judged
        self.language = language
        self.system = system

    def word(self, group: str, key: str) -> str:
        """Return a word of the catalogue."""
        return word(group, key, self.language)

    def source(self, source: Source) -> tuple[str, str]:
        """Return a source and its evidence word in the reader's language."""
        return source.text, self.word("evidence", str(source.evidence))

    def where(self, item: JudgedItem) -> str:
        """Return which strand or fork an item is about."""
        if not item.where:
            return ""
        return self.word("where" if item.kind == "check" else "strand", item.where)

    def title(self, item: JudgedItem) -> str:
        """Return what an item was checked for."""
        if item.kind == "check":
            return check_text(item.name, "title", self.language)
        if item.kind == "finding":
            return conditions()[item.name].title.of(self.language)
        return self.word("check", item.kind)

    def name(self, item: JudgedItem) -> str:
        """Return what an item is: the chain set and strand, or the check and where."""
        base = self.title(item) if item.kind == "check" else self.word("set", item.key)
        where = self.where(item)
        return f"{base}, {where}" if where else base

    def if_ignored(self, item: JudgedItem) -> str:
        """Return what an item can lead to."""
        if item.kind == "check":
            return check_text(item.name, "if_ignored", self.language)
        if item.kind == "finding":
            return conditions()[item.name].if_ignored.of(self.language)
        return self.word("ignored", item.kind)

    def action(self, item: JudgedItem) -> str:
        """Return what to do about an item."""
        if item.verdict in {Verdict.FIT, Verdict.NOT_JUDGED} and item.kind != "elongation":
            return ""
        if item.kind == "check":
            if item.verdict is Verdict.REMEASURE:
                return self.word("action", "remeasure")
            return check_text(item.name, "action", self.language)
        if item.kind == "finding":
            return conditions()[item.name].action.of(self.language)
        if item.kind == "strength" or item.verdict is Verdict.FIT:
            return ""
        return self.word("action", f"elongation-{str(item.verdict).replace(' ', '-')}")

    def limit(self, limit: Limit | None) -> str:
        """Return a limit with its unit."""
        return "" if limit is None else amount_text(Amount(limit.at, limit.dimension), self.system)

    def item(self, item: JudgedItem) -> Document:
        """Return one item as the document shows it."""
        source, evidence = ("", "") if item.limit is None else self.source(item.limit.source)
        if item.kind == "finding":
            source, evidence = self.source(conditions()[item.name].source)
        return {
            "item": self.name(item),
            "key": item.key,
            "check": item.name if item.kind in {"check", "finding"} and item.name else f"chain-{item.kind}",
            "title": self.title(item),
            "group": self.word("system", item.system),
            "verdict": str(item.verdict),
            "verdict_text": self.word("verdict", str(item.verdict)),
            "own_verdict": str(item.own_verdict),
            "own_verdict_text": self.word("verdict", str(item.own_verdict)),
            "severity": str(item.severity),
            "stops_the_truck": item.blocks,
            **self._reading(item),
            "limit": self.limit(item.limit),
            "limit_value": None if item.limit is None else float(item.limit.at),
            "limit_kind": "" if item.limit is None else str(item.limit.kind),
            "limit_source": source,
            "limit_evidence": evidence,
            "probability_over_limit": item.probability,
            "probability_text": self._probability(item),
            "reasons": [say(n, self.language, self.system) for n in item.reasons],
            "notes": [
                *(say(n, self.language, self.system) for n in item.notes),
                *([item.free_text] if item.free_text else []),
            ],
            "action": self.action(item),
            "refused": item.refused,
            "by": None if item.by is None else item.by.isoformat(),
            "photos": [{"file": p.file, "caption": p.caption or self.name(item)} for p in item.photos],
        }

    def _reading(self, item: JudgedItem) -> Document:
        reading = item.reading
        if reading is None:
            return {
                "reading": item.written,
                "reading_value": None,
                "unit": "",
                "uncertainty": "",
                "method": "",
            }
        shown = amount_text(Amount(reading.value, reading.dimension), self.system)
        return {
            "reading": shown if item.written in {"", shown} else f"{shown} ({item.written})",
            "reading_value": float(reading.value),
            "unit": reading.dimension,
            "uncertainty": doubt_text(reading.standard_uncertainty, reading.dimension, self.system)
            if reading.standard_uncertainty
            else "",
            "method": self.word("instrument", reading.instrument.name),
        }

    def _probability(self, item: JudgedItem) -> str:
        if item.probability is None or item.reading is None:
            return ""
        if (
            item.limit is not None
            and item.limit.reached_by(item.reading.value)
            and item.reading.low is not None
        ):
            return self.word("doubt", "over")
        key = "at-most" if item.reading.low is None else "about"
        return self.word("doubt", key).format(probability=percent_text(item.probability))
