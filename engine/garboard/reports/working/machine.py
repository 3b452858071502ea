"""The working of a finding for other programs: as JSON, with everything the trail holds of it."""

from __future__ import annotations

import json
from dataclasses import asdict
from typing import Any, Final

from garboard.reports.cautions import CAUTIONS
from garboard.reports.working.derivation import Derivations, Fact, Figure
from garboard.reports.working.filled import filled
from garboard.reports.working.remedy import Remedy
from garboard.trail import Finding, Trail, value_as_data

FORMAT: Final = "working/1"


def working_json(trail: Trail, finding: Finding, remedy: Remedy | None = None) -> str:
    """The working of one finding as JSON in ASCII; values are in canonical units."""
    rule = trail.rule_of(finding)
    operands = trail.operands(finding)
    figures, facts, missing = Derivations(trail).of(
        tuple(key for operand in operands for key in operand.of))
    parts = {part: {"expression": rule.get(name), "with_values": filled(
        rule[name], [each for each in operands if each.part == part], "metric")}
        for part, name in (("condition", "applies_when"), ("requirement", "must_hold"))
        if rule.get(name)}
    return json.dumps({
        "format": FORMAT, "trail": trail.digest, "finding": dict(finding), **parts,
        "statements": [{"left": each.left.text, "left_value": value_as_data(each.left.value),
                        "relation": each.relation,
                        "right": each.right.text if each.right else None,
                        "right_value": value_as_data(each.right.value) if each.right else None,
                        "holds": each.holds, "decides": each.decides}
                       for each in trail.statements(finding)],
        "figures": list(map(_figure, figures)), "facts": list(map(_fact, facts)),
        "missing": list(missing), "remedy": None if remedy is None else {
            "result": remedy.word, "chosen": asdict(remedy.chosen) if remedy.chosen else None,
            "tried": [asdict(each) for each in remedy.tried], "notes": list(remedy.notes)},
        "cautions": list(CAUTIONS)}, indent=1)


def _figure(each: Figure) -> dict[str, Any]:
    if each.again:
        return {"key": each.key, "as_above": True}
    return {"key": each.key, **dict(each.data), "method": None if each.quantity is None else
            each.quantity["method"], "citation": None if each.quantity is None else
            each.quantity["citation"], "figures": list(map(_figure, each.figures)),
            "facts": list(map(_fact, each.facts)), "missing": list(each.missing)}


def _fact(each: Fact) -> dict[str, Any]:
    return {"path": each.path, **dict(each.data), "place": each.place or None}
