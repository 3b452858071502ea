"""Numbers with bounds, unknowns with reasons, three-valued logic; units and sizes at the border."""

from garboard.values.arithmetic import Number, finite, largest, quotient, smallest, total
from garboard.values.bounds import (
    ASSUMPTION,
    BASES,
    TOLERANCE,
    UNCERTAINTY,
    UNRECORDED,
    Bounds,
    bounded,
)
from garboard.values.conductor_size import (
    ConductorSize,
    awg_area_mm2,
    awg_names,
    awg_size,
    read_size,
    sizes_above,
)
from garboard.values.logic import (
    all_of,
    any_of,
    chosen,
    failure_among,
    member_of,
    negated,
    same_value,
)
from garboard.values.reasons import (
    ANSWER_EXPIRED,
    AWAITS_ANSWER,
    CALCULATION_ERROR,
    CONFLICT,
    NOT_DETERMINABLE,
    NOT_RECORDED,
    OUTSIDE_METHOD,
    PLUGIN_UNAVAILABLE,
    REASONS,
    WITHIN_UNCERTAINTY,
    Cause,
    Causes,
    merged,
)
from garboard.values.rounding import (
    SIGNIFICANT_DIGITS,
    greatest_alike,
    least_alike,
    rounded,
    rounded_value,
)
from garboard.values.units import (
    DIMENSIONS,
    UNITS,
    Dimension,
    System,
    Unit,
    VoltageKind,
    format_number,
    format_value,
    read_number,
    read_quantity,
    read_voltage_kind,
    read_window,
    symbols,
    with_tolerance,
)
from garboard.values.unknown import Truth, Unknown

__all__ = [
    "ANSWER_EXPIRED", "ASSUMPTION", "AWAITS_ANSWER", "BASES", "CALCULATION_ERROR", "CONFLICT",
    "DIMENSIONS", "NOT_DETERMINABLE", "NOT_RECORDED", "OUTSIDE_METHOD", "PLUGIN_UNAVAILABLE",
    "REASONS", "SIGNIFICANT_DIGITS", "TOLERANCE", "UNCERTAINTY", "UNITS", "UNRECORDED",
    "WITHIN_UNCERTAINTY", "Bounds", "Cause", "Causes", "ConductorSize", "Dimension", "Number",
    "System", "Truth", "Unit", "Unknown", "VoltageKind", "all_of", "any_of", "awg_area_mm2",
    "awg_names", "awg_size", "bounded", "chosen", "failure_among", "finite", "format_number",
    "format_value", "greatest_alike", "largest", "least_alike", "member_of", "merged",
    "negated", "quotient", "read_number", "read_quantity", "read_size", "read_voltage_kind",
    "read_window", "rounded", "rounded_value", "same_value", "sizes_above", "smallest",
    "symbols", "total", "with_tolerance",
]
