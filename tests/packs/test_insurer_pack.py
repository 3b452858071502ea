"""The insurer's example: sealed beside its folder, and a word for the whole record with reasons."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from garboard.assembly import open_workshop
from garboard.documents import read_document, shipped_folder
from garboard.packs.table import with_table

SHIPPED = shipped_folder("rulepacks")
SEALED = SHIPPED / "insurer-standard-example.sealed.json"
LAUNCH = Path(__file__).parents[2] / "examples" / "river-survey-launch"
WORKSHOP = open_workshop()
ANSWERS = {
    "photographs": {"value": "all shown", "on": "2026-05-09", "evidence": ["photo-fuses"]},
    "examined-aboard": {"value": "covers off", "on": "2026-05-09", "evidence": ["photo-fuses"]},
    "earlier-fire": {"value": "nothing", "on": "2026-05-09"},
}


def judged(record: str, folder: Path, **changed: Any) -> tuple[str, set[str]]:
    """The word on a record of the launch with the insurer's answers, and what it rests on."""
    data = read_document(LAUNCH / f"{record}.yaml").data
    assert isinstance(data, dict)
    data["answers"] = {**data.get("answers", {}), **ANSWERS, **changed}
    data["answers"] = {key: each for key, each in data["answers"].items() if each is not None}
    for battery in data["batteries"]:
        battery.setdefault("conformity", {})["for_marine_use"] = True
    file = folder / "record.json"
    file.write_text(json.dumps(data), "utf-8")
    trail = WORKSHOP.assess(file, WORKSHOP.load_packs([str(SEALED)])).trail
    accepted = trail.outcome["packs"][0]["acceptance"]
    return accepted["word"], {finding.split("/", 1)[1] for reason in accepted["decided_by"]
                              for finding in reason["findings"]}


def test_the_corrected_boat_with_all_answers_is_accepted(tmp_path: Path) -> None:
    word, _ = judged("after-corrected", tmp_path)
    assert word == "accepted"


@pytest.mark.parametrize(("changed", "finding"), [
    ({"photographs": None}, "photographs-shown/record"),
    ({"examined-aboard": {**ANSWERS["examined-aboard"], "value": "from documents"}},
     "examined-with-covers-off/record"),
    ({"earlier-fire": {"value": "something", "on": "2026-05-09"}}, "nothing-burnt-before/record"),
    ({"disconnect-test": None}, "disconnection-tried/record")])
def test_it_is_referred_for_what_is_open(changed: dict[str, Any], finding: str,
                                         tmp_path: Path) -> None:
    word, findings = judged("after-corrected", tmp_path, **changed)
    assert word == "referred"
    assert finding in findings


def test_the_boat_as_fitted_is_declined_for_its_dangers(tmp_path: Path) -> None:
    word, findings = judged("after-as-fitted", tmp_path, photographs=None,
                            **{"examined-aboard": None, "earlier-fire": None})
    assert word == "declined"
    assert {"breaking-capacity/f0", "own-device-in-parallel/pack-1"} <= findings


def test_the_sealed_file_is_the_folder_as_it_stands() -> None:
    (sealed,), (folder,) = (WORKSHOP.load_packs([str(each)])
                            for each in (SEALED, SHIPPED / "insurer-standard-example"))
    assert [rule.id for rule in sealed.pack.rules] == [rule.id for rule in folder.pack.rules]
    assert sealed.pack.version == folder.pack.version


def test_the_readme_shows_what_is_its_own() -> None:
    folder = SHIPPED / "insurer-standard-example"
    readme = (folder / "README.md").read_text("utf-8")
    (checked,) = WORKSHOP.load_packs([str(folder)])
    assert readme == with_table(readme, checked.pack)
