"""A pack that accepts, refers or declines: trail, JSON and terminal say the same."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from cli.ran import Ran
from garboard.trail import read_trail

RECORD = """\
format: installation-record/1
survey: {date: 2026-05-10}
batteries: []
runs: []
buses: [{id: main-bus, rating: RATING}, {id: panel, rating: 600 A}]
"""
PACK = """\
format: rule-pack/1
pack: terms
version: 1.0.0
title: Terms
limits: {least: {value: 500 A, citation: {basis: house}}}
acceptance:
  must_have_passed: [rated]
  declined_when:
    - {says: A bus is too small, outcome: failed, severity: [danger]}
rules:
  - id: rated
    title: Rated
    about: bus
    must_hold: bus.rating >= least
    severity: danger
    citation: {basis: house}
    why: Because.
    recommendation: Change it.
"""
LAYER = """\
format: rule-pack/1
pack: top
version: 1.0.0
title: On top
builds_on: [{pack: terms, from: 1.0.0, before: 2.0.0}]
"""
OTHER = """\
acceptance:
  must_have_passed: [rated]
  referred_when: [{says: A bus is small, outcome: failed, rules: [rated]}]
"""
WHY = "  reason: So\n  author: A. Person\n"


def assessed(garboard: Callable[..., Ran], rating: str, *packs: str, json_: bool = False) -> Ran:
    Path("boat.yaml").write_text(RECORD.replace("RATING", rating), "utf-8")
    for number, text in enumerate(packs):
        Path("terms.yaml" if number == 0 else "top.yaml").write_text(text, "utf-8")
    name = "./terms.yaml" if len(packs) == 1 else "./top.yaml"
    return garboard("assess", "boat.yaml", "--pack", name, *(["--json"] if json_ else []))


@pytest.mark.parametrize(("rating", "word", "decided"), [
    ("500 A", "accepted", ["main-bus", "panel"]), ("499 A", "declined", ["main-bus"]),
    ("450 .. 550 A", "referred", ["main-bus"]),
])
def test_all_outputs_agree(garboard: Callable[..., Ran], rating: str, word: str,
                           decided: list[str]) -> None:
    text = assessed(garboard, rating, PACK)
    summary = json.loads(assessed(garboard, rating, PACK, json_=True).out)
    trail = read_trail(Path("boat.trail.json"))
    for found in (trail.outcome["packs"][0]["acceptance"], summary["packs"][0]["acceptance"]):
        assert found["word"] == word
        assert found["decided_by"][0]["findings"] == [f"terms/rated/{each}" for each in decided]
    assert f"By the terms of terms 1.0.0 the installation is {word}." in text.out


@pytest.mark.parametrize(("more", "word", "code"), [
    ("", "declined", None), (OTHER, None, "layer-conflict"),
    (OTHER + "  replaces: [terms]\n", None, "change-unexplained"),
    (OTHER + "  replaces: [terms]\n" + WHY, "referred", None),
    (OTHER.replace("[rated]\n", "[rate]\n") + "  replaces: [terms]\n" + WHY, None,
     "acceptance-rule"),
    ("changes: [{rule: rated, retire: true, reason: So, author: A. Person}]\n"
     "rules:\n" + PACK.partition("rules:\n")[2].replace("id: rated", "id: fine"), None,
     "acceptance-rule"),
])
def test_the_acceptance_of_a_pack_below(garboard: Callable[..., Ran], more: str, word: str | None,
                                        code: str | None) -> None:
    ran = assessed(garboard, "499 A", PACK, LAYER + more)
    if code is not None:
        assert (ran.code, f": {code}: " in ran.err) == (3, True), ran.err
        return
    outcome = ran.trail("boat.trail.json")["assessment"]["outcome"]["packs"][0]
    assert outcome["acceptance"]["word"] == word, ran.err
    assert ("acceptance of head" in ran.out) is bool(more)


@pytest.mark.parametrize(("old", "new", "code"), [
    ("must_have_passed: [rated]", "must_have_passed: []", "value-empty"),
    ("must_have_passed: [rated]", "must_have_passed: [rates]", "acceptance-rule"),
    ("outcome: failed", "outcome: fails", "choice-unknown"),
    ("says: A bus is too small, ", "", "key-missing"),
    ("severity: [danger]", "severity: [deadly]", "choice-unknown"),
    ("severity: [danger]", "at_least: 0", "count-too-small"),
    ("severity: [danger]", "rules: [other]", "acceptance-rule"),
])
def test_refused(garboard: Callable[..., Ran], old: str, new: str, code: str) -> None:
    assert old in PACK
    ran = assessed(garboard, "500 A", PACK.replace(old, new, 1))
    assert (ran.code, f": {code}: " in ran.err) == (3, True), ran.err
