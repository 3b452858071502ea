"""Every figure of every example record: what is unknown says why, memory is marked."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from garboard.quantities import Figures
from garboard.values import Unknown
from quantities.boats import figures_of, registry

EXAMPLES = Path(__file__).parents[2] / "examples"
RECORDS = sorted(str(file.relative_to(EXAMPLES)) for file in EXAMPLES.rglob("*.yaml")
                 if "\nformat: installation-record/" in f"\n{file.read_text(encoding='utf-8')}")


@cache
def everything(name: str) -> Figures:
    """The figures of a record, each asked for of each item."""
    figures = figures_of((EXAMPLES / name).read_text(encoding="utf-8"))
    for quantity in registry():
        for item in figures.subjects[quantity.subject] or ():
            item[quantity.name]
    return figures


def test_there_are_records() -> None:
    assert len(RECORDS) >= 8


@pytest.mark.parametrize("name", RECORDS)
def test_what_is_unknown_has_a_reason_and_a_place_or_words(name: str) -> None:
    silent = [key for key, each in everything(name).derivations.items()
              if isinstance(each.value, Unknown)
              and not all(cause.reason and (cause.path or cause.detail)
                          for cause in each.value.causes)]
    assert silent == []


@pytest.mark.parametrize("name", RECORDS)
def test_what_reads_a_table_from_memory_is_marked(name: str) -> None:
    unmarked = {each.quantity.full_name for each in everything(name).derivations.values()
                if any(row.endswith("(from memory)") for row in each.table_rows)
                and each.quantity.citation.status != "from memory"}
    assert unmarked == set()
