"""A dispensation on the days around its edges: trail, JSON and terminal take one decision."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from cli.ran import ROOT, Ran
from garboard.trail import read_trail

RECORD = """\
format: installation-record/1
vessel: {name: Reed Warbler}
survey: {date: 2026-05-10}
batteries: []
runs: []
buses:
  - {id: main-bus, rating: 200 A}
  - {id: panel, rating: 600 A}
"""
HEAD = """\
format: rule-pack/1
pack: tried
version: 0.1.0
title: Two rules
limits: {least: {value: 500 A, citation: {basis: house}}}
rules:
"""
RULE = """\
  - id: rated
    title: Rated
    about: bus
    must_hold: bus.rating >= least
    severity: warning
    citation: {basis: house}
    why: Because.
    recommendation: Change it.
"""
BY_LAW = RULE.replace("id: rated", "id: by-law\n    not_dispensable: true").replace(
    "{basis: house}", "{basis: regulation, source: A law, says: Rate it., status: read}")
ONE = HEAD + RULE
PACK = ONE + BY_LAW
FILE = """\
format: dispensations/1
dispensations:
  - id: d-1
    rule: rated
    item: main-bus
    reason: Replaced in June
    approved_by: chief surveyor
    from: 2026-04-01
    until: 2026-05-31
"""
DAYS = [("2026-03-31", False), ("2026-04-01", True), ("2026-04-15", True), ("2026-05-31", True),
        ("2026-06-01", False)]


@pytest.fixture
def tried(garboard: Callable[..., Ran]) -> Callable[..., Ran]:
    """Assesses the record against the pack, each with texts exchanged."""
    def ran(*arguments: str, file: str = FILE, pack: str = PACK,
            record: str = RECORD) -> Ran:
        for name, text in (("boat.yaml", record), ("tried.yaml", pack), ("agreed.yaml", file)):
            Path(name).write_text(text, "utf-8")
        return garboard("assess", "boat.yaml", "--pack", "./tried.yaml",
                        "--dispensations", "agreed.yaml", *arguments)

    return ran


def _of(findings: list[dict[str, Any]], rule: str, item: str) -> dict[str, Any]:
    (found,) = [each for each in findings
                if each["id"] == f"tried/{rule}/{item}"]
    return found


@pytest.mark.parametrize(("day", "in_force"), DAYS)
def test_all_outputs_agree(tried: Callable[..., Ran], day: str, in_force: bool) -> None:
    text = tried("--on", day)
    summary = json.loads(tried("--on", day, "--json").out)
    trail = read_trail(text.folder / "boat.trail.json")
    for findings in (trail.findings, summary["findings"]):
        found = _of(list(findings), "rated", "main-bus")
        assert found["outcome"] == "failed"
        assert (found.get("dispensation") == "d-1") is in_force
    for part in (trail.assessment, summary):
        assert [each["id"] for each in part["dispensations"]] == (["d-1"] if in_force else [])
        assert part["outcome"]["counts"]["dispensed"] == int(in_force)
        assert part["outcome"]["counts"]["failed"] == 2
    assert ("Dispensation d-1" in text.out) is in_force
    assert ("set aside by a dispensation" in text.out) is in_force
    assert ("dispensation-not-in-force" in text.err) is not in_force


@pytest.mark.parametrize(("day", "in_force"), DAYS)
def test_a_failure_that_is_dispensed_with_is_not_what_the_exit_code_says(
        tried: Callable[..., Ran], day: str, in_force: bool) -> None:
    ran = tried("--on", day, pack=ONE)
    assert ran.code == (0 if in_force else 1)


@pytest.mark.parametrize(("line", "code", "aside"), [
    ("", 1, 0), ("dispensable_danger: counts apart\n", 0, 1)])
def test_a_danger_counts_unless_the_pack_says_otherwise(
        tried: Callable[..., Ran], line: str, code: int, aside: int) -> None:
    one = ONE.replace("warning", "danger") + line
    ran = tried(pack=one)
    counts = ran.trail("boat.trail.json")["assessment"]["outcome"]["counts"]
    assert (ran.code, counts["failed"], counts["dispensed"]) == (code, 1, aside)


REFUSED = [
    ("not dispensable", FILE.replace("rule: rated", "rule: by-law"), "agreed.yaml:4:11",
     "dispensation-refused"),
    ("not dispensable, and not in force",
     FILE.replace("rule: rated", "rule: tried/by-law").replace("2026-05-31", "2026-04-02"),
     "agreed.yaml:4:11", "dispensation-refused"),
    ("another format", FILE.replace("dispensations/1", "dispensations/2"), "agreed.yaml:1:9",
     "dispensations-format"),
    ("no reason", FILE.replace("    reason: Replaced in June\n", ""), "agreed.yaml:3:5",
     "key-missing"),
    ("no such day", FILE.replace("2026-05-31", "2026-06-31"), "agreed.yaml:9:12",
     "date-unreadable"),
    ("a day in words", FILE.replace("2026-05-31", "end of May"), "agreed.yaml:9:12",
     "date-unreadable"),
    ("days reversed", FILE.replace("2026-05-31", "2026-03-31"), "agreed.yaml:9:12",
     "dispensation-days-reversed"),
    ("an unknown key", FILE + "    colour: blue\n", "agreed.yaml:10:5", "key-unknown"),
    ("two at a time", FILE + FILE.partition("dispensations:\n")[2].replace("d-1", "d-2"),
     "agreed.yaml:3:5", "dispensation-overlaps"),
    ("one name twice", FILE + FILE.partition("dispensations:\n")[2].replace("main-bus", "panel"),
     "agreed.yaml:3:5", "dispensation-twice"),
]


@pytest.mark.parametrize(("file", "place", "code"), [each[1:] for each in REFUSED],
                         ids=[each[0] for each in REFUSED])
def test_refused(tried: Callable[..., Ran], file: str, place: str, code: str) -> None:
    ran = tried(file=file)
    assert ran.code == 3
    assert f"{place}: {code}: " in ran.err
    assert not (ran.folder / "boat.trail.json").exists()


@pytest.mark.parametrize(("file", "place"), [
    (FILE.replace("rule: rated", "rule: rates"), "4:11"),
    (FILE.replace("item: main-bus", "item: main-buss"), "5:11"),
    (FILE.replace("rule: rated", "rule: other/rated"), "4:11"),
    (FILE.replace("dispensations:", "vessel: Sedge Warbler\ndispensations:"), "4:5"),
])
def test_one_that_matches_nothing_is_a_warning(tried: Callable[..., Ran], file: str,
                                               place: str) -> None:
    ran = tried(file=file)
    assert f"agreed.yaml:{place}: warning: dispensation-matches-nothing" in ran.err
    assessment = ran.trail("boat.trail.json")["assessment"]
    assert assessment["dispensations"] == []
    assert {each["dispensation"] for each in assessment["findings"]} == {None}


def test_one_for_the_vessel_is_in_force(tried: Callable[..., Ran]) -> None:
    ran = tried(file=FILE.replace("dispensations:", "vessel: Reed Warbler\ndispensations:"))
    assert len(ran.trail("boat.trail.json")["assessment"]["dispensations"]) == 1


def test_the_pack_must_be_named_where_two_have_the_rule(tried: Callable[..., Ran]) -> None:
    Path("other.yaml").write_text(PACK.replace("pack: tried", "pack: other"), "utf-8")
    assert "dispensation-rule-unclear" in tried("--pack", "./other.yaml").err
    ran = tried("--pack", "./other.yaml", file=FILE.replace("rule: rated", "rule: other/rated"))
    (each,) = ran.trail("boat.trail.json")["assessment"]["dispensations"]
    assert (each["pack"], each["rule"]) == ("other", "rated")


def test_only_a_rule_on_a_regulation_is_not_dispensable(tried: Callable[..., Ran]) -> None:
    ran = tried(pack=PACK.replace("basis: regulation", "basis: standard"))
    assert (ran.code, "not-dispensable-basis" in ran.err) == (3, True)


def test_the_trail_does_not_overwrite_the_file(tried: Callable[..., Ran]) -> None:
    assert "trail-over-input" in tried("--trail", "agreed.yaml").err


@pytest.mark.parametrize(("key", "value"), [
    ("first_day", "2026-05-11"), ("counts_as_failed", True), ("id", "d-2"), ("item", "panel")])
def test_a_trail_whose_dispensation_was_changed_disagrees(
        tried: Callable[..., Ran], key: str, value: object) -> None:
    from garboard.trail import digest_of
    from garboard.trail.consistency import disagreements

    document = tried().trail("boat.trail.json")
    assert list(disagreements(document["assessment"])) == []
    document["assessment"]["dispensations"][0][key] = value
    assert document["digest"] != digest_of(document["assessment"])
    assert "trail-inconsistent" in {each.code for each in disagreements(document["assessment"])}


def test_the_schema_takes_what_is_read() -> None:
    from garboard.documents import read_text, schema_problems
    from garboard.packs import dispensations_schema

    shipped = json.loads((ROOT / "schemas" / "dispensations-1.json").read_text("utf-8"))
    assert shipped == dispensations_schema()
    assert schema_problems(read_text(FILE), shipped) == []
    assert schema_problems(read_text(FILE.replace("until:", "til:")), shipped) != []


@pytest.mark.parametrize(("last", "long"), [("2029-04-01", False), ("2029-12-30", True),
                                            ("2126-05-31", True)])
def test_a_dispensation_of_years_on_end_is_warned_of(tried: Callable[..., Ran], last: str,
                                                     long: bool) -> None:
    ran = tried("--on", "2026-04-18", file=FILE.replace("2026-05-31", last))
    assert ("dispensation-long" in ran.err) is long
    assert read_trail(ran.folder / "boat.trail.json").assessment["dispensations"]
