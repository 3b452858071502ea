"""What every file says beside its rows: what was assessed, by what, the result, cautions, scope."""

from __future__ import annotations

from collections.abc import Iterator

from garboard.reports.cautions import cautions_of, left_to_a_person, not_examined_of
from garboard.reports.counts import statements
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.names import Names
from garboard.reports.summary import (
    acceptances_of,
    date_words,
    exceptions_of,
    fact_shown,
    pack_name,
    pack_standing,
    result_meaning,
    result_words,
)
from garboard.reports.words import DECISION_RULES
from garboard.trail import Trail
from garboard.values.units import System


def scope_of(trail: Trail, system: System) -> Iterator[tuple[str, str]]:
    """Labels with texts, in the order of the page's first part."""
    yield "vessel", fact_shown(trail, "vessel.name", system) or "name not recorded"
    yield "assessed for", date_words(trail)
    for pack in trail.packs:
        yield "rules", f"{pack_name(pack)} ({pack_standing(pack)}): {harmless(pack['title'])}"
    for rule in dict.fromkeys(pack["decision_rule"] for pack in trail.packs):
        yield "decision rule", DECISION_RULES[rule]
    exceptions = list(exceptions_of(trail, Names(trail)))
    for each in exceptions or ["No rule was relaxed or retired, and no dispensation was given."]:
        yield "exception", each
    yield "result", result_words(trail)
    yield "result means", result_meaning(trail)
    for _, line in statements(trail.outcome["counts"]):
        yield "count", line
    for words, reasons in acceptances_of(trail):
        yield "acceptance", " ".join([words, *reasons])
    for each in cautions_of(trail):
        yield "bear in mind", each
    for each in (*not_examined_of(trail), *left_to_a_person(trail)):
        yield "not examined", each
    yield "written by", f"garboard {harmless_name(trail.about['garboard'])}"
    yield "trail", trail.digest
