"""Findings from the rows a program gives: with names, reasons, values and what they rest on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from garboard.expressions import Row, RuleTrace, deciding, holding, keys_of, reason_of
from garboard.packs import CheckedPack, Retired
from garboard.quantities import Figures, Item
from garboard.trail import (
    COVERS_PART,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    PACK_DOES_NOT_APPLY,
    PASSED,
    RETIRED,
    causes_as_data,
    finding_id,
    value_as_data,
)
from garboard.values import Truth, Unknown

_NOTHING: Final[Mapping[str, Any]] = {"flags": [], "missing": [], "operands": [], "of": [],
                                      "holds": [], "decides": [],
                                      "dispensation": None}


def findings_of(checked: CheckedPack, figures: Figures, applies: Truth,
                rows: Sequence[Row]) -> list[dict[str, Any]]:
    """The findings of one pack; of one that does not apply, one for each of its rules."""
    retired = [_retired(checked, rule) for rule in checked.pack.retired]
    if applies is False:
        return retired + [_not_looked_at(checked, index, NOT_APPLICABLE, PACK_DOES_NOT_APPLY, [])
                          for index in range(len(checked.pack.rules))]
    if isinstance(applies, Unknown):
        return retired + [_not_looked_at(checked, index, NOT_ASSESSED, applies.reason,
                                         causes_as_data(applies))
                          for index in range(len(checked.pack.rules))]
    return retired + [_finding(checked, figures, row) for row in rows]


def _retired(checked: CheckedPack, retired: Retired) -> dict[str, Any]:
    """A rule that a layer retired has one finding still, so that nobody takes it for passed."""
    rule, pack = retired.rule, checked.pack.name
    return {"id": finding_id(pack, rule.id, None), "pack": pack, "rule": rule.id, "item": None,
            "subject": rule.about, "outcome": NOT_APPLICABLE, "reason": RETIRED, **_NOTHING}


def _not_looked_at(checked: CheckedPack, index: int, outcome: str, reason: str,
                   missing: list[dict[str, str]]) -> dict[str, Any]:
    return {**_head(checked, index, None), "outcome": outcome, "reason": reason, **_NOTHING,
            "missing": missing}


def _head(checked: CheckedPack, index: int, item: str | None) -> dict[str, Any]:
    pack, rule = checked.pack, checked.pack.rules[index]
    return {"id": finding_id(pack.name, rule.id, item), "pack": pack.name, "rule": rule.id,
            "item": item, "subject": rule.about}


def _finding(checked: CheckedPack, figures: Figures, row: Row) -> dict[str, Any]:
    index, item, outcome, unknown, operands, flags = row
    trace = checked.program.traces[index]
    rule = checked.pack.rules[index]
    marks = [*flags, COVERS_PART] if outcome == PASSED and rule.covers == "part" else list(flags)
    return {
        **_head(checked, index, item), "outcome": outcome, "reason": reason_of(row),
        "flags": sorted(marks), "missing": [] if unknown is None else causes_as_data(unknown),
        "operands": [_operand(value) for value in operands],
        "of": _keys(trace, figures, item, len(operands)),
        "holds": [None if isinstance(each, Unknown) else each for each in holding(trace, row)],
        "decides": list(deciding(trace, row)), "dispensation": None,
    }


def _operand(value: object) -> Any:
    """A value as data; things and lists of things by their ids."""
    if isinstance(value, Item):
        return value.id
    if isinstance(value, tuple):
        return [_operand(part) for part in value]
    return value_as_data(value)


def _keys(trace: RuleTrace, figures: Figures, item: str | None, count: int) -> list[list[str]]:
    if item is None:
        return []
    thing = figures.items[item]
    return [list(keys_of(operand, thing, figures.roots)) for operand in trace.operands[:count]]
