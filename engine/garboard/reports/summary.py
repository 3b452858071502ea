"""What stands at the top of every report, in words: facts, packs, exceptions, the result."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Final

from garboard.reports.counts import plural
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.names import Names
from garboard.trail import (
    DOES_NOT_APPLY,
    DOES_NOT_MEET,
    FAILED,
    MEETS,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    NOT_KNOWN,
    PASSED,
    Trail,
    value_from_data,
)
from garboard.values.units import DIMENSIONS, System, format_value

#: The outcome of a finding that an overall word is shown like.
OUTCOME_OF_WORD: Final = {MEETS: PASSED, DOES_NOT_MEET: FAILED, NOT_KNOWN: NOT_ASSESSED,
                          DOES_NOT_APPLY: NOT_APPLICABLE}
MEANING: Final = {
    MEETS: "No finding failed, and everything at danger or warning could be assessed.",
    DOES_NOT_MEET: "At least one rule failed.",
    NOT_KNOWN: "No rule failed as far as can be told, but what matters could not be assessed.",
    DOES_NOT_APPLY: "The rules found nothing aboard to look at. That is not a result.",
}
_MOST_SHOWN: Final = 6
_DATE_FROM: Final = {"survey": "the date of the survey", "command line": "as asked for"}
#: The first dimension of each unit; how a figure is shown goes by it.
_DIMENSION_OF: Final = {each.unit: name for name, each in reversed(list(DIMENSIONS.items()))}


def date_words(trail: Trail) -> str:
    """The day the assessment is made for, and where that day is from."""
    return f"{trail.date}, {_DATE_FROM[trail.assessment['date_from']]}"


def fact_shown(trail: Trail, path: str, system: System) -> str:
    """The value of a recorded fact for people; empty where it is not recorded or not known."""
    fact = trail.fact(path)
    if fact is None or (isinstance(fact["value"], dict) and "unknown" in fact["value"]):
        return ""
    return harmless_name(fact_value(fact, system))


def fact_value(fact: Mapping[str, Any], system: System) -> str:
    """The value of a fact as read, in canonical units, for people."""
    value = value_from_data(fact["value"], "number" if fact.get("unit") else None)
    return format_value(value, _DIMENSION_OF.get(fact.get("unit", "")), system)


def pack_name(pack: Mapping[str, Any]) -> str:
    """A pack with its version."""
    return f"{harmless_name(pack['pack'])} {harmless_name(pack['version'])}"


def pack_standing(pack: Mapping[str, Any]) -> str:
    """Whether a pack came sealed, and whether it applies."""
    words = "sealed" if pack["status"] == "sealed" else "working copy, not sealed"
    if pack.get("signature") is not None:
        words += (f" and signed, as stated by {harmless(pack['signature']['signer'])} on "
                  f"{harmless(pack['signature']['signed_on'])}")
    if pack["applies"] is False:
        return f"{words}; does not apply to this record"
    return words if pack["applies"] else f"{words}; not known whether it applies to this record"


def exceptions_of(trail: Trail, names: Names) -> Iterator[str]:
    """What was relaxed, retired or dispensed with: every report says it before anything else."""
    for pack in trail.packs:
        for each in pack.get("relaxations", ()):
            yield _relaxation_words(pack, each)
    for each in trail.assessment["dispensations"]:
        counts = ("a failure still counts as failed" if each["counts_as_failed"]
                  else "a failure is counted apart")
        yield (f"Dispensation {harmless_name(each['id'])} from {each['first_day']} to "
               f"{each['last_day']}, agreed by {harmless_name(each['who'])}: "
               f"{harmless_name(each['rule'])} for {names.thing(each['item'])}; {counts}. "
               f"Reason given: {harmless(each['why'])}")


def _relaxation_words(pack: Mapping[str, Any], each: Mapping[str, Any]) -> str:
    """What was relaxed or retired, from what to what, by which layer and whom, and why."""
    by, whole = harmless_name(each["by"]), pack_name(pack)
    of = "" if by == whole else f" of {whole}"
    span = ""
    if each.get("before") and each.get("after"):
        span = f" from {harmless_name(each['before'])} to {harmless_name(each['after'])}"
    who = f" ({harmless_name(each['author'])})" if each.get("author") else ""
    return (f"{harmless(each['what'])}{of} was {each['change']}{span} by {by}{who}: "
            f"{harmless(each['why'])}")


def result_words(trail: Trail) -> str:
    """The overall word as a title."""
    whose = " the pack's rules as recorded" if trail.word == DOES_NOT_MEET else ""
    return f"{trail.word}{whose}"


def result_meaning(trail: Trail) -> str:
    """What the overall word means, with what must be said beside it lest it says too much."""
    return " ".join([MEANING[trail.word], *_provisos(trail.outcome["counts"], trail.word)])


def acceptances_of(trail: Trail) -> Iterator[tuple[str, list[str]]]:
    """For each pack that says on what it accepts: its word, and what decided that."""
    for pack, outcome in zip(trail.packs, trail.outcome["packs"], strict=True):
        accepted = outcome.get("acceptance")
        if accepted:
            yield (f"By the terms of {pack_name(pack)} the installation is {accepted['word']}.",
                   [_decision_words(each) for each in accepted["decided_by"]])


def _decision_words(decision: Mapping[str, Any]) -> str:
    """A condition with the findings that decided it, as far as they fit on a few lines."""
    findings = [harmless_name(each.partition("/")[2]) for each in decision["findings"]]
    shown = ", ".join(findings[:_MOST_SHOWN])
    more = len(findings) - _MOST_SHOWN
    rest = f" and {plural(more, 'other')}" if more > 0 else ""
    return f"{harmless(decision['says'])}{': ' if shown else ''}{shown}{rest}"


def _provisos(counts: Mapping[str, Any], word: str) -> Iterator[str]:
    if counts["calculation_errors"]:
        yield (f"A calculation failed for {plural(counts['calculation_errors'], 'finding')}: "
               "a fault of the program or of a plugin, not of the boat.")
    if counts["dispensed"]:
        yield (f"{plural(counts['dispensed'], 'failed finding')} "
               f"{'is' if counts['dispensed'] == 1 else 'are'} set aside by a dispensation "
               "and counted apart.")
    if word == MEETS and counts["not_assessed"]:
        yield "At caution or notice some of it could not be assessed."
    if word == DOES_NOT_MEET and counts["not_assessed"]:
        yield "What could not be assessed may hold more failures."
