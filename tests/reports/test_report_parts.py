"""The parts reports are put together from: margins, wrapping, grouping, counts, screens."""

from __future__ import annotations

import io
import json
import math
import random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.reports import Screen, for_encoding, json_report, screen_of, terminal_report
from garboard.reports.counts import severity_table
from garboard.reports.figures import figures_of
from garboard.reports.groups import by_missing, by_rule
from garboard.reports.margin import margin_of
from garboard.reports.names import operand_name
from garboard.reports.sheet import cells, wrapped
from garboard.reports.to_find_out import to_find_out
from garboard.trail import NOT_ASSESSED, OUTCOMES, SEVERITIES, Operand, make_trail
from garboard.values import Bounds
from trail.launch import launch_parts, launch_trail

INF = math.inf

# margins -----------------------------------------------------------------------------------------
MARGINS: list[tuple[Any, str, Any, str | None, str | None]] = [
    (20000.0, ">=", 28672.0, "current", "short by 8.67 kA, 30 %"),
    (28672.0, ">=", 20000.0, "current", "8.67 kA, 43 % to spare"),
    (0.35, "<=", 0.1778, "length", "over by 0.172 m, 97 %"),
    (0.1778, "<=", 0.1778, "length", "exactly at the limit"),
    (100.0, "<", 120.0, "current", "20 A, 17 % to spare"),
    (-4.0, ">=", 0.0, "temperature", "short by 4 °C"),
    (10.0, ">=", 0.0, "temperature", "10 °C to spare"),
    (0.05, "<=", 0.03, "ratio", "over by 2 percentage points"),
    (1, ">=", 2, None, "short by 1"),
    (20000.0, ">=", Bounds(26593.0, 31103.0), "current",
     "short by 6.59 kA to 11.1 kA, 25 % to 36 %"),
    (16000.0, ">=", Bounds(14100.2, 17050.9), "current", "on either side of the limit"),
    (20000.0, ">=", Bounds(26593.0, INF), "current", "short by at least 6.59 kA, 25 % to 100 %"),
    (5.0, ">=", 0.0, "voltage", "5 V to spare"),
    (5.0, "<=", 0.0, "voltage", "over by 5 V"),
    (-5.0, ">=", 10.0, "voltage", "short by 15 V"),
    (1.0, "==", 2.0, "voltage", None),
    ("T", "in", ("NH", "T"), None, None),
    (True, ">=", 1.0, None, None),
    (Bounds(-INF, INF), ">=", Bounds(-INF, INF), "current", "on either side of the limit"),
]


@pytest.mark.parametrize(("left", "relation", "right", "dimension", "words"), MARGINS)
def test_margins(left: Any, relation: str, right: Any, dimension: str | None,
                 words: str | None) -> None:
    margin = margin_of(left, relation, right, dimension)
    assert (None if margin is None else margin.words("metric")) == words


@given(st.floats(0, 1e6), st.floats(1e-3, 1e6), st.floats(0, 100), st.floats(0, 100),
       st.sampled_from([">=", "<="]), st.floats(0, 1), st.floats(0, 1))
def test_a_margin_holds_the_margin_of_every_point(left: float, right: float, wide: float,
                                                  broad: float, relation: str, at: float,
                                                  along: float) -> None:
    bounded = margin_of(Bounds(left, left + wide), relation, Bounds(right, right + broad), "power")
    point = margin_of(min(left + at * wide, left + wide), relation,
                      min(right + along * broad, right + broad), "power")
    assert bounded is not None
    assert point is not None
    assert bounded.shortage[0] <= point.shortage[0] <= bounded.shortage[1]


# names -------------------------------------------------------------------------------------------
@pytest.mark.parametrize(("text", "words"), [
    ("device.breaking_capacity", "breaking capacity"),
    ("device.run.banks.fault_current", "run banks fault current"),
    ("battery.charge.temperature.low", "charge temperature (low)"),
    ("unprotected_length_open", "unprotected length open"),
    ("share * bank.charge_limit", "share × charge limit"),
    ("sum(s.current_max for s in bank.sources)", "the sum of current max over all its sources"),
    ("exists(battery.own_device)", "own device present"),
    ("bank.sum / bank.charge_limit", "sum / charge limit"),
    ("device.class == 'device.a_b'", "class is 'device.a_b'"),
    ("0.5", "0.5"),
])
def test_operands_in_words(text: str, words: str) -> None:
    subject = next((name for name in ("device", "battery", "bank") if f"{name}." in text), "")
    operand = Operand(text, "requirement", "number", None, None, False, None, 1.0)
    assert operand_name(operand, subject) == words


# figures -----------------------------------------------------------------------------------------
FIGURES: list[tuple[dict[str, Any], dict[str, Any], list[tuple[str, str, str]]]] = [
    # a constant on the left changes sides
    ({"statements": [[1, "<=", 0]]}, {"operands": [5.0, 20.0], "holds": [False], "decides": [0]},
     [("a", "5 A", "must be at least")]),
    # a truth that should be false
    ({"operands": [["device.a", "truth", None]], "statements": [[0, None, None]]},
     {"operands": [True], "holds": [True], "decides": [0]}, [("a", "yes", "must be")]),
    # only what decides; without that, all
    ({"statements": [[0, ">=", 1], [0, "<=", 1]]},
     {"operands": [20.0, 30.0], "holds": [False, True], "decides": [0]},
     [("a", "20 A", "must be at least")]),
    ({"statements": [[0, ">=", 1], [0, "<=", 1]]},
     {"operands": [20.0, 30.0], "holds": [False, True], "decides": []},
     [("a", "20 A", "must be at least"), ("a", "20 A", "must be at most")]),
    # figures that four digits would show as one
    ({}, {"operands": [28670.01, 28670.09], "holds": [False], "decides": [0]},
     [("a", "28.6700 kA", "must be at least")]),
    # fewer operands than the rule has
    ({}, {"operands": [20.0], "holds": [], "decides": []}, []),
]


@pytest.mark.parametrize(("trace", "values", "figures"), FIGURES)
def test_the_figures_of_a_finding(trace: dict[str, Any], values: dict[str, Any],
                                  figures: list[tuple[str, str, str]]) -> None:
    parts = launch_parts()
    pack = parts["packs"][0]
    operands = trace.get("operands", [["device.a", "number", "current"],
                                      ["limit_b", "number", "current"]])
    pack["traces"]["breaking-capacity"] = {
        "operands": [{"text": text, "part": "requirement", "kind": kind, "dimension": dimension,
                      "unit": None, "constant": "." not in text, "limit": None}
                     for text, kind, dimension in operands],
        "statements": [{"left": left, "relation": relation, "right": right} for left, relation,
                       right in trace.get("statements", [[0, ">=", 1]])]}
    finding = next(each for each in parts["findings"] if each["id"].endswith("capacity/f0"))
    finding.update(values, of=[[] for _ in values["operands"]])
    parts["findings"] = [finding]
    trail = make_trail(**parts)
    assert [(each.name, each.value, each.relation)
            for each in figures_of(trail, trail.findings[0], "metric")] == figures


# wrapping ----------------------------------------------------------------------------------------
@given(st.text(st.sampled_from("ab  é漢\u0301.\n0 kA"), max_size=200), st.integers(4, 40))
def test_wrapping_loses_nothing_and_fits(text: str, width: int) -> None:
    lines = wrapped(text, width)
    assert all(cells(line) <= width for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


def test_a_number_stays_with_its_unit() -> None:
    assert wrapped("a limit of 28.67 kA, and 10 %.", 16) == ["a limit of", "28.67 kA, and", "10 %."]


# grouping ----------------------------------------------------------------------------------------
def test_findings_by_rule_are_worst_first() -> None:
    groups = by_rule(launch_trail(), NOT_ASSESSED)
    severities = [SEVERITIES.index(group.severity) for group in groups]
    assert severities == sorted(severities)
    assert sum(len(group.findings) for group in groups) == 8


def test_the_same_lack_of_several_items_is_one_group() -> None:
    group = next(each for each in by_rule(launch_trail(), NOT_ASSESSED)
                 if each.rule["id"] == "charging-temperature")
    assert [(key, [each["item"] for each in findings])
            for key, findings in by_missing(group.findings)] == [
        ((("not recorded", ".charge.temperature.low", ""),), ["pack-2", "pack-3"])]


def test_exactly_the_facts_that_findings_wait_for() -> None:
    trail = launch_trail()
    waiting = [each for each in trail.findings if each["outcome"] == NOT_ASSESSED]
    wanted = to_find_out(trail)
    assert {each.path for each in wanted} == {
        cause["path"] for finding in waiting for cause in finding["missing"]}
    for each in wanted:
        alone = {finding["id"] for finding in waiting
                 if {cause["path"] for cause in finding["missing"]} == {each.path}}
        together = {finding["id"] for finding in waiting
                    if each.path in {cause["path"] for cause in finding["missing"]}}
        assert {finding["id"] for finding in each.alone} == alone
        assert {finding["id"] for finding in each.shared} == together - alone
    first, last = wanted[0], wanted[-1]
    assert (first.path, first.severity, first.count) == ("f2.breaks", "danger", 1)
    assert (last.path, last.severity) == ("loads", "notice")


# counts ------------------------------------------------------------------------------------------
@pytest.mark.parametrize("seed", range(25))
def test_totals_agree_with_the_rows(seed: int) -> None:
    draw = random.Random(seed)
    parts = launch_parts()
    parts["findings"] = [each for each in parts["findings"] if draw.random() < 0.5]
    trail = make_trail(**parts)
    counts, table = trail.outcome["counts"], severity_table(trail)
    keys = ("passed", "failed", "not_assessed", "not_applicable")
    for key, outcome in zip(keys, OUTCOMES, strict=True):
        rows = sum(each["outcome"] == outcome for each in trail.findings)
        assert counts[key] == rows == sum(row[outcome] for row in table.values())
    assert counts["failed_by_severity"] == {name: row["failed"] for name, row in table.items()}
    last = [line for line in terminal_report(trail).splitlines() if line.startswith("  together")]
    assert last[0].split()[1:] == [str(counts[key]) for key in
                                   ("failed", "not_assessed", "passed", "applying")]
    summary = json.loads(json_report(trail))
    assert summary["outcome"]["counts"] == counts
    assert len(summary["findings"]) == counts["findings"]


# the summary -------------------------------------------------------------------------------------
def test_the_summary_says_what_the_trail_says() -> None:
    trail = launch_trail()
    summary = json.loads(json_report(trail))
    assert summary["format"] == "assessment-summary/1"
    assert summary["trail"] == trail.digest
    assert (summary["vessel"], summary["date"]) == ("Grey Heron", "2026-04-18")
    assert summary["outcome"]["word"] == trail.word
    assert summary["outcome"]["exit_code"] == trail.exit_code == 1
    assert [each["id"] for each in summary["findings"]] == [each["id"] for each in trail.findings]
    danger = next(each for each in summary["findings"] if each["id"].endswith("/f0")
                  and each["outcome"] == "failed")
    assert (danger["severity"], danger["operands"]) == ("danger", [
        {"text": "device.on_path_of_a_battery", "unit": None, "value": True,
         "of": ["f0.on_path_of_a_battery"]},
        {"text": "device.breaking_capacity", "unit": "A", "value": 20000,
         "of": ["f0.breaking_capacity"]},
        {"text": "device.prospective_current", "unit": "A", "value": 28672,
         "of": ["f0.prospective_current"]}])
    assert danger["decided_by"] == [
        {"left": "device.breaking_capacity", "relation": ">=",
         "right": "device.prospective_current", "holds": False}]
    assert summary["to_find_out"][0]["path"] == "f2.breaks"
    assert len(summary["cautions"]) >= 5
    assert len(summary["not_examined"]) >= 3


# screens -----------------------------------------------------------------------------------------
class _Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(("columns", "environment", "screen"), [
    ("80", {}, Screen(80, True)),
    ("80", {"NO_COLOR": "1"}, Screen(80, False)),
    ("80", {"NO_COLOR": ""}, Screen(80, True)),
    ("80", {"TERM": "dumb"}, Screen(80, False)),
    ("20", {}, Screen(60, True)),
    ("300", {}, Screen(110, True)),
])
def test_screens(monkeypatch: pytest.MonkeyPatch, columns: str, environment: dict[str, str],
                 screen: Screen) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    assert screen_of(_Terminal(), environment) == screen
    assert screen_of(io.StringIO(), environment) == Screen(100, False)


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp1252", "utf-8", None])
def test_any_encoding_can_show_it_and_no_mark_becomes_another(encoding: str | None) -> None:
    text = for_encoding(terminal_report(launch_trail()), encoding)
    text.encode(encoding or "utf-8")
    passed = text[text.index("PASSED:"):text.index("DOES NOT APPLY:")].splitlines()[2:]
    assert {line[0] for line in passed if not line.startswith(" ") and line} <= {"✓", "+", "(", "p"}
