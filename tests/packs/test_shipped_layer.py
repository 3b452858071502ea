"""The shipped example of house rules: a layer that uses all that a layer can do, and its boat."""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.assembly import open_workshop
from garboard.documents import shipped_folder
from garboard.packs import CheckedPack, read_dispensations
from garboard.packs.table import with_table

FOLDER = shipped_folder("rulepacks") / "house-rules-example"
RECORD = Path(__file__).parents[2] / "examples" / "river-survey-launch"
WORKSHOP = open_workshop()
AGREED = read_dispensations(FOLDER / "dispensations" / "reed-warbler.yaml")


@pytest.fixture(scope="module")
def packs() -> tuple[CheckedPack, ...]:
    return WORKSHOP.load_packs(["house-rules-example", "small-craft-lithium"])


def test_it_differs_from_the_pack_below_in_this(packs: tuple[CheckedPack, ...]) -> None:
    house, below = (each.pack for each in packs)
    assert house.warnings == packs[0].warnings == ()
    rules = {rule.id: rule for rule in house.rules}
    old = {rule.id: rule for rule in below.rules}
    assert set(rules) - set(old) == {
        "lugs-checked", "owner-shown", "voltage-we-survey", "bus-fault-current"}
    assert set(old) - set(rules) == {"warning-sign"} == {each.rule.id for each in house.retired}
    assert {name for name in set(rules) & set(old) if rules[name] != old[name]} == {
        "crew-instructed"}
    assert {name: (limit.written, house.limits[name].written)
            for name, limit in below.limits.items() if limit != house.limits[name]} == {
        "height_over_bilge_least": ("100 mm", "150 mm"), "stage_share_of_trip": ("99 %", "97 %")}


def test_what_it_loosens_is_told_and_what_it_tightens_is_not(
        packs: tuple[CheckedPack, ...]) -> None:
    assert [(each.change, each.what) for each in packs[0].pack.relaxations] == [
        ("relaxed", "severity of rule crew-instructed"), ("retired", "rule warning-sign")]


def test_the_readme_shows_what_is_its_own(packs: tuple[CheckedPack, ...]) -> None:
    readme = (FOLDER / "README.md").read_text("utf-8")
    assert readme == with_table(readme, packs[0].pack)
    assert "breaking-capacity" not in readme


@pytest.mark.parametrize(("day", "dispensed"), [
    ("2026-02-28", 0), ("2026-03-01", 1), ("2026-05-31", 1), ("2026-06-01", 0)])
def test_its_dispensation_on_the_boat_it_is_for(packs: tuple[CheckedPack, ...], day: str,
                                                dispensed: int) -> None:
    trail = WORKSHOP.assess(RECORD / "after-as-fitted.yaml", packs[:1], day, AGREED).trail
    assert trail.outcome["counts"]["dispensed"] == dispensed
    plain = WORKSHOP.assess(RECORD / "after-as-fitted.yaml", packs[:1], day).trail
    assert [each["outcome"] for each in trail.findings] == [
        each["outcome"] for each in plain.findings]
    assert trail.outcome["packs"][0]["acceptance"]["word"] == "declined"
    waiting = [each for each in trail.findings if each["rule"] == "lugs-checked"]
    assert [(each["outcome"], each["reason"]) for each in waiting] == [
        ("not assessed", "awaits answer")]
