"""What failed, the worst first: figure, limit, margin, why it matters, what to do, the source."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from garboard.reports.counts import share
from garboard.reports.figures import figures_of
from garboard.reports.groups import OfRule, by_rule
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.names import limits_in
from garboard.reports.sheet import cells
from garboard.reports.terminal.page import MARKS, Page, pack_name
from garboard.reports.words import (
    citation_words,
    method_source_words,
    standing_words,
    subject_word,
    subjects_word,
)
from garboard.trail import FAILED, Finding, Operand, Trail

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
    for finding in group.findings:
        _item(page, finding)
    sheet.field("Why", harmless(rule["why"]), _INDENT)
    sheet.field("What to do", harmless(rule["recommendation"]), _INDENT)
    source = citation_words(rule["citation"])
    sheet.field("Source", source or standing_words(rule["citation"]), _INDENT)
    if source:
        sheet.field("", standing_words(rule["citation"]), _INDENT)
    for label, text in _workings(page.trail, group):
        sheet.field(label, text, _INDENT)
    if rule.get("left_to_a_person"):
        sheet.field("Not covered", harmless(rule["left_to_a_person"]), _INDENT)
    sheet.field("Rule", f"{harmless_name(rule['id'])} of {pack_name(group.pack)}", _INDENT,
                style="faint")


def _item(page: Page, finding: Finding) -> None:
    page.sheet.bullet("•", f"{page.names.item(finding)}{page.names.place(finding)}", _INDENT,
                      style="strong")
    rows = figure_rows(page, finding)
    if finding.get("dispensation"):
        rows.append(("dispensation", harmless_name(finding["dispensation"]), ""))
    rows += [("remark", remark, "") for remark in dict.fromkeys(_remarks(page.trail, finding))]
    show_rows(page, rows, _INDENT + 2)


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


def show_rows(page: Page, rows: list[Row], indent: int) -> None:
    """Labelled rows in two columns; the first is as wide as its labels, within a third."""
    span = 2 + max((min(cells(label), page.sheet.width // 3) for label, _, _ in rows), default=0)
    for label, text, style in rows:
        page.sheet.field(label, text, indent, max(span, _SPAN), style)


def _remarks(trail: Trail, finding: Finding) -> Iterator[str]:
    for key in (key for keys in finding["of"] for key in keys):
        derivation = trail.derivation(key)
        if derivation is not None:
            yield from map(harmless, derivation["remarks"])


def _workings(trail: Trail, group: OfRule) -> Iterator[tuple[str, str]]:
    """By which method each figure of the requirement was found, and where each limit is from."""
    limits: dict[str, Any] = group.pack["resolved"]["limits"]
    said: dict[tuple[str, str], None] = {}
    for finding in group.findings:
        for operand in trail.operands(finding):
            if operand.part == "requirement":
                said.update(dict.fromkeys(_of_operand(trail, operand, limits)))
    yield from said


def _of_operand(trail: Trail, operand: Operand, limits: dict[str, Any],
                ) -> Iterator[tuple[str, str]]:
    for name in limits_in(operand):
        if name in limits:
            yield "Limit", _limit_source(name, limits[name])
    for key in operand.of:
        method = _method(trail, key)
        if method:
            yield "Worked out", method


def _limit_source(name: str, limit: Any) -> str:
    citation = limit["citation"]
    source = citation_words(citation)
    written = limit.get("written")
    value = f" {harmless(written)}" if isinstance(written, str) else ""
    return (f"{name.replace('_', ' ')}{value}: {f'{source}; ' if source else ''}"
            f"{standing_words(citation)}")


def _method(trail: Trail, key: str) -> str:
    derivation = trail.derivation(key)
    quantity = trail.assessment["quantities"].get(derivation["quantity"]) if derivation else None
    if quantity is None:
        return ""
    name = harmless_name(key.rpartition(".")[2]).replace("_", " ")
    return (f"{name}: {harmless(quantity['method'])} "
            f"({method_source_words(quantity['citation'])})")
