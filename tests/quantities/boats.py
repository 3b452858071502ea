"""Figures of records for tests: the work boat, and the work boat with some lines changed."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from garboard.assembly import load_plugins
from garboard.documents import read_text
from garboard.network import build_network
from garboard.quantities import Figures, Registry
from garboard.record import read_record

WORK_BOAT = Path(__file__).with_name("work_boat.yaml").read_text(encoding="utf-8")


@cache
def registry() -> Registry:
    """The built-in quantities."""
    return Registry(load_plugins([]).quantities())


@cache
def figures_of(text: str) -> Figures:
    """The figures of the record of a text."""
    record = read_record(read_text(text, "boat.yaml"))
    return Figures(record, build_network(record), registry())


def work_boat(*changes: tuple[str, str]) -> Figures:
    """The work boat with pieces of its text replaced; each piece must occur."""
    text = WORK_BOAT
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return figures_of(text)


def figure(figures: Figures, key: str) -> Any:
    """A figure by its key, ``pump.voltage_drop``; a failed calculation is a failed test."""
    item, _, name = key.partition(".")
    value = figures.items[item][name]
    assert figures.failures == []
    return value
