"""A trail as Markdown: result, cautions, work, findings, figures. Text of others stays text."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Any, Final

from garboard.reports.names import Names
from garboard.reports.reasons import no_fact_words, standing, weight
from garboard.reports.rows import figure_rows, finding_rows
from garboard.reports.scope import scope_of
from garboard.reports.to_find_out import to_find_out
from garboard.reports.work import work_of
from garboard.trail import OUTCOMES, Trail
from garboard.values.units import System

#: What has a meaning anywhere in Markdown, in the HTML that many renderers let through, or in math.
_MARKS: Final = frozenset("\\`*_{}[]|~^$@")
_ENTITY: Final = {"<": "&lt;", ">": "&gt;", "&": "&amp;"}
#: What has a meaning at the start of a text, after figures there, or as a part of an address.
_FIRST: Final = frozenset("#+-=")
_AFTER_FIGURES: Final = frozenset(".)")


def markdown_report(trail: Trail, us_units: bool = False) -> str:
    """The Markdown of a trail, with tables as most renderers know them."""
    system: Any = "us" if us_units else "metric"
    return "\n".join([*_head(trail, system), *_work(trail), *_findings(trail, system),
                      *_find_out(trail), *_figures(trail, system)]) + "\n"


def _head(trail: Trail, system: System) -> Iterator[str]:
    yield "# Assessment of a battery installation"
    last = ""
    for label, text in scope_of(trail, system):
        if label != last:
            yield ""
            yield f"**{label.capitalize()}**"
            yield ""
            last = label
        yield f"- {plain(text)}"


def _work(trail: Trail) -> Iterator[str]:
    work, names = work_of(trail), Names(trail)
    yield from ["", "## List of work"]
    if not work.jobs:
        yield from ["", "No rule failed."]
    if work.ending:
        yield from ["", f"All of it {plain(work.ending)}"]
    for severity, words, jobs in work.by_severity():
        yield from ["", f"### {severity}: {words}", ""]
        for job in jobs:
            items = plain(", ".join(map(names.item, job.findings)))
            apart = f" Set aside for now by {plain(', '.join(job.dispensed))}." if (
                job.dispensed) else ""
            yield f"{job.number}. **{plain(job.what)}** {items}: {plain(job.title)}.{apart}"


def _findings(trail: Trail, system: System) -> Iterator[str]:
    rows = list(finding_rows(trail, system))
    for outcome in OUTCOMES[1:3] + OUTCOMES[:1] + OUTCOMES[3:]:
        some = [row for row in rows if row.outcome == outcome]
        yield from ["", f"## {outcome.capitalize()}: {len(some)} of {len(rows)} findings in all"]
        if some:
            yield from _table(
                ("Severity", "Rule", "Item", "Place", "Figures", "Reason", "Source"),
                ((row.severity, row.title, row.item, row.place, row.found,
                  "; ".join(filter(None, [row.because, row.remark, row.dispensation and
                                          f"set aside by dispensation {row.dispensation}"])),
                  row.source) for row in some))


def _find_out(trail: Trail) -> Iterator[str]:
    wanted, names = to_find_out(trail), Names(trail)
    if wanted:
        yield from ["", "## What to find out next", ""]
    for each in wanted:
        why = f" ({plain(standing(each))})" if each.path and standing(each) else ""
        what = names.fact(each.path) if each.path else no_fact_words(each)
        yield f"- {plain(what)}{why}: {weight(each)} ({each.severity})"


def _figures(trail: Trail, system: System) -> Iterator[str]:
    rows = list(figure_rows(trail, system))
    if rows:
        yield from ["", "## Figures"]
        yield from _table(("Thing", "Figure", "Value", "Source of the method"),
                          ((row.thing, row.name, row.shown, row.source) for row in rows))


def _table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> Iterator[str]:
    yield ""
    yield f"| {' | '.join(heads)} |"
    yield f"|{'---|' * len(heads)}"
    for row in rows:
        yield f"| {' | '.join(map(plain, row))} |"


def plain(text: str) -> str:
    """Text in which no mark means anything, at the start of a line or within."""
    return "".join(_shown(text, at, each) for at, each in enumerate(text))


def _shown(text: str, at: int, character: str) -> str:
    if character in _ENTITY:
        return _ENTITY[character]
    starts = at == 0 and character in _FIRST
    counts = character in _AFTER_FIGURES and text[:at].isdigit()
    leads = character == ":" and text.startswith("//", at + 1)
    www = character == "." and text[:at].lower().endswith("www")
    return f"\\{character}" if character in _MARKS or starts or counts or leads or www else (
        character)
