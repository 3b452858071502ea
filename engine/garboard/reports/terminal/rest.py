"""What passed, what does not apply, and what is odd about the wiring as recorded."""

from __future__ import annotations

from garboard.reports.counts import plural, share
from garboard.reports.figures import spare_words
from garboard.reports.groups import OfRule, by_rule
from garboard.reports.many import MOST, and_more, named
from garboard.reports.memory import memory_words
from garboard.reports.reasons import flag_words, irregularity_words, warning_words, why_not
from garboard.reports.summary import pack_name
from garboard.reports.terminal.page import MARKS, STYLES, Page
from garboard.trail import FLAGS, NOT_APPLICABLE, PACK_DOES_NOT_APPLY, PASSED, Finding


def passed(page: Page) -> None:
    """What passed, in brief, with what must be borne in mind about it."""
    groups = by_rule(page.trail, PASSED)
    if not groups:
        return
    counts = page.trail.outcome["counts"]
    of = share(counts["passed"], counts["applying"], "finding on rules that apply")
    page.sheet.heading(f"PASSED: {of}", "passed")
    for group in groups:
        items = named(lambda each: f"{page.names.item(each)}{_spare(page, each)}",
                      group.findings)
        page.sheet.bullet(MARKS[PASSED], f"{page.title_of(group)}: {items}",
                          mark_style=STYLES[PASSED])
        for flag in FLAGS:
            flagged = [each for each in group.findings if flag in each["flags"]]
            if flagged:
                said = f"{_which(page, group, flagged)}{flag_words(group, flag, flagged)}"
                page.sheet.bullet("!", said, 4)
        behind = [each for each in group.findings if memory_words(page.trail, [each])]
        if behind:
            page.sheet.bullet("!", f"{_which(page, group, behind)}"
                                   f"{memory_words(page.trail, behind)}", 4)


def _spare(page: Page, finding: Finding) -> str:
    spare = spare_words(page.trail, finding, page.system)
    return f" ({spare})" if spare else ""


def _which(page: Page, group: OfRule, flagged: list[Finding]) -> str:
    """Which findings a remark is about, unless it is all of the rule's."""
    return ("" if len(flagged) == len(group.findings)
            else f"{named(page.names.item, flagged)}: ")


def not_applicable(page: Page) -> None:
    """What does not apply, by the reason."""
    groups = by_rule(page.trail, NOT_APPLICABLE)
    if not groups:
        return
    counts = page.trail.outcome["counts"]
    of = share(counts["not_applicable"], counts["findings"], "finding in all")
    page.sheet.heading(f"DOES NOT APPLY: {of}", "faint")
    idle: dict[str, int] = {}
    for group in groups:
        for reason in dict.fromkeys(each["reason"] for each in group.findings):
            if reason == PACK_DOES_NOT_APPLY:
                name = pack_name(group.pack)
                idle[name] = idle.get(name, 0) + 1
                continue
            items = [page.names.thing(each["item"]) for each in group.findings
                     if each["reason"] == reason and each["item"] is not None]
            _line(page, f"{page.title_of(group)}: {why_not(group, reason, items)}")
    for name, rules in idle.items():
        _line(page, f"{name} does not apply to this record: none of its "
                    f"{plural(rules, 'rule')} was applied")


def _line(page: Page, text: str) -> None:
    page.sheet.bullet(MARKS[NOT_APPLICABLE], text, mark_style=STYLES[NOT_APPLICABLE])


def irregularities(page: Page) -> None:
    """What is odd about the wiring as recorded, and warnings about the record."""
    odd = page.trail.assessment["irregularities"]
    if odd:
        page.sheet.heading("THE WIRING AS RECORDED")
    _first(page, [irregularity_words(page.names, each) for each in odd[:MOST]], len(odd))
    warnings = page.trail.about.get("warnings", ())
    if warnings:
        page.sheet.heading("WARNINGS ABOUT THE RECORD AND THE PACKS")
    _first(page, [warning_words(each) for each in warnings[:MOST]], len(warnings))


def _first(page: Page, texts: list[str], count: int) -> None:
    """The first remarks of a list, and how many more there are."""
    more = [and_more(count - len(texts))] if count > len(texts) else []
    for text in (*texts, *more):
        page.sheet.bullet("!", text)
