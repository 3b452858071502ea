"""The HTML page: whole, alone, addressable, the same bytes, and its totals those of its rows."""

from __future__ import annotations

import json
import os
import random
import re
import subprocess
import sys
from base64 import b64encode
from functools import cache
from hashlib import sha256
from itertools import pairwise
from pathlib import Path

import pytest

from garboard.reports.html import html_report
from garboard.trail import OUTCOMES, SEVERITIES, Trail, make_trail, trail_bytes
from reports.pages import RECORDS, Page, example_trail
from trail.launch import launch_parts, launch_trail

LARGEST = 1_500_000
#: Attributes through which a page can make a browser fetch something.
FETCHING = {"src", "srcset", "poster", "action", "formaction", "background", "cite", "data", "ping"}


@cache
def page_of(name: str) -> tuple[str, Page]:
    trail = launch_trail() if name == "launch" else example_trail(name)
    text = html_report(trail)
    return text, Page(text)


PAGES = [*RECORDS, "launch"]


# one file, and nothing else -----------------------------------------------------------------------
@pytest.mark.parametrize("name", PAGES)
def test_nothing_is_fetched(name: str) -> None:
    text, page = page_of(name)
    for node in page.root.all():
        assert not FETCHING & set(node.attributes), node.tag
        assert node.tag not in ("link", "iframe", "object", "embed", "img", "base", "audio")
        if "href" in node.attributes:
            assert node.attributes["href"].startswith("#")
        assert not any(each.startswith("on") or each == "style" for each in node.attributes)
    style = "".join(node.text for node in page.all("style"))
    assert set(re.findall(r"url\(([^)]*)\)", style)) == {"#hatch"}
    assert "@import" not in style
    assert not re.search(r"https?:|//[a-z]", text)


@pytest.mark.parametrize("name", PAGES)
def test_the_policy_names_the_style_and_the_script(name: str) -> None:
    _, page = page_of(name)
    [policy] = [node.attributes["content"] for node in page.all("meta")
                if node.attributes.get("http-equiv") == "Content-Security-Policy"]
    rules = dict(each.strip().split(" ", 1) for each in policy.split(";"))
    for rule, tag in (("style-src", "style"), ("script-src", "script")):
        [node] = page.all(tag)
        digest = b64encode(sha256("".join(node.texts).encode()).digest()).decode()
        assert rules[rule] == f"'sha256-{digest}'"
    assert rules["default-src"] == "'none'"
    assert set(rules) == {"default-src", "style-src", "script-src"}


@pytest.mark.parametrize("name", RECORDS)
def test_it_is_small(name: str) -> None:
    assert len(page_of(name)[0].encode()) < LARGEST


# addresses ----------------------------------------------------------------------------------------
@pytest.mark.parametrize("name", PAGES)
def test_every_link_leads_somewhere(name: str) -> None:
    _, page = page_of(name)
    ids = [node.attributes["id"] for node in page.root.all() if "id" in node.attributes]
    assert len(ids) == len(set(ids))
    used = {node.attributes["href"][1:] for node in page.root.all() if "href" in node.attributes}
    named = {each for node in page.root.all()
             for each in node.attributes.get("aria-labelledby", "").split()}
    assert (used | named) - set(ids) == set()
    assert len(used) > 30


@pytest.mark.parametrize("name", PAGES)
def test_it_is_put_together_for_people_who_do_not_see_it(name: str) -> None:
    _, page = page_of(name)
    assert [node.attributes["lang"] for node in page.all("html")] == ["en"]
    assert len(page.all("main")) == len(page.all("h1")) == len(page.all("title")) == 1
    levels = [int(node.tag[1]) for node in page.root.all() if re.fullmatch(r"h[1-6]", node.tag)]
    assert all(after <= before + 1 for before, after in pairwise(levels))
    for table in page.all("table"):
        heads = list(table.all("th"))
        assert heads
        assert all(each.attributes.get("scope") in ("col", "row", "rowgroup") for each in heads)
    for region in page.all(class_="scroll"):
        assert region.attributes["tabindex"] == "0"
        assert region.attributes["aria-label"]


# what is on it ------------------------------------------------------------------------------------
@pytest.mark.parametrize("name", PAGES)
def test_every_finding_is_on_it_once_with_its_outcome(name: str) -> None:
    trail = launch_trail() if name == "launch" else example_trail(name)
    counts = rows_of(page_of(name)[1])
    for outcome in OUTCOMES:
        for severity in SEVERITIES:
            assert counts.get((outcome, severity), 0) == sum(
                each["outcome"] == outcome and trail.rule_of(each)["severity"] == severity
                for each in trail.findings)


@pytest.mark.parametrize("seed", range(12))
def test_totals_agree_with_the_rows(seed: int) -> None:
    draw = random.Random(seed)
    parts = launch_parts()
    parts["findings"] = [each for each in parts["findings"] if draw.random() < 0.5]
    trail = make_trail(**parts)
    page = Page(html_report(trail))
    rows = rows_of(page)
    table = next(each for each in page.all("table") if "Severity" in each.text)
    for row in table.all("tr"):
        cells = [cell.text.strip() for cell in row.children]
        if cells[0] in SEVERITIES:
            shown = [rows.get((outcome, cells[0]), 0)
                     for outcome in ("failed", "not assessed", "passed")]
            assert cells[1:] == [*map(str, shown), str(sum(shown))]
    assert sum(rows.values()) == trail.outcome["counts"]["findings"]
    assert sum(len(each.children) for each in page.all("ol", "work")) == len({
        each["rule"] for each in trail.findings if each["outcome"] == "failed"})


def rows_of(page: Page) -> dict[tuple[str, str], int]:
    """How many findings the rows stand for, by outcome and severity."""
    rows: dict[tuple[str, str], int] = {}
    for node in page.all(class_="finding"):
        key = (node.attributes["data-outcome"], node.attributes["data-severity"])
        rows[key] = rows.get(key, 0) + int(node.attributes["data-count"])
    return rows


def test_the_first_page_says_what_it_must() -> None:
    trail = example_trail("after-as-fitted")
    [first] = page_of("after-as-fitted")[1].all("header", "front")
    said = " ".join(first.text.split())
    counts = trail.outcome["counts"]
    for each in ("Reed Warbler", "2026-03-14", "small-craft-lithium 1.0.0", "guarded acceptance",
                 "No rule was relaxed", "does not meet the pack's rules as recorded",
                 f"{counts['failed']} of {counts['applying']} findings on rules that apply failed",
                 f"{counts['not_applicable']} of {counts['findings']} findings in all",
                 "cannot be switched off", "the engine's start battery"):
        assert each in said
    assert "safe" not in {word.lower() for word in re.findall(r"\w+", said)}
    assert trail.digest in page_of("after-as-fitted")[0]


def test_every_fault_current_is_in_the_chart() -> None:
    trail = example_trail("after-as-fitted")
    [table] = page_of("after-as-fitted")[1].all("table", "faults")
    devices = [key for key, each in trail.assessment["derivations"].items()
               if each["quantity"] == "device.prospective_current"]
    rows = [" ".join(row.text.split()) for row in table.all("tr")][1:]
    assert len(rows) == len(devices) == 8
    assert any("fuse f10" in row and "28.03 kA to 33.10 kA (nominal 30.36 kA)" in row
               and "30 kA" in row and "not assessed" in row for row in rows)


def test_every_figure_is_worked_out_once() -> None:
    trail = example_trail("after-as-fitted")
    page = page_of("after-as-fitted")[1]
    figures = [node for node in page.root.all()
               if node.attributes.get("id", "").startswith("figure-")]
    used = {key for each in trail.findings for keys in each["of"] for key in keys}
    waiting = [key for key in used if key in trail.assessment["derivations"]]
    reached = set(waiting)
    while waiting:
        for given in trail.assessment["derivations"][waiting.pop()]["inputs"]:
            new = [key for key in given["of"]
                   if key in trail.assessment["derivations"] and key not in reached]
            reached.update(new)
            waiting += new
    assert len(figures) == len(reached)
    workings = [each for each in trail.findings if each["operands"]]
    assert len([node for node in page.root.all()
                if node.attributes.get("id", "").startswith("working-")]) == len(workings)


def test_every_fact_is_in_the_record() -> None:
    trail = example_trail("after-as-fitted")
    section = page_of("after-as-fitted")[1].one("record")
    rows = [row for table in section.all("table", "facts") for row in table.all("tr")]
    things = len(list(section.all("details", "thing")))
    assert len(rows) - things == len(trail.assessment["record"]["read"])


# the same bytes -----------------------------------------------------------------------------------
def test_us_units_change_figures_and_paper() -> None:
    trail = example_trail("after-as-fitted")
    us, metric = html_report(trail, us_units=True), page_of("after-as-fitted")[0]
    assert "59.06 in" in us
    assert "59.06 in" not in metric
    assert "size: letter" in us
    assert "size: A4" in metric


@pytest.mark.parametrize("seed", ["0", "1", "2"])
def test_same_trail_same_bytes(seed: str, tmp_path: Path) -> None:
    file = tmp_path / "a.trail.json"
    file.write_bytes(trail_bytes(example_trail("after-as-fitted")))
    script = ("import sys; from garboard.trail import read_trail\n"
              "from garboard.reports.html import html_report\n"
              "sys.stdout.buffer.write(html_report(read_trail(sys.argv[1])).encode())")
    done = subprocess.run([sys.executable, "-c", script, str(file)], capture_output=True,
                          check=True, env={**os.environ, "PYTHONHASHSEED": seed})
    assert done.stdout == page_of("after-as-fitted")[0].encode()


def test_when_the_trail_was_written_does_not_matter() -> None:
    trail = launch_trail()
    later = json.loads(json.dumps(trail.document))
    later["about"]["written_at"] = "2031-01-01T00:00:00Z"
    assert html_report(Trail(later, trail.canonical)) == html_report(trail)
