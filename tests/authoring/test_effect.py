"""What a new version changes on records: no change without a cause, and the right one."""

from __future__ import annotations

import copy
import json
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from authoring.small_pack import ABOUT_A_RULE, HEAD, LIMITS, RECORD, RULES
from garboard.assembly import Workshop, open_workshop
from garboard.authoring import effect_on
from garboard.cli.main import garboard
from garboard.trail import Trail

OLD = HEAD + LIMITS + RULES
ADDED = f"""\
  - id: cells-known
    title: Its resistance is known
    about: battery
    must_hold: battery.internal_resistance <= least_resistance
{ABOUT_A_RULE}"""
#: Name of a change -> (what stands in the old pack, what in the new, rule that moves, cause).
CHANGES = {
    "limit": ("least_rating: {value: 100 A", "least_rating: {value: 150 A", "strong-fuse",
              "limit least_rating"),
    "severity": ('device.rating >= least_rating\n    severity: caution',
                 'device.rating >= least_rating\n    severity: danger', "strong-fuse",
                 "severity of the rule"),
    "requirement": ("conductor.length <= most_length", "2 * conductor.length < most_length",
                    "short-cable", "must hold of the rule"),
    "condition": ('device.kind == "fuse"', 'device.kind == "breaker"', "strong-fuse",
                  "applies when of the rule"),
    "kind of thing": ("about: conductor\n    must_hold: conductor.length <= most_length",
                      "about: record\n    must_hold: all(c.length <= most_length for c in "
                      "record.conductors)", "short-cable", "about of the rule"),
    "added": ("rules:\n", "rules:\n" + ADDED, "cells-known", "rule added"),
    "pack's condition": ("title: A pack to plant mistakes in\n", "title: A pack to plant mistakes "
                         "in\napplies_when: record.has_lithium\n", "short-cable",
                         "applies when of the pack"),
}


@pytest.fixture(scope="module")
def workshop() -> Workshop:
    return open_workshop()


def changed(names: tuple[str, ...]) -> str:
    text = OLD
    for name in names:
        old, new, *_ = CHANGES[name]
        assert old in text
        text = text.replace(old, new)
    if "added" in names:
        text = text.replace("limits:\n", "limits:\n  least_resistance: {value: 1 mΩ, citation: "
                                         "{basis: house}}\n")
    return text


def run(folder: Path, new: str, *more: str) -> Result:
    files = {"old.yaml": OLD, "new.yaml": new, "record.yaml": RECORD}
    for name, text in files.items():
        (folder / name).write_text(text, "utf-8")
    return CliRunner().invoke(garboard, [
        "pack", "effect", *(str(folder / name) for name in ("old.yaml", "new.yaml")),
        *(more or (str(folder / "record.yaml"),)), "--json"], standalone_mode=False)


def moved(result: Result) -> list[Any]:
    assert result.exception is None
    [record] = json.loads(result.stdout)["records"]
    assert record["incomparable"] is None
    return list(record["findings"])


@pytest.mark.parametrize("name", CHANGES)
def test_each_change_moves_its_rule_and_is_the_cause(name: str, tmp_path: Path) -> None:
    found = moved(run(tmp_path, changed((name,))))
    *_, rule, what = CHANGES[name]
    also = {"must hold of the rule"} if name == "kind of thing" else set()
    assert {what, *also} == {cause["what"] for each in found if each["rule"] == rule
                             for cause in each["causes"]}
    assert all(each["causes"] for each in found)
    assert any(each["rule"] == rule for each in found)


#: The other pairs change the same words.
PAIRS = [pair for pair in combinations(CHANGES, 2) if pair != ("requirement", "kind of thing")]


@pytest.mark.parametrize("names", PAIRS, ids=" and ".join)
def test_no_change_is_without_a_cause(names: tuple[str, ...], tmp_path: Path) -> None:
    found = moved(run(tmp_path, changed(names)))
    known = {CHANGES[name][3] for name in names}
    known |= {"must hold of the rule"} if "kind of thing" in names else set()
    assert found
    for each in found:
        assert {cause["what"] for cause in each["causes"]} <= known
        assert each["causes"]


def test_nothing_moves_where_only_texts_change(tmp_path: Path) -> None:
    result = run(tmp_path, OLD.replace("It would burn, slowly.", "It would burn."))
    assert moved(result) == []
    assert result.return_value == 0


def test_a_rule_taken_out_leaves_no_finding(tmp_path: Path) -> None:
    cut = OLD[:OLD.index("  - id: short-cable")].replace(
        "  most_length: {value: 2 m, citation: {basis: house}}\n", "")
    [found] = moved(run(tmp_path, cut))
    assert (found["rule"], found["item"], found["after"]) == ("short-cable", "w1", None)
    assert [cause["what"] for cause in found["causes"]] == ["rule retired or taken out"]


def test_what_newly_fails_is_in_the_exit_code(tmp_path: Path) -> None:
    result = run(tmp_path, changed(("limit",)))
    assert result.return_value == 1
    [found] = moved(result)
    assert (found["before"]["outcome"], found["after"]["outcome"]) == ("passed", "failed")
    assert found["causes"] == [
        {"what": "limit least_rating", "before": "100 A", "after": "150 A"}]


def test_a_record_that_cannot_be_read_is_told_beside_the_others(tmp_path: Path) -> None:
    (tmp_path / "bad.yaml").write_text("format: installation-record/9\n", "utf-8")
    run(tmp_path, changed(("limit",)))
    result = run(tmp_path, changed(("limit",)), str(tmp_path / "bad.yaml"),
                 str(tmp_path / "record.yaml"))
    bad, good = json.loads(result.stdout)["records"]
    assert (result.return_value, bool(bad["incomparable"]), good["incomparable"]) == (
        3, True, None)
    assert len(good["findings"]) == 1


def test_packs_of_two_names_are_not_held_against_each_other(tmp_path: Path) -> None:
    result = run(tmp_path, OLD.replace("pack: planted", "pack: another"))
    assert [each.code for each in result.exception.problems] == [  # type: ignore[union-attr]
        "pack-of-another-name"]


def test_a_calculation_of_another_version_is_a_cause(workshop: Workshop, tmp_path: Path) -> None:
    """A trail of the old pack whose figure was found by an older calculation."""
    text = OLD.replace("device.rating >= least_rating",
                       "device.prospective_current >= least_rating")
    for name, written in (("old.yaml", text), ("record.yaml", RECORD),
                          ("new.yaml", text.replace("burn, slowly", "burn"))):
        (tmp_path / name).write_text(written, "utf-8")
    packs = tuple(workshop.load_packs([tmp_path / name])[0] for name in ("old.yaml", "new.yaml"))
    made = workshop.assess(tmp_path / "record.yaml", packs[:1]).trail
    document = copy.deepcopy(json.loads(json.dumps(made.document)))
    used = document["assessment"]["quantities"]["device.prospective_current"]
    used["version"] = "0"
    finding = next(each for each in document["assessment"]["findings"] if each["item"] == "f1")
    finding["outcome"] = "failed" if finding["outcome"] == "passed" else "passed"
    effect = effect_on("old.trail.json", Trail(document, b""),
                       lambda pack: workshop.assess_again(made, (pack,)).trail,
                       (packs[0], packs[1]), workshop.registry)
    [change] = effect.moved
    assert change.item == "f1"
    assert [(cause.what, cause.before) for cause in change.causes] == [
        ("version of the quantity device.prospective_current", "0")]
    assert effect.incomparable is None
