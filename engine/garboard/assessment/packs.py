"""A pack in a trail: as resolved, whether it applies, what its rules' operands are."""

from __future__ import annotations

from typing import Any

from garboard.assessment.derived import unit_of
from garboard.expressions import RuleTrace
from garboard.packs import CheckedPack
from garboard.trail import causes_as_data
from garboard.values import Truth, Unknown


def pack_in_trail(checked: CheckedPack, applies: Truth) -> dict[str, Any]:
    """The pack part of a trail."""
    pack = checked.pack
    return {
        "pack": pack.name, "version": pack.version, "title": pack.title, "digest": pack.digest,
        "status": "working copy", "decision_rule": pack.header.decision_rule,
        "applies": None if isinstance(applies, Unknown) else applies,
        "missing": causes_as_data(applies) if isinstance(applies, Unknown) else [],
        "relaxations": [], "resolved": pack.as_data(),
        "traces": {rule.id: _trace(trace) for rule, trace in
                   zip(pack.rules, checked.program.traces, strict=True)},
    }


def _trace(trace: RuleTrace) -> dict[str, Any]:
    return {
        "operands": [{"text": operand.text, "part": operand.part, "kind": operand.kind,
                      "dimension": operand.dimension, "unit": unit_of(operand.dimension),
                      "constant": operand.constant, "limit": operand.limit}
                     for operand in trace.operands],
        "statements": [{"left": atom.left, "relation": atom.operator, "right": atom.right}
                       for atom in trace.atoms],
    }
