"""Missing facts against every way they could turn out: exact where each occurs once, else sound."""

from __future__ import annotations

import random
from typing import Any

import pytest

from expressions import drawn, once
from garboard.expressions import (
    FAILED,
    NOT_ASSESSED,
    PASSED,
    Program,
    RuleSource,
    Vocabulary,
    compile_rules,
    read_expression,
)
from garboard.expressions.decision import evaluated
from garboard.expressions.evaluate import Surroundings
from garboard.values import NOT_RECORDED, Unknown, same_value


def compiled(text: str, vocabulary: Vocabulary) -> Program:
    return compile_rules([RuleSource(text, read_expression(text, vocabulary, "thing", drawn.INFOS),
                                     None, drawn.AMOUNTS)])


@pytest.mark.parametrize("seed", range(12))
def test_exact_where_each_fact_occurs_once(seed: int) -> None:
    """Decided exactly when all completions agree; the facts that matter are exactly those."""
    draws, draw = random.Random(seed), once.Once(seed)
    seen = {PASSED: 0, FAILED: 0, NOT_ASSESSED: 0}
    for number in range(40):
        text = draw.condition(depth=number % 4)
        rule = compiled(text, once.VOCABULARY)
        item = once.thing(draws)
        mentioned = once.facts(text)
        missing = draws.sample(mentioned, min(len(mentioned), draws.randint(1, 3)))
        ways = list(once.completions(missing))
        rows = rule.run({"thing": [once.unknown(item, missing),
                                   *(once.changed(item, way) for way in ways)]})
        outcome, unknown = rows[0][2], rows[0][3]
        complete = [row[2] for row in rows[1:]]
        assert set(complete) <= {PASSED, FAILED}
        seen[outcome] += 1
        if len(set(complete)) == 1:
            assert outcome == complete[0], text
            continue
        assert outcome == NOT_ASSESSED, text
        assert set(unknown.paths) == {once.path(fact) for fact in missing
                                      if _matters(fact, ways, complete)}, text
        assert unknown.reason == NOT_RECORDED
    assert all(seen.values())


def _matters(fact: once.Fact, ways: list[dict[once.Fact, Any]], outcomes: list[str]) -> bool:
    """Whether the outcome can change with this fact alone."""
    by_others: dict[tuple[object, ...], set[str]] = {}
    for way, outcome in zip(ways, outcomes, strict=True):
        others = tuple(value for other, value in way.items() if other != fact)
        by_others.setdefault(others, set()).add(outcome)
    return any(len(found) > 1 for found in by_others.values())


@pytest.mark.parametrize("seed", range(10))
def test_sound_everywhere(seed: int) -> None:
    """What is decided with facts missing is not contradicted by any drawn completion."""
    draws, draw = random.Random(seed), drawn.Draw(5000 + seed)
    decided = 0
    for number in range(30):
        text = draw.truth(depth=1 + number % 4)
        rule = compiled(text, drawn.VOCABULARY)
        item = drawn.thing(draws)
        holes = _holes(draws, item)
        blank = _blank(item, holes)
        rows = rule.run({"thing": [blank, *(_blank(item, holes, draws) for _ in range(25))]})
        slow = evaluated(0, rule.sources[0], Surroundings(blank, {}, {}, drawn.AMOUNTS))
        assert slow[:3] == rows[0][:3], text
        assert all(map(same_value, slow[4], rows[0][4])), text
        if rows[0][2] != NOT_ASSESSED:
            decided += 1
            assert {row[2] for row in rows[1:]} <= {rows[0][2], NOT_ASSESSED}, text
    assert decided > 5


def _holes(draws: random.Random, item: dict[str, Any]) -> set[tuple[str, str]]:
    """Things and names whose values are not recorded; every thing loses a few."""
    return {(identity, name) for identity in _identities(item)
            for name in draws.sample(("x", "y", "z.low", "n", "m", "on", "off", "colour"), 2)}


def _identities(item: dict[str, Any]) -> list[str]:
    inside = [*item["parts"], *([item["partner"]] if "partner" in item else [])]
    return [item["id"], *(name for part in inside for name in _identities(part))]


def _blank(item: dict[str, Any], holes: set[tuple[str, str]],
           draws: random.Random | None = None) -> dict[str, Any]:
    """The thing with holes: unknown, or filled at random."""
    fresh = {} if draws is None else drawn.values(draws, item["id"])
    plain = dict(item)
    for name in plain:
        if (item["id"], name) in holes:
            plain[name] = fresh.get(name, Unknown.because(NOT_RECORDED, f"{item['id']}.{name}"))
    plain["parts"] = tuple(_blank(part, holes, draws) for part in item["parts"])
    if "partner" in item:
        plain["partner"] = _blank(item["partner"], holes, draws)
    return plain
