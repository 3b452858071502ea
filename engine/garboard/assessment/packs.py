"""A pack in a trail: as resolved, whether it applies, what its rules' operands are."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from garboard.assessment.derived import unit_of
from garboard.expressions import Program, RuleTrace
from garboard.packs import CheckedPack, Seal
from garboard.trail import Encoded, causes_as_data, encoded, encoded_object
from garboard.values import Truth, Unknown


def pack_in_trail(checked: CheckedPack, applies: Truth) -> Encoded:
    """The pack part of a trail."""
    pack = checked.pack
    return encoded_object({
        "pack": pack.name, "version": pack.version, "title": pack.title, "digest": pack.digest,
        **_seal(pack.seal), "decision_rule": pack.header.decision_rule,
        "applies": None if isinstance(applies, Unknown) else applies,
        "missing": causes_as_data(applies) if isinstance(applies, Unknown) else [],
        "relaxations": [each.as_data() for each in pack.relaxations], "resolved": pack.resolved,
        "traces": _traces(checked.program),
    })


def _seal(seal: Seal | None) -> dict[str, Any]:
    """Whether the pack came sealed, and the signature that was checked."""
    if seal is None:
        return {"status": "working copy"}
    signature = {} if seal.signature is None else {"signature": seal.signature.as_data()}
    return {"status": "sealed", **signature}


@lru_cache(maxsize=64)
def _traces(program: Program) -> Encoded:
    """What the operands of a pack's rules are, by rule: the same for every record."""
    return encoded({rule.name: _trace(trace)
                    for rule, trace in zip(program.sources, program.traces, strict=True)})


def _trace(trace: RuleTrace) -> dict[str, Any]:
    return {
        "operands": [{"text": operand.text, "part": operand.part, "kind": operand.kind,
                      "dimension": operand.dimension, "unit": unit_of(operand.dimension),
                      "constant": operand.constant, "limit": operand.limit}
                     for operand in trace.operands],
        "statements": [{"left": atom.left, "relation": atom.operator, "right": atom.right}
                       for atom in trace.atoms],
    }
