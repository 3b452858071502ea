"""The federal pack and the one on direct current: sources in the right capacity, words, counts."""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.assembly import open_workshop
from garboard.documents import shipped_folder
from garboard.packs import Citation, Pack, Rule, read_pack

NAMES = ("small-craft-dc", "us-federal-33cfr183")
PACKS = {name: read_pack(shipped_folder("rulepacks") / name) for name in NAMES}
RULES = [(name, rule) for name in NAMES for rule in PACKS[name].rules]
FEDERAL, DC = PACKS["us-federal-33cfr183"], PACKS["small-craft-dc"]
LAUNCH = Path(__file__).parents[2] / "examples" / "river-survey-launch"
ENDING = "subject to local code and the maker's instructions."


@pytest.mark.parametrize("rule", [rule for _, rule in RULES],
                         ids=[f"{name}-{rule.id}" for name, rule in RULES])
def test_a_rule_says_where_it_comes_from_and_what_to_do(rule: Rule) -> None:
    assert rule.citation.source
    assert rule.citation.says
    assert rule.citation.status or rule.citation.basis == "house"
    assert rule.recommendation.endswith(ENDING)
    assert len(rule.why) > 60


def test_how_many_rules_there_are() -> None:
    assert (len(DC.rules), len(FEDERAL.rules)) == (38, 28)


def test_no_rule_of_one_shipped_pack_has_the_name_of_another() -> None:
    lithium = read_pack(shipped_folder("rulepacks") / "small-craft-lithium")
    ids = [rule.id for rule in (*DC.rules, *FEDERAL.rules)]
    assert len(ids) == len(set(ids))
    assert {rule.id for rule in DC.rules} < {rule.id for rule in lithium.rules}
    assert {rule.id for rule in FEDERAL.rules} & {rule.id for rule in lithium.rules} == set()


def test_only_the_federal_pack_cites_a_regulation() -> None:
    """33 CFR 183 Subpart I is law inside the scope that the pack's condition states."""
    assert {rule.citation.basis for rule in FEDERAL.rules} == {"regulation", "house"}
    assert [rule.id for rule in FEDERAL.rules if rule.citation.basis == "house"] == [
        "rating-below-50-volts-in-engine-space"]
    assert "regulation" not in bases(DC)
    assert {each.basis for each in citations(DC) if "CFR" in (each.source or "")} == {"comparison"}


def citations(pack: Pack) -> list[Citation]:
    return [each.citation for each in (*pack.rules, *pack.limits.values())]


def bases(pack: Pack) -> set[str]:
    return {each.basis for each in citations(pack)}


def test_only_what_was_read_in_the_regulation_cannot_be_dispensed_with() -> None:
    locked = [rule for rule in FEDERAL.rules if rule.not_dispensable]
    assert len(locked) >= 20
    assert {(rule.citation.basis, rule.citation.status) for rule in locked} == {
        ("regulation", "read")}


def test_the_title_says_what_the_federal_pack_is_not() -> None:
    assert "partial" in FEDERAL.title
    assert "not evidence of legal compliance" in FEDERAL.title


@pytest.mark.parametrize("record", ["before", "after-as-fitted", "after-corrected"])
def test_the_federal_pack_does_not_apply_to_a_diesel_boat(record: str) -> None:
    workshop = open_workshop()
    trail = workshop.assess(LAUNCH / f"{record}.yaml",
                            workshop.load_packs(("us-federal-33cfr183",))).trail
    assert {(each["item"], each["outcome"], each["reason"]) for each in trail.findings} == {
        (None, "not applicable", "pack does not apply")}
    assert (len(trail.findings), trail.exit_code) == (28, 2)
