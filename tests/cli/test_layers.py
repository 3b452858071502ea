"""A house layer through the command line: what it relaxed comes first, what it retired is told."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

from cli.ran import ROOT, Ran
from garboard.documents import shipped_folder
from garboard.trail import read_trail

LAYER = """\
format: rule-pack/1
pack: house
version: 1.0.0
title: House rules
builds_on: [{pack: small-craft-lithium, from: 1.0.0, before: 2.0.0}]
changes:
  - {limit: height_over_bilge_least, value: 150 mm}
  - {limit: derated_share, value: 90 %}
  - {limit: unprotected_length_sheathed, value: 80 in, reason: Long boats, author: A. Person}
  - {rule: kept-dry, retire: true, reason: Never seen, author: B. Person}
  - {rule: alarm-at-helm, severity: danger}
"""
RECORD = ROOT / "examples" / "river-survey-launch" / "after-as-fitted.yaml"
TOLD = [
    ("limit unprotected_length_sheathed", "relaxed", "A. Person", "Long boats", "72 in", "80 in"),
    ("rule kept-dry", "retired", "B. Person", "Never seen", None, None)]


def test_trail_json_and_terminal_tell_what_was_relaxed(garboard: Callable[..., Ran]) -> None:
    Path("house.yaml").write_text(LAYER, "utf-8")
    text = garboard("assess", RECORD, "--pack", "./house.yaml", "--trail", "t.json")
    summary = json.loads(garboard("assess", RECORD, "--pack", "./house.yaml", "--trail", "t.json",
                                  "--json").out)
    trail = read_trail(Path("t.json"))
    for pack in (trail.packs[0], summary["packs"][0]):
        assert [(each["what"], each["change"], each["author"], each["why"], each.get("before"),
                 each.get("after")) for each in pack["relaxations"]] == TOLD
    for what, *_ in TOLD:
        assert 0 < text.out.index(what) < text.out.index("RESULT")
    retired = [each for each in trail.findings if each["rule"] == "kept-dry"]
    assert [(each["outcome"], each["reason"]) for each in retired] == [
        ("not applicable", "retired")]
    assert trail.rule_of(retired[0])["retired"]["author"] == "B. Person"


def test_another_limit_gives_other_findings(garboard: Callable[..., Ran]) -> None:
    Path("house.yaml").write_text(LAYER, "utf-8")
    garboard("assess", RECORD, "--pack", "small-craft-lithium", "--pack", "./house.yaml",
             "--trail", "t.json")
    used = {(each["pack"], limit["amount"]) for each in read_trail(Path("t.json")).packs
            for name, limit in each["resolved"]["limits"].items() if name == "derated_share"}
    assert used == {("small-craft-lithium", 1), ("house", 0.9)}


def test_show(garboard: Callable[..., Ran]) -> None:
    Path("house.yaml").write_text(LAYER, "utf-8")
    whole = garboard("pack", "show", "./house.yaml")
    assert whole.code == 0
    lines = whole.out.splitlines()
    assert any("derated_share" in each and each.endswith("house 1.0.0") for each in lines)
    assert any("no_compensation" in each and "small-craft-lithium" in each for each in lines)
    rule = garboard("pack", "show", "./house.yaml", "alarm-at-helm").out.splitlines()
    severity = next(number for number, line in enumerate(rule) if line.startswith("severity"))
    assert rule[severity].split() == ["severity", "danger"]
    assert rule[severity + 1].split() == ["set", "by", "house", "1.0.0"]
    data = json.loads(garboard("pack", "show", "./house.yaml", "--json").out)
    assert data["set_by"]["rule"]["alarm-at-helm"]["severity"] == "house 1.0.0"
    limit = json.loads(garboard("pack", "show", "./house.yaml", "derated_share", "--json").out)
    assert limit["written"] == "90 %"
    ran = garboard("pack", "show", "./house.yaml", "alarm-at-helms")
    assert (ran.code, "pack-has-none" in ran.err, "'alarm-at-helm'" in ran.err) == (3, True, True)


def test_the_trail_overwrites_no_pack_below(garboard: Callable[..., Ran]) -> None:
    Path("house.yaml").write_text(LAYER, "utf-8")
    below = shipped_folder("rulepacks") / "small-craft-lithium" / "rules" / "places.yaml"
    before = below.read_bytes()
    assert "trail-over-input" in garboard("assess", RECORD, "--pack", "./house.yaml",
                                          "--trail", below).err
    assert below.read_bytes() == before
