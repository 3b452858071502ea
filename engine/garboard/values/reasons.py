"""Why something is not known: the closed list of reason codes, worst first."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

CALCULATION_ERROR: Final = "calculation error"
PLUGIN_UNAVAILABLE: Final = "plugin unavailable"
CONFLICT: Final = "conflict"
OUTSIDE_METHOD: Final = "outside method"
NOT_DETERMINABLE: Final = "not determinable"
ANSWER_EXPIRED: Final = "answer expired"
AWAITS_ANSWER: Final = "awaits answer"
NOT_RECORDED: Final = "not recorded"
WITHIN_UNCERTAINTY: Final = "within uncertainty"

#: Of several reasons at once, the first of these is the one that is named.
REASONS: Final = (
    CALCULATION_ERROR, PLUGIN_UNAVAILABLE, CONFLICT, OUTSIDE_METHOD, NOT_DETERMINABLE,
    ANSWER_EXPIRED, AWAITS_ANSWER, NOT_RECORDED, WITHIN_UNCERTAINTY,
)
_RANK: Final = {reason: rank for rank, reason in enumerate(REASONS)}


@dataclass(frozen=True, slots=True)
class Cause:
    """One thing that stands between us and a figure.

    ``path`` is the data path of the fact that would resolve it (``pack-1.internal_resistance``), or
    an empty text when no recorded fact would. ``detail`` is a short explanation for people.
    """

    reason: str
    path: str = ""
    detail: str = ""

    def __post_init__(self) -> None:
        if self.reason not in _RANK:
            raise ValueError(f"{self.reason!r} is not a reason code")

    def order(self) -> tuple[int, str, str]:
        """Sort key: worst reason first, then path, then detail."""
        return (_RANK[self.reason], self.path, self.detail)


Causes = tuple[Cause, ...]


def merged(one: Causes, other: Causes) -> Causes:
    """The union of two sets of causes, in order, without duplicates."""
    if one == other or not other:
        return one
    if not one:
        return other
    if len(one) == len(other) == 1:
        return one + other if one[0].order() < other[0].order() else other + one
    return tuple(sorted({*one, *other}, key=Cause.order))
