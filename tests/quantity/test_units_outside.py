"""Unit factors against a reference library and published tables."""

from fractions import Fraction

import pint
import pytest

from mastwright.quantity import Unit, canonical_unit, dimensions, unit, units_of

# Our spelling -> that of the reference library (pint, its default registry).
IN_PINT = {
    "in": "inch",
    "lbf": "force_pound",
    "°C": "degC",
    "°F": "degF",
    "N·m": "newton * meter",
    "lbf·ft": "force_pound * foot",
    "km/h": "kilometer / hour",
    "ft/min": "foot / minute",
    "kohm": "kiloohm",
    "Mohm": "megaohm",
    "kg/l": "kilogram / liter",
    "h": "hour",
    "months": "month",
    "years": "year",
    "%": "percent",
    "1": "dimensionless",
    "Ah": "ampere * hour",
    "t": "metric_ton",
}
REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
ALL_UNITS = [u for dimension in dimensions() for u in units_of(dimension)]


@pytest.mark.parametrize("ours", ALL_UNITS, ids=lambda u: u.name)
@pytest.mark.parametrize("value", [Fraction(0), Fraction(1), Fraction(-40), Fraction(314325, 1000)])
def test_conversion_agrees_with_the_reference_library(ours: Unit, value: Fraction) -> None:
    """Each unit turns into the dimension's own as pint 0.25 does it."""
    home = canonical_unit(ours.dimension)
    theirs = REGISTRY.Quantity(float(value), IN_PINT.get(ours.name, ours.name))
    expected = theirs.to(IN_PINT.get(home.name, home.name)).magnitude
    assert float(ours.to_canonical(value)) == pytest.approx(expected, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize(
    ("name", "published"),
    [
        # NIST SP 811 (2008), Appendix B.8, converted to our units; from memory
        ("in", "25.4"),
        ("ft", "304.8"),
        ("lb", "0.4535924"),
        ("lbf", "4.448222"),
        ("psi", "6.894757"),
        ("bar", "100"),
        ("lbf·ft", "1.355818"),
        ("mph", "0.44704"),
        ("ft/min", "0.00508"),
        ("km/h", "0.2777778"),
        # SI brochure, 9th edition, table 8; from memory
        ("t", "1000"),
        ("min", "60"),
    ],
)
def test_factor_agrees_with_the_published_one(name: str, published: str) -> None:
    """A factor rounded to the published digits is the published one."""
    assert f"{float(unit(name).factor):.7g}" == published


def test_exact_definitions() -> None:
    """Foot, pound-force and mile per hour follow exactly from inch, pound, second and standard gravity.

    Source: definitions in NIST SP 811 (2008), Appendix B; from memory.
    """
    gravity = Fraction("9.80665")
    inch, pound_force = unit("in").factor, unit("lb").factor * gravity
    assert unit("ft").factor == 12 * inch
    assert unit("lbf").factor == pound_force
    assert unit("psi").factor == pound_force / (inch / 1000) ** 2 / 1000
    assert unit("lbf·ft").factor == pound_force * 12 * inch / 1000
    assert unit("mph").factor == 5280 * 12 * inch / 1000 / 3600


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(32, 0), (212, 100), (-40, -40), (50, 10)])
def test_fixed_points_of_the_temperature_scales(fahrenheit: int, celsius: int) -> None:
    """Ice, steam, where the scales cross, and a mild day, exactly (NIST SP 811, B.8; from memory)."""
    assert unit("°F").to_canonical(Fraction(fahrenheit)) == celsius
    assert unit("°F").from_canonical(Fraction(celsius)) == fahrenheit


# A defence engineering table of SI conversions, read: 1 mile/h = 1.609 344 km/h, 1 lb = 0.453 592 kg,
# 1 lbf = 4.448 22 N, 1 lbf·in = 0.112 985 N·m.
def test_figures_of_an_engineering_table() -> None:
    """A second printed table gives the same figures to its digits."""
    assert unit("mph").factor / unit("km/h").factor == Fraction("1.609344")
    assert round(float(unit("lb").factor), 6) == 0.453592
    assert round(float(unit("lbf").factor), 5) == 4.44822
    assert round(float(unit("lbf·ft").factor / 12), 6) == 0.112985
