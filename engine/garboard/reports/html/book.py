"""What every part of the page is given: the trail, names, letters, outcomes, numbers for links."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.html.places import Places
from garboard.reports.names import Names
from garboard.trail import FAILED, NOT_APPLICABLE, NOT_ASSESSED, PASSED, Finding, Trail
from garboard.values.units import System

#: Outcomes, the one that a thing is marked by first.
MARKED_BY = (FAILED, NOT_ASSESSED, PASSED, NOT_APPLICABLE)


@dataclass(frozen=True)
class Book:
    """A trail with everything about it that more than one part of the page needs."""

    trail: Trail
    system: System

    @cached_property
    def names(self) -> Names:
        return Names(self.trail)

    @cached_property
    def places(self) -> Places:
        return Places(self.trail)

    @cached_property
    def number_of(self) -> Mapping[str, int]:
        """A number for every finding, by its id, in the order of the trail."""
        return {each["id"]: number for number, each in enumerate(self.trail.findings, 1)}

    @cached_property
    def counts_of(self) -> Mapping[str, Mapping[str, int]]:
        """How many findings of each outcome every item has."""
        counts: dict[str, dict[str, int]] = {}
        for finding in self.trail.findings:
            if finding["item"] is not None:
                of_item = counts.setdefault(finding["item"], dict.fromkeys(MARKED_BY, 0))
                of_item[finding["outcome"]] += 1
        return counts

    def outcome_of(self, item: str) -> str | None:
        """The outcome an item is marked by: the worst of its findings; none without findings."""
        counts = self.counts_of.get(item)
        return next((each for each in MARKED_BY if counts[each]), None) if counts else None

    def title_of(self, rule: Mapping[str, Any], pack: Mapping[str, Any]) -> str:
        """The title of a rule; of several packs the pack is named too."""
        title = harmless(rule["title"])
        return f"{title} [{harmless_name(pack['pack'])}]" if len(self.trail.packs) > 1 else title

    def severity_of(self, finding: Finding) -> str:
        return str(self.trail.rule_of(finding)["severity"])
