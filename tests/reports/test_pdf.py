"""The PDF of a trail: the same content as the page, on paper, with nothing fetched."""

from __future__ import annotations

import io
import json
import os
from pathlib import Path
from typing import Any

import pytest

from authoring.small_pack import workshop
from garboard.cli.main import run
from garboard.errors import CommandRefused
from garboard.reports.html import html_report
from garboard.trail import Trail

RECORD = """\
format: installation-record/1
vessel: {name: "Little <script>alert(1)</script> Grebe \U0001F6A4"}
survey: {date: 2026-04-18, place: "{{ 7 * 7 }}", surveyor: "<img src=http://example.org/x.png>"}
batteries:
  - {id: pack, chemistry: LFP, terminal_cover: no, open_circuit_voltage_max: 27 V,
     internal_resistance: {value: 2 mΩ, plus_minus: 10 %}, note: "=1+1"}
buses: [{id: bus, rating: 200 A}]
runs:
  - id: lead
    from: pack.positive
    to: bus
    return: as outgoing
    through:
      - fuse: {id: f1, class: T, rating: 125 A, breaks: [{current: 5 kA, voltage: 125 V DC}]}
      - conductor: {id: w1, size: 35 mm2, length: 1 m, insulation: 105 °C}
"""


@pytest.fixture(scope="module")
def trail(tmp_path_factory: pytest.TempPathFactory) -> Trail:
    file = tmp_path_factory.mktemp("records") / "grebe.yaml"
    file.write_text(RECORD, "utf-8")
    return workshop().assess(file, workshop().load_packs(["teaching-first-steps"])).trail


@pytest.fixture(scope="module")
def drawn(trail: Trail) -> bytes:
    """The PDF; where the text library of the system is missing, the tests are skipped off CI."""
    from garboard.reports.files.paper import pdf_report

    try:
        return pdf_report(trail)
    except CommandRefused as refused:
        if os.environ.get("CI") == "true":
            raise
        pytest.skip(f"{refused.problems[0].found} (apt-get install libpangoft2-1.0-0)")


def text_of(drawn: bytes) -> str:
    from pypdf import PdfReader

    return " ".join(" ".join(page.extract_text().replace("\0", "").split())
                    for page in PdfReader(io.BytesIO(drawn)).pages)


def reader(drawn: bytes) -> Any:
    from pypdf import PdfReader

    return PdfReader(io.BytesIO(drawn))


def test_result_counts_cautions_and_scope_stand_in_it(trail: Trail, drawn: bytes) -> None:
    said = text_of(drawn)
    counts = trail.outcome["counts"]
    for words in (f"{counts['failed']} of {counts['applying']} findings on rules that apply failed",
                  "Bear in mind", "Not examined", "Local codes", trail.digest[:23], "page 1 of"):
        assert words in said
    assert "Result: does not meet" in said


def test_every_word_of_the_page_is_on_paper(trail: Trail, drawn: bytes) -> None:
    said = text_of(drawn).replace(" ", "")
    for rule in trail.packs[0]["resolved"]["rules"]:
        assert "".join(rule["title"].split()) in said
    for each in ("figure", "Method", "Must hold", "size 35 mm2", "The record as read"):
        assert each.replace(" ", "") in said


def test_hostile_texts_are_text(drawn: bytes) -> None:
    said = text_of(drawn).replace(" ", "")
    for each in ("<script>alert(1)</script>", "{{7*7}}", "<imgsrc=http://example.org/x.png>",
                 "=1+1"):
        assert each in said
    assert b"/JavaScript" not in drawn and b"/Launch" not in drawn


def test_it_has_headings_an_outline_and_tags(drawn: bytes) -> None:
    read = reader(drawn)
    titles = [each.title for each in read.outline[0:1]] + [
        each.title for each in read.outline[1] if not isinstance(each, list)]
    assert "List of work" in titles and "Workings" in titles
    assert read.trailer["/Root"]["/MarkInfo"]["/Marked"]
    assert read.trailer["/Root"]["/Lang"] == "en"


def test_the_command_writes_the_same_bytes(trail: Trail, drawn: bytes, tmp_path: Path) -> None:
    from garboard.trail import trail_bytes

    (tmp_path / "t.json").write_bytes(trail_bytes(trail))
    assert run(["report", str(tmp_path / "t.json"), "--to", str(tmp_path / "t.pdf")]) == 0
    assert (tmp_path / "t.pdf").read_bytes() == drawn
    assert json.loads((tmp_path / "t.json").read_text("utf-8"))["digest"] == trail.digest
    assert "<!DOCTYPE html>" in html_report(trail)
