"""What things, operands and facts are called in a report, from what the trail says of them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.wording import in_words
from garboard.reports.words import subject_word, subjects_word
from garboard.trail import Finding, Operand, Trail

_ALONE: Final = {"record": "the whole record", "vessel": "the vessel", "survey": "the survey",
                 "wiring": "the wiring as a whole"}
#: Things that are called by their kind: a fuse is not called a device.
_BY_KIND: Final = ("device", "switch", "source", "load")
_QUOTED: Final = re.compile(r"(\"[^\"]*\"|'[^']*')")
_NAME: Final = re.compile(r"[A-Za-z_][\w]*(?:\.[A-Za-z_][\w]*)*")


class Names:
    """Names of the things, facts and operands of one trail."""

    def __init__(self, trail: Trail) -> None:
        self._trail = trail
        self._subjects = {finding["item"]: finding["subject"]
                          for finding in trail.findings if finding["item"] is not None}

    def thing(self, identity: str) -> str:
        """A thing with its kind: ``fuse f0``, ``battery pack-1``, ``alternator-1``."""
        if identity in _ALONE:
            return _ALONE[identity]
        shown = harmless_name(identity)
        kind = self._trail.fact(f"{identity}.kind")
        subject = self._subjects.get(identity)
        if subject in _BY_KIND and kind is not None and isinstance(kind["value"], str):
            noun = harmless_name(kind["value"])
        elif subject is not None:
            noun = subject_word(subject)
        else:
            return shown
        last = noun.rpartition(" ")[2]
        return shown if noun in shown or last in shown else f"{noun} {shown}"

    def item(self, finding: Finding) -> str:
        """The item of a finding; where it has none, all things of the subject."""
        if finding["item"] is None:
            return f"all {subjects_word(finding['subject'])}"
        return self.thing(finding["item"])

    def fact(self, path: str) -> str:
        """A recorded fact: ``fuse f2: breaks``; a list of the record: ``the list of loads``."""
        identity, _, name = path.partition(".")
        if not name:
            return f"the list of {_spaced(harmless_name(identity))}"
        return f"{self.thing(identity)}: {_fact_words(harmless_name(name))}"

    def facts_in_a_sentence(self, paths: Iterable[str], own: str) -> str:
        """Several facts: ``breaks of fuse f2, fuse f3``; ``own`` stands for a path's first point.

        ``.breaks`` with ``its`` is ``its breaks``, with ``of each`` it is ``breaks of each``.
        """
        holders: dict[str, list[str]] = {}
        for path in paths:
            identity, _, name = path.partition(".")
            words = _fact_words(harmless_name(name)) if name else self.fact(path)
            holders.setdefault(words, []).append(identity if name else "*")
        return ", ".join(self._held(words, each, own) for words, each in holders.items())

    def _held(self, words: str, holders: list[str], own: str) -> str:
        if holders == ["*"]:
            return words
        things = ", ".join(self.thing(each) for each in holders if each)
        if "" not in holders:
            return f"{words} of {things}"
        mine = f"its {words}" if own == "its" else f"{words} {own}"
        return f"{mine}, {words} of {things}" if things else mine

    def place(self, finding: Finding) -> str:
        """Where the item is, if that is recorded: ``, in aft-locker``."""
        place = self._trail.fact(f"{finding['item']}.place")
        return f", in {harmless_name(place['value'])}" if place is not None else ""


def operand_name(operand: Operand, subject: str) -> str:
    """An operand in words: ``device.breaking_capacity`` of a device is its breaking capacity."""
    return in_words(harmless(operand.text), subject, _fact_words)


def limits_in(operand: Operand) -> tuple[str, ...]:
    """The names without a point in an operand: those of limits are among them."""
    if operand.limit is not None:
        return (operand.limit,)
    bare = "".join(_QUOTED.split(operand.text)[::2])
    return tuple(dict.fromkeys(name for name in _NAME.findall(bare) if "." not in name))


def rule_words(expression: str, subject: str) -> str:
    """A whole expression with its names in words."""
    return in_words(harmless(expression), subject, _fact_words)


def _fact_words(name: str) -> str:
    """``charge.temperature.low`` as ``charge temperature (low)``."""
    head, _, end = name.rpartition(".")
    if head and end in ("low", "high"):
        return f"{_spaced(head)} ({end})"
    return _spaced(name)


def _spaced(name: str) -> str:
    return name.replace("_", " ").replace(".", " ")
