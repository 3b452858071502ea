"""Report files of every ending: the same totals, cautions in each, text of others stays text."""

from __future__ import annotations

import json
import random
from collections import Counter
from functools import cache
from xml.etree import ElementTree

import pytest
from markdown_it import MarkdownIt

from garboard.reports.cautions import CAUTIONS
from garboard.reports.files.comma_separated import csv_report
from garboard.reports.files.earl import earl_report
from garboard.reports.files.junit import junit_report
from garboard.reports.files.markdown import markdown_report
from garboard.reports.files.workbook import xlsx_report
from garboard.reports.summary import result_words
from garboard.trail import Trail, make_trail
from reports.opened import sheets, table
from reports.pages import example_trail
from reports.test_hostile_text import HOSTILE, _trail
from reports.variants import with_exceptions
from trail.launch import launch_parts, launch_trail

TEXTS = {"csv": csv_report, "earl": earl_report, "junit": junit_report,
         "markdown": markdown_report}
#: Outcomes as EARL 1.0 (W3C, section 2.7) names them.
EARL = {"earl:passed": "passed", "earl:failed": "failed", "earl:cantTell": "not assessed",
        "earl:inapplicable": "not applicable"}
JUNIT = {"failure": "failed", "error": "not assessed", "skipped": "not applicable"}


def counted(trail: Trail) -> dict[str, Counter[str]]:
    """How many findings of each outcome the rows of every file have."""
    return {
        "csv": Counter(row["outcome"] for row in table(csv_report(trail))
                       if row["kind"] == "finding"),
        "xlsx": Counter(row[1] for row in sheets(xlsx_report(trail))[1][1:]),
        "junit": Counter(
            next((JUNIT[each.tag] for each in case if each.tag in JUNIT), "passed")
            for case in ElementTree.fromstring(junit_report(trail)).iter("testcase")),
        "earl": Counter(EARL[each["earl:result"]["earl:outcome"]["@id"]]
                        for each in json.loads(earl_report(trail))["assertions"]),
        "markdown": markdown_counts(trail)}


def markdown_counts(trail: Trail) -> Counter[str]:
    counts: Counter[str] = Counter()
    outcome = ""
    for line in markdown_report(trail).splitlines():
        if line.startswith("## "):
            outcome = line[3:].partition(":")[0].lower() if "findings in all" in line else ""
        elif outcome and line.startswith("| ") and not line.startswith("| Severity"):
            counts[outcome] += 1
    return counts


@pytest.mark.parametrize("seed", range(8))
def test_totals_recomputed_from_rows_agree_in_all_files(seed: int) -> None:
    draw = random.Random(seed)
    parts = launch_parts()
    share = draw.random()
    parts["findings"] = [each for each in parts["findings"] if draw.random() < share]
    trail = make_trail(**parts)
    wanted = Counter(each["outcome"] for each in trail.findings)
    counts = trail.outcome["counts"]
    assert (wanted["failed"], wanted["not assessed"]) == (counts["failed"], counts["not_assessed"])
    assert counted(trail) == dict.fromkeys(("csv", "xlsx", "junit", "earl", "markdown"), wanted)
    suite = ElementTree.fromstring(junit_report(trail)).find("testsuite")
    assert suite is not None
    assert [int(suite.attrib[each]) for each in ("tests", "failures", "errors", "skipped")] == [
        len(trail.findings), wanted["failed"], wanted["not assessed"], wanted["not applicable"]]


@cache
def everything(kind: str) -> str:
    """All the text of a file of a launch with exceptions."""
    trail = with_exceptions()
    if kind == "xlsx":
        return " ".join(cell for sheet in sheets(xlsx_report(trail)) for row in sheet
                        for cell in row)
    return TEXTS[kind](trail)


@pytest.mark.parametrize("kind", [*TEXTS, "xlsx"])
def test_cautions_scope_exceptions_and_result_stand_in_every_file(kind: str) -> None:
    text = everything(kind)
    for each in (CAUTIONS[0], CAUTIONS[3], "workmanship, corrosion", "the packs are fused inside",
                 "the chief surveyor", result_words(with_exceptions()), launch_digest(),
                 "guarded acceptance", "working copy, not sealed"):
        assert each in text, each


def launch_digest() -> str:
    return with_exceptions().digest


@pytest.mark.parametrize("kind", [*TEXTS, "xlsx"])
def test_the_same_trail_gives_the_same_bytes(kind: str) -> None:
    write = xlsx_report if kind == "xlsx" else TEXTS[kind]
    assert write(launch_trail()) == write(launch_trail())
    assert write(launch_trail()) != write(launch_trail(), True)


def test_every_figure_is_in_the_tables_with_its_bounds() -> None:
    trail = example_trail("after-as-fitted")
    rows = {row["id"]: row for row in table(csv_report(trail)) if row["kind"] == "figure"}
    assert rows.keys() == trail.assessment["derivations"].keys()
    row, value = rows["f10.prospective_current"], trail.derivation("f10.prospective_current")
    assert value is not None
    assert (float(row["least"]), float(row["most"]), row["unit"]) == (
        value["value"]["lo"], value["value"]["hi"], "A")
    assert [each[0] for each in sheets(xlsx_report(trail))[2][1:]] == sorted(rows)


@pytest.mark.parametrize("poison", HOSTILE, ids=range(len(HOSTILE)))
def test_text_of_others_stays_text_in_every_file(poison: str) -> None:
    trail = _trail(poison)
    for name in table(csv_report(trail)):
        for column, cell in name.items():
            if column not in ("least", "most", "nominal"):
                assert not cell.lstrip().startswith(("=", "+", "-", "@")), cell
    assert len(sheets(xlsx_report(trail))[1]) == len(trail.findings) + 1
    root = ElementTree.fromstring(junit_report(trail))
    assert {each.tag for each in root.iter()} <= {
        "testsuites", "testsuite", "properties", "property", "testcase", "failure", "error",
        "skipped", "system-out"}
    earl = earl_report(trail)
    assert earl.isascii()
    assert len(json.loads(earl)["assertions"]) == len(trail.findings)
    text = markdown_report(trail)
    assert all(each.isprintable() or each == "\n" for each in text)
    tokens = MarkdownIt("commonmark", {"html": True}).enable("table").parse(text)
    inside = {child.type for token in tokens for child in token.children or ()}
    assert inside <= {"text", "strong_open", "strong_close", "text_special"}
    assert {token.type.removesuffix("_open") for token in tokens if token.nesting >= 0} <= {
        "heading", "inline", "paragraph", "bullet_list", "ordered_list", "list_item", "table",
        "thead", "tbody", "tr", "th", "td"}
    assert sum(token.type == "tr_open" for token in tokens) > len(trail.findings)
