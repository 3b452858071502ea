"""``garboard compare``: the survey launch before, as fitted and corrected; and what is refused.

The fault currents are worked out by hand in the example's README and checked there; here they only
have to be the ones that are compared.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from cli.ran import ROOT, Ran
from garboard.reports.comparison.outcomes import word_of
from replay.workshop import workshop

LAUNCH = ROOT / "examples" / "river-survey-launch"
PACK = ("--pack", "small-craft-lithium")
MAKING = Path(__file__).parent / "making"
KEPT = Path(__file__).parent / "kept" / "trail-1.trail.json"
OUTCOMES = ("passed", "failed", "not assessed", "not applicable", None)
#: Rows: before; columns: after, both in the order of OUTCOMES.
WORDS = """
unchanged     newly failing  newly not assessed  no longer looked at  no longer looked at
repaired      still failing  newly not assessed  no longer looked at  no longer looked at
newly passed  newly failing  still not assessed  no longer looked at  no longer looked at
newly passed  newly failing  newly not assessed  unchanged            unchanged
newly passed  newly failing  newly not assessed  unchanged            unchanged
"""


@pytest.mark.parametrize(("before", "row"), list(zip(
    OUTCOMES, WORDS.strip().splitlines(), strict=True)))
def test_what_becomes_of_a_finding(before: str | None, row: str) -> None:
    words = [each.strip() for each in row.split("  ") if each.strip()]
    assert [word_of(before, after) for after in OUTCOMES] == words


def compared(garboard: Callable[..., Ran], *arguments: str | Path) -> dict[str, Any]:
    ran = garboard("compare", *arguments, "--json")
    assert ran.code in (0, 1), ran.err
    result: dict[str, Any] = json.loads(ran.out)
    assert ran.code == int(result["counts"]["newly failing"] > 0)
    return result


def middle(value: dict[str, float]) -> float:
    return (value["lo"] + value["hi"]) / 2


def test_conversion_without_anything_else(garboard: Callable[..., Ran]) -> None:
    result = compared(garboard, LAUNCH / "before.yaml", LAUNCH / "after-as-fitted.yaml", *PACK)
    step = result["figures"][0]
    assert (step["item"], step["quantity"]) == ("main-bus", "bus.fault_current")
    trail = workshop().assess(LAUNCH / "after-as-fitted.yaml",
                              workshop().load_packs(["small-craft-lithium"])).trail
    current = trail.assessment["derivations"]["f0.prospective_current"]["value"]
    assert (step["after"]["lo"], step["after"]["hi"]) == (current["lo"], current["hi"])
    assert step["before"]["hi"] < step["after"]["lo"]
    circuits = {each["run"]: each for each in result["load_circuits"]}
    assert set(circuits) == {"inverter-feed", "winch-feed", "sounder-feed", "bilge-pump-feed"}
    assert {each["conductors_are"] for each in circuits.values()} == {"unchanged as recorded"}
    for each in circuits.values():
        for conductor in each["conductors"]:
            before, after = conductor["ampacity"]
            assert before == after != None  # noqa: E711 - the two figures, and that there is one
    breaks = next(each for each in circuits["inverter-feed"]["looked_at_again"]
                  if each["figure"] == "breaking_capacity")
    assert (breaks["before"], breaks["after"]) == (True, False)
    assert result["counts"]["newly failing"] == trail.outcome["counts"]["failed"]


def test_corrected_from_trails(garboard: Callable[..., Ran]) -> None:
    for name in ("after-as-fitted", "after-corrected"):
        garboard("assess", LAUNCH / f"{name}.yaml", *PACK)
    result = compared(garboard, "after-as-fitted.trail.json", "after-corrected.trail.json")
    assert result["counts"]["newly failing"] == result["counts"]["still failing"] == 0
    before = json.loads(Path("after-as-fitted.trail.json").read_text("utf-8"))["assessment"]
    counts = result["counts"]
    gone = [each for each in result["findings"]
            if each["became"] == "no longer looked at" and each["before"] == "failed"]
    assert counts["repaired"] + len(gone) == before["outcome"]["counts"]["failed"]
    text = garboard("compare", "after-as-fitted.trail.json", "after-corrected.trail.json").out
    assert "MUST THE CABLES OF THE LOADS CHANGE?" in text


def test_the_same_trail_has_not_moved(garboard: Callable[..., Ran]) -> None:
    result = compared(garboard, KEPT, KEPT)
    moved = {word for word, count in result["counts"].items() if count}
    assert moved == {"still failing", "still not assessed", "unchanged"}
    assert [each["item"] for each in result["figures"]] == ["main-bus"]


@pytest.fixture
def yard(garboard: Callable[..., Ran]) -> Callable[[str, str], dict[str, Any]]:
    """Compares the small record with itself after a text in it was replaced."""
    for file in MAKING.iterdir():
        Path(file.name).write_text(file.read_text("utf-8"), "utf-8")
    text = Path("record.yaml").read_text("utf-8")

    def changed(old: str, new: str) -> dict[str, Any]:
        assert old in text
        Path("later.yaml").write_text(text.replace(old, new), "utf-8")
        return compared(garboard, "record.yaml", "later.yaml", "--pack", "kept-layer.yaml")

    return changed


@pytest.mark.parametrize(("old", "new", "state", "facts"), [
    ("size: 25 mm2", "size: 35 mm2", "changed", ["size"]),
    ("size: 25 mm2", "size: 25.0 mm2", "unchanged as recorded", []),
    ("length: 6.2 m, insulation: 90 °C", "length: 6.5 m, insulation: 105 °C", "changed",
     ["insulation", "length"]),
    (", insulation: 90 °C", "", "changed", ["insulation"]),
    ("id: w3, ", "id: w3, note: rubs, ", "unchanged as recorded", [])])
def test_conductors(yard: Callable[[str, str], dict[str, Any]], old: str, new: str, state: str,
                    facts: list[str]) -> None:
    [circuit] = yard(old, new)["load_circuits"]
    [conductor] = circuit["conductors"]
    assert (conductor["is"], circuit["conductors_are"]) == (state, state)
    assert [each["fact"] for each in conductor["changed"]] == facts


def test_what_is_recorded_in_neither_is_not_called_unchanged(
        garboard: Callable[..., Ran]) -> None:
    for file in MAKING.iterdir():
        Path(file.name).write_text(file.read_text("utf-8").replace(", insulation: 90 °C", ""),
                                   "utf-8")
    result = compared(garboard, "record.yaml", "record.yaml", "--pack", "kept-layer.yaml")
    [circuit] = result["load_circuits"]
    assert circuit["conductors_are"] == "not known"
    assert circuit["conductors"][0]["not_recorded"] == ["insulation"]


def test_added_and_removed(yard: Callable[[str, str], dict[str, Any]]) -> None:
    [circuit] = yard("id: winch-feed", "id: windlass-feed")["load_circuits"][:1]
    assert circuit["conductors_are"] == "not in the record before"
    assert {each["before"] for each in circuit["looked_at_again"]} == {None}


# not comparable ---------------------------------------------------------------------------------
def assessed(garboard: Callable[..., Ran], name: str, pack: str, old: str = "",
             new: str = "") -> str:
    text = (MAKING / "record.yaml").read_text("utf-8")
    assert old in text
    Path(f"{name}.yaml").write_text(text.replace(old, new), "utf-8")
    garboard("assess", f"{name}.yaml", "--pack", pack)
    return f"{name}.trail.json"


@pytest.mark.parametrize(("what", "words"), [
    ("vessel", "another vessel"), ("nameless", "not named"), ("packs", "other packs"),
    ("version", "another kept-rules"), ("content", "of other content"),
    ("decision", "another decision rule")])
def test_incomparable_is_said(garboard: Callable[..., Ran], what: str, words: str) -> None:
    pack = (MAKING / "kept-rules.yaml").read_text("utf-8")
    changes = {"version": ("version: 1.0.0", "version: 1.0.1"),
               "content": ("value: 150 %", "value: 140 %"),
               "decision": ("version: 1.0.0", "version: 1.0.0\ndecision_rule: simple acceptance"),
               "packs": ("pack: kept-rules", "pack: other-rules")}
    Path("kept-rules.yaml").write_text(pack, "utf-8")
    Path("other-rules.yaml").write_text(pack.replace(*changes.get(what, ("", ""))), "utf-8")
    before = assessed(garboard, "one", "kept-rules.yaml")
    after = assessed(garboard, "other", "other-rules.yaml",
                     *{"vessel": ("Sand Martin", "Swift"), "nameless": ("name: Sand Martin, ", "")
                       }.get(what, ("", "")))
    ran = garboard("compare", before, after, "--json")
    assert ran.code == 2
    result = json.loads(ran.out)
    assert result["comparable"] is False
    assert any(words in each for each in result["incomparable"])
    assert "findings" not in result
    ran = garboard("compare", before, after, "--anyway")
    assert ran.code == 2
    assert "NOT COMPARABLE" in ran.out and "WHAT BECAME OF THE FINDINGS" in ran.out


def test_a_record_needs_a_pack(garboard: Callable[..., Ran]) -> None:
    ran = garboard("compare", MAKING / "record.yaml", KEPT)
    assert ran.code == 3
    assert "record-without-pack" in ran.err
