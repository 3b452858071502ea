"""The diagram with its key: every thing aboard that is drawn or has findings."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.html.book import MARKED_BY, Book
from garboard.reports.html.drawing.diagram import Captions, Drawn, draw, short
from garboard.reports.html.drawing.layout import Label
from garboard.reports.html.drawing.wiring import Part, Wiring, wiring_of
from garboard.reports.summary import fact_shown

#: The facts that stand beside a thing in the diagram, by its subject.
_SHOWN = {
    "conductor": ("size", "length"), "device": ("class", "rating"),
    "switch": ("kind", "continuous_current"),
    "battery": ("chemistry", "nominal_voltage", "capacity"),
    "bus": ("rating",), "source": ("kind", "current_max"), "load": ("kind", "power", "current"),
}
_DETAIL = 24


class Things:
    """The things of one trail: numbers for links, letters, and the sheets they are drawn on."""

    def __init__(self, book: Book) -> None:
        self._book = book
        self._wiring = wiring_of(book.trail)
        self._outcomes = {item: book.outcome_of(item) for item in book.counts_of}
        self._parts = _parts(self._wiring)
        self.number_of: Mapping[str, int] = {
            identity: number for number, identity in enumerate(
                dict.fromkeys([*self._parts, *book.counts_of]), 1)}
        self.sheets: list[Drawn]
        self.letters: dict[str, str]
        self.sheets, self.letters = draw(self._wiring, Captions(
            self._label, self._link, self._outcomes.get, self._spoken))

    def key(self) -> list[dict[str, Any]]:
        """A row for every thing: the lettered ones in the order of their letters, then the rest."""
        order = dict.fromkeys([*self.letters, *self.number_of])
        return [self._row(identity) for identity in order]

    def _row(self, identity: str) -> dict[str, Any]:
        counts = self._book.counts_of.get(identity, dict.fromkeys(MARKED_BY, 0))
        part = self._parts.get(identity)
        return {"number": self.number_of[identity], "letter": self.letters.get(identity, ""),
                "name": self._book.names.thing(identity), "about": self._about(part),
                "place": self._book.places.words(identity),
                "outcome": self._outcomes.get(identity), "counts": counts}

    def _about(self, part: Part | None) -> str:
        return ", ".join(self._facts(part)) if part is not None else ""

    def _facts(self, part: Part) -> list[str]:
        shown = (fact_shown(self._book.trail, f"{part.id}.{name}", self._book.system)
                 for name in _SHOWN.get(part.subject, ()))
        return [each for each in shown if each]

    def _label(self, part: Part) -> Label:
        return Label(short(harmless_name(part.id)), short(" ".join(self._facts(part)), _DETAIL))

    def _link(self, identity: str) -> str:
        return f"#thing-{self.number_of[identity]}"

    def _spoken(self, identity: str, letter: str) -> str:
        outcome = self._outcomes.get(identity) or "no findings"
        return harmless(f"{letter}: {self._book.names.thing(identity)}, {outcome}")


def _parts(wiring: Wiring) -> dict[str, Part]:
    """Everything that can be drawn, by id."""
    parts = dict(wiring.things)
    parts.update((part.id, part) for run in wiring.runs for part in run.parts)
    return parts
