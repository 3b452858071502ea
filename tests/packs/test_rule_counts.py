"""How many rules are shipped, counted in the pack that sets each; all say what is left."""

from __future__ import annotations

from garboard.assembly import open_workshop
from garboard.documents import shipped_folder

SHIPPED = sorted(each for each in shipped_folder("rulepacks").iterdir() if each.is_dir())
PACKS = open_workshop().load_packs([str(each) for each in SHIPPED])
OWN = {(checked.pack.name, rule.id) for checked in PACKS for rule in checked.pack.rules}
#: A rule that several packs show is one rule.
BELOW = {"house-rules-example", "insurer-standard-example", "lithium-scope-500wh",
         "lithium-scope-600wh"}
LITHIUM = {rule for pack, rule in OWN if pack == "small-craft-lithium"}


def test_there_are_at_least_a_hundred_rules() -> None:
    counted = {(pack, rule) for pack, rule in OWN if pack not in BELOW or rule not in LITHIUM}
    assert len(counted) >= 140
    assert len(LITHIUM) >= 85


def test_a_rule_that_covers_a_part_says_what_is_left() -> None:
    rules = [rule for checked in PACKS for rule in checked.pack.rules]
    assert {rule.id for rule in rules if (rule.covers == "part") != bool(rule.left_to_a_person)
            } == set()
