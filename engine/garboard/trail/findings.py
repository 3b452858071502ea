"""Findings as they are named and ordered."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final

PASSED: Final = "passed"
FAILED: Final = "failed"
NOT_ASSESSED: Final = "not assessed"
NOT_APPLICABLE: Final = "not applicable"
OUTCOMES: Final = (PASSED, FAILED, NOT_ASSESSED, NOT_APPLICABLE)

#: Severities, worst first.
SEVERITIES: Final = ("danger", "warning", "caution", "notice")

COVERS_PART: Final = "covers part"
ON_ASSUMPTION: Final = "on assumption"
INSIDE_UNCERTAINTY: Final = "inside uncertainty"
FLAGS: Final = (COVERS_PART, ON_ASSUMPTION, INSIDE_UNCERTAINTY)

#: Why a rule does not apply.
CONDITION_FALSE: Final = "condition false"
NONE_ABOARD: Final = "none aboard"
PACK_DOES_NOT_APPLY: Final = "pack does not apply"
RETIRED: Final = "retired"

#: Stands for the item where a rule has one finding for all: no list recorded, none aboard.
NO_ITEM: Final = "*"

Finding = Mapping[str, Any]


def finding_id(pack: str, rule: str, item: str | None) -> str:
    """``pack/rule/item``; it does not depend on where anything stands in a file."""
    return f"{pack}/{rule}/{NO_ITEM if item is None else item}"


def in_finding_order(findings: Iterable[Finding], packs: Sequence[Mapping[str, Any]],
                     ) -> list[Finding]:
    """Findings by pack as given, by rule as it stands in its pack, then by item id by code point.

    The finding without an item comes first. Raises KeyError for a rule that no pack has.
    """
    places = {(pack["pack"], rule["id"]): (at, number)
              for at, pack in enumerate(packs)
              for number, rule in enumerate(pack["resolved"]["rules"])}
    return sorted(findings, key=lambda each: (*places[each["pack"], each["rule"]],
                                              each["item"] or ""))
