"""What passed, what does not apply, and what is odd about the wiring as recorded."""

from __future__ import annotations

from collections.abc import Iterable

from garboard.reports.counts import plural, share
from garboard.reports.figures import figures_of
from garboard.reports.groups import OfRule, by_rule
from garboard.reports.harmless import harmless
from garboard.reports.terminal.page import MARKS, STYLES, Page, pack_name
from garboard.reports.words import FLAGS, REASONS, subjects_word
from garboard.trail import (
    COVERS_PART,
    NONE_ABOARD,
    NOT_APPLICABLE,
    ON_ASSUMPTION,
    PACK_DOES_NOT_APPLY,
    PASSED,
    Finding,
)


def passed(page: Page) -> None:
    """What passed, in brief, with what must be borne in mind about it."""
    groups = by_rule(page.trail, PASSED)
    if not groups:
        return
    counts = page.trail.outcome["counts"]
    of = share(counts["passed"], counts["applying"], "finding on rules that apply")
    page.sheet.heading(f"PASSED: {of}", "passed")
    for group in groups:
        items = ", ".join(f"{page.names.item(each)}{_spare(page, each)}"
                          for each in group.findings)
        page.sheet.bullet(MARKS[PASSED], f"{page.title_of(group)}: {items}",
                          mark_style=STYLES[PASSED])
        for flag in FLAGS:
            flagged = [each for each in group.findings if flag in each["flags"]]
            if flagged:
                page.sheet.bullet("!", _flag_words(page, group, flag, flagged), 4)


def _spare(page: Page, finding: Finding) -> str:
    """What a finding has to spare, where it rests on one comparison of figures."""
    margins = [figure.margin for figure in figures_of(page.trail, finding, page.system)
               if figure.margin is not None]
    return f" ({margins[0].words(page.system)})" if len(margins) == 1 else ""


def _flag_words(page: Page, group: OfRule, flag: str, flagged: list[Finding]) -> str:
    which = ("" if len(flagged) == len(group.findings)
             else f"{', '.join(map(page.names.item, flagged))}: ")
    text = f"{which}{FLAGS[flag]}"
    if flag == COVERS_PART and group.rule.get("left_to_a_person"):
        text += f"; left to a person: {harmless(group.rule['left_to_a_person'])}"
    if flag == ON_ASSUMPTION:
        assumed = dict.fromkeys(_assumed(flagged))
        text += f": {', '.join(assumed)}" if assumed else ""
    return text


def _assumed(findings: Iterable[Finding]) -> Iterable[str]:
    for finding in findings:
        for value in finding["operands"]:
            if isinstance(value, dict) and "assumption" in value.get("basis", ()):
                yield from (harmless(cause["detail"]) for cause in value["causes"]
                            if cause["detail"])


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
            _line(page, f"{page.title_of(group)}: {_why_not(group, reason, items)}")
    for name, rules in idle.items():
        _line(page, f"{name} does not apply to this record: none of its "
                    f"{plural(rules, 'rule')} was applied")


def _line(page: Page, text: str) -> None:
    page.sheet.bullet(MARKS[NOT_APPLICABLE], text, mark_style=STYLES[NOT_APPLICABLE])


def _why_not(group: OfRule, reason: str, items: list[str]) -> str:
    if reason == NONE_ABOARD:
        return f"no {subjects_word(group.rule['about'])} aboard"
    return f"{REASONS[reason]} {', '.join(items)}".strip()


def irregularities(page: Page) -> None:
    """What is odd about the wiring as recorded, and warnings about the record."""
    odd = page.trail.assessment["irregularities"]
    if odd:
        page.sheet.heading("THE WIRING AS RECORDED")
    for each in odd:
        items = ", ".join(map(page.names.thing, each["items"]))
        text = harmless(each["text"])
        page.sheet.bullet("!", text if not items or all(
            item in each["text"] for item in each["items"]) else f"{text} ({items})")
    warnings = page.trail.about.get("warnings", ())
    if warnings:
        page.sheet.heading("WARNINGS ABOUT THE RECORD AND THE PACKS")
    for each in warnings:
        page.sheet.bullet("!", _warning_words(each))


def _warning_words(warning: dict[str, object]) -> str:
    place = ":".join(harmless(warning[key]) for key in ("file", "line") if warning.get(key))
    said = [harmless(warning.get("title") or warning.get("code") or "warning")]
    said += [harmless(warning[key]) for key in ("path", "found", "hint") if warning.get(key)]
    return f"{'; '.join(said)} ({place})" if place else "; ".join(said)
