"""Hostile text in a record and its trail shows as harmless text in every view of trails."""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Iterator
from pathlib import Path

import pytest

from garboard.reports import (
    Remedy,
    Tried,
    check_json,
    check_text,
    checked,
    comparison,
    comparison_json,
    comparison_text,
    history_json,
    history_of,
    history_text,
    replay_json,
    replay_text,
    replayed,
    working_json,
    working_text,
)
from garboard.trail import Trail, digest_of, read_trail
from replay.workshop import workshop

KEPT = Path(__file__).parent / "kept" / "trail-1.trail.json"
HOSTILE = ["\x1b[2J\x1b[31mgone", "a\rb\x08c", "\u202eevil\u202c", "x" * 10_000, "\x00",
           "a\u2028b\u2029c", "e" + "\u0301" * 500, "<script>alert(1)</script>",
           "\U000e0041\U000f0000"]
#: Where a stranger can write what he likes.
PLACES = ("vessel", "from", "method", "note", "why", "place", "agreed")


def poisoned(poison: str) -> Trail:
    """The kept trail with the poison in the texts that people write, and its digests made right."""
    document = json.loads(KEPT.read_text("utf-8"))
    assessment = document["assessment"]
    read = assessment["record"]["read"]
    read["vessel.name"]["value"] = poison
    read["pack-1.internal_resistance"].update({"from": poison, "method": poison, "note": poison,
                                               "written": poison})
    for pack in assessment["packs"]:
        for rule in pack["resolved"]["rules"]:
            rule.update(title=poison, why=poison, recommendation=poison)
        pack.update(title=poison, digest=digest_of(pack["resolved"]))
    for each in assessment["dispensations"]:
        each.update(who=poison, why=poison)
    for derivation in assessment["derivations"].values():
        derivation["remarks"] = [poison]
    for quantity in assessment["quantities"].values():
        quantity["method"] = poison
    for spot in document["about"]["places"].values():
        spot["file"] = poison
    document["about"]["plugins"].append({"name": poison, "version": poison, "digest": poison})
    document["digest"] = digest_of(assessment)
    return Trail(document, b"")


def views(trail: Trail, poison: str) -> Iterator[str]:
    """Every view of it, as text and as JSON."""
    kept = read_trail(KEPT)
    again = replayed(trail, kept)
    yield from (replay_text(again), replay_json(again))
    aboard = workshop().aboard(kept)
    for anyway in (False, True):
        compared = comparison(trail, kept, aboard, aboard, anyway=anyway)
        yield from (comparison_text(compared, 80, colour=False), comparison_json(compared))
    history = history_of([(poison, trail), ("kept", kept)])
    yield from (history_text(history, 80, colour=False), history_json(history))
    check = checked(trail, [poison])
    yield from (check_text(check, poison, 80, colour=False), check_json(check, poison))
    remedy = Remedy("no single change suffices", (Tried(poison, None, (poison,), (poison,)),
                                                  Tried(poison, None, refused=poison)), (poison,))
    for finding in trail.findings:
        for full in (False, True):
            yield working_text(trail, finding, 80, colour=False, full=full, remedy=remedy)
        yield working_json(trail, finding, remedy)


@pytest.mark.parametrize("poison", HOSTILE, ids=range(len(HOSTILE)))
def test_every_view_is_harmless(poison: str) -> None:
    for text in views(poisoned(poison), poison):
        odd = {character for character in text if character != "\n" and (
            not character.isprintable() or unicodedata.category(character) == "Co")}
        assert odd == set(), text.splitlines()[0]
        if not text.startswith("{"):
            assert len(text) < 300_000
        else:
            json.loads(text)
