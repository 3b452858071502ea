"""What rests on a table from memory says so, in every form of report."""

from __future__ import annotations

import json
import re

import pytest

from garboard.reports.files.comma_separated import csv_report
from garboard.reports.files.earl import earl_report
from garboard.reports.files.junit import junit_report
from garboard.reports.files.markdown import markdown_report
from garboard.reports.html import html_report
from garboard.reports.memory import memory_words
from garboard.reports.terminal import terminal_report
from garboard.reports.working import working_json, working_text
from garboard.trail import Finding, Trail
from reports.opened import table
from reports.pages import example_trail

SAID = "rests on a table from memory, to be confirmed"
FORMS = {"terminal": terminal_report, "csv": csv_report, "earl": earl_report,
         "junit": junit_report, "markdown": markdown_report, "html": html_report}


def of_rule(rule: str, item: str) -> tuple[Trail, Finding]:
    trail = example_trail("after-as-fitted")
    return trail, next(each for each in trail.findings
                       if (each["rule"], each["item"]) == (rule, item))


@pytest.mark.parametrize("form", FORMS)
def test_every_form_of_report(form: str) -> None:
    text = re.sub(r"\s+", " ", str(FORMS[form](example_trail("after-as-fitted"))))
    assert f"{SAID}: ampacity-iso10133" in text


def test_what_rests_on_it_and_what_does_not() -> None:
    """The metric ampacities of ISO 10133 are from memory; Table 5 of 33 CFR 183.425 was read."""
    metric = of_rule("metric-conductor-by-its-table", "w10")
    assert memory_words(metric[0], [metric[1]]) == f"{SAID}: ampacity-iso10133"
    read = of_rule("conductor-strong-enough", "w10")
    assert memory_words(read[0], [read[1]]) == ""


def test_the_rows_of_a_table() -> None:
    rows = table(csv_report(example_trail("after-as-fitted")))
    remarks = {(row["kind"], row["id"].rpartition("/")[2]): row["remark"] for row in rows
               if "metric-conductor-by-its-table" in row["id"]}
    assert remarks[("finding", "w10")].endswith(f"{SAID}: ampacity-iso10133")
    [figure] = [row for row in rows if row["id"] == "w10.metric_ampacity"]
    assert SAID in figure["source"]
    [plain] = [row for row in rows if row["id"] == "w10.ampacity"]
    assert "memory" not in plain["source"]


def test_the_working_of_a_finding() -> None:
    trail, finding = of_rule("metric-conductor-by-its-table", "w10")
    brief = re.sub(r"\s+", " ", working_text(trail, finding, 100, False))
    assert f"{SAID}: ampacity-iso10133" in brief
    assert re.search(r"table row: ampacity-iso10133: \S+ \S+ = \d+ \(from memory\)",
                     re.sub(r"\s+", " ", working_text(trail, finding, 100, False, full=True)))
    rows = [row for each in json.loads(working_json(trail, finding))["figures"]
            for row in each.get("table_rows", ())]
    assert any(row.endswith("(from memory)") for row in rows)
