"""Whole records with a page of findings worked by hand beside each: what the page says is what an
assessment finds, and nothing else fails or stays open.

A page says apart what the pack finds by its own rules and, under ``below``, what each pack below it
finds, which is what that pack finds where it is asked alone.
"""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from garboard.assembly import Workshop, open_workshop
from garboard.documents import read_document
from garboard.network import build_network
from garboard.quantities import Figures
from garboard.trail import Trail
from garboard.values import REASONS

HERE = Path(__file__).parent
EXAMPLES = HERE.parents[1] / "examples"
PAGES = sorted(file.stem for file in (HERE / "whole").glob("*.yaml"))
#: A figure worked by hand to four digits is at most half a unit of the last of them off.
FOUR_DIGITS = 5.1e-4


@cache
def workshop() -> Workshop:
    return open_workshop()


@cache
def page(name: str) -> dict[str, Any]:
    data = read_document(HERE / "whole" / f"{name}.yaml").data
    assert isinstance(data, dict)
    return data


def parts(name: str) -> dict[str, Any]:
    """The parts of a page by their pack: its own first, then those of the packs below."""
    return {page(name)["pack"]: page(name), **page(name).get("below", {})}


@cache
def trail(name: str, pack: str | None = None) -> Trail:
    """The trail of a page's record by its pack, or by one below."""
    packs = workshop().load_packs((pack or page(name)["pack"],))
    return workshop().assess(EXAMPLES / page(name)["record"], packs).trail


def rows(by_rule: dict[str, list[str]], outcome: str, reason: str | None = None) -> set[Any]:
    return {(rule, "record" if item == "the record" else item, outcome, reason)
            for rule, items in by_rule.items() for item in items}


def found(name: str, pack: str | None = None) -> set[Any]:
    return {(each["rule"], each["item"], each["outcome"], each["reason"])
            for each in trail(name, pack).findings}


def still_open(of: set[Any]) -> set[Any]:
    return {row for row in of if row[2] in ("failed", "not assessed")}


def said_open(part: dict[str, Any]) -> set[Any]:
    """What fails or stays open by a part of a page."""
    wanted = rows(part["failed"], "failed")
    for reason, by_rule in part["not assessed"].items():
        assert reason in REASONS
        wanted |= rows(by_rule, "not assessed", reason)
    return wanted


@pytest.mark.parametrize("name", PAGES)
def test_what_fails_or_stays_open_is_what_the_page_says(name: str) -> None:
    wanted = set[Any]().union(*map(said_open, parts(name).values()))
    assert sorted(still_open(found(name)) ^ wanted, key=str) == []


@pytest.mark.parametrize("name", PAGES)
def test_what_the_page_says_passes(name: str) -> None:
    for part in parts(name).values():
        wanted = rows(part["passed"], "passed")
        assert wanted
        assert sorted(wanted - found(name), key=str) == []


@pytest.mark.parametrize("name", PAGES)
def test_a_pack_below_finds_the_same_alone(name: str) -> None:
    for pack, part in page(name).get("below", {}).items():
        assert sorted(still_open(found(name, pack)) ^ said_open(part), key=str) == []
        assert sorted(rows(part["passed"], "passed") - found(name, pack), key=str) == []


@pytest.mark.parametrize("name", PAGES)
def test_the_exit_code_says_what_came_out(name: str) -> None:
    assert trail(name).exit_code == page(name)["exit_code"]


@pytest.mark.parametrize("name", PAGES)
def test_the_figures_are_those_worked_by_hand(name: str) -> None:
    record = workshop().read_record(EXAMPLES / page(name)["record"])
    figures = Figures(record, build_network(record), workshop().registry)
    wrong = {}
    for path, wanted in page(name)["figures"].items():
        item, _, quantity = path.partition(".")
        value = figures.items[item][quantity]
        pair = ([value.lo, value.hi], wanted) if isinstance(wanted, list) else ([value], [wanted])
        if not all(math.isclose(one, other, rel_tol=FOUR_DIGITS)
                   for one, other in zip(*pair, strict=True)):
            wrong[path] = (value, wanted)
    assert wrong == {}
    assert page(name)["figures"]


@pytest.mark.parametrize("name", PAGES)
def test_the_readme_names_every_rule_that_fails_or_cannot_be_assessed(name: str) -> None:
    readme = (EXAMPLES / page(name)["record"]).parent / "README.md"
    named = readme.read_text("utf-8")
    rules = {rule for rule, _, outcome, _ in found(name) if outcome in ("failed", "not assessed")}
    assert {rule for rule in rules if f"`{rule}`" not in named} == set()


def test_there_are_pages() -> None:
    assert len(PAGES) >= 1
