"""The top of the report: vessel, survey, packs, exceptions, and what came out as a whole."""

from __future__ import annotations

from collections.abc import Iterable

from garboard.reports.counts import statements
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.summary import (
    OUTCOME_OF_WORD,
    acceptances_of,
    date_words,
    exceptions_of,
    fact_shown,
    pack_name,
    pack_standing,
    result_meaning,
    result_words,
)
from garboard.reports.terminal.page import MARKS, STYLES, Page
from garboard.reports.words import DECISION_RULES


def head(page: Page) -> None:
    """Who, when, by which rules."""
    trail, sheet = page.trail, page.sheet
    sheet.title("ASSESSMENT OF A BATTERY INSTALLATION",
                f"garboard {harmless_name(trail.about['garboard'])}")
    name = fact_shown(trail, "vessel.name", page.system)
    sheet.field("Vessel", name or "name not recorded", style="strong")
    _facts(page, "", "vessel", ("kind", "length", "fuel", "waters"))
    _facts(page, "Survey", "survey", ("date", "place", "surveyor", "client", "reference",
                                      "purpose"))
    sheet.field("Assessed for", date_words(trail))
    for pack in trail.packs:
        sheet.field("Rules", f"{pack_name(pack)} ({pack_standing(pack)}): "
                             f"{harmless(pack['title'])}")
    for rule in dict.fromkeys(pack["decision_rule"] for pack in trail.packs):
        sheet.field("Decision rule", DECISION_RULES[rule])


def _facts(page: Page, label: str, thing: str, names: Iterable[str]) -> None:
    """Those facts of a thing that are recorded, on one wrapped line."""
    parts = [f"{name.replace('_', ' ')} {shown}" for name in names
             if (shown := fact_shown(page.trail, f"{thing}.{name}", page.system))]
    if parts:
        page.sheet.field(label, "; ".join(parts))


def exceptions(page: Page) -> None:
    """What was relaxed, retired or dispensed with, before anything else."""
    said = list(exceptions_of(page.trail, page.names))
    if said:
        page.sheet.heading("EXCEPTIONS TO THE RULES", "warning")
    for each in said:
        page.sheet.bullet("!", each)


def result(page: Page) -> None:
    """The overall word, what it means, and the counts it rests on."""
    trail, sheet = page.trail, page.sheet
    outcome = OUTCOME_OF_WORD[trail.word]
    sheet.heading(f"{MARKS[outcome]} RESULT: {result_words(trail).upper()}", STYLES[outcome])
    sheet.paragraph(result_meaning(trail))
    for each, line in statements(trail.outcome["counts"]):
        sheet.bullet(MARKS[each], line, indent=2, mark_style=STYLES[each])
    for words, reasons in acceptances_of(trail):
        sheet.paragraph(words, style="strong")
        for reason in reasons:
            sheet.bullet("•", reason, 2)
    if len(trail.packs) > 1:
        sheet.paragraph("By pack:")
        for pack, of_pack in zip(trail.packs, trail.outcome["packs"], strict=True):
            own = OUTCOME_OF_WORD[of_pack["word"]]
            sheet.bullet(MARKS[own], f"{pack_name(pack)}: {of_pack['word']}", indent=2,
                         mark_style=STYLES[own])
