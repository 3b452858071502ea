"""Trails with what the hand-made one lacks: exceptions, failures of a calculation, two packs."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from garboard.trail import Trail, digest_of, finding_id, make_trail
from trail.launch import finding, launch_parts

DISPENSATION = {
    "id": "d-1", "pack": "small-craft-teaching", "rule": "sources-can-be-stopped",
    "item": "alternator-1", "who": "the chief surveyor", "why": "replaced next month",
    "first_day": "2026-04-01", "last_day": "2026-05-31", "counts_as_failed": False}
RELAXATION = {"what": "rule breaking-capacity", "change": "relaxed", "by": "house-rules 1.0.0",
              "why": "the packs are fused inside"}
ERROR = {"reason": "calculation error", "path": "", "detail": "w1.ampacity: KeyError"}


def _one(parts: dict[str, Any], rule: str, item: str) -> dict[str, Any]:
    found: dict[str, Any] = next(each for each in parts["findings"]
                                 if (each["rule"], each["item"]) == (rule, item))
    return found


def with_exceptions() -> Trail:
    """A relaxed rule and a dispensed failure."""
    parts = launch_parts()
    parts["packs"][0]["relaxations"] = [RELAXATION]
    parts["dispensations"] = [DISPENSATION]
    _one(parts, "sources-can-be-stopped", "alternator-1")["dispensation"] = "d-1"
    return make_trail(**parts)


def with_a_failed_calculation() -> Trail:
    """One finding that a calculation failed for."""
    parts = launch_parts()
    _one(parts, "ampacity", "w1").update(
        outcome="not assessed", reason="calculation error", missing=[ERROR],
        operands=[200.0, {"unknown": [ERROR]}])
    return make_trail(**parts)


def with_a_pack_that_does_not_apply() -> Trail:
    """A second pack, sealed, of the other decision rule, that does not apply."""
    parts = launch_parts()
    other = deepcopy(parts["packs"][0])
    other.update(pack="other-pack", version="2.0.0", applies=False, status="sealed",
                 decision_rule="simple acceptance")
    other["resolved"]["pack"] = "other-pack"
    other["digest"] = digest_of(other["resolved"])
    about = {rule["id"]: rule["about"] for rule in other["resolved"]["rules"]}
    parts["packs"].append(other)
    parts["findings"] += [finding("other-pack", about, rule=rule, item=None,
                                  outcome="not applicable", reason="pack does not apply")
                          for rule in about]
    return make_trail(**parts)


def with_only(*outcomes: str) -> Trail:
    """The findings of some outcomes only."""
    parts = launch_parts()
    parts["findings"] = [each for each in parts["findings"] if each["outcome"] in outcomes]
    return make_trail(**parts)


def with_warnings() -> Trail:
    """A warning about the record as written, and a surveyor who says what was not seen."""
    parts = launch_parts()
    parts["record"]["read"]["survey.not_examined"] = {"value": "the engine space was locked"}
    parts["about"]["warnings"] = [{
        "code": "length-unlikely", "title": "A length that is unlikely", "file": "after.yaml",
        "line": 31, "path": "runs[0].through[0].conductor.length", "found": "3 km", "hint": "3 m?"}]
    return make_trail(**parts)


def with_many_failures(count: int, *, alike: bool) -> Trail:
    """Another ``count`` fuses fail the rule on breaking capacity, with the same figures or not."""
    parts = launch_parts()
    one = _one(parts, "breaking-capacity", "f0")
    on_path, capacity, current = one["operands"]
    for number in range(count):
        item = f"more-{number}"
        operands = [on_path, capacity, current if alike else current + 1000 * number]
        parts["findings"].append({**one, "item": item, "operands": operands, "of": [[], [], []],
                                  "id": finding_id(one["pack"], one["rule"], item)})
    return make_trail(**parts)
