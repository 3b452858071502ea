"""What could not be assessed, and exactly which facts would decide it."""

from __future__ import annotations

from garboard.reports.counts import plural, share
from garboard.reports.groups import MissingKey, OfRule, by_missing, by_rule
from garboard.reports.harmless import harmless
from garboard.reports.terminal.failed import figure_rows, show_rows
from garboard.reports.terminal.page import MARKS, Page
from garboard.reports.to_find_out import Wanted, to_find_out
from garboard.reports.words import REASONS, TO_DO
from garboard.trail import NOT_ASSESSED, Finding
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
    _find_out(page, to_find_out(page.trail))


def _rule(page: Page, group: OfRule) -> None:
    sheet = page.sheet
    sheet.blank()
    sheet.bullet(f"{MARKS[NOT_ASSESSED]} {group.severity.upper()}", page.title_of(group),
                 style="strong", mark_style=group.severity)
    for missing, findings in by_missing(group.findings):
        items = ", ".join(map(page.names.item, findings))
        reason = str(findings[0]["reason"])
        sheet.bullet("•", f"{items}: {_because(page, reason, missing, findings)}", 2)
        if reason == WITHIN_UNCERTAINTY:
            for finding in findings:
                show_rows(page, figure_rows(page, finding), 4)
    if group.rule.get("left_to_a_person"):
        sheet.bullet("!", f"left to a person: {harmless(group.rule['left_to_a_person'])}", 4)


def _because(page: Page, reason: str, missing: MissingKey, findings: tuple[Finding, ...]) -> str:
    """The reason, and under it what is missing, where one reason holds for all of it."""
    facts: dict[tuple[str, str], list[str]] = {}
    for why, path, detail in missing:
        facts.setdefault((why, detail), []).append(path)
    own = "its" if len(findings) == 1 else "of each"
    parts: dict[str, list[str]] = {}
    for (why, detail), paths in facts.items():
        named = page.names.facts_in_a_sentence(filter(None, paths), own)
        said = f"{named} ({harmless(detail)})" if named and detail else named or harmless(detail)
        parts.setdefault(why, []).append(said)
    if not parts:
        return REASONS[reason]
    return "; ".join(f"{REASONS[why]}: {', '.join(filter(None, texts))}" if any(texts)
                     else REASONS[why] for why, texts in parts.items())


def _find_out(page: Page, wanted: list[Wanted]) -> None:
    """The list of facts to find out, the weightiest first."""
    facts = [each for each in wanted if each.path]
    others = [each for each in wanted if not each.path]
    sheet = page.sheet
    waiting = {finding["id"] for each in facts for finding in (*each.alone, *each.shared)}
    if facts:
        wait = "waits" if len(waiting) == 1 else "wait"
        sheet.heading(f"TO FIND OUT: {plural(len(facts), 'fact')} would decide what "
                      f"{plural(len(waiting), 'finding')} {wait} for")
    for each in facts:
        sheet.row("[ ]", f"{page.names.fact(each.path)}{_standing(each)}", _weight(each))
    if others:
        sheet.heading("NO FACT OF THE RECORD WOULD DECIDE")
    for each in others:
        reason = next(iter(each.reasons))
        detail = f": {harmless(next(iter(each.details)))}" if each.details else ""
        sheet.bullet("•", f"{REASONS[reason]}{detail} ({plural(each.count, 'finding')})")


def _standing(each: Wanted) -> str:
    """Why the fact is open, if it is not simply left out of the record."""
    words = [TO_DO[reason] for reason in each.reasons if reason != "not recorded"]
    said = "; ".join([*words, *map(harmless, each.details)])
    return f" ({said})" if said else ""


def _weight(each: Wanted) -> str:
    alone, shared = len(each.alone), len(each.shared)
    if not shared:
        return f"decides {plural(alone, 'finding')} ({each.severity})"
    if not alone:
        return f"with others decides {plural(shared, 'finding')} ({each.severity})"
    return f"decides {plural(alone, 'finding')}, with others {shared} more ({each.severity})"
