"""The first page: vessel, packs, exceptions, result, counts, cautions, and the list of work."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from garboard.reports.cautions import cautions_of, left_to_a_person, not_examined_of
from garboard.reports.counts import plural, rules_looked_at, severity_table, share, statements
from garboard.reports.groups import by_rule
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.html.book import Book
from garboard.reports.reasons import irregularity_words, warning_words
from garboard.reports.summary import (
    OUTCOME_OF_WORD,
    date_words,
    exceptions_of,
    fact_shown,
    pack_name,
    pack_standing,
    result_meaning,
    result_words,
)
from garboard.reports.words import DECISION_RULES, subject_word, subjects_word
from garboard.trail import FAILED, NOT_ASSESSED, PASSED, SEVERITIES

_COLUMNS = (FAILED, NOT_ASSESSED, PASSED)
_VESSEL = ("kind", "length", "fuel", "waters", "nominal_voltage")
_SURVEY = ("place", "surveyor", "client", "reference", "purpose")


def front(book: Book) -> dict[str, Any]:
    """What the first page shows."""
    trail = book.trail
    return {
        "vessel": fact_shown(trail, "vessel.name", book.system) or "name not recorded",
        "facts": list(_facts(book, "vessel", _VESSEL)),
        "survey": list(_facts(book, "survey", _SURVEY)),
        "date": date_words(trail),
        "packs": [{"name": pack_name(pack), "title": pack["title"],
                   "standing": pack_standing(pack), "word": of_pack["word"],
                   "outcome": OUTCOME_OF_WORD[of_pack["word"]]}
                  for pack, of_pack in zip(trail.packs, trail.outcome["packs"], strict=True)],
        "decision_rules": [DECISION_RULES[rule] for rule in dict.fromkeys(
            pack["decision_rule"] for pack in trail.packs)],
        "exceptions": list(exceptions_of(trail, book.names)),
        "result": {"word": result_words(trail), "outcome": OUTCOME_OF_WORD[trail.word],
                   "meaning": result_meaning(trail)},
        "statements": statements(trail.outcome["counts"]),
        "counts": _counts(book),
        "cautions": cautions_of(trail), "not_examined": not_examined_of(trail),
        "left_to_a_person": len(left_to_a_person(trail)),
        "odd": [irregularity_words(book.names, each)
                for each in trail.assessment["irregularities"]],
        "warnings": [warning_words(each) for each in trail.about.get("warnings", ())],
        **_work(book),
    }


def _facts(book: Book, thing: str, names: Iterable[str]) -> Iterable[tuple[str, str]]:
    for name in names:
        shown = fact_shown(book.trail, f"{thing}.{name}", book.system)
        if shown:
            yield name.replace("_", " "), shown


def _counts(book: Book) -> dict[str, Any]:
    """The table of counts; every number in it is a sum over findings of the trail."""
    numbers = book.trail.outcome["counts"]
    looked_at, rules = rules_looked_at(book.trail)
    table = severity_table(book.trail)
    rows = [(severity, [row[each] for each in _COLUMNS]) for severity, row in table.items()]
    rows.append(("together", [sum(row[each] for row in table.values()) for each in _COLUMNS]))
    return {
        "columns": _COLUMNS, "rows": [(name, [*row, sum(row)]) for name, row in rows],
        "rules": f"{share(looked_at, rules, 'rule')} in {plural(len(book.trail.packs), 'pack')} "
                 "applied to something aboard, or may apply.",
        "applying": share(numbers["applying"], numbers["findings"], "finding"),
        "one": numbers["applying"] == 1, "dispensed": numbers["dispensed"],
        "failed": numbers["failed"]}


def _work(book: Book) -> dict[str, Any]:
    """What there is to do by severity; an ending that all of it has is said once."""
    jobs = list(_jobs(book))
    ending = common_ending([job["what"] for job in jobs])
    for job in jobs:
        job["what"] = f"{job['what'].removesuffix(ending)}." if ending else job["what"]
    parts = [(severity, [job for job in jobs if job["severity"] == severity])
             for severity in SEVERITIES]
    words = {severity: f"{plural(len(some), 'rule')} {'fails' if len(some) == 1 else 'fail'}"
             for severity, some in parts}
    return {"work_ends": ending.removeprefix(", "),
            "work": [{"severity": severity, "jobs": some, "words": words[severity]}
                     for severity, some in parts if some]}


def common_ending(texts: Sequence[str]) -> str:
    """The clause, from a comma on, that several texts all end with; empty if there is none."""
    if len(texts) < 2:
        return ""
    start = texts[0].find(", ")
    while start >= 0:
        ending = texts[0][start:]
        if all(text.endswith(ending) and text != ending for text in texts):
            return ending
        start = texts[0].find(", ", start + 1)
    return ""


def _jobs(book: Book) -> Iterable[dict[str, Any]]:
    """What there is to do, by rule that failed, the worst severity first."""
    for number, group in enumerate(by_rule(book.trail, FAILED), 1):
        about = group.rule["about"]
        noun = subject_word(about) if group.among == 1 else subjects_word(about)
        yield {
            "number": number, "severity": group.severity,
            "title": book.title_of(group.rule, group.pack),
            "what": harmless(group.rule["recommendation"]),
            "items": [(book.names.item(each), book.number_of[each["id"]])
                      for each in group.findings],
            "among": f"{len(group.findings)} of {group.among} {noun} it applies to",
            "dispensed": [harmless_name(each["dispensation"]) for each in group.findings
                          if each.get("dispensation")]}
