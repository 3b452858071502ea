"""A pack that declares what a plugin that is not installed would compute: it loads all the same."""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.assembly import Workshop, load_plugins
from garboard.assessment import Assessment
from garboard.errors import PackRefused

RECORD = """
format: installation-record/1
survey: {date: 2026-05-02}
places: [{id: locker, kind: locker}]
"""
PACK = """
format: rule-pack/1
pack: tried
version: 1.0.0
title: A pack that needs a plugin
needs: [{plugin: hold, api: 1, quantities: {QUANTITIES}}]
limits: {least: {value: 1 m2, citation: {basis: house}}}
rules:
  - id: one
    title: First
    about: place
    must_hold: EXPRESSION
    severity: warning
    citation: {basis: house}
    why: Because.
    recommendation: Change it.
"""


def assessed(folder: Path, quantities: str, expression: str) -> Assessment:
    """The assessment of a record with one place against a pack of one rule."""
    (folder / "record.yaml").write_text(RECORD, encoding="utf-8")
    (folder / "pack").mkdir()
    (folder / "pack" / "pack.yaml").write_text(
        PACK.replace("QUANTITIES", quantities).replace("EXPRESSION", expression), encoding="utf-8")
    workshop = Workshop(load_plugins([]))
    packs = workshop.load_packs([str(folder / "pack")])
    return workshop.assess(folder / "record.yaml", packs)


CASES = [
    ("place.floor_area: m2", "place.floor_area >= least", "not assessed", "plugin unavailable"),
    ("place.aired: truth", "place.aired", "not assessed", "plugin unavailable"),
    ("place.doors: count", "place.doors > 1", "not assessed", "plugin unavailable"),
    ("place.liner: text", "place.liner == 'steel'", "not assessed", "plugin unavailable"),
    # where something else decides, the plugin is not missed
    ("place.aired: truth", "place.aired or place.kind == 'locker'", "passed", None),
    ("place.aired: truth", "place.aired and place.kind == 'bilge'", "failed", None),
    # a name that the program knows itself is no plugin's
    ("place.kind: text", "place.kind == 'locker'", "passed", None),
]


@pytest.mark.parametrize(("quantities", "expression", "outcome", "reason"), CASES)
def test_outcome(quantities: str, expression: str, outcome: str, reason: str | None,
                 tmp_path: Path) -> None:
    [finding] = assessed(tmp_path, quantities, expression).trail.findings
    assert (finding["outcome"], finding["reason"]) == (outcome, reason)


def test_the_missing_plugin_is_warned_of_at_its_place(tmp_path: Path) -> None:
    warnings = assessed(tmp_path, "place.floor_area: m2",
                        "place.floor_area >= least").warnings
    assert [(each.code, each.level, each.place.line) for each in warnings] == [
        ("plugin-missing", "warning", 6)]


@pytest.mark.parametrize(("quantities", "expression", "code"), [
    ("place.floor_area: m2", "place.floor_area >= 1", "expression-dimension"),
    ("place.floor_area: V", "place.floor_area >= least", "expression-dimension"),
    ("place.floor_area: m2", "place.flor_area >= least", "expression-field"),
    ("keel.depth: m", "place.kind == 'locker'", "need-unmet"),
    ("place.floor_area: ells", "place.kind == 'locker'", "need-unmet"),
])
def test_what_is_declared_is_held_to(quantities: str, expression: str, code: str,
                                     tmp_path: Path) -> None:
    with pytest.raises(PackRefused) as refused:
        assessed(tmp_path, quantities, expression)
    assert code in [each.code for each in refused.value.problems if each.level == "error"]
