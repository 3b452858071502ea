"""Numbers with bounds, unknowns with reasons, three-valued logic; units and sizes at the border."""

from garboard.values.bounds import ASSUMPTION, TOLERANCE, UNCERTAINTY, UNRECORDED, Bounds
from garboard.values.logic import (
    Number,
    all_of,
    any_of,
    chosen,
    finite,
    largest,
    member_of,
    negated,
    quotient,
    same_value,
    smallest,
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
from garboard.values.rounding import rounded, rounded_value
from garboard.values.unknown import Truth, Unknown

__all__ = [
    "ANSWER_EXPIRED", "ASSUMPTION", "AWAITS_ANSWER", "CALCULATION_ERROR", "CONFLICT",
    "NOT_DETERMINABLE", "NOT_RECORDED", "OUTSIDE_METHOD", "PLUGIN_UNAVAILABLE", "REASONS",
    "TOLERANCE", "UNCERTAINTY", "UNRECORDED", "WITHIN_UNCERTAINTY", "Bounds", "Cause", "Causes",
    "Number", "Truth", "Unknown", "all_of", "any_of", "chosen", "finite", "largest", "member_of",
    "merged", "negated", "quotient", "rounded", "rounded_value", "same_value", "smallest",
]
