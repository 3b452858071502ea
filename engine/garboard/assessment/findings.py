"""Findings from the rows a program gives: with names, reasons, values and what they rest on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from garboard.expressions import Operand, Row, holding, keys_of, reason_of, resting
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
    rules = [_OfRule(checked, index, figures) for index in range(len(checked.pack.rules))]
    return retired + [rules[row[0]].finding(row) for row in rows]


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


class _OfRule:
    """Makes the findings of one rule; what is the same for all its items is looked up once."""

    def __init__(self, checked: CheckedPack, index: int, figures: Figures) -> None:
        self._rule, self._figures = checked.pack.rules[index], figures
        self._head = {**_head(checked, index, None), **_NOTHING}
        self._id = finding_id(checked.pack.name, self._rule.id, "")
        self._trace = checked.program.traces[index]
        self._own = [_own_names(operand) for operand in self._trace.operands]
        self._decides: dict[tuple[bool | str, ...], list[int]] = {}

    def finding(self, row: Row) -> dict[str, Any]:
        """The finding of a row."""
        _, item, outcome, unknown, operands, flags = row
        found = {**self._head, "outcome": outcome, "reason": reason_of(row)}
        if item is not None:
            found["id"], found["item"] = self._id + item, item
            found["of"] = self._keys(item, len(operands))
        if unknown is not None:
            found["missing"] = causes_as_data(unknown)
        if outcome == PASSED and self._rule.covers == "part":
            found["flags"] = sorted([*flags, COVERS_PART])
        elif flags:
            found["flags"] = sorted(flags)
        if operands:
            holds = holding(self._trace, row)
            found["operands"] = [_operand(value) for value in operands]
            found["holds"] = [None if isinstance(each, Unknown) else each for each in holds]
            found["decides"] = self._deciding(holds)
        return found

    def _deciding(self, holds: tuple[Truth, ...]) -> list[int]:
        pattern = tuple(each if each.__class__ is bool else
                        "failed" if isinstance(each, Unknown) and each.is_error else "unknown"
                        for each in holds)
        if pattern not in self._decides:
            self._decides[pattern] = list(resting(self._trace, holds))
        return self._decides[pattern]

    def _keys(self, item: str, count: int) -> list[list[str]]:
        thing, roots = self._figures.items[item], self._figures.roots
        return [list(keys_of(operand, thing, roots)) if names is None else
                [f"{item}.{name}" for name in names]
                for operand, names in zip(self._trace.operands[:count], self._own, strict=False)]


def _own_names(operand: Operand) -> tuple[str, ...] | None:
    """The names an operand is read from, where all of them are of the item itself."""
    if all(root == "item" and len(steps) == 1 for root, steps in operand.reads):
        return tuple(dict.fromkeys(steps[0] for _, steps in operand.reads))
    return None


def _operand(value: object) -> Any:
    """A value as data; things and lists of things by their ids."""
    if isinstance(value, Item):
        return value.id
    if isinstance(value, tuple):
        return [_operand(part) for part in value]
    return value_as_data(value)
