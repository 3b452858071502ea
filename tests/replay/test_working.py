"""``garboard working``: what a finding rests on, and the smallest design change that would pass."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from cli.ran import ROOT, Ran
from garboard.trail import read_trail
from replay.workshop import workshop

LAUNCH = ROOT / "examples" / "river-survey-launch" / "after-as-fitted.yaml"
MAKING = Path(__file__).parent / "making"
HIGHER = """
    permissible_changes:
      - change: higher class
        classes:
          - {device_class: T, breaks: [{current: 6 kA, voltage: 125 V DC}]}
          - {device_class: NH, breaks: [{current: 25 kA, voltage: 125 V DC}]}
          - {device_class: huge, breaks: [{current: 50 kA, voltage: 125 V DC}]}
        citation: {basis: house}
"""
LARGER = """
    permissible_changes: [{change: larger conductor, up_to: 95 mm2, citation: {basis: house}}]
"""
THICK = """
  - id: thick-enough
    title: A conductor carries enough
    about: conductor
    must_hold: conductor.ampacity >= ampacity_least
    severity: caution
    citation: {basis: house}
    why: It warms up.
    recommendation: A larger one.
"""
THIN = """
  - id: thin-enough
    title: A conductor is not too heavy
    about: conductor
    must_hold: conductor.ampacity <= ampacity_most
    severity: caution
    citation: {basis: house}
    why: It weighs.
    recommendation: A smaller one.
"""


def assessed(garboard: Callable[..., Ran], rules: str, record: str | None = None) -> None:
    """The trail ``t.json`` of the small record by some rules."""
    Path("rules.yaml").write_text(rules, "utf-8")
    Path("record.yaml").write_text(record or (MAKING / "record.yaml").read_text("utf-8"), "utf-8")
    ran = garboard("assess", "record.yaml", "--pack", "rules.yaml", "--trail", "t.json")
    assert ran.code in (1, 2), ran.err


def rules(**added: str) -> str:
    """The rules of the kept trails with more keys under some of them."""
    text = (MAKING / "kept-rules.yaml").read_text("utf-8")
    for rule, keys in added.items():
        head, found, tail = text.partition(f"  - id: {rule}\n")
        body, sep, rest = tail.partition("\n  - id: ")
        text = head + found + body.rstrip("\n") + keys.rstrip("\n") + sep + rest
    return text


def working(garboard: Callable[..., Ran], *arguments: str) -> dict[str, Any]:
    ran = garboard("working", "t.json", *arguments, "--json")
    assert ran.code == 0, ran.err
    [result] = json.loads(ran.out)
    return dict(result)


def test_the_smallest_class_that_breaks_the_current_is_proposed(
        garboard: Callable[..., Ran]) -> None:
    assessed(garboard, rules(breaks=HIGHER))
    remedy = working(garboard, "breaks", "f3")["remedy"]
    assert remedy["result"] == "found"
    assert [each["outcome"] for each in remedy["tried"]] == ["failed", "passed"]
    assert "class NH" in remedy["chosen"]["change"] and "125 A" in remedy["chosen"]["change"]
    assert remedy["chosen"]["newly_failing"] == []


def test_no_single_change_suffices(garboard: Callable[..., Ran]) -> None:
    assessed(garboard, rules(breaks=HIGHER.replace("25 kA", "7 kA").replace("50 kA", "8 kA")))
    remedy = working(garboard, "breaks", "f3")["remedy"]
    assert (remedy["result"], remedy["chosen"]) == ("no single change suffices", None)
    assert [each["outcome"] for each in remedy["tried"]] == ["failed"] * 3
    ran = garboard("working", "t.json", "breaks", "f3")
    assert "No single change suffices" in ran.out


def test_a_change_that_makes_something_else_fail_does_not_suffice_and_is_shown(
        garboard: Callable[..., Ran]) -> None:
    limits = ("  ampacity_least: {value: 170 A, citation: {basis: house}}\n"
              "  ampacity_most: {value: 160 A, citation: {basis: house}}\nrules:\n")
    text = rules().replace("rules:\n", limits, 1) + THICK.rstrip("\n") + LARGER + THIN
    assessed(garboard, text)
    remedy = working(garboard, "thick-enough", "w3")["remedy"]
    passing = [each for each in remedy["tried"] if each["outcome"] == "passed"]
    assert remedy["chosen"] is None
    assert passing
    assert all(each["newly_failing"] == ["kept-rules/thin-enough/w3"] for each in passing)


def test_conductors_go_up_along_their_own_list(garboard: Callable[..., Ran]) -> None:
    limits = "  ampacity_least: {value: 5 kA, citation: {basis: house}}\nrules:\n"
    text = rules().replace("rules:\n", limits, 1) + THICK.rstrip("\n") + LARGER
    assessed(garboard, text)
    for item, sizes in (("w3", ["35 mm2", "50 mm2", "70 mm2", "95 mm2"]),
                        ("w2", ["2/0 AWG", "3/0 AWG"])):
        tried = working(garboard, "thick-enough", item)["remedy"]["tried"]
        assert [each["change"].partition(" of ")[2].partition(" instead")[0]
                for each in tried] == sizes


def test_a_battery_gets_a_device_of_its_own_that_carries_its_current(
        garboard: Callable[..., Ran]) -> None:
    garboard("assess", LAUNCH, "--pack", "small-craft-lithium", "--trail", "t.json")
    remedy = working(garboard, "own-device-in-parallel", "pack-1")["remedy"]
    assert remedy["result"] == "found"
    assert "200 A, at the terminal of pack-1" in remedy["chosen"]["change"]


def test_a_rating_is_not_chosen_without_the_current(garboard: Callable[..., Ran]) -> None:
    text = LAUNCH.read_text("utf-8").replace("discharge: {current_max: 200 A, ", "discharge: {")
    Path("launch.yaml").write_text(text, "utf-8")
    garboard("assess", "launch.yaml", "--pack", "small-craft-lithium", "--trail", "t.json")
    remedy = working(garboard, "own-device-in-parallel", "pack-1")["remedy"]
    assert (remedy["result"], remedy["tried"]) == ("no single change suffices", [])
    assert len(remedy["notes"]) == 1


def test_no_change_lengthens_a_lead_or_touches_what_is_recorded_elsewhere() -> None:
    """Held against the data: of every change that is tried, only what the change is about."""
    from garboard.assessment.remedies.proposing import Proposing
    from garboard.network import build_network
    from garboard.quantities import Figures

    opened = workshop()
    record = opened.read_record(LAUNCH)
    [pack] = opened.load_packs(["small-craft-lithium"])
    proposing = Proposing(record, Figures(record, build_network(record), opened.registry))
    seen = 0
    for rule in pack.pack.rules:
        items = proposing.figures.subjects[rule.about] if rule.permissible_changes else ()
        assert isinstance(items, tuple)
        for item in items:
            for change in proposing.changes(rule.permissible_changes or (), item.id):
                seen += 1
                paths = set(differing(record.written, change.written))
                assert all(allowed(path) for path in paths), (change.words, paths)
                assert lengths(change.written) == lengths(record.written)
                assert ratings(record.written) <= ratings(change.written)
    assert seen > 50


def differing(one: Any, other: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    if isinstance(one, dict) and isinstance(other, dict) and one.keys() == other.keys():
        return [found for key in one for found in differing(one[key], other[key], (*path, key))]
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return [found for place, (mine, theirs) in enumerate(zip(one, other, strict=True))
                for found in differing(mine, theirs, (*path, place))]
    return [] if one == other else [path]


def allowed(path: tuple[Any, ...]) -> bool:
    """A size, a device as a whole, or one more part in a run."""
    return path[0] == "runs" and path[2] == "through" and (
        len(path) in (3, 4, 5) or path[-1] == "size")


def parts(written: Any, kind: str) -> list[Any]:
    return [part[kind] for run in written["runs"] for part in run["through"] if kind in part]


def lengths(written: Any) -> list[Any]:
    return [each["length"] for each in parts(written, "conductor")]


def ratings(written: Any) -> set[tuple[str, str]]:
    return {(each["id"], each["rating"])
            for kind in ("fuse", "breaker") for each in parts(written, kind)}


# what is shown ----------------------------------------------------------------------------------
def test_the_expression_with_values_and_the_facts_with_their_source(
        garboard: Callable[..., Ran]) -> None:
    assessed(garboard, rules())
    result = working(garboard, "breaks", "f1", "--no-search")
    assert result["requirement"]["expression"] == (
        "device.breaking_capacity >= device.prospective_current")
    assert result["requirement"]["with_values"].startswith("20 kA >= [")
    facts = {}

    def gather(figures: list[dict[str, Any]]) -> None:
        for each in figures:
            facts.update({fact["path"]: fact for fact in each.get("facts", ())})
            gather(each.get("figures", []))

    gather(result["figures"])
    resistance = facts["pack-1.internal_resistance"]
    assert (resistance["from"], resistance["method"]) == ("measured", "10 s DC pulse")
    assert resistance["place"] == "record.yaml, line 7"
    ran = garboard("working", "t.json", "breaks", "f1", "--full")
    assert "written as 2.1 mΩ ± 10 %" in ran.out
    assert "with values" in ran.out


@pytest.mark.parametrize(("arguments", "outcomes"), [
    (["breaks"], ["failed", "failed"]), (["fused-near"], ["failed", "failed"]),
    (["kept-rules/managed", "pack-2"], ["not assessed"]), (["managed", "pack-1"], ["passed"])])
def test_which_findings_are_shown(garboard: Callable[..., Ran], arguments: list[str],
                                  outcomes: list[str]) -> None:
    assessed(garboard, rules())
    ran = garboard("working", "t.json", *arguments, "--json")
    assert [each["finding"]["outcome"] for each in json.loads(ran.out)] == outcomes
    assert garboard("working", "t.json", *arguments).out.count("WORKING OF") == len(outcomes)


@pytest.mark.parametrize("arguments", [["brakes"], ["breaks", "f9"], ["other/breaks"]])
def test_unknown(garboard: Callable[..., Ran], arguments: list[str]) -> None:
    assessed(garboard, rules())
    ran = garboard("working", "t.json", *arguments)
    assert ran.code == 3
    assert "finding-unknown" in ran.err


def test_every_finding_of_the_launch_has_a_working(garboard: Callable[..., Ran]) -> None:
    from garboard.reports import working_json, working_text

    garboard("assess", LAUNCH, "--pack", "small-craft-lithium", "--trail", "t.json")
    trail = read_trail("t.json")
    for finding in trail.findings[::3]:
        for full in (False, True):
            text = working_text(trail, finding, 80, colour=False, full=full)
            assert max(map(len, text.splitlines())) <= 80
        assert json.loads(working_json(trail, finding))["finding"]["id"] == finding["id"]
