"""Whether an installation is accepted, referred or declined by a pack that says on what.

Everything is computed from the findings of the pack, here and nowhere else.

| what there is (the first line that fits) | word |
|---|---|
| a condition to decline holds | declined |
| a condition to refer holds | referred |
| a rule that must have passed has not | referred |
| a failure, or something open at danger or warning, that no condition speaks of | referred |
| otherwise | accepted |

A rule has passed when it passed for one item at least, and for no item failed, dispensed with or
not, or could not be assessed. Each word comes with all lines of its kind that fit, and with the
findings each rests on; that of ``accepted`` are the passed ones of the rules that must have passed.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from garboard.trail.findings import FAILED, NOT_APPLICABLE, NOT_ASSESSED, PASSED, Finding

ACCEPTED: Final = "accepted"
REFERRED: Final = "referred"
DECLINED: Final = "declined"
ACCEPTANCE_WORDS: Final = (ACCEPTED, REFERRED, DECLINED)
DISPENSED: Final = "dispensed"

_NOT_PASSED: Final = "A rule that must have passed has not"
_UNSPOKEN: Final = "Something failed or is open that no condition speaks of"
_ALL_PASSED: Final = "The rules that must have passed have"
_SERIOUS: Final = ("danger", "warning")
Data = Mapping[str, Any]


def acceptance_of(wanted: Data, findings: Sequence[Finding], severity_of: Mapping[str, str],
                  set_aside: frozenset[str]) -> dict[str, Any]:
    """The word, and what decided it, for the findings of one pack.

    ``wanted`` is the acceptance of the resolved pack, ``severity_of`` goes by rule, ``set_aside``
    holds the ids of dispensations under which a failure does not count.
    """
    looked = _Looked(findings, severity_of, set_aside)
    for word, key in ((DECLINED, "declined_when"), (REFERRED, "referred_when")):
        decided = list(looked.holding(wanted[key]))
        if word == REFERRED:
            decided += [*looked.not_passed(wanted["must_have_passed"]),
                        *looked.unspoken((*wanted["declined_when"], *wanted["referred_when"]))]
        if decided:
            return {"word": word, "decided_by": decided}
    passed = [each["id"] for each in findings
              if each["rule"] in wanted["must_have_passed"] and each["outcome"] == PASSED]
    return {"word": ACCEPTED, "decided_by": [_decision(_ALL_PASSED, passed)]}


class _Looked:
    """The findings of a pack, as conditions look at them."""

    def __init__(self, findings: Sequence[Finding], severity_of: Mapping[str, str],
                 set_aside: frozenset[str]) -> None:
        self._findings, self._severity_of, self._set_aside = findings, severity_of, set_aside

    def holding(self, conditions: Sequence[Data]) -> Iterator[dict[str, Any]]:
        for each in conditions:
            counted = [finding["id"] for finding in self._findings if self._is(finding, each)]
            if len(counted) >= each["at_least"]:
                yield _decision(each["says"], counted)

    def not_passed(self, rules: Sequence[str]) -> Iterator[dict[str, Any]]:
        for rule in rules:
            own = [each for each in self._findings if each["rule"] == rule]
            against = [each["id"] for each in own if each["outcome"] in (FAILED, NOT_ASSESSED)]
            if against or not any(each["outcome"] == PASSED for each in own):
                idle = [each["id"] for each in own if each["outcome"] == NOT_APPLICABLE]
                yield _decision(f"{_NOT_PASSED}: {rule}", against or idle)

    def unspoken(self, conditions: Sequence[Data]) -> Iterator[dict[str, Any]]:
        silent = [each["id"] for each in self._findings
                  if (self._outcome(each) == FAILED
                      or (each["outcome"] == NOT_ASSESSED
                          and self._severity_of[each["rule"]] in _SERIOUS))
                  and not any(self._is(each, condition) for condition in conditions)]
        if silent:
            yield _decision(_UNSPOKEN, silent)

    def _is(self, finding: Finding, condition: Data) -> bool:
        return (self._outcome(finding) == condition["outcome"]
                and (not condition["severity"]
                     or self._severity_of[finding["rule"]] in condition["severity"])
                and (not condition["rules"] or finding["rule"] in condition["rules"]))

    def _outcome(self, finding: Finding) -> str:
        if finding["outcome"] == FAILED and finding.get("dispensation") in self._set_aside:
            return DISPENSED
        return str(finding["outcome"])


def _decision(says: str, findings: list[str]) -> dict[str, Any]:
    return {"says": says, "findings": findings}
