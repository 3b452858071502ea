"""The facts that would decide what could not be assessed, and how much each decides."""

from __future__ import annotations

from dataclasses import dataclass, field

from garboard.trail import NOT_ASSESSED, SEVERITIES, Finding, Trail


@dataclass(slots=True)
class Wanted:
    """A fact, or where no fact would help a cause, with the findings that wait for it.

    ``path`` is empty for a cause that no recorded fact resolves. ``alone`` are the findings for
    which nothing else is open, ``shared`` those that wait for other facts too.
    """

    path: str
    reasons: dict[str, None] = field(default_factory=dict)
    details: dict[str, None] = field(default_factory=dict)
    alone: list[Finding] = field(default_factory=list)
    shared: list[Finding] = field(default_factory=list)
    severity: str = SEVERITIES[-1]

    @property
    def count(self) -> int:
        """How many findings wait for it."""
        return len(self.alone) + len(self.shared)


def to_find_out(trail: Trail) -> list[Wanted]:
    """Every fact that would help to decide a finding that is not assessed.

    The facts that the worst severity waits for come first, among them those that decide most, then
    by data path.
    """
    wanted: dict[tuple[str, str, str], Wanted] = {}
    for finding in trail.findings:
        if finding["outcome"] == NOT_ASSESSED:
            _add(wanted, finding, str(trail.rule_of(finding)["severity"]))
    return sorted(wanted.values(), key=_order)


def _add(wanted: dict[tuple[str, str, str], Wanted], finding: Finding, severity: str) -> None:
    keys = {}
    for cause in finding["missing"]:
        key = (cause["path"], "", "") if cause["path"] else ("", cause["reason"], cause["detail"])
        each = keys[key] = wanted.setdefault(key, Wanted(cause["path"]))
        each.reasons[cause["reason"]] = None
        if cause["detail"]:
            each.details[cause["detail"]] = None
    for each in keys.values():
        (each.alone if len(keys) == 1 else each.shared).append(finding)
        each.severity = min(each.severity, severity, key=SEVERITIES.index)


def _order(each: Wanted) -> tuple[int, int, int, str, str]:
    return (SEVERITIES.index(each.severity), -len(each.alone), -each.count, each.path,
            " ".join(each.reasons))
