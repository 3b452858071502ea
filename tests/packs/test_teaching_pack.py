"""The teaching pack: twelve rules in order, each with one mistake on the exercise boat."""

from __future__ import annotations

import math
import re

import pytest

from garboard.assembly import open_workshop
from garboard.documents import shipped_folder
from garboard.network import build_network
from garboard.packs import Rule
from garboard.packs.table import with_table
from garboard.quantities import Figures
from garboard.values import Bounds

FOLDER = shipped_folder("rulepacks") / "teaching-first-steps"
WRONG, RIGHT = FOLDER / "lessons" / "wrong.yaml", FOLDER / "cases" / "base" / "right.yaml"
WORKSHOP = open_workshop()
PACKS = WORKSHOP.load_packs(["teaching-first-steps"])
PACK = PACKS[0].pack
#: Of each lesson: number, question, rule, item, answer.
LESSONS = re.findall(r"^\| (\d+) \| (.+?) \| `(.+?)` \| (\S+) \| (.+?) \|$",
                     (FOLDER / "LESSONS.md").read_text("utf-8"), re.M)


def outcomes(file: str) -> dict[tuple[str, str], str]:
    trail = WORKSHOP.assess(FOLDER / file, PACKS).trail
    return {(each["rule"], each["item"]): each["outcome"] for each in trail.findings}


def test_the_rules_are_numbered_by_difficulty_and_the_lessons_follow_them() -> None:
    numbered = {int(rule.title.split(".")[0]): rule.id for rule in PACK.rules}
    assert sorted(numbered) == list(range(1, 13))
    assert {int(number): rule for number, _, rule, _, _ in LESSONS} == numbered
    assert len(LESSONS) == 12
    assert len({item[1] for item in LESSONS}) == 12


@pytest.mark.parametrize("rule", PACK.rules, ids=lambda rule: rule.id)
def test_an_explanation_asks_first_and_shows_a_mistake_in_numbers(rule: Rule) -> None:
    why = rule.why
    parts = [why.find(each) for each in ("Before you look:", "A mistake often met:", "In numbers:")]
    assert parts[0] == 0
    assert 0 < parts[1] < parts[2]
    assert "?" in why[:parts[1]]
    assert len(why) > 450


@pytest.mark.parametrize("lesson", LESSONS, ids=[each[2] for each in LESSONS])
def test_its_mistake_is_found(lesson: tuple[str, ...]) -> None:
    assert outcomes("lessons/wrong.yaml")[lesson[2], lesson[3]] == "failed"


def test_nothing_else_is_found_but_what_the_page_tells() -> None:
    open_ones = {key for key, outcome in outcomes("lessons/wrong.yaml").items()
                 if outcome in ("failed", "not assessed")}
    assert open_ones - {(each[2], each[3]) for each in LESSONS} == {
        ("breaks-the-fault", "f1"), ("breaks-the-fault", "f5")}


def test_the_boat_put_right_meets_every_rule() -> None:
    found = outcomes("cases/base/right.yaml")
    assert set(found.values()) == {"passed", "not applicable"}
    assert {rule for (rule, _), outcome in found.items() if outcome == "passed"} == {
        rule.id for rule in PACK.rules}


#: Worked from Ohm's law: battery 2 mΩ, lead and fuse 1.5 mΩ and 0.5 mΩ, 27 V.
@pytest.mark.parametrize(("item", "name", "value"), [
    ("pack-1", "unprotected_length", 0.9), ("charger", "highest_stage_voltage", 30.0),
    ("bank-main-bus", "charge_current_limit", 50 / (3.5 / 6)),
    ("bank-main-bus", "worst_share_departure", (3.5 / 6 - 0.5) / 0.5),
    ("f3", "prospective_current", 27 / 3.5e-3 + 27 / 2.5e-3),
    ("f1", "prospective_current", 27 / 2.5e-3),
    ("alternator", "longest_stop_time", 4.5),
    ("nav-lights", "voltage_drop", 3 * (16 * 13.3e-3 * 304.5 / 254.5 + 0.010))])
def test_a_figure_is_the_one_worked_by_hand(item: str, name: str, value: float) -> None:
    record = WORKSHOP.read_record(WRONG)
    figure = Figures(record, build_network(record), WORKSHOP.registry).items[item][name]
    found = figure.lo if isinstance(figure, Bounds) else figure
    assert math.isclose(found, value, rel_tol=1e-9)


def test_the_readme_shows_the_rules_as_they_are() -> None:
    readme = (FOLDER / "README.md").read_text("utf-8")
    assert readme == with_table(readme, PACK)
