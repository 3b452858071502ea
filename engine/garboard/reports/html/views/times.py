"""How long a fault lasts against how long each conductor withstands it, where both are known."""

from __future__ import annotations

import re
from typing import Any, Final

from garboard.reports.harmless import harmless
from garboard.reports.html.book import Book
from garboard.reports.html.drawing.time_chart import OpeningPoint, TimeChart, time_chart
from garboard.reports.html.views.things import Things
from garboard.trail import value_from_data
from garboard.values import Bounds, Unknown
from garboard.values.units import format_value

_SHARE: Final = "conductor.let_through_share"
_POINT: Final = re.compile(r"([0-9.]+(?:e[+-]?\d+)?) A (carried for|opened within) "
                           r"([0-9.]+(?:e[+-]?\d+)?) s")
_LONGEST: Final = re.compile(r"longest[^=]*= ?([0-9.]+)")
_LONGEST_ELSE: Final = 5.0


def times(book: Book, things: Things) -> dict[str, Any]:
    """The charts, and what of which conductor is not known for one."""
    found: dict[str, list[dict[str, Any]]] = {"rows": [], "open": []}
    for key, each in sorted(book.trail.assessment["derivations"].items()):
        if each["quantity"] == _SHARE:
            conductor = key.rpartition(".")[0]
            row = _row(book, things, conductor)
            found["rows" if "chart" in row else "open"].append(row)
    return found


def _row(book: Book, things: Things, conductor: str) -> dict[str, Any]:
    row = {"name": book.names.thing(conductor), "thing": things.number_of.get(conductor),
           "letter": things.letters.get(conductor, "")}
    values = {name: _value(book, f"{conductor}.{name}") for name in (
        "withstand_energy", "largest_fault_current", "clearing_time", "let_through")}
    withstand, fault, clearing = (_ends(values[name]) for name in (
        "withstand_energy", "largest_fault_current", "clearing_time"))
    points = _points(book, conductor)
    missing = [words for words, value in (
        ("what it withstands", withstand), ("the largest fault current through it", fault))
        if value is None]
    if clearing is None and not points:
        missing.append("how fast its protection opens")
    if withstand is None or fault is None or missing:
        return {**row, "missing": missing}
    let_through = values["let_through"]
    said = {"fault": _said(values["largest_fault_current"], "current", book),
            "clearing": _said(values["clearing_time"], "time", book),
            "withstand": _said(_held(withstand, fault[1]), "time", book)}
    label = (f"{row['name']}: a fault of {said['fault']} flows for {said['clearing']}; the "
             f"conductor withstands the greatest of it for {said['withstand']}")
    chart = TimeChart(withstand, _longest(book, conductor), fault, clearing,
                      let_through if isinstance(let_through, float) else None, points)
    return {**row, **said, "chart": time_chart(chart, label)}


def _held(energy: tuple[float, float], current: float) -> Bounds:
    """How long an energy is withstood at a current, s."""
    low, high = (each / current ** 2 if current else 0.0 for each in energy)
    return Bounds(low, high)


def _points(book: Book, conductor: str) -> list[OpeningPoint]:
    derivation = book.trail.derivation(f"{conductor}.clearing_time")
    keys = [key for given in (derivation or {"inputs": ()})["inputs"] if given["name"] == "points"
            for key in given["of"]]
    texts = [value for key in keys if isinstance(value := _value(book, key), str)]
    return [OpeningPoint(float(found[1]), float(found[3]), found[2] == "opened within")
            for text in texts for found in _POINT.finditer(text)]


def _longest(book: Book, conductor: str) -> float:
    derivation = book.trail.derivation(f"{conductor}.withstand_energy")
    rows = " ".join((derivation or {"table_rows": ()})["table_rows"])
    found = _LONGEST.search(rows)
    return float(found[1]) if found else _LONGEST_ELSE


def _value(book: Book, key: str) -> object:
    derivation = book.trail.derivation(key)
    return None if derivation is None else value_from_data(derivation["value"],
                                                           derivation["kind"])


def _ends(value: object) -> tuple[float, float] | None:
    if isinstance(value, Bounds):
        return value.lo, value.hi
    return (value, value) if isinstance(value, float) else None


def _said(value: object, dimension: str, book: Book) -> str:
    if value is None or isinstance(value, Unknown):
        return "a time that is not known"
    return harmless(format_value(value, dimension, book.system))
