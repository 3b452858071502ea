"""The single-line diagram: one SVG for each sheet, its things lettered and marked by outcome."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from garboard.reports.html.drawing.layout import Label, Name, Placed, Spot, Upright, place
from garboard.reports.html.drawing.sheets import sheets_of
from garboard.reports.html.drawing.svg import element, line, moved, number, words
from garboard.reports.html.drawing.symbols import symbol
from garboard.reports.html.drawing.tree import End
from garboard.reports.html.drawing.wiring import Part, Wiring

_OVER: Final = 12
#: How much larger than its own units a sheet is shown where there is room.
_LARGER: Final = 1.25
#: From this width on a sheet is not made smaller for a small screen, but moved about.
_WIDE: Final = 500
_TALL: Final = 0.8
_LETTERS: Final = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True)
class Drawn:
    """A sheet as SVG; ``tall`` where it fits an upright page better."""

    svg: str
    tall: bool


@dataclass(frozen=True, slots=True)
class Captions:
    """What the diagram says of things: labels, links, outcomes, and the words of all three."""

    label: Callable[[Part], Label]
    link: Callable[[str], str]
    outcome: Callable[[str], str | None]
    spoken: Callable[[str, str], str]


def draw(wiring: Wiring, captions: Captions) -> tuple[list[Drawn], dict[str, str]]:
    """The sheets of the diagram, and the letter of every id drawn, in their order."""
    sheets = sheets_of(wiring)
    where = {block.bar.node: number for number, sheet in reversed(list(enumerate(sheets, 1)))
             for block in sheet.blocks if block.bar.shown}
    sheet_of = where if len(sheets) > 1 else {}
    placed = [place(sheet, captions.label, lambda end: _end_name(end, sheet_of))
              for sheet in sheets]
    letters = _lettered(placed)
    return [_Drawing(captions, letters, sheet_of, number, len(sheets)).of(each)
            for number, each in enumerate(placed, 1)], letters


def _lettered(sheets: list[Placed]) -> dict[str, str]:
    """Letters in reading order: sheet by sheet, row by row, from the left."""
    letters: dict[str, str] = {}
    for sheet in sheets:
        spots = [(each.y, each.x, each.part.id) for each in sheet.spots]
        spots += [(each.top - 1, each.x, each.bar.thing.id) for each in sheet.uprights
                  if each.bar.thing is not None and each.bar.thing.subject == "bus"]
        for _, _, identity in sorted(spots):
            letters.setdefault(identity, _letter(len(letters)))
    return letters


def _letter(index: int) -> str:
    """A, B ... Z, AA, AB ..."""
    first, last = divmod(index, len(_LETTERS))
    return (_letter(first - 1) if first else "") + _LETTERS[last]


def _end_name(end: End, sheet_of: Mapping[str, int]) -> str:
    identity, _, pole = end.node.partition(".")
    name = short(identity) + {"negative": " −", "positive": " +"}.get(pole, "")
    sheet = sheet_of.get(end.node)
    return f"{name}, sheet {sheet}" if sheet else name


def short(text: str, longest: int = 20) -> str:
    """A text cut to the room there is beside a symbol."""
    return text if len(text) <= longest else f"{text[:longest - 1]}…"


class _Drawing:
    def __init__(self, captions: Captions, letters: Mapping[str, str],
                 sheet_of: Mapping[str, int], number: int, sheets: int) -> None:
        self._captions, self._letters = captions, letters
        self._sheet_of, self._number, self._sheets = sheet_of, number, sheets

    def of(self, placed: Placed) -> Drawn:
        lines = [line(x1, y, x2, y, "wire") for x1, x2, y in placed.lines]
        drawn = [*lines, *map(self._upright, placed.uprights), *map(self._spot, placed.spots),
                 *map(self._name, placed.names)]
        title = f"Single-line diagram, sheet {self._number} of {self._sheets}"
        kind = "diagram wide" if placed.width > _WIDE else "diagram"
        svg = element("svg", *drawn, class_=kind, role="group", aria_label=title,
                      viewBox=f"0 0 {number(placed.width)} {number(placed.height)}",
                      width=placed.width * _LARGER, height=placed.height * _LARGER)
        return Drawn(svg, placed.height > _TALL * placed.width)

    def _spot(self, spot: Spot) -> str:
        part, label = spot.part, self._captions.label(spot.part)
        if part.subject == "conductor":
            drawn = [line(-14, 0, 14, 0, "conductor")]
        else:
            turned = "scale(-1 1)" if spot.beside == "right" and part.subject == "battery" else None
            drawn = [element("rect", x=-20, y=-3, width=40, height=6, class_="gap"),
                     element("g", symbol(part.kind, part.subject), class_="symbol",
                             transform=turned)]
        if spot.beside == "below":
            drawn += [words(label.title, 0, 24, "title", "middle"),
                      words(label.detail, 0, 35, "detail", "middle")]
        else:
            side, anchor = (-26, "end") if spot.beside == "left" else (26, "start")
            drawn += [words(label.title, side, -1, "title", anchor),
                      words(label.detail, side, 11, "detail", anchor)]
        return moved(spot.x, spot.y, self._linked(part.id, *drawn, self._tag(part.id, 0, -24)))

    def _upright(self, upright: Upright) -> str:
        bar = line(upright.x, upright.top - _OVER, upright.x, upright.bottom + _OVER,
                   "bus" if upright.bar.thing is not None and upright.bar.thing.subject == "bus"
                   else "joint")
        thing = upright.bar.thing
        if thing is None or thing.subject != "bus":
            return bar
        label = self._captions.label(thing)
        named = f"{label.title}  {label.detail}".strip()
        return bar + moved(upright.x, upright.top, self._linked(
            thing.id, words(named, 0, -36, "title", "middle"), self._tag(thing.id, 0, -24)))

    def _name(self, name: Name) -> str:
        side, anchor = (-8, "end") if name.beside == "left" else (8, "start")
        end = element("circle", cx=name.x, cy=name.y, r=3, class_="end")
        return end + words(_end_name(name.end, self._sheet_of), name.x + side, name.y + 4,
                           "detail", anchor)

    def _linked(self, identity: str, *drawn: str) -> str:
        return element("a", *drawn, href=self._captions.link(identity),
                       aria_label=self._captions.spoken(identity, self._letters[identity]))

    def _tag(self, identity: str, x: float, y: float) -> str:
        """The letter of a thing in a box that shows the outcome by its form, with the mark."""
        letter, outcome = self._letters[identity], self._captions.outcome(identity)
        wide = 12 + 7.5 * len(letter) + (13 if outcome else 0)
        mark = element("use", href=f"#mark-{outcome.replace(' ', '-')}", x=wide / 2 - 16, y=-6,
                       width=12, height=12) if outcome else ""
        box = element("rect", x=-wide / 2, y=-8, width=wide, height=16, rx=3, class_="tag-box")
        text = words(letter, -wide / 2 + 5, 4, "tag-letter")
        return element("g", box, text, mark, transform=f"translate({number(x)} {number(y)})",
                       class_=f"tag {outcome.replace(' ', '-')}" if outcome else "tag")
