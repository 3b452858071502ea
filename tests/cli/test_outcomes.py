"""Exit codes, failures of our own, and the same bytes on any day and from any folder."""

from __future__ import annotations

import hashlib
import json
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from cli.ran import HERE, ROOT, Ran
from garboard.assembly import plugins
from garboard.quantities import Quantity, builtin
from garboard.trail import digest_of, read_trail

PACK = HERE / "figures-pack.yaml"
RECORD = HERE / "three-packs.yaml"


def _only(rule: str) -> str:
    """The figures pack with a single rule."""
    head, _, rules = PACK.read_text("utf-8").partition("rules:\n")
    chosen = [part for part in rules.split("  - id: ") if part.startswith(f"{rule}\n")]
    assert len(chosen) == 1
    return f"{head}rules:\n  - id: {chosen[0]}"


def test_exit_0_when_all_holds(garboard: Callable[..., Ran]) -> None:
    Path("rules.yaml").write_text(_only("bus"), "utf-8")
    ran = garboard("assess", RECORD, "--pack", "rules.yaml")
    assert ran.code == 0, ran.err


def test_exit_1_when_a_rule_fails(garboard: Callable[..., Ran]) -> None:
    assert garboard("assess", RECORD, "--pack", PACK).code == 1


def test_exit_2_when_something_serious_is_open(garboard: Callable[..., Ran]) -> None:
    Path("rules.yaml").write_text(_only("breaks"), "utf-8")
    record = RECORD.read_text("utf-8")
    for name in ("f0", "f1", "f2", "f3"):
        at = record.index(f"id: {name},")
        start = record.index(", breaks:", at)
        record = record[:start] + record[record.index("}]", start) + 2:]
    Path("open.yaml").write_text(record, "utf-8")
    ran = garboard("assess", "open.yaml", "--pack", "rules.yaml")
    assert ran.code == 2, ran.out
    findings = ran.trail("open.trail.json")["assessment"]["findings"]
    assert {each["reason"] for each in findings} == {"not recorded"}
    assert [each["missing"][0]["path"] for each in findings] == [
        f"f{n}.breaks" for n in range(4)]


def test_exit_2_when_the_pack_does_not_apply(garboard: Callable[..., Ran]) -> None:
    Path("lead.yaml").write_text(RECORD.read_text("utf-8").replace("LFP", "AGM"), "utf-8")
    ran = garboard("assess", "lead.yaml", "--pack", "small-craft-lithium")
    assert ran.code == 2
    trail = ran.trail("lead.trail.json")["assessment"]
    assert trail["outcome"]["word"] == "does not apply"
    assert {each["reason"] for each in trail["findings"]} == {"pack does not apply"}


def test_exit_2_when_nothing_is_aboard(garboard: Callable[..., Ran]) -> None:
    Path("rules.yaml").write_text(_only("bus"), "utf-8")
    Path("empty.yaml").write_text("format: installation-record/1\nsurvey: {date: 2026-01-15}\n"
                                  "buses: []\nbatteries: []\nruns: []\n", "utf-8")
    ran = garboard("assess", "empty.yaml", "--pack", "rules.yaml")
    assert ran.code == 2
    (finding,) = ran.trail("empty.trail.json")["assessment"]["findings"]
    assert (finding["outcome"], finding["reason"]) == ("not applicable", "none aboard")


def test_a_list_that_is_absent_is_not_recorded(garboard: Callable[..., Ran]) -> None:
    Path("rules.yaml").write_text(_only("breaks"), "utf-8")
    Path("absent.yaml").write_text("format: installation-record/1\nsurvey: {date: 2026-01-15}\n",
                                   "utf-8")
    ran = garboard("assess", "absent.yaml", "--pack", "rules.yaml")
    assert ran.code == 2
    (finding,) = ran.trail("absent.trail.json")["assessment"]["findings"]
    assert (finding["outcome"], finding["reason"]) == ("not assessed", "not recorded")
    assert finding["missing"][0]["path"] == "runs"


def test_exit_4_when_a_calculation_breaks_and_nothing_is_lost(
        garboard: Callable[..., Ran], monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(**_: object) -> float:
        raise ZeroDivisionError("a fault planted by a test")

    whole = builtin.garboard_quantities()

    def planted(module: object, name: str, version: str) -> plugins.Plugin:
        quantities: tuple[Quantity, ...] = tuple(
            replace(each, function=broken) if each.full_name == "device.through_current" else each
            for each in whole)
        return plugins.Plugin(name, version, "none", quantities)

    monkeypatch.setattr(plugins, "_load", planted)
    ran = garboard("assess", RECORD, "--pack", PACK)
    assert ran.code == 4
    trail = ran.trail("three-packs.trail.json")
    findings = {each["id"]: each for each in trail["assessment"]["findings"]}
    broken_ones = [each for each in findings.values() if each["rule"] == "through"]
    assert len(broken_ones) == 4
    assert {each["reason"] for each in broken_ones} == {"calculation error"}
    assert findings["figures/prospective/f0"]["outcome"] == "passed"
    assert findings["figures/breaks/f0"]["outcome"] == "failed"
    assert any("a fault planted by a test" in each["traceback"]
               for each in trail["about"]["failures"])


def test_the_date_given_is_the_date_of_the_assessment(garboard: Callable[..., Ran]) -> None:
    ran = garboard("assess", RECORD, "--pack", PACK, "--on", "2027-02-28")
    assessment = ran.trail("three-packs.trail.json")["assessment"]
    assert (assessment["date"], assessment["date_from"]) == ("2027-02-28", "command line")


def test_without_any_date_the_assessment_is_refused(garboard: Callable[..., Ran]) -> None:
    Path("undated.yaml").write_text(
        RECORD.read_text("utf-8").replace("survey: {date: 2026-01-15}\n", ""), "utf-8")
    ran = garboard("assess", "undated.yaml", "--pack", PACK)
    assert ran.code == 3
    assert "date-missing" in ran.err.splitlines()[0]


def test_the_trail_reads_back_and_its_digest_is_that_of_its_bytes(
        garboard: Callable[..., Ran]) -> None:
    ran = garboard("assess", RECORD, "--pack", PACK)
    trail = read_trail(ran.folder / "three-packs.trail.json")
    assert trail.digest == digest_of(trail.document["assessment"])


def test_json_output_is_json_with_every_finding(garboard: Callable[..., Ran]) -> None:
    ran = garboard("assess", RECORD, "--pack", PACK, "--json")
    shown = json.loads(ran.out)
    written = ran.trail("three-packs.trail.json")["assessment"]["findings"]
    assert [each["id"] for each in shown["findings"]] == [each["id"] for each in written]
    assert shown["cautions"]


def _digest_elsewhere(folder: Path, seed: str) -> tuple[str, str]:
    """Digest in the trail and of the assessment's text, made in a process of its own."""
    folder.mkdir()
    subprocess.run(
        [sys.executable, "-m", "garboard", "assess",
         str(ROOT / "examples" / "river-survey-launch" / "after-as-fitted.yaml"),
         "--pack", "small-craft-lithium", "--trail", "t.json"],
        cwd=folder, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=False)
    document = json.loads((folder / "t.json").read_text("utf-8"))
    text = json.dumps(document["assessment"], sort_keys=True)
    return document["digest"], hashlib.sha256(text.encode()).hexdigest()


def test_same_bytes_under_two_hash_seeds_and_from_two_folders(tmp_path: Path) -> None:
    one = _digest_elsewhere(tmp_path / "one", "0")
    two = _digest_elsewhere(tmp_path / "two", "4711")
    assert one == two


def test_the_condition_of_a_pack_may_ask_for_the_vessel(garboard: Callable[..., Ran]) -> None:
    text = _only("bus").replace("limits:\n", "applies_when: vessel.fuel == 'gasoline'\nlimits:\n")
    Path("rules.yaml").write_text(text, "utf-8")
    for fuel, word in (("gasoline", "meets the pack's rules as recorded"),
                       ("diesel", "does not apply")):
        record = RECORD.read_text("utf-8").replace("kind: test case", f"fuel: {fuel}")
        Path("boat.yaml").write_text(record, "utf-8")
        ran = garboard("assess", "boat.yaml", "--pack", "rules.yaml")
        assert ran.trail("boat.trail.json")["assessment"]["outcome"]["word"] == word
    ran = garboard("assess", RECORD, "--pack", "rules.yaml")
    assert ran.code == 2
    (finding,) = ran.trail("three-packs.trail.json")["assessment"]["findings"]
    assert (finding["reason"], finding["missing"][0]["path"]) == ("not recorded", "vessel.fuel")
