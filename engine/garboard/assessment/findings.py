"""Findings from the rows a program gives: with names, reasons, values and what they rest on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from garboard.expressions import Row, holding, keys_of, reason_of, resting
from garboard.packs import CheckedPack, Retired
from garboard.quantities import Figures, Item
from garboard.trail import (
    COVERS_PART,
    FAILED,
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

#: Values that are JSON data as they are.
_PLAIN: Final = frozenset({float, int, bool, str, type(None)})
_WITHOUT_REASON: Final = frozenset({PASSED, FAILED})
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
        self._covers = [COVERS_PART] if self._rule.covers == "part" else []
        self._decides: dict[tuple[bool | str, ...], list[int]] = {}

    def finding(self, row: Row) -> dict[str, Any]:
        """The finding of a row."""
        _, item, outcome, unknown, operands, flags = row
        found = self._head.copy()
        found["outcome"] = outcome
        if item is not None:
            found["id"], found["item"] = self._id + item, item
            found["of"] = self._keys(item, len(operands))
        if unknown is not None:
            found["missing"] = causes_as_data(unknown)
        if outcome == PASSED and self._covers:
            found["flags"] = sorted([*flags, *self._covers])
        elif flags:
            found["flags"] = sorted(flags)
        found["reason"] = None if outcome in _WITHOUT_REASON else reason_of(row)
        if operands:
            holds = holding(self._trace, row)
            found["operands"] = [value if value.__class__ in _PLAIN else _operand(value)
                                 for value in operands]
            pattern = tuple([each if each.__class__ is bool else _pattern(each) for each in holds])
            found["holds"] = [each if each.__class__ is bool else None for each in holds]
            found["decides"] = self._deciding(pattern, holds)
        return found

    def _deciding(self, pattern: tuple[bool | str, ...], holds: tuple[Truth, ...]) -> list[int]:
        decides = self._decides.get(pattern)
        if decides is None:
            decides = self._decides[pattern] = list(resting(self._trace, holds))
        return decides

    def _keys(self, item: str, count: int) -> list[list[str]]:
        own = self._trace.own[:count]
        if None not in own:
            return [[f"{item}.{name}" for name in names] if names else [] for names in own
                    if names is not None]
        thing, roots = self._figures.items[item], self._figures.roots
        return [list(keys_of(operand, thing, roots)) if names is None else
                [f"{item}.{name}" for name in names]
                for operand, names in zip(self._trace.operands[:count], own, strict=True)]


def _pattern(truth: Truth) -> bool | str:
    """What of a truth matters to what an outcome rests on."""
    if isinstance(truth, Unknown):
        return "failed" if truth.is_error else "unknown"
    return truth


def _operand(value: object) -> Any:
    """A value as data; things and lists of things by their ids."""
    if isinstance(value, Item):
        return value.id
    if isinstance(value, tuple):
        return [_operand(part) for part in value]
    return value_as_data(value)
