"""Hostile text in every text of a record and a pack shows as harmless text in every output."""

from __future__ import annotations

import json
import re
import unicodedata
from typing import Any

import pytest

from garboard.reports import json_report, terminal_report
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.sheet import cells
from garboard.trail import Trail, make_trail
from trail.launch import launch_parts

HOSTILE = [
    "\x1b[2J\x1b[31mgone", "\x1b]0;title\x07", "a\rb\x08c", "\u202eevil\u202c", "\u2066x\u2069",
    "x" * 10_000, "漢" * 300, "[bold]rich[/bold] [link=x]y[/link]", "{{ 7 * 7 }}{% raw %}",
    "<script>alert(1)</script>", "=1+1", "\x00", "\x9b31m", "a\u2028b\u2029c", "\ufeff\u200b\u00ad",
    "e" + "\u0301" * 500, "👩‍👩‍👧 🏴", "line\nbreak\ttab", "\\x1b[31m", "%s %d {0}",
    "'; drop table findings; --", "\U000e0041\U000f0000",
]
_OWN_COLOURS = re.compile(r"\x1b\[(?:1|2|32|33|1;3[134])?m|\x1b\[0m")
#: Texts with a meaning of their own, which a trail's format keeps closed.
_CLOSED = {
    "about", "basis", "change", "covers", "date", "date_from", "decision_rule", "digest",
    "dimension", "flags", "format", "id", "item", "kind", "limit", "must_hold", "of", "outcome",
    "pack", "part", "path", "reason", "relation", "rule", "severity", "status", "system", "text",
    "unit"}


def _poisoned(data: Any, poison: str) -> Any:
    """The data with the poison put into every text that is free."""
    if isinstance(data, dict):
        return {key: each if key in _CLOSED else _poisoned(each, poison)
                for key, each in data.items()}
    if isinstance(data, list):
        return [_poisoned(each, poison) for each in data]
    return f"{poison}{data}" if isinstance(data, str) else data


def _renamed(parts: dict[str, Any], poison: str) -> None:
    """The poison in ids and paths too, the same everywhere."""
    for finding in parts["findings"]:
        if finding["item"] is not None:
            finding["item"] += poison
        for cause in finding["missing"]:
            cause["path"] = cause["path"].replace(".", f"{poison}.", 1)


def _trail(poison: str) -> Trail:
    parts = launch_parts()
    _renamed(parts, poison)
    for name in ("packs", "findings", "derivations", "quantities", "irregularities", "about"):
        parts[name] = _poisoned(parts[name], poison)
    parts["record"]["read"] = {
        path: fact if path == "survey.date" else {**fact, "value": _poisoned(fact["value"], poison)}
        for path, fact in parts["record"]["read"].items()}
    parts["packs"][0]["relaxations"] = [{"what": poison, "change": "relaxed", "by": poison,
                                         "why": poison}]
    parts["about"]["warnings"] = [{"title": poison, "file": poison, "line": 1, "hint": poison}]
    return make_trail(**parts)


@pytest.mark.parametrize("poison", HOSTILE,
                         ids=range(len(HOSTILE)))
def test_hostile_text_is_harmless(poison: str) -> None:
    trail = _trail(poison)
    for width, colour in ((60, False), (100, True)):
        text = terminal_report(trail, width, colour)
        bare = _OWN_COLOURS.sub("", text)
        odd = {character for character in bare
               if character != "\n" and not character.isprintable()}
        assert odd == set()
        assert max(cells(line) for line in bare.splitlines()) <= width
        assert len(text) < 300_000
    summary = json_report(trail)
    assert summary.isascii()
    assert {character for character in summary if ord(character) < 0x20} == {"\n"}
    assert json.loads(summary)["packs"][0]["title"].startswith(
        unicodedata.normalize("NFC", poison)[:5])


@pytest.mark.parametrize(("text", "shown"), [
    ("plain Ω mm² °C µ", "plain Ω mm² °C µ"), ("", ""), ("  a  b\n\tc ", "a b c"),
    ("\x1b[31m", "\\x1b[31m"), ("\x00", "\\x00"), ("\x9b", "\\x9b"), ("\u202e", "\\u202e"),
    ("\u200b", "\\u200b"), ("\U000e0041", "\\U000e0041"), ("\ue000", "\\ue000"),
    ("[bold]", "[bold]"), ("e\u0301\u0301\u0301\u0301", "é\u0301\u0301"), ("a\u2028b", "a b"),
    ("\u00a0x", "x"), ("\ud800", "\\ud800"),
])
def test_what_harmless_makes_of_it(text: str, shown: str) -> None:
    assert harmless(text) == shown


def test_long_texts_are_cut_and_say_so() -> None:
    assert harmless_name("x" * 10_000) == "x" * 160 + " ... (10,000 characters)"
    assert harmless("y" * 2_000) == "y" * 2_000
    assert harmless("y" * 2_001).endswith("(2,001 characters)")
