"""May the truck work: conformity with doubt, the set rule, the roll-up, what to order, when to come again."""

from mastwright.verdict.chain_verdict import JudgedSet, JudgedSpan, judge_elongation, judge_set
from mastwright.verdict.check_verdict import JudgedCheck, judge_check
from mastwright.verdict.conformity import Conformity, conformity, guard_mark, probability_over
from mastwright.verdict.item import JudgedItem
from mastwright.verdict.judge import JudgedVisit, in_order_of_danger, judge_visit
from mastwright.verdict.legal import Duty, LegalFrame, legal_frame
from mastwright.verdict.next_visit import Bound, NextVisit, next_visit
from mastwright.verdict.order import OrderLine, order_lines
from mastwright.verdict.policy import Policy, shop_policy
from mastwright.verdict.strength_item import SetStrength, set_strength
from mastwright.verdict.verdicts import Verdict, worst
from mastwright.verdict.wear_place import SetWear, set_wear

__all__ = [
    "Bound",
    "Conformity",
    "Duty",
    "JudgedCheck",
    "JudgedItem",
    "JudgedSet",
    "JudgedSpan",
    "JudgedVisit",
    "LegalFrame",
    "NextVisit",
    "OrderLine",
    "Policy",
    "SetStrength",
    "SetWear",
    "Verdict",
    "conformity",
    "guard_mark",
    "in_order_of_danger",
    "judge_check",
    "judge_elongation",
    "judge_set",
    "judge_visit",
    "legal_frame",
    "next_visit",
    "order_lines",
    "probability_over",
    "set_strength",
    "set_wear",
    "shop_policy",
    "worst",
]
