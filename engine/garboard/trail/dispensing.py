"""Agreed exceptions: whether one is in force on a day, and whether a failure under it counts.

Both are decided here and nowhere else. A trail holds the dispensations that were in force for one
of its findings; each of those findings names its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

#: The key of a resolved pack, and what it says there, by which a danger can be set aside.
DISPENSABLE_DANGER: Final = "dispensable_danger"
COUNTS_APART: Final = "counts apart"


def in_force(day: str, first_day: str, last_day: str) -> bool:
    """Whether an exception holds on a day: from the start of its first to the end of its last.

    All three are written year-month-day.
    """
    return first_day <= day <= last_day


def counts_as_failed(severity: str, resolved: Mapping[str, Any]) -> bool:
    """Whether a failure counts in spite of a dispensation: a danger does.

    It does not where the resolved pack says in words that a dispensed danger counts apart.
    """
    return severity == "danger" and resolved.get(DISPENSABLE_DANGER) != COUNTS_APART
