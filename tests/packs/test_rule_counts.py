"""How many rules are shipped, counted in the pack that sets each; all say what is left."""

from __future__ import annotations

from collections import Counter

from garboard.assembly import open_workshop
from garboard.documents import shipped_folder
from garboard.packs import Pack


def added_by(pack: Pack, rule: str) -> str:
    """The name of the pack that adds a rule: the pack itself, or one below it."""
    setter = None if pack.layering is None else pack.layering.setter("rule", rule, "id")
    return (setter or pack.name).split()[0]


SHIPPED = sorted(each for each in shipped_folder("rulepacks").iterdir() if each.is_dir())
PACKS = open_workshop().load_packs([str(each) for each in SHIPPED])
#: (pack that adds it, rule): a rule that several packs show is one rule.
ADDED_BY = {(added_by(checked.pack, rule.id), rule.id)
            for checked in PACKS for rule in checked.pack.rules}


def test_there_are_at_least_a_hundred_rules() -> None:
    assert len(ADDED_BY) >= 150
    counted = Counter(pack for pack, _ in ADDED_BY)
    assert counted["small-craft-lithium"] >= 80
    assert counted["small-craft-dc"] >= 38
    assert counted["us-federal-33cfr183"] >= 28


def test_a_rule_that_covers_a_part_says_what_is_left() -> None:
    rules = [rule for checked in PACKS for rule in checked.pack.rules]
    assert {rule.id for rule in rules if (rule.covers == "part") != bool(rule.left_to_a_person)
            } == set()
