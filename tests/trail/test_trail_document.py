"""The trail as a document: order, digest, reading back, and every way of being refused."""

from __future__ import annotations

import json
import os
import random
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from garboard.documents import Document, read_text, schema_problems, shipped_folder
from garboard.errors import DocumentRefused, TrailRefused
from garboard.trail import (
    DOES_NOT_MEET,
    canonical_bytes,
    digest_of,
    make_trail,
    read_trail,
    record_part,
    trail_bytes,
    trail_schema,
)
from garboard.values import Bounds, Unknown
from trail.launch import launch_parts, launch_trail

# The digest of the hand-made trail. It changes only when its data or the format does.
DIGEST = "sha256:00f25c52e254b0d16cf30cd2a07ac90441f93455c35dc1473a69abcb429dd302"


def _document(data: Any) -> Document:
    return read_text(json.dumps(data), "trail.json")


def _data() -> Any:
    return json.loads(trail_bytes(launch_trail()))


def _sealed(data: Any) -> Any:
    """The document with the digest that goes with its assessment."""
    return {**data, "digest": digest_of(data["assessment"])}


# the hand-made trail -----------------------------------------------------------------------------
def test_the_outcome_of_the_launch() -> None:
    trail = launch_trail()
    assert (trail.word, trail.exit_code) == (DOES_NOT_MEET, 1)
    counts = trail.outcome["counts"]
    assert {name: count for name, count in counts.items() if isinstance(count, int)} == {
        "findings": 23, "applying": 21, "passed": 8, "failed": 5, "not_assessed": 8,
        "not_applicable": 2, "dispensed": 0, "calculation_errors": 0}
    assert counts["failed_by_severity"] == {"danger": 1, "warning": 2, "caution": 1, "notice": 1}


def test_findings_stand_in_order_however_they_came() -> None:
    parts = launch_parts()
    random.Random(1).shuffle(parts["findings"])
    shuffled = make_trail(**parts)
    assert shuffled.digest == launch_trail().digest
    rules = [rule["id"] for rule in shuffled.packs[0]["resolved"]["rules"]]
    keys = [(rules.index(each["rule"]), each["item"] or "") for each in shuffled.findings]
    assert keys == sorted(keys)


def test_a_rule_of_no_pack_is_a_mistake() -> None:
    parts = launch_parts()
    parts["findings"][0]["rule"] = "another"
    with pytest.raises(KeyError):
        make_trail(**parts)


def test_the_digest_is_that_of_the_assessment_alone() -> None:
    trail = launch_trail()
    assert trail.digest == digest_of(json.loads(trail_bytes(trail))["assessment"])
    later = launch_trail(about={"garboard": "9.9.9", "written_at": "2036-01-01T00:00:00+00:00"})
    assert later.digest == trail.digest
    assert launch_trail(date="2026-04-19").digest != trail.digest


def test_a_trail_holds_its_texts_as_its_bytes_do() -> None:
    parts = launch_parts()
    written = {**parts["record"]["written"], "vessel": {"name": "Cafe\u0301"}}
    trail = make_trail(**{**parts, "record": record_part(written, parts["record"]["read"])})
    assert trail.written["vessel"]["name"] == "Caf\u00e9"
    assert read_trail(_document(json.loads(trail_bytes(trail)))).digest == trail.digest


def test_the_bytes_are_those_of_the_whole_document() -> None:
    trail = launch_trail()
    assert trail_bytes(trail) == canonical_bytes(trail.document) + b"\n"


def test_the_digest_is_the_same_on_any_day_and_under_any_hash_seed() -> None:
    program = "from trail.launch import launch_trail; print(launch_trail().digest)"
    said = set()
    for seed in ("0", "1", "4711"):
        environment = {**os.environ, "PYTHONHASHSEED": seed,
                       "PYTHONPATH": str(Path(__file__).parents[1])}
        said.add(subprocess.run([sys.executable, "-c", program], env=environment, check=True,
                                capture_output=True, text=True).stdout.strip())
    assert said == {DIGEST}


# operands ----------------------------------------------------------------------------------------
def test_operands_come_with_what_they_are() -> None:
    trail = read_trail(_document(_data()))
    finding = next(each for each in trail.findings if each["id"].endswith("breaking-capacity/f3"))
    on_path, capacity, current = trail.operands(finding)
    assert (on_path.part, on_path.kind, on_path.value) == ("condition", "truth", True)
    assert (capacity.text, capacity.dimension, capacity.unit, capacity.of) == (
        "device.breaking_capacity", "current", "A", ("f3.breaking_capacity",))
    assert type(capacity.value) is float
    assert isinstance(current.value, Bounds)
    assert (current.value.lo, current.value.nominal, current.value.hi) == (14100.2, 15451, 17050.9)
    finding = next(each for each in trail.findings if each["id"].endswith("breaking-capacity/f2"))
    assert isinstance(trail.operands(finding)[1].value, Unknown)
    condition, requirement = trail.statements(finding)
    assert (condition.relation, condition.right, condition.holds, condition.decides) == (
        None, None, True, False)
    assert (requirement.relation, requirement.holds, requirement.decides) == (">=", None, True)
    idle = next(each for each in trail.findings if each["id"].endswith("fuse-class/f0"))
    assert [each.holds for each in trail.statements(idle)] == [False]
    assert trail.operands(next(each for each in trail.findings if each["item"] is None)) == ()
    assert trail.rule_of(finding)["severity"] == "danger"
    assert trail.fact("w4.size") is not None
    assert trail.fact("w5.size") is None
    assert trail.derivation("f0.prospective_current") is not None


# reading back ------------------------------------------------------------------------------------
def test_what_was_written_is_read_back(tmp_path: Path) -> None:
    trail = launch_trail()
    file = tmp_path / "launch.trail.json"
    file.write_bytes(trail_bytes(trail))
    read = read_trail(file)
    assert read.digest == trail.digest
    assert trail_bytes(read) == trail_bytes(trail)


def test_layout_and_order_of_the_file_do_not_matter() -> None:
    data = _data()
    text = json.dumps(dict(reversed(data.items())), indent=3)
    assert read_trail(read_text(text, "trail.json")).digest == data["digest"]


Change = Callable[[Any], Any]


def _change(path: str, to: Any) -> Change:
    """Set the value at a path of names and numbers."""
    def change(data: Any) -> None:
        *way, last = [int(step) if step.isdigit() else step for step in path.split("/")]
        part = data
        for step in way:
            part = part[step]
        part[last] = to
    return change


def _without(path: str) -> Change:
    def change(data: Any) -> None:
        *way, last = [int(step) if step.isdigit() else step for step in path.split("/")]
        part = data
        for step in way:
            part = part[step]
        del part[last]
    return change


FINDING = "assessment/findings/0"
REFUSED: list[tuple[Change, bool, str, str]] = [
    (_change("format", "trail/2"), True, "trail-format-newer", "format"),
    (_change("format", "trail/10"), True, "trail-format-newer", "format"),
    (_change("format", "installation-record/1"), True, "trail-format-unknown", "format"),
    (_change("format", 1), True, "trail-format-unknown", "format"),
    (_without("format"), True, "trail-format-unknown", "format"),
    (_change("digest", "sha256:" + "0" * 64), False, "trail-digest-wrong", "digest"),
    (_change(FINDING + "/outcome", "passed"), False, "trail-digest-wrong", "digest"),
    (_change("assessment/record/written/vessel/name", "Other"), False, "trail-digest-wrong",
     "digest"),
    (_change("assessment/record/written/vessel/name", "Other"), True, "trail-digest-wrong",
     "assessment.record.digest"),
    (_change("assessment/packs/0/resolved/title", "Other"), True, "trail-digest-wrong",
     "assessment.packs[0].digest"),
    (_without("assessment/date"), True, "trail-damaged", "assessment.date"),
    (_without("about"), True, "trail-damaged", "about"),
    (_change("more", 1), True, "trail-damaged", "more"),
    (_change("assessment/date", "18 April"), True, "trail-damaged", "assessment.date"),
    (_change(FINDING + "/outcome", "safe"), True, "trail-damaged",
     "assessment.findings[0].outcome"),
    (_change(FINDING + "/operands", [{"lo": 1}]), True, "trail-damaged",
     "assessment.findings[0].operands[0].hi"),
    (_change(FINDING + "/flags", ["odd"]), True, "trail-damaged",
     "assessment.findings[0].flags[0]"),
    (_change("assessment/outcome/exit_code", 3), True, "trail-damaged",
     "assessment.outcome.exit_code"),
    (_change(FINDING + "/id", "a/b/c"), True, "trail-inconsistent", "assessment.findings[0].id"),
    (_change(FINDING + "/rule", "another"), True, "trail-inconsistent",
     "assessment.findings[0].rule"),
    (_change(FINDING + "/operands", [True, 1, 2, 3]), True, "trail-inconsistent",
     "assessment.findings[0].operands"),
    (_change(FINDING + "/of", [[]]), True, "trail-inconsistent", "assessment.findings[0].of"),
    (_change(FINDING + "/holds", [True]), True, "trail-inconsistent",
     "assessment.findings[0].holds"),
    (_change(FINDING + "/decides", [2]), True, "trail-inconsistent",
     "assessment.findings[0].decides"),
    (_change(FINDING + "/reason", "not recorded"), True, "trail-inconsistent",
     "assessment.findings[0].reason"),
    (_change("assessment/outcome/counts/failed", 0), True, "trail-inconsistent",
     "assessment.outcome"),
    (_change("assessment/outcome/word", "meets the pack's rules as recorded"), True,
     "trail-inconsistent", "assessment.outcome"),
    (_change(FINDING + "/outcome", "passed"), True, "trail-inconsistent", "assessment.outcome"),
    (lambda data: data["assessment"]["findings"].reverse(), True, "trail-inconsistent",
     "assessment.findings"),
    (lambda data: data["assessment"]["findings"].insert(0, data["assessment"]["findings"][0]),
     True, "trail-inconsistent", "assessment.findings"),
]


@pytest.mark.parametrize(("change", "sealed", "code", "path"), REFUSED)
def test_refused(change: Change, sealed: bool, code: str, path: str) -> None:
    data = _data()
    change(data)
    with pytest.raises(TrailRefused) as caught:
        read_trail(_document(_sealed(data) if sealed else data))
    assert (code, path) in [(each.code, each.place.path) for each in caught.value.problems]


@pytest.mark.parametrize("text", ["", "{", '{"format": "trail/1", "digest": NaN}', "\x00"])
def test_what_is_no_json_is_refused(text: str) -> None:
    with pytest.raises(DocumentRefused):
        read_trail(read_text(text, "trail.json"))


@pytest.mark.parametrize("data", [[], "trail/1", 5, {}])
def test_what_is_no_trail_is_refused(data: Any) -> None:
    with pytest.raises(TrailRefused) as caught:
        read_trail(_document(data))
    assert [each.code for each in caught.value.problems] == ["trail-format-unknown"]


def test_a_trail_cut_to_its_format_names_what_is_missing() -> None:
    with pytest.raises(TrailRefused) as caught:
        read_trail(_document({"format": "trail/1"}))
    found = {(each.code, each.place.path) for each in caught.value.problems}
    assert {("trail-damaged", name) for name in ("assessment", "about", "digest")} <= found


# schema ------------------------------------------------------------------------------------------
def test_the_shipped_schema_has_not_drifted() -> None:
    shipped = (shipped_folder("schemas") / "trail-1.json").read_text(encoding="utf-8")
    assert json.loads(shipped) == trail_schema()


def test_the_hand_made_trail_satisfies_the_schema() -> None:
    assert schema_problems(_document(_data()), trail_schema()) == []


@pytest.mark.parametrize("change", [change for change, _, code, _ in REFUSED
                                    if code == "trail-damaged"])
def test_the_schema_refuses_what_reading_refuses(change: Change) -> None:
    data = _data()
    change(data)
    assert schema_problems(_document(data), trail_schema()) != []


def _bare(schema: Any, path: str = "") -> list[str]:
    """Properties without a description."""
    found = []
    if isinstance(schema, dict):
        for name, each in schema.get("properties", {}).items():
            if "description" not in each:
                found.append(f"{path}/{name}")
        for key, each in schema.items():
            found += _bare(each, f"{path}/{key}")
    return found


def test_every_property_is_described() -> None:
    assert _bare(trail_schema()) == []
