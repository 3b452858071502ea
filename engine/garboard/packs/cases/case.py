"""A case: a record, the rules it is about, and what they must find."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from garboard.packs.dispensations import Dispensation
from garboard.packs.spot import Spot

#: What the cases of a rule should show, each at least once.
KINDS: Final = ("passed", "failed", "fact missing", "not applicable", "at the limit")

#: What the proofreader warns of, and an author may explain.
WARNINGS: Final = ("rule-cannot-fail", "rule-cannot-pass", "rule-never-applies", "rule-covered",
                   "rule-contrary")


@dataclass(frozen=True, slots=True)
class Expected:
    """A finding that must come out; no item where the rule has one finding for all.

    ``dispensed`` is ``None`` where the case does not say whether a dispensation is in force.
    """

    rule: str
    item: str | None
    outcome: str
    reason: str | None
    spot: Spot
    dispensed: bool | None = None


@dataclass(frozen=True, slots=True)
class Case:
    """One case. ``base`` is the data of the record it starts from; the changes are not made yet.

    ``set`` and ``add`` are mappings by data path, ``remove`` data paths; ``quantities`` gives each
    figure as it is written, with its tolerance. ``on`` is the day it is assessed for, where that is
    not the day of the survey, ``accepted`` the word the acceptance of the pack must come to.
    """

    name: str
    rules: tuple[str, ...]
    base: Mapping[str, Any]
    expected: tuple[Expected, ...]
    quantities: Mapping[str, str]
    nothing_else: bool
    spot: Spot
    on: str | None = None
    dispensations: tuple[Dispensation, ...] = ()
    accepted: str | None = None

    @property
    def whole(self) -> bool:
        """Whether it takes a whole assessment to tell, dispensations and acceptance included."""
        return bool(self.dispensations) or self.accepted is not None or any(
            each.dispensed is not None for each in self.expected)

    @property
    def file(self) -> str:
        return self.spot.place().file or ""

    @property
    def changes(self) -> tuple[Spot, Spot, Spot]:
        """Where ``remove``, ``set`` and ``add`` stand, in the order in which they are made."""
        return self.spot.at("remove"), self.spot.at("set"), self.spot.at("add")


@dataclass(frozen=True, slots=True)
class CaseBook:
    """All cases of a pack, in the order of files and lines.

    ``not_possible`` says by rule and kind why no case can show it, ``explained`` by rule and
    warning why it is meant; both with the spot where that is written.
    """

    cases: tuple[Case, ...]
    not_possible: Mapping[tuple[str, str], tuple[str, Spot]]
    explained: Mapping[tuple[str, str], tuple[str, Spot]]

    def about(self, rule: str) -> CaseBook:
        """The cases about one rule."""
        return CaseBook(tuple(each for each in self.cases if rule in each.rules),
                        {key: why for key, why in self.not_possible.items() if key[0] == rule},
                        {key: why for key, why in self.explained.items() if key[0] == rule})
