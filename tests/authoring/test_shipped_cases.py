"""The cases of every shipped pack, one test each, and how many there are."""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest

from authoring.small_pack import workshop
from garboard.authoring import Bench, Proof, covered
from garboard.documents import shipped_folder
from garboard.errors import render
from garboard.packs.cases import KINDS

#: Cases by pack; a case that is not found is as bad as one that differs.
COUNTS = {
    "house-rules-example": 24,
    "insurer-standard-example": 32,
    "lithium-scope-500wh": 7,
    "lithium-scope-600wh": 7,
    "small-craft-dc": 215,
    "small-craft-lithium": 512,
    "teaching-first-steps": 69,
    "us-federal-33cfr183": 213,
}
PACKS = sorted(each.name for each in shipped_folder("rulepacks").iterdir() if each.is_dir())


@cache
def desk(pack: str) -> Bench:
    return Bench.of(workshop(), pack)


@cache
def proofs(pack: str) -> dict[str, Proof]:
    return {proof.case.name: proof for proof in desk(pack).proofs()}


CASES = [(pack, case.name) for pack in PACKS for case in desk(pack).book.cases]


@pytest.mark.parametrize(("pack", "name"), CASES, ids=[f"{pack}-{name}" for pack, name in CASES])
def test_case(pack: str, name: str) -> None:
    proof = proofs(pack)[name]
    assert "\n".join(map(render, proof.differences)) == ""
    assert proof.failures == ()
    assert len(proof.shown) == len(proof.case.expected) > 0


def test_all_cases_were_found() -> None:
    assert Counter(pack for pack, _ in CASES) == COUNTS
    assert set(PACKS) == set(COUNTS)


@pytest.mark.parametrize("pack", PACKS)
def test_every_rule_shows_every_kind_of_outcome_that_it_can(pack: str) -> None:
    table, contradictions = covered(desk(pack).rules, desk(pack).book,
                                    proofs(pack).values())
    assert [(each.rule, each.missing) for each in table if each.missing] == []
    assert contradictions == ()
    assert len(table) == len(desk(pack).rules)


@pytest.mark.parametrize("pack", PACKS)
def test_all_but_the_limit_can_always_be_shown(pack: str) -> None:
    assert {kind for _, kind in desk(pack).book.not_possible} <= {"at the limit"}
    assert set(KINDS) > {"at the limit"}


def test_a_rule_with_a_condition_is_shown_with_it_false() -> None:
    own = desk("small-craft-lithium").rules
    with_condition = {rule.id for rule in desk("small-craft-lithium").checked.pack.rules
                      if rule.applies_when is not None and rule.id in own}
    shown = {seen.rule for proof in proofs("small-craft-lithium").values() for seen in proof.shown
             if seen.reason == "condition false"}
    assert len(with_condition) > 20
    assert with_condition - shown == set()
