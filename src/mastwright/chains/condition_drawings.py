"""A small drawing of each condition, the fault pointed out, without words inside."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape, quoteattr

from mastwright.chains import drawings_of_fittings as fittings
from mastwright.chains import drawings_of_links as links
from mastwright.chains.conditions import find_condition

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

_WIDTH, _HEIGHT = 240, 140

_DRAWINGS: Mapping[str, Callable[[], list[str]]] = MappingProxyType(
    {
        "turned-pin": links.turned_pin,
        "protruding-pin": links.protruding_pin,
        "worn-pin-heads": links.worn_pin_heads,
        "side-wear": links.side_wear,
        "tight-joint-dirt": links.tight_joint_dirt,
        "tight-joint-rust": links.tight_joint_rust,
        "fretting-powder": links.fretting_powder,
        "dry-chain": links.dry_chain,
        "fatigue-crack": links.fatigue_crack,
        "stress-corrosion-crack": links.stress_corrosion_crack,
        "corrosion-fatigue-crack": links.corrosion_fatigue_crack,
        "fretting-crack": links.fretting_crack,
        "necked-plate": links.necked_plate,
        "oval-hole": links.oval_hole,
        "bent-plate": links.bent_plate,
        "missing-plate": links.missing_plate,
        "surface-rust": links.surface_rust,
        "pitting-rust": links.pitting_rust,
        "heat-or-weld-marks": links.heat_or_weld_marks,
        "plated-chain": links.plated_chain,
        "painted-chain": links.painted_chain,
        "worn-plate-edge": links.worn_plate_edge,
        "plate-edge-past-limit": links.plate_edge_past_limit,
        "anchor-damaged": fittings.anchor_damaged,
        "anchor-pin-marked": fittings.anchor_pin_marked,
        "anchor-cotter-missing": fittings.anchor_cotter_missing,
        "sheave-grooved": fittings.sheave_grooved,
        "sheave-flange-worn": fittings.sheave_flange_worn,
        "sheave-seized-or-loose": fittings.sheave_seized_or_loose,
        "unequal-tension": fittings.unequal_tension,
        "slack-chain": fittings.slack_chain,
        "joined-chain": links.joined_chain,
        "mixed-strands": fittings.mixed_strands,
        "harsh-duty": fittings.harsh_duty,
    }
)


def draw_condition(key: str, language: str = "en") -> str:
    """Return a drawing by which a technician knows the condition, as SVG.

    Black on white with one accent colour; its title and description are for those who hear the page.

    Parameters
    ----------
    key
        Of the condition.
    language
        Of title and description, ``en`` or ``es``.

    Raises
    ------
    BadInput
        If there is no such condition.

    Examples
    --------
    >>> draw_condition("turned-pin").startswith("<svg ")
    True
    """
    condition = find_condition(key)
    title, description = condition.title.of(language), condition.look_for.of(language)
    name = condition.key
    labels = quoteattr(f"{name}-title {name}-description")
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDTH} {_HEIGHT}" '
        f'width="{_WIDTH}" height="{_HEIGHT}" role="img" lang="{language}" aria-labelledby={labels}>'
    )
    parts = [
        head,
        f'<title id="{name}-title">{escape(title)}</title>',
        f'<desc id="{name}-description">{escape(description)}</desc>',
        f'<rect x="0" y="0" width="{_WIDTH}" height="{_HEIGHT}" fill="#ffffff"/>',
        *_DRAWINGS[name](),
        "</svg>",
    ]
    return "\n".join(parts)
