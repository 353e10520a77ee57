"""What was read, how, and how sure: quantities, units, instruments, readings, limits, sources."""

from mastwright.quantity.instruments import Instrument, Instruments, common_instruments, instrument_from
from mastwright.quantity.limit import Limit, LimitKind, Worse, governing
from mastwright.quantity.note import Amount, Note
from mastwright.quantity.own_instruments import own_instruments
from mastwright.quantity.parse import Field, Quantity, parse_quantity
from mastwright.quantity.problem import BadInput, Problem
from mastwright.quantity.reading import Reading
from mastwright.quantity.show import decimal_text, exact_text, inch_text, written_text
from mastwright.quantity.source import Evidence, Source, TableError, read_rows, read_table, source_of
from mastwright.quantity.units import (
    Unit,
    UnitSystem,
    canonical_unit,
    dimensions,
    find_unit,
    shown_unit,
    unit,
    units_of,
)

__all__ = [
    "Amount",
    "BadInput",
    "Evidence",
    "Field",
    "Instrument",
    "Instruments",
    "Limit",
    "LimitKind",
    "Note",
    "Problem",
    "Quantity",
    "Reading",
    "Source",
    "TableError",
    "Unit",
    "UnitSystem",
    "Worse",
    "canonical_unit",
    "common_instruments",
    "decimal_text",
    "dimensions",
    "exact_text",
    "find_unit",
    "governing",
    "inch_text",
    "instrument_from",
    "own_instruments",
    "parse_quantity",
    "read_rows",
    "read_table",
    "shown_unit",
    "source_of",
    "unit",
    "units_of",
    "written_text",
]
