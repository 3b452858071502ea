"""The cases of a shipped pack against slips of the pen: each slip in a rule makes a case differ."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest

from authoring.small_pack import workshop
from garboard.authoring import Bench, Proving
from garboard.documents import shipped_folder
from garboard.expressions import Checked, ExpressionRefused, compile_rules, read_expression
from garboard.packs import Rule
from garboard.packs.checked import CheckedPack
from garboard.packs.wording import limit_info

#: What is found in a rule, and what a slip makes of it.
SLIPS = (("<=", "<"), (">=", ">"), ("<=", ">="), (">=", "<="), ("==", "!="), ("!=", "=="),
         (r"\band\b", "or"), (r"\bor\b", "and"), (r"\bnot (?!in)", ""), (r"\ball\(", "any("),
         (r"\bany\(", "all("), (r"\bmax\(", "min("), (r"\bmin\(", "max("), (r"\bsum\(", "max("))
PACKS = sorted(each.name for each in shipped_folder("rulepacks").iterdir() if each.is_dir())
#: Slips that are tried, by pack.
LEAST = {
    "house-rules-example": 5,
    "insurer-standard-example": 2,
    "lithium-scope-500wh": 0,
    "lithium-scope-600wh": 0,
    "small-craft-dc": 130,
    "small-craft-lithium": 260,
    "teaching-first-steps": 20,
    "us-federal-33cfr183": 90,
}


def slips(rule: Rule) -> Iterator[tuple[str, str]]:
    """Part of the rule and its text with one slip; at last the condition is left out."""
    for part, text in (("must_hold", rule.must_hold), ("applies_when", rule.applies_when)):
        for found, instead in SLIPS if text else ():
            for match in re.finditer(found, text or ""):
                yield part, f"{text[:match.start()]}{instead}{text[match.end():]}"
    if rule.applies_when is not None:
        yield "applies_when", "true"


def noticed(desk: Bench, number: int, part: str, slip: Checked) -> bool:
    """Whether a case about the rule differs once the slip is in it."""
    rule, source = desk.checked.pack.rules[number], desk.checked.program.sources[number]
    changed = replace(source, applies_when=slip) if part == "applies_when" else replace(
        source, must_hold=slip)
    alone = CheckedPack(replace(desk.checked.pack, rules=(rule,)),
                        replace(desk.checked.compiled, program=compile_rules([changed])), ())
    proving = Proving(alone, desk.proving.registry, desk.proving.vocabulary)
    return not all(proving.proof(case).holds for case in desk.book.about(rule.id).cases)


@pytest.mark.parametrize("pack", PACKS)
def test_every_slip_is_noticed(pack: str) -> None:
    desk = Bench.of(workshop(), pack)
    limits = {name: limit_info(limit) for name, limit in desk.checked.pack.limits.items()}
    tried, missed = 0, []
    for number, rule in enumerate(desk.checked.pack.rules):
        for part, text in slips(rule) if rule.id in desk.rules else ():
            try:
                slip = read_expression(text, workshop().vocabulary, rule.about, limits)
            except ExpressionRefused:
                continue
            tried += 1
            if not noticed(desk, number, part, slip):
                missed.append(f"{rule.id}: {text}")
    assert missed == []
    assert tried >= LEAST[pack]
