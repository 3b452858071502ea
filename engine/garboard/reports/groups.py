"""Findings as a reader takes them in: by severity, by rule, by what is missing."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from garboard.trail import SEVERITIES, Finding, Trail

MissingKey = tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class OfRule:
    """The findings of one rule that have one outcome; ``among`` is how many of it apply."""

    rule: Any
    pack: Any
    findings: tuple[Finding, ...]
    among: int

    @property
    def severity(self) -> str:
        return str(self.rule["severity"])


def by_rule(trail: Trail, outcome: str) -> list[OfRule]:
    """The findings of an outcome by rule: the worst severity first, then as the trail has them."""
    found: dict[tuple[str, str], list[Finding]] = {}
    applying: dict[tuple[str, str], int] = {}
    for finding in trail.findings:
        key = (finding["pack"], finding["rule"])
        applying[key] = applying.get(key, 0) + (finding["outcome"] != "not applicable")
        if finding["outcome"] == outcome:
            found.setdefault(key, []).append(finding)
    groups = [OfRule(trail.rule_of(each[0]), trail.pack_of(each[0]), tuple(each), applying[key])
              for key, each in found.items()]
    return sorted(groups, key=lambda group: SEVERITIES.index(group.severity))


def by_missing(findings: Iterable[Finding]) -> list[tuple[MissingKey, tuple[Finding, ...]]]:
    """Findings that wait for the same things, each item's own facts counting as the same.

    A key holds (reason, path, detail) of every cause; the path of an item's own fact starts with a
    point (``.breaks``).
    """
    groups: dict[MissingKey, list[Finding]] = {}
    for finding in findings:
        own = f"{finding['item']}."
        key = tuple((cause["reason"], "." + cause["path"].removeprefix(own)
                     if cause["path"].startswith(own) else cause["path"], cause["detail"])
                    for cause in finding["missing"])
        groups.setdefault(key, []).append(finding)
    return [(key, tuple(group)) for key, group in groups.items()]
