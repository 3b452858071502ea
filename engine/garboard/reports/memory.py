"""Which findings rest on tables that were written down from memory, and on which of them.

A table row that a calculation read says so itself; a finding rests on every row behind its figures.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Final

from garboard.reports.harmless import harmless_name
from garboard.trail import Finding, Trail

#: How a table row ends that is from memory, as calculations write it.
MARK: Final = "(from memory)"
_NONE: Final[frozenset[str]] = frozenset()


def memory_words(trail: Trail, findings: Iterable[Finding]) -> str:
    """That some findings rest on tables from memory, and on which; empty where none does."""
    return memory_of(trail, (key for finding in findings for keys in finding["of"]
                             for key in keys))


def memory_of(trail: Trail, keys: Iterable[str]) -> str:
    """The same of the figures with these keys."""
    behind = _tables(trail)
    found = sorted({table for key in keys for table in behind.get(key, _NONE)})
    if not found:
        return ""
    return (f"rests on {'a table' if len(found) == 1 else 'tables'} from memory, to be confirmed: "
            f"{', '.join(map(harmless_name, found))}")


@lru_cache(maxsize=1)
def _tables(trail: Trail) -> Mapping[str, frozenset[str]]:
    """The tables from memory behind every figure, by its key; figures without any are left out.

    From the figures that read such a row upwards to all that took them.
    """
    taken_by: dict[str, list[str]] = {}
    found: dict[str, frozenset[str]] = {}
    waiting: list[str] = []
    for key, derivation in trail.assessment["derivations"].items():
        for each in derivation["inputs"]:
            for below in each["of"]:
                taken_by.setdefault(below, []).append(key)
        tables = frozenset(row.partition(":")[0] for row in derivation["table_rows"]
                           if row.endswith(MARK))
        if tables:
            found[key] = tables
            waiting.append(key)
    while waiting:
        key = waiting.pop()
        for above in taken_by.get(key, ()):
            before = found.get(above, _NONE)
            if not found[key] <= before:
                found[above] = before | found[key]
                waiting.append(above)
    return found
