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
     "not (for at least one of its places, kind is \"a for p in x\")"),
    ("exists(battery.own_device) and count(battery.string.batteries) <= 4", "battery",
     "own device present and the number of string batteries ≤ 4"),
    ("max(bus.rating, 3 A) * share_limit", "bus", "max(rating, 3 A) × share limit"),
    ("all(a == 'max(' for a in bus.runs) and (", "bus",
     "(for each of its runs, a is 'max(') and ("),
    ("all(b.age == battery.age for b in battery.bank.batteries)", "battery",
     "(for each of its bank batteries, age is its own age)"),
    ("run.use in (\"feeder\", \"a in b\") and run.use not in record.uses", "run",
     "use is one of (\"feeder\", \"a in b\") and use is none of record uses"),
    ("any(s.closed and any(b.id == bank.id for b in s.banks) for s in record.switches)", "bank",
     "(for at least one of record switches, closed and the bank itself is among banks)"),
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
