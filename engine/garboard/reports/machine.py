"""The summary for other programs: outcome, findings in brief, what to find out, cautions."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any, Final

from garboard.reports.cautions import cautions_of, left_to_a_person, not_examined_of
from garboard.reports.to_find_out import to_find_out
from garboard.trail import COVERS_PART, Finding, Trail

FORMAT: Final = "assessment-summary/1"
_ENCODER: Final = json.JSONEncoder(ensure_ascii=True, allow_nan=False)


def json_report(trail: Trail) -> str:
    """The summary as JSON in ASCII characters, so that no terminal takes any of it for a command.

    Values and causes are those of the trail; ``trail`` is its digest. Everything else a finding
    rests on stands in the trail.
    """
    members = [f"{_encoded(name)}: {_in_lines(part)}" for name, part in summary_of(trail).items()]
    return "\n".join(["{", "  " + ",\n  ".join(members), "}", ""])


def _in_lines(part: object) -> str:
    """A list with one item per line; everything else on one."""
    if not isinstance(part, list) or not part:
        return _encoded(part)
    return "\n".join(["[", "    " + ",\n    ".join(map(_encoded, part)), "  ]"])


def _encoded(data: object) -> str:
    return _ENCODER.encode(data)


def summary_of(trail: Trail) -> dict[str, Any]:
    """The summary as data."""
    name = trail.fact("vessel.name")
    return {
        "format": FORMAT,
        "garboard": trail.about["garboard"],
        "trail": trail.digest,
        "vessel": name["value"] if name else None,
        "date": trail.date,
        "packs": [_pack(trail, number) for number in range(len(trail.packs))],
        "dispensations": list(trail.assessment["dispensations"]),
        "outcome": {key: trail.outcome[key] for key in ("word", "exit_code", "counts")},
        "findings": [_finding(trail, each) for each in trail.findings],
        "to_find_out": [
            {"path": each.path, "reasons": list(each.reasons), "details": list(each.details),
             "worst_severity": each.severity,
             "decides_alone": [finding["id"] for finding in each.alone],
             "decides_with_others": [finding["id"] for finding in each.shared]}
            for each in to_find_out(trail)],
        "irregularities": list(trail.assessment["irregularities"]),
        "cautions": list(cautions_of(trail)),
        "not_examined": [*not_examined_of(trail), *left_to_a_person(trail)],
    }


def _pack(trail: Trail, number: int) -> dict[str, Any]:
    pack = trail.packs[number]
    kept = ("pack", "version", "title", "digest", "status", "decision_rule", "applies")
    outcome = trail.outcome["packs"][number]
    accepted = {"acceptance": outcome["acceptance"]} if outcome.get("acceptance") else {}
    signed = {"signature": pack["signature"]} if pack.get("signature") is not None else {}
    return {**{key: pack[key] for key in kept}, **signed, "word": outcome["word"], **accepted,
            "relaxations": list(pack.get("relaxations", ()))}


def _finding(trail: Trail, finding: Finding) -> dict[str, Any]:
    rule: Mapping[str, Any] = trail.rule_of(finding)
    operands = [{"text": operand.text, "unit": operand.unit, "value": value,
                 "of": list(operand.of)}
                for operand, value in zip(trail.operands(finding), finding["operands"],
                                          strict=True)]
    statements = [{"left": each.left.text, "relation": each.relation,
                   "right": each.right.text if each.right else None, "holds": each.holds}
                  for each in trail.statements(finding) if each.decides]
    brief = {
        "id": finding["id"], "title": rule["title"], "severity": rule["severity"],
        "subject": finding["subject"], "item": finding["item"], "outcome": finding["outcome"],
        "reason": finding["reason"], "flags": finding["flags"], "missing": finding["missing"],
        "operands": operands, "decided_by": statements,
    }
    if COVERS_PART in finding["flags"] and rule.get("left_to_a_person"):
        brief["left_to_a_person"] = rule["left_to_a_person"]
    if finding.get("dispensation"):
        brief["dispensation"] = finding["dispensation"]
    return brief
