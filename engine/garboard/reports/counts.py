"""Counts in words whose denominators are named."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from garboard.trail import (
    FAILED,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    OUTCOMES,
    PASSED,
    SEVERITIES,
    Trail,
)


def share(count: int, whole: int, of_what: str) -> str:
    """``5 of 21 findings on rules that apply``."""
    return f"{count} of {plural(whole, of_what)}"


def plural(count: int, words: str) -> str:
    """``1 finding``, ``2 findings``, ``2 findings on rules that apply``."""
    if count == 1:
        return f"1 {words}"
    noun, space, rest = words.partition(" ")
    return f"{count} {noun}s{space}{rest}"


def by_severity(counts: Mapping[str, int]) -> str:
    """``1 danger, 2 warning``: the severities that occur, worst first."""
    return ", ".join(f"{counts[each]} {each}" for each in SEVERITIES if counts[each])


def rules_looked_at(trail: Trail) -> tuple[int, int]:
    """How many rules applied to at least one item, and how many rules there are."""
    applied = {(finding["pack"], finding["rule"]) for finding in trail.findings
               if finding["outcome"] != "not applicable"}
    return len(applied), sum(len(pack["resolved"]["rules"]) for pack in trail.packs)


def statements(counts: Mapping[str, Any]) -> list[tuple[str, str]]:
    """Each outcome that occurs, and always how many failed, with how many findings of how many."""
    applying, idle = counts["applying"], counts["not_applicable"]
    lines = []
    if applying:
        failed = f"{share(counts['failed'], applying, 'finding on rules that apply')} failed"
        lines.append((FAILED, _with_severities(failed, counts["failed_by_severity"])))
    if counts["not_assessed"]:
        open_ = f"{counts['not_assessed']} of the {applying} could not be assessed"
        lines.append((NOT_ASSESSED, _with_severities(open_, counts["not_assessed_by_severity"])))
    if counts["passed"]:
        lines.append((PASSED, f"{counts['passed']} of the {applying} passed"))
    if idle or not applying:
        lines.append((NOT_APPLICABLE, f"{share(idle, counts['findings'], 'finding in all')} "
                                      f"{'does' if idle == 1 else 'do'} not apply"))
    return lines


def severity_table(trail: Trail) -> dict[str, dict[str, int]]:
    """How many findings of each severity have each outcome; worst severity first."""
    table = {severity: dict.fromkeys(OUTCOMES, 0) for severity in SEVERITIES}
    for finding in trail.findings:
        table[trail.rule_of(finding)["severity"]][finding["outcome"]] += 1
    return table


def _with_severities(line: str, counts: Mapping[str, int]) -> str:
    severities = by_severity(counts)
    return f"{line}: {severities}" if severities else line
