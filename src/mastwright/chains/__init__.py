"""Lift chains: which one, how long when new and worn, what can be seen on it, how strong it is."""

from mastwright.chains.condition_drawings import draw_condition
from mastwright.chains.conditions import Condition, Consequence, conditions, find_condition
from mastwright.chains.edge_wear import EdgeWearLimit, edge_wear_limit
from mastwright.chains.elongation import (
    ElongationFigures,
    Growth,
    check_pitches,
    check_taut,
    elongation_figures,
    elongation_from_legs,
    elongation_from_length,
    growth_since_fitting,
)
from mastwright.chains.identify import Candidate, Identification, Observed, identification_document, identify
from mastwright.chains.lubrication import Oil, oiling_intervals, oiling_steps, oils, oils_for
from mastwright.chains.pair import PairLoad, load_of_pair, share_beside_worn, strand_stiffness
from mastwright.chains.self_check import Breach, check_table, relations
from mastwright.chains.spans import ShopCard, SpanCard, card_document, customary_spans, shop_card, span_card
from mastwright.chains.standard import LeafChain, find_chain, leaf_chains
from mastwright.chains.strength import Lifts, StrengthResult, residual_band, static_factor, static_strength

__all__ = [
    "Breach",
    "Candidate",
    "Condition",
    "Consequence",
    "EdgeWearLimit",
    "ElongationFigures",
    "Growth",
    "Identification",
    "LeafChain",
    "Lifts",
    "Observed",
    "Oil",
    "PairLoad",
    "ShopCard",
    "SpanCard",
    "StrengthResult",
    "card_document",
    "check_pitches",
    "check_table",
    "check_taut",
    "conditions",
    "customary_spans",
    "draw_condition",
    "edge_wear_limit",
    "elongation_figures",
    "elongation_from_legs",
    "elongation_from_length",
    "find_chain",
    "find_condition",
    "growth_since_fitting",
    "identification_document",
    "identify",
    "leaf_chains",
    "load_of_pair",
    "oiling_intervals",
    "oiling_steps",
    "oils",
    "oils_for",
    "relations",
    "residual_band",
    "share_beside_worn",
    "shop_card",
    "span_card",
    "static_factor",
    "static_strength",
    "strand_stiffness",
]
