"""The first page: vessel, packs, exceptions, result, counts, cautions, and the list of work."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from garboard.reports.cautions import cautions_of, left_to_a_person, not_examined_of
from garboard.reports.counts import plural, rules_looked_at, severity_table, share, statements
from garboard.reports.html.book import Book
from garboard.reports.reasons import irregularity_words, warning_words
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
from garboard.reports.words import DECISION_RULES
from garboard.reports.work import Job, work_of
from garboard.trail import FAILED, NOT_ASSESSED, PASSED

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
                   "standing": pack_standing(pack), "sealed": pack["status"] == "sealed",
                   "word": of_pack["word"],
                   "outcome": OUTCOME_OF_WORD[of_pack["word"]]}
                  for pack, of_pack in zip(trail.packs, trail.outcome["packs"], strict=True)],
        "decision_rules": [DECISION_RULES[rule] for rule in dict.fromkeys(
            pack["decision_rule"] for pack in trail.packs)],
        "exceptions": list(exceptions_of(trail, book.names)),
        "result": {"word": result_words(trail), "outcome": OUTCOME_OF_WORD[trail.word],
                   "meaning": result_meaning(trail)},
        "acceptances": list(acceptances_of(trail)),
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
    work = work_of(book.trail)
    return {"work_ends": work.ending,
            "work": [{"severity": severity, "words": words,
                      "jobs": [_job(book, job) for job in jobs]}
                     for severity, words, jobs in work.by_severity()]}


def _job(book: Book, job: Job) -> dict[str, Any]:
    return {"number": job.number, "title": job.title, "what": job.what, "among": job.among,
            "items": [(book.names.item(each), book.number_of[each["id"]])
                      for each in job.findings],
            "dispensed": job.dispensed}
