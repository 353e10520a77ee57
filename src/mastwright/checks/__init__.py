"""Every check of the truck but the lift chains: the catalogue, its rules, the shop's limits."""

from mastwright.checks.answer import AnswerField, Answers
from mastwright.checks.catalogue import (
    Check,
    CheckKind,
    Severity,
    applicable,
    catalogue,
    equipment_tags,
    find_check,
)
from mastwright.checks.outcome import Information, Measured, NotJudged, Outcome, Seen
from mastwright.checks.shop_limits import NO_LIMITS, ShopLimit, ShopLimits, read_shop_limits
from mastwright.checks.truck import TruckFacts
from mastwright.checks.weigh import answer_fields, weigh

__all__ = [
    "NO_LIMITS",
    "AnswerField",
    "Answers",
    "Check",
    "CheckKind",
    "Information",
    "Measured",
    "NotJudged",
    "Outcome",
    "Seen",
    "Severity",
    "ShopLimit",
    "ShopLimits",
    "TruckFacts",
    "answer_fields",
    "applicable",
    "catalogue",
    "equipment_tags",
    "find_check",
    "read_shop_limits",
    "weigh",
]
