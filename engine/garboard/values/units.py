"""The border: everything by which figures come in as text and go out as text."""

from garboard.values.dimensions import DIMENSIONS, Dimension, Exponents
from garboard.values.formatting import System, format_number, format_value
from garboard.values.number_text import MAX_TEXT
from garboard.values.ranges import read_quantity, read_window, with_tolerance
from garboard.values.reading import VoltageKind, read_number, read_voltage_kind
from garboard.values.unit_table import UNITS, Unit, symbols

__all__ = [
    "DIMENSIONS", "MAX_TEXT", "UNITS", "Dimension", "Exponents", "System", "Unit", "VoltageKind",
    "format_number", "format_value", "read_number", "read_quantity", "read_voltage_kind",
    "read_window", "symbols", "with_tolerance",
]
