"""Hypothesis strategies shared by the property tests."""

from fractions import Fraction

from hypothesis import strategies as st

from mastwright.quantity import Field, Quantity, Unit, UnitSystem, dimensions, unit, units_of

_BINARY = (2, 4, 8, 16, 32, 64, 128)

decimals = st.builds(
    lambda count, places: Fraction(count, 10**places),
    st.integers(-(10**11), 10**11),
    st.integers(0, 12),
)
"""Any value that somebody writes with a decimal point."""

measured_units = st.sampled_from([u for d in dimensions() for u in units_of(d)])
"""Every unit of the table."""


def fields(dimension: str | None = None) -> st.SearchStrategy[Field]:
    """Return fields without bounds, of one dimension or of any, in both unit systems."""
    of = st.just(dimension) if dimension else st.sampled_from(dimensions())
    return st.builds(lambda d, s: Field("reading", d, s, minimum=None), of, st.sampled_from(UnitSystem))


@st.composite
def quantities(draw: st.DrawFn, of: Unit | None = None) -> Quantity:
    """Draw a quantity as it would be read off: decimal, or a binary fraction where its unit has them."""
    chosen = of or draw(measured_units)
    if chosen.fractions and draw(st.booleans()):
        parts = draw(st.sampled_from(_BINARY))
        return Quantity(Fraction(draw(st.integers(0, 10**6)), parts), chosen, Fraction(1, parts))
    value = draw(decimals)
    return Quantity(value, chosen, Fraction(1, value.denominator))


inches = quantities(unit("in")).filter(lambda length: abs(length.value) < 10**9)
"""Lengths read off an inch rule or calliper."""

_scribble = st.text(alphabet="0123456789 .,/-+'\"″½⅜−  \n\t\x00°%²👷٣mMinftlbkgNCF", max_size=20)

typed = st.one_of(
    st.text(),
    _scribble,
    st.integers(),
    st.floats(),
    st.booleans(),
    st.none(),
    st.binary(),
    st.lists(st.integers(), max_size=3),
    st.dictionaries(st.text(max_size=3), st.integers(), max_size=2),
)
"""Anything that can arrive where a quantity should stand."""
