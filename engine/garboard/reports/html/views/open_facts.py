"""What to find out next, the weightiest first."""

from __future__ import annotations

from typing import Any

from garboard.reports.counts import plural
from garboard.reports.html.book import Book
from garboard.reports.reasons import no_fact_words, standing, weight
from garboard.reports.to_find_out import to_find_out


def open_facts(book: Book) -> dict[str, Any]:
    """The facts that would decide what could not be assessed, and what no fact would decide."""
    wanted = to_find_out(book.trail)
    facts = [each for each in wanted if each.path]
    waiting = {finding["id"] for each in facts for finding in (*each.alone, *each.shared)}
    wait = "waits" if len(waiting) == 1 else "wait"
    return {
        "title": f"{plural(len(facts), 'fact')} would decide what "
                 f"{plural(len(waiting), 'finding')} {wait} for",
        "facts": [{"name": book.names.fact(each.path), "why": standing(each) or "not recorded",
                   "weight": weight(each), "severity": each.severity,
                   "findings": [(book.number_of[finding["id"]], book.names.item(finding))
                                for finding in (*each.alone, *each.shared)]}
                  for each in facts],
        "others": [f"{no_fact_words(each)} ({plural(each.count, 'finding')})"
                   for each in wanted if not each.path]}
