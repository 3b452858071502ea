"""The top of the report: vessel, survey, packs, exceptions, and what came out as a whole."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, Final

from garboard.reports.counts import plural, statements
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.terminal.page import MARKS, STYLES, Page, pack_name
from garboard.reports.words import DECISION_RULES
from garboard.trail import (
    DOES_NOT_APPLY,
    DOES_NOT_MEET,
    FAILED,
    MEETS,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    NOT_KNOWN,
    PASSED,
    value_from_data,
)
from garboard.values.units import DIMENSIONS, format_value

_OUTCOME_OF: Final = {MEETS: PASSED, DOES_NOT_MEET: FAILED, NOT_KNOWN: NOT_ASSESSED,
                      DOES_NOT_APPLY: NOT_APPLICABLE}
_MEANING: Final = {
    MEETS: "No finding failed, and everything at danger or warning could be assessed.",
    DOES_NOT_MEET: "At least one rule failed.",
    NOT_KNOWN: "No rule failed as far as can be told, but what matters could not be assessed.",
    DOES_NOT_APPLY: "The rules found nothing aboard to look at. That is not a result.",
}
_DATE_FROM: Final = {"survey": "the date of the survey", "command line": "as asked for"}


def head(page: Page) -> None:
    """Who, when, by which rules."""
    trail, sheet = page.trail, page.sheet
    sheet.title("ASSESSMENT OF A BATTERY INSTALLATION",
                f"garboard {harmless_name(trail.about['garboard'])}")
    sheet.field("Vessel", _shown(page, "vessel.name") or "name not recorded", style="strong")
    _facts(page, "", "vessel", ("kind", "length", "fuel", "waters"))
    _facts(page, "Survey", "survey", ("date", "place", "surveyor", "client", "reference",
                                      "purpose"))
    sheet.field("Assessed for", f"{trail.date}, "
                                f"{_DATE_FROM[trail.assessment['date_from']]}")
    for pack in trail.packs:
        sheet.field("Rules", f"{pack_name(pack)} ({_pack_standing(pack)}): "
                             f"{harmless(pack['title'])}")
    for rule in dict.fromkeys(pack["decision_rule"] for pack in trail.packs):
        sheet.field("Decision rule", DECISION_RULES[rule])


def _facts(page: Page, label: str, thing: str, names: Iterable[str]) -> None:
    """Those facts of a thing that are recorded, on one wrapped line."""
    parts = [f"{name.replace('_', ' ')} {shown}" for name in names
             if (shown := _shown(page, f"{thing}.{name}"))]
    if parts:
        page.sheet.field(label, "; ".join(parts))


def _shown(page: Page, path: str) -> str:
    fact = page.trail.fact(path)
    if fact is None or (isinstance(fact["value"], dict) and "unknown" in fact["value"]):
        return ""
    value = value_from_data(fact["value"], "number" if fact.get("unit") else None)
    return harmless_name(format_value(value, _dimension(fact.get("unit")), page.system))


def _dimension(unit: str | None) -> str | None:
    return next((name for name, each in DIMENSIONS.items() if each.unit == unit), None)


def _pack_standing(pack: Mapping[str, Any]) -> str:
    words = "sealed" if pack["status"] == "sealed" else "working copy, not sealed"
    if pack["applies"] is False:
        return f"{words}; does not apply to this record"
    return words if pack["applies"] else f"{words}; not known whether it applies to this record"


def exceptions(page: Page) -> None:
    """What was relaxed, retired or dispensed with, before anything else."""
    relaxed = [(pack, each) for pack in page.trail.packs for each in pack.get("relaxations", ())]
    dispensed = page.trail.assessment["dispensations"]
    if not relaxed and not dispensed:
        return
    sheet = page.sheet
    sheet.heading("EXCEPTIONS TO THE RULES", "warning")
    for pack, each in relaxed:
        sheet.bullet("!", f"{harmless(each['what'])} of {pack_name(pack)} was "
                          f"{each['change']} by {harmless_name(each['by'])}: "
                          f"{harmless(each['why'])}")
    for each in dispensed:
        counts = ("a failure still counts as failed" if each["counts_as_failed"]
                  else "a failure is counted apart")
        sheet.bullet("!", f"Dispensation {harmless_name(each['id'])} from {each['first_day']} to "
                          f"{each['last_day']}, agreed by {harmless_name(each['who'])}: "
                          f"{harmless_name(each['rule'])} for "
                          f"{page.names.thing(each['item'])}; {counts}. Reason given: "
                          f"{harmless(each['why'])}")


def result(page: Page) -> None:
    """The overall word, what it means, and the counts it rests on."""
    trail, sheet = page.trail, page.sheet
    outcome = _OUTCOME_OF[trail.word]
    whose = " THE PACK'S RULES AS RECORDED" if trail.word == DOES_NOT_MEET else ""
    sheet.heading(f"{MARKS[outcome]} RESULT: {trail.word.upper()}{whose}", STYLES[outcome])
    counts = trail.outcome["counts"]
    sheet.paragraph(" ".join([_MEANING[trail.word], *_provisos(counts, trail.word)]))
    for each, line in statements(counts):
        sheet.bullet(MARKS[each], line, indent=2, mark_style=STYLES[each])
    if len(trail.packs) > 1:
        sheet.paragraph("By pack:")
        for pack, of_pack in zip(trail.packs, trail.outcome["packs"], strict=True):
            own = _OUTCOME_OF[of_pack["word"]]
            sheet.bullet(MARKS[own], f"{pack_name(pack)}: {of_pack['word']}", indent=2,
                         mark_style=STYLES[own])


def _provisos(counts: Mapping[str, Any], word: str) -> list[str]:
    """What must be said beside the word lest it says too much."""
    said = []
    if counts["calculation_errors"]:
        said.append(f"A calculation failed for {plural(counts['calculation_errors'], 'finding')}: "
                    "a fault of the program or of a plugin, not of the boat.")
    if counts["dispensed"]:
        said.append(f"{plural(counts['dispensed'], 'failed finding')} "
                    f"{'is' if counts['dispensed'] == 1 else 'are'} set aside by a dispensation "
                    "and counted apart.")
    if word == MEETS and counts["not_assessed"]:
        said.append("At caution or notice some of it could not be assessed.")
    if word == DOES_NOT_MEET and counts["not_assessed"]:
        said.append("What could not be assessed may hold more failures.")
    return said
