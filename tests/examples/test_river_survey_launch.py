"""The river survey launch: every finding of its three records, and the figures worked by hand."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest
from click.testing import CliRunner

from examples.launch import (
    FOLDER,
    PACK,
    RECORDS,
    Row,
    expected,
    figures,
    rows,
    shipped_trail,
    workshop,
)
from garboard.cli.main import garboard
from garboard.values import REASONS, Bounds

#: A figure worked by hand to four digits is at most half a unit of the last of them off.
FOUR_DIGITS = 5.1e-4

FIGURES = [(record, path, figure) for record in RECORDS
           for path, figure in expected()[record]["figures"].items()]


def expected_rows(record: str) -> set[Row]:
    """The findings that the data file asks for, of the pack and of those below it."""
    below = expected()[record]["below"].values()
    return set[Row]().union(*map(rows_of, (expected()[record]["findings"], *below)))


def rows_of(findings: dict[str, Any]) -> set[Row]:
    wanted: set[Row] = set()
    for rule, outcomes in findings.items():
        for word, items in outcomes.items():
            assert word in ("passed", "failed", "does not apply", *REASONS), (rule, word)
            for item in items:
                wanted.add((rule, "record" if item == "the record" else item, *outcome_of(word)))
    return wanted


def outcome_of(word: str) -> tuple[str, str | None]:
    if word == "does not apply":
        return "not applicable", "condition false"
    return ("not assessed", word) if word in REASONS else (word, None)


@pytest.mark.parametrize("record", ["after-as-fitted", "after-corrected"])
def test_every_finding_is_the_one_expected(record: str) -> None:
    found, wanted = rows(shipped_trail(record)), expected_rows(record)
    assert sorted(found - wanted, key=str) == []
    assert sorted(wanted - found, key=str) == []


@pytest.mark.parametrize("record", ["after-as-fitted", "after-corrected"])
def test_a_pack_below_finds_the_same_alone(record: str) -> None:
    opened, _ = workshop()
    for pack, findings in expected()[record]["below"].items():
        alone = opened.assess(FOLDER / f"{record}.yaml", opened.load_packs((pack,))).trail
        assert sorted(rows(alone) ^ rows_of(findings), key=str) == []


def test_the_pack_does_not_apply_to_the_lead_acid_bank() -> None:
    found = rows(shipped_trail("before"))
    assert {(item, outcome, reason) for _, item, outcome, reason in found} == {
        (None, "not applicable", "pack does not apply")}
    fitted = expected()["after-as-fitted"]
    assert len(found) == len(fitted["findings"]) + sum(map(len, fitted["below"].values()))


def test_the_record_as_fitted_shows_why_a_survey_cannot_tell() -> None:
    reasons = {reason for *_, outcome, reason in rows(shipped_trail("after-as-fitted"))
               if outcome == "not assessed"}
    assert reasons == {"not recorded", "not determinable", "within uncertainty", "outside method",
                       "conflict", "awaits answer"}


@pytest.mark.parametrize("record", RECORDS)
def test_the_exit_code_says_what_came_out(record: str) -> None:
    assert shipped_trail(record).exit_code == expected()[record]["exit_code"]


@pytest.mark.parametrize(("record", "path", "figure"), FIGURES,
                         ids=[f"{record} {path}" for record, path, _ in FIGURES])
def test_a_figure_is_the_one_worked_by_hand(record: str, path: str, figure: Any) -> None:
    item, _, name = path.partition(".")
    value = figures(record).items[item][name]
    if isinstance(figure, list):
        assert isinstance(value, Bounds)
        found, wanted = [value.nominal, value.lo, value.hi], figure
    else:
        found, wanted = [value], [figure]
    for one, other in zip(found, wanted, strict=True):
        if other is None:
            assert one is None
        elif other != "any":
            assert math.isclose(one, other, rel_tol=FOUR_DIGITS), (one, other)


@pytest.mark.parametrize("record", RECORDS)
def test_the_command_line_says_the_same(record: str, tmp_path: Any) -> None:
    trail = tmp_path / "launch.trail.json"
    ran = CliRunner().invoke(garboard, [
        "assess", str(FOLDER / f"{record}.yaml"), "--pack", PACK, "--trail", str(trail), "--json"],
        standalone_mode=False)
    assert (ran.exception, ran.return_value) == (None, expected()[record]["exit_code"])
    found = {(each["id"].split("/")[1], each["item"], each["outcome"], each["reason"])
             for each in json.loads(ran.stdout)["findings"]}
    assert found == rows(shipped_trail(record))
    assert trail.is_file()


def test_the_readme_names_every_rule_that_fails_or_cannot_be_assessed() -> None:
    readme = (FOLDER / "README.md").read_text("utf-8")
    open_rules = {rule for rule, _, outcome, _ in rows(shipped_trail("after-as-fitted"))
                  if outcome in ("failed", "not assessed")}
    assert open_rules
    assert {rule for rule in open_rules if f"`{rule}`" not in readme} == set()


def test_the_readme_counts_as_the_assessment_does() -> None:
    outcomes = [outcome for *_, outcome, _ in rows(shipped_trail("after-as-fitted"))
                if outcome != "not applicable"]
    counted = (f"{outcomes.count('failed')} of {len(outcomes)} findings fail, "
               f"{outcomes.count('not assessed')} cannot be assessed")
    assert counted in (FOLDER / "README.md").read_text("utf-8")
