"""Expressions of rules in words: no dotted name, no variable, gathering operands read out."""

from __future__ import annotations

import re

import pytest

from garboard.reports.names import rule_words
from reports.pages import example_trail


@pytest.mark.parametrize(("text", "subject", "words"), [
    ("device.breaking_capacity", "device", "breaking capacity"),
    ("max(d.rating for d in bus.devices)", "bus", "the greatest rating of all its devices"),
    ("max(max(d.rating for d in r.devices) for r in bus.runs if count(r.devices) > 0)", "bus",
     "the greatest rating of all devices of all its runs with the number of devices > 0"),
    ("min(s.charge.temperature.low for s in source.bank.strings)", "source",
     "the least charge temperature (low) of all its bank strings"),
    ("not any(p.kind == \"a for p in x\" for p in conductor.places)", "conductor",
     "not (kind is \"a for p in x\" for at least one of its places)"),
    ("exists(battery.own_device) and count(battery.string.batteries) <= 4", "battery",
     "own device present and the number of string batteries ≤ 4"),
    ("max(bus.rating, 3 A) * share_limit", "bus", "max(rating, 3 A) × share limit"),
    ("all(a == 'max(' for a in bus.runs) and (", "bus", "(a is 'max(' for each of its runs) and ("),
    ("all(b.age == battery.age for b in battery.bank.batteries)", "battery",
     "(age is its own age for each of its bank batteries)"),
    ("max(" * 50, "bus", "max(" * 50),
])
def test_words(text: str, subject: str, words: str) -> None:
    assert rule_words(text, subject) == words


def test_no_shipped_rule_keeps_a_dotted_name_or_a_variable() -> None:
    rules = example_trail("after-as-fitted").packs[0]["resolved"]["rules"]
    assert len(rules) > 30
    for rule in rules:
        words = rule_words(rule["must_hold"], rule["about"])
        assert not re.search(r"[a-z]\.[a-z]| for \w+ in ", words), words
