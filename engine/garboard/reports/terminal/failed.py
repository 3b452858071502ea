"""What failed, the worst first: figure, limit, margin, why it matters, what to do, the source."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, Final

from garboard.reports.backing import backing_of, remarks_of
from garboard.reports.counts import share
from garboard.reports.figures import figures_of
from garboard.reports.groups import OfRule, by_rule
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.many import MOST, and_more, named
from garboard.reports.memory import memory_words
from garboard.reports.names import rule_words
from garboard.reports.sheet import cells
from garboard.reports.summary import pack_name
from garboard.reports.terminal.page import MARKS, Page
from garboard.reports.words import citation_words, standing_words, subject_word, subjects_word
from garboard.trail import FAILED, Finding, Trail

Row = tuple[str, str, str]

_INDENT: Final = 2
_SPAN: Final = 15
_OF_WHAT: Final = "finding on rules that apply"


def failed(page: Page) -> None:
    """All failed findings, by severity and rule."""
    groups = by_rule(page.trail, FAILED)
    if not groups:
        return
    counts = page.trail.outcome["counts"]
    apart = f", {counts['dispensed']} of them set aside by a dispensation"
    page.sheet.heading(f"FAILED: {share(counts['failed'], counts['applying'], _OF_WHAT)}"
                       f"{apart if counts['dispensed'] else ''}", "failed")
    for group in groups:
        _rule(page, group)


def _rule(page: Page, group: OfRule) -> None:
    sheet, rule = page.sheet, group.rule
    sheet.blank()
    sheet.bullet(f"{MARKS[FAILED]} {group.severity.upper()}", page.title_of(group),
                 style="strong", mark_style=group.severity)
    noun = subject_word(rule["about"]) if group.among == 1 else subjects_word(rule["about"])
    sheet.paragraph(f"fails for {len(group.findings)} of {group.among} {noun} it applies to",
                    _INDENT, "faint")
    alike = _alike(page, group)
    for (place, rows), findings in alike[:MOST]:
        sheet.bullet("•", f"{named(page.names.item, findings)}{place}", _INDENT, style="strong")
        show_rows(page, rows, _INDENT + 2)
    if len(alike) > MOST:
        left = sum(len(findings) for _, findings in alike[MOST:])
        sheet.bullet("•", and_more(left, "with other figures"), _INDENT, style="strong")
    if " or " in rule["must_hold"]:
        sheet.field("In full", rule_words(rule["must_hold"], rule["about"]), _INDENT)
    sheet.field("Why", harmless(rule["why"]), _INDENT)
    sheet.field("What to do", harmless(rule["recommendation"]), _INDENT)
    source = citation_words(rule["citation"])
    sheet.field("Source", source or standing_words(rule["citation"]), _INDENT)
    if source:
        sheet.field("", standing_words(rule["citation"]), _INDENT)
    for label, text in _workings(page.trail, group):
        sheet.field(label, text, _INDENT)
    memory = memory_words(page.trail, group.findings)
    if memory:
        sheet.field("Mind", memory, _INDENT)
    if rule.get("left_to_a_person"):
        sheet.field("Not covered", harmless(rule["left_to_a_person"]), _INDENT)
    sheet.field("Rule", f"{harmless_name(rule['id'])} of {pack_name(group.pack)}", _INDENT,
                style="faint")


def _alike(page: Page, group: OfRule) -> list[tuple[tuple[str, tuple[Row, ...]], list[Finding]]]:
    """The findings by place and figures, those that have the same ones together."""
    alike: dict[tuple[str, tuple[Row, ...]], list[Finding]] = {}
    for finding in group.findings:
        rows = figure_rows(page, finding)
        if finding.get("dispensation"):
            rows.append(("dispensation", harmless_name(finding["dispensation"]), ""))
        rows += [("remark", remark, "") for remark in remarks_of(page.trail, finding)]
        alike.setdefault((page.names.place(finding), tuple(rows)), []).append(finding)
    return list(alike.items())


def figure_rows(page: Page, finding: Finding) -> list[Row]:
    """The figures of a finding as label, text and style: value, limit, margin, basis."""
    rows: list[Row] = []
    for figure in figures_of(page.trail, finding, page.system):
        rows.append((figure.name, figure.value, ""))
        if figure.relation:
            rows.append((figure.relation, figure.limit, ""))
        if figure.margin is not None:
            rows.append(("margin", figure.margin.words(page.system), "strong"))
        if figure.basis:
            rows.append(("bounds rest on", figure.basis, ""))
    return rows


def show_rows(page: Page, rows: Sequence[Row], indent: int) -> None:
    """Labelled rows in two columns; the first is as wide as its labels, within a third."""
    span = 2 + max((min(cells(label), page.sheet.width // 3) for label, _, _ in rows), default=0)
    for label, text, style in rows:
        page.sheet.field(label, text, indent, max(span, _SPAN), style)


def _workings(trail: Trail, group: OfRule) -> Iterator[tuple[str, str]]:
    """By which method each figure of the requirement was found, and where each limit is from."""
    limits: dict[str, Any] = group.pack["resolved"]["limits"]
    said: dict[tuple[str, str], None] = {}
    for finding in group.findings:
        for operand in trail.operands(finding):
            if operand.part == "requirement":
                said.update(dict.fromkeys(backing_of(trail, operand, limits,
                                                    group.rule["citation"])))
    yield from said
