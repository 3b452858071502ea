"""What could not be assessed, and exactly which facts would decide it."""

from __future__ import annotations

from garboard.reports.counts import plural, share
from garboard.reports.groups import OfRule, by_missing, by_rule
from garboard.reports.harmless import harmless
from garboard.reports.many import MOST, and_more, named
from garboard.reports.memory import memory_words
from garboard.reports.reasons import because, no_fact_words, standing, weight
from garboard.reports.terminal.failed import figure_rows, show_rows
from garboard.reports.terminal.page import MARKS, Page
from garboard.reports.to_find_out import Wanted, to_find_out
from garboard.trail import NOT_ASSESSED
from garboard.values import WITHIN_UNCERTAINTY


def unassessed(page: Page) -> None:
    """All findings that could not be assessed, by severity, rule and what is missing."""
    groups = by_rule(page.trail, NOT_ASSESSED)
    if not groups:
        return
    counts = page.trail.outcome["counts"]
    of = share(counts["not_assessed"], counts["applying"], "finding on rules that apply")
    page.sheet.heading(f"COULD NOT BE ASSESSED: {of}", "open")
    for group in groups:
        _rule(page, group)


def _rule(page: Page, group: OfRule) -> None:
    sheet = page.sheet
    sheet.blank()
    sheet.bullet(f"{MARKS[NOT_ASSESSED]} {group.severity.upper()}", page.title_of(group),
                 style="strong", mark_style=group.severity)
    missing = by_missing(group.findings)
    for causes, findings in missing[:MOST]:
        items = named(page.names.item, findings)
        sheet.bullet("•", f"{items}: {because(page.names, causes, findings)}", 2)
        if findings[0]["reason"] == WITHIN_UNCERTAINTY:
            for finding in findings[:MOST]:
                show_rows(page, figure_rows(page, finding), 4)
    if len(missing) > MOST:
        left = sum(len(findings) for _, findings in missing[MOST:])
        sheet.bullet("•", and_more(left, "that wait for other facts"), 2)
    memory = memory_words(page.trail, group.findings)
    if memory:
        sheet.bullet("!", memory, 4)
    if group.rule.get("left_to_a_person"):
        sheet.bullet("!", f"left to a person: {harmless(group.rule['left_to_a_person'])}", 4)


def find_out(page: Page) -> None:
    """The list of facts to find out, the weightiest first."""
    wanted: list[Wanted] = to_find_out(page.trail)
    facts = [each for each in wanted if each.path]
    others = [each for each in wanted if not each.path]
    sheet = page.sheet
    waiting = {finding["id"] for each in facts for finding in (*each.alone, *each.shared)}
    if facts:
        wait = "waits" if len(waiting) == 1 else "wait"
        sheet.heading(f"TO FIND OUT: {plural(len(facts), 'fact')} would decide what "
                      f"{plural(len(waiting), 'finding')} {wait} for")
    for each in facts[:MOST]:
        why = standing(each)
        sheet.row("[ ]", f"{page.names.fact(each.path)}{f' ({why})' if why else ''}",
                  f"{weight(each)} ({each.severity})")
    if len(facts) > MOST:
        sheet.bullet("[ ]", and_more(len(facts) - MOST))
    if others:
        sheet.heading("NO FACT OF THE RECORD WOULD DECIDE")
    for each in others[:MOST]:
        sheet.bullet("•", f"{no_fact_words(each)} ({plural(each.count, 'finding')})")
    if len(others) > MOST:
        sheet.bullet("•", and_more(len(others) - MOST))
