"""How a figure came about, down to recorded facts: each figure once, with what went into it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Final

from garboard.reports.html.views.facts import RELATION_NAMES
from garboard.trail import Trail

#: Names that lead from one thing to another, and ids, are followed and not listed.
_UNSAID: Final = ("id",)


@dataclass(frozen=True, slots=True)
class Fact:
    """A recorded fact: where it stands in the record, and everything said beside it."""

    path: str
    data: Any
    place: str


@dataclass(frozen=True, slots=True)
class Figure:
    """A computed figure: its derivation, and what went into it, figures, facts and what is missing.

    ``again`` marks one that was given in full before.
    """

    key: str
    data: Any
    quantity: Any
    figures: tuple[Figure, ...]
    facts: tuple[Fact, ...]
    missing: tuple[str, ...]
    again: bool = False


class Derivations:
    """The derivations of one trail; every figure is given in full where it is first needed."""

    def __init__(self, trail: Trail) -> None:
        self._trail = trail
        self._given: set[str] = set()

    def of(self, keys: tuple[str, ...]) -> tuple[tuple[Figure, ...], tuple[Fact, ...],
                                                  tuple[str, ...]]:
        """The figures, the facts, and what is not recorded among some keys."""
        keys = tuple(dict.fromkeys(each for each in keys
                                   if each.rpartition(".")[2] not in _UNSAID))
        figures = tuple(self.figure(each) for each in keys
                        if self._trail.derivation(each) is not None)
        facts = tuple(fact for each in keys for fact in self._facts(each))
        missing = tuple(each for each in keys if self._is_missing(each))
        return figures, facts, missing

    def figure(self, key: str) -> Figure:
        """A figure with everything below it."""
        data = self._trail.derivation(key)
        assert data is not None
        quantity = self._trail.assessment["quantities"].get(data["quantity"])
        if key in self._given:
            return Figure(key, data, quantity, (), (), (), again=True)
        self._given.add(key)
        below = self.of(tuple(each for given in data["inputs"] for each in given["of"]))
        return Figure(key, data, quantity, *below)

    def facts_below(self, figures: tuple[Figure, ...]) -> Iterator[Fact]:
        """The recorded facts that figures rest on, each once."""
        seen: set[str] = set()
        for fact in self._below(figures):
            if fact.path not in seen:
                seen.add(fact.path)
                yield fact

    def _below(self, figures: tuple[Figure, ...]) -> Iterator[Fact]:
        for each in figures:
            yield from each.facts
            yield from self._below(each.figures)

    def _facts(self, key: str) -> Iterator[Fact]:
        """The fact of that path, or those of the group that stands under it."""
        fact = self._trail.fact(key)
        if fact is not None:
            yield Fact(key, fact, self._place(key))
            return
        for path in self._under.get(key, ()):
            yield Fact(path, self._trail.fact(path), self._place(path))

    @cached_property
    def _under(self) -> Mapping[str, list[str]]:
        """The paths inside each group or list: ``f0.breaks`` has ``f0.breaks[0].current``."""
        under: dict[str, list[str]] = {}
        for path in sorted(self._trail.assessment["record"]["read"]):
            for place, character in enumerate(path):
                if character in ".[" and "." in path[:place]:
                    under.setdefault(path[:place], []).append(path)
        return under

    def _is_missing(self, key: str) -> bool:
        thing, _, name = key.partition(".")
        there = any(True for _ in self._facts(key))
        return bool(name) and not there and self._trail.derivation(key) is None and (
            self._trail.fact(f"{thing}.{name}") is None) and name not in RELATION_NAMES

    def _place(self, path: str) -> str:
        """File and line of the thing the fact is of, as far as the trail says."""
        spot = self._trail.about["places"].get(path.partition(".")[0])
        if not spot or not spot.get("file"):
            return ""
        file = str(spot["file"]).replace("\\", "/").rpartition("/")[2]
        return f"{file}, line {spot['line']}" if spot.get("line") else file
