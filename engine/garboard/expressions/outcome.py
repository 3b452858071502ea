"""The words for what becomes of a rule for an item, and the row that says it."""

from __future__ import annotations

from typing import Final

from garboard.values import Unknown

PASSED: Final = "passed"
FAILED: Final = "failed"
NOT_ASSESSED: Final = "not assessed"
NOT_APPLICABLE: Final = "not applicable"
OUTCOMES: Final = (PASSED, FAILED, NOT_ASSESSED, NOT_APPLICABLE)

#: Why a rule is not applicable, as far as an expression can tell.
CONDITION_FALSE: Final = "condition false"
NONE_ABOARD: Final = "none aboard"

#: Marks beside an outcome.
ON_ASSUMPTION: Final = "on assumption"
INSIDE_UNCERTAINTY: Final = "inside uncertainty"

#: One rule for one item: number of the rule, id of the item (none where the whole list is absent
#: or empty), outcome, why it is not assessed, operands as far as they were needed (condition first;
#: see ``RuleTrace``), flags.
Row = tuple[int, str | None, str, Unknown | None, tuple[object, ...], tuple[str, ...]]


def reason_of(row: Row) -> str | None:
    """The reason code of a row, where its outcome has one."""
    if row[3] is not None:
        return row[3].reason
    if row[2] != NOT_APPLICABLE:
        return None
    return NONE_ABOARD if row[1] is None else CONDITION_FALSE
