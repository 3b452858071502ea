"""``garboard replay`` at the command line, older and newer formats, and what is different."""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from cli.ran import Ran
from garboard.documents import read_text
from garboard.errors import TrailRefused
from garboard.packs import read_dispensations
from garboard.reports import replayed
from garboard.trail import NOTHING, differences, digest_of, read_trail, trail_bytes
from replay.workshop import workshop

MAKING = Path(__file__).parent / "making"


@cache
def fresh() -> bytes:
    """The trail of the small record, as this program writes it."""
    opened = workshop()
    assessed = opened.assess(MAKING / "record.yaml",
                             opened.load_packs([str(MAKING / "kept-layer.yaml")]), None,
                             read_dispensations(str(MAKING / "agreed.yaml")))
    return trail_bytes(assessed.trail)


@pytest.fixture
def document() -> dict[str, Any]:
    data: dict[str, Any] = json.loads(fresh())
    return data


def sealed(document: dict[str, Any], file: Path) -> Path:
    """The document with the digest it should have, in a file."""
    document["digest"] = digest_of(document["assessment"])
    file.write_text(json.dumps(document), "utf-8")
    return file


def test_the_record_and_the_packs_of_the_trail_are_used_not_those_in_files(
        garboard: Callable[..., Ran]) -> None:
    for file in MAKING.iterdir():
        Path(file.name).write_text(file.read_text("utf-8"), "utf-8")
    ran = garboard("assess", "record.yaml", "--pack", "kept-layer.yaml", "--dispensations",
                   "agreed.yaml", "--on", "2026-05-05", "--trail", "a.json")
    assert ran.code == 1, ran.err
    Path("kept-rules.yaml").write_text(
        Path("kept-rules.yaml").read_text("utf-8").replace("value: 7 in", "value: 1 in"), "utf-8")
    Path("record.yaml").unlink()
    ran = garboard("replay", "a.json", "--to", "b.json")
    assert (ran.code, ran.err) == (0, "")
    assert "Result: identical" in ran.out
    assert read_trail(Path("a.json")).digest == read_trail(Path("b.json")).digest


def test_a_figure_that_differs_is_named_with_both_values(
        document: dict[str, Any], garboard: Callable[..., Ran]) -> None:
    derivation = document["assessment"]["derivations"]["pack-1.unprotected_length"]
    kept, derivation["value"] = derivation["value"], derivation["value"] + 1
    ran = garboard("replay", sealed(document, Path("t.json")), "--json")
    assert ran.code == 1
    result = json.loads(ran.out)
    assert result["result"] == "different"
    assert result["differences"] == [{
        "path": 'derivations["pack-1.unprotected_length"].value', "before": kept + 1,
        "after": kept, "within_tolerance": False}]


def test_the_last_digits_are_within_tolerance(
        document: dict[str, Any], garboard: Callable[..., Ran]) -> None:
    derivation = document["assessment"]["derivations"]["f1.prospective_current"]
    derivation["value"]["lo"] *= 1 + 1e-11
    ran = garboard("replay", sealed(document, Path("t.json")))
    assert ran.code == 0
    assert "Result: equal within tolerance" in ran.out


def test_quantities_and_plugins_of_other_versions_are_named(
        document: dict[str, Any], garboard: Callable[..., Ran]) -> None:
    document["assessment"]["quantities"]["conductor.cold_resistance"]["version"] = "0"
    document["about"]["plugins"].append({"name": "gone", "version": "3.1", "digest": "0" * 64})
    ran = garboard("replay", sealed(document, Path("t.json")), "--json")
    assert ran.code == 1
    result = json.loads(ran.out)
    assert result["quantities"] == [{
        "name": "conductor.cold_resistance", "before": "version 0 (garboard)",
        "after": "version 2 (garboard)"}]
    assert {"name": "plugin gone", "before": f"version 3.1, file {'0' * 12}",
            "after": None} in result["program"]
    text = garboard("replay", "t.json").out
    assert "Every finding and every figure comes out the same" in text


def test_a_finding_that_comes_out_otherwise_is_named(
        document: dict[str, Any], garboard: Callable[..., Ran]) -> None:
    battery = document["assessment"]["record"]["written"]["batteries"][1]
    battery["managed_by"] = "bms-1"
    record = document["assessment"]["record"]
    record["digest"] = digest_of(record["written"])
    ran = garboard("replay", sealed(document, Path("t.json")))
    assert ran.code == 1
    assert "kept-layer/managed/pack-2: not assessed then, passed now" in ran.out


@pytest.mark.parametrize(("change", "code"), [
    (lambda data: data.update(format="trail/99"), "trail-format-newer"),
    (lambda data: data.update(format="record/1"), "trail-format-unknown"),
    (lambda data: data["assessment"].update(date="2026-05-05"), "trail-digest-wrong")])
def test_refused(document: dict[str, Any], garboard: Callable[..., Ran],
                 change: Callable[[dict[str, Any]], None], code: str) -> None:
    change(document)
    Path("t.json").write_text(json.dumps(document), "utf-8")
    ran = garboard("replay", "t.json")
    assert ran.code == 3
    assert code in ran.err


def test_the_replay_is_not_written_over_the_trail(garboard: Callable[..., Ran]) -> None:
    Path("t.json").write_bytes(fresh())
    ran = garboard("replay", "t.json", "--to", "t.json")
    assert ran.code == 3
    assert "output-over-input" in ran.err


# formats ----------------------------------------------------------------------------------------
Data = dict[str, Any]


def renamed(assessment: Any, about: Any) -> tuple[Data, Data]:
    """From a made-up older format, in which the findings were called results."""
    kept = {key: value for key, value in assessment.items() if key != "results"}
    return {**kept, "findings": assessment["results"]}, about


def dated(assessment: Any, about: Any) -> tuple[Data, Data]:
    """And from the one before that, in which it was not said where the date is from."""
    return {**assessment, "date_from": "survey"}, about


def older(document: Data, version: int) -> str:
    """The kept trail in a made-up format, two or one before the newest."""
    assessment = dict(document["assessment"])
    assessment["results"] = assessment.pop("findings")
    if version == 1:
        del assessment["date_from"]
    return json.dumps({"format": f"trail/{version}", "digest": digest_of(assessment),
                       "assessment": assessment, "about": document["about"]})


@pytest.mark.parametrize("version", [1, 2])
def test_an_older_trail_is_brought_up_step_by_step_and_replayed(
        document: Data, version: int, monkeypatch: pytest.MonkeyPatch) -> None:
    from typing import Literal

    from garboard.trail.format import TrailDocument

    class Third(TrailDocument):
        format: Literal["trail/3"]  # type: ignore[assignment]

    monkeypatch.setattr("garboard.trail.format.TrailDocument", Third)
    text = older(document, version)
    trail = read_trail(read_text(text, "old.trail.json"), (dated, renamed))
    assert trail.brought_up_from == f"trail/{version}"
    assert trail.document["format"] == "trail/3"
    assert trail.digest == json.loads(text)["digest"]
    result = replayed(trail, workshop().replay(trail).trail)
    assert result.word == "identical"
    with pytest.raises(ValueError, match=f"trail/{version}"):
        trail_bytes(trail)


@pytest.mark.parametrize(("spoil", "code"), [
    (lambda data: data.update(digest="sha256:" + "0" * 64), "trail-digest-wrong"),
    (lambda data: data["assessment"].pop("results"), "trail-damaged")])
def test_an_older_trail_is_not_trusted_more_than_a_new_one(
        document: Data, spoil: Callable[[Data], None], code: str) -> None:
    data = json.loads(older(document, 2))
    spoil(data)
    if code == "trail-damaged":
        data["digest"] = digest_of(data["assessment"])
    with pytest.raises(TrailRefused) as refused:
        read_trail(read_text(json.dumps(data), "old.trail.json"), (dated, renamed))
    assert [each.code for each in refused.value.problems] == [code]


# differences ------------------------------------------------------------------------------------
@pytest.mark.parametrize(("before", "after", "expected"), [
    ({"a": 1.0}, {"a": 1}, []),
    ({"a": True}, {"a": 1}, [("a", True, 1, False)]),
    ({"a": [1, 2]}, {"a": [1]}, [("a", [1, 2], [1], False)]),
    ({"a": [1, 2]}, {"a": [1, 3.0]}, [("a[1]", 2, 3.0, False)]),
    ({"a": 1e9}, {"a": 1e9 + 0.9}, [("a", 1e9, 1e9 + 0.9, True)]),
    ({"a": 0.0}, {"a": 1e-12}, [("a", 0.0, 1e-12, False)]),
    ({"a": {"f1.x": "one"}}, {"a": {}}, [('a["f1.x"]', "one", NOTHING, False)]),
    ({"findings": [{"id": "p/r/i", "outcome": "passed"}]},
     {"findings": [{"id": "p/r/h"}, {"id": "p/r/i", "outcome": "failed"}]},
     [('findings["p/r/h"]', NOTHING, {"id": "p/r/h"}, False),
      ('findings["p/r/i"].outcome', "passed", "failed", False)])])
def test_differences(before: Data, after: Data, expected: list[Any]) -> None:
    assert [tuple(each) for each in differences(before, after)] == expected


def test_a_trail_has_no_difference_from_itself() -> None:
    trail = read_trail(read_text(fresh().decode(), "t.json"))
    assert list(differences(trail.assessment, trail.assessment)) == []
