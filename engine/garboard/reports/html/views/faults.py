"""Fault current at each protective device against what it can break there."""

from __future__ import annotations

from typing import Any, Final

from garboard.reports.html.book import MARKED_BY, Book
from garboard.reports.html.drawing.fault_bar import axis, fault_bar, shared_scale
from garboard.reports.html.views.things import Things
from garboard.trail import value_from_data
from garboard.values import Bounds, Unknown
from garboard.values.units import format_value

_FAULT: Final = "prospective_current"
_RATING: Final = "breaking_capacity"


def faults(book: Book, things: Things) -> dict[str, Any] | None:
    """The chart, or None where no device has a figure for either current."""
    devices = [key.removesuffix(f".{_FAULT}") for key, each
               in book.trail.assessment["derivations"].items()
               if each["quantity"] == f"device.{_FAULT}" and key.endswith(f".{_FAULT}")]
    rows = [_row(book, things, device) for device in sorted(devices)]
    if not rows:
        return None
    scale = shared_scale((row["fault"] for row in rows), (row["rating"] for row in rows))
    for row in rows:
        row["bar"] = fault_bar(scale, row["fault"], row["rating"])
    order = {identity: number for number, identity in enumerate(things.letters)}
    rows.sort(key=lambda row: (order.get(row["id"], len(order)), row["id"]))
    return {"rows": rows, "axis": axis(scale, book.system)}


def _row(book: Book, things: Things, device: str) -> dict[str, Any]:
    fault, rating = (_value(book, f"{device}.{name}") for name in (_FAULT, _RATING))
    return {"id": device, "thing": things.number_of.get(device),
            "letter": things.letters.get(device, ""), "name": book.names.thing(device),
            "place": book.places.words(device), "outcome": _outcome(book, device),
            "fault": fault, "rating": rating,
            "fault_words": _words(fault, book), "rating_words": _words(rating, book)}


def _value(book: Book, key: str) -> object:
    derivation = book.trail.derivation(key)
    return value_from_data(derivation["value"], "number") if derivation is not None else None


def _words(value: object, book: Book) -> str:
    if value is None or isinstance(value, Unknown):
        return "not known"
    text = format_value(value, "current", book.system)
    if isinstance(value, Bounds) and value.nominal is not None:
        text += f" (nominal {format_value(value.nominal, 'current', book.system)})"
    return text


def _outcome(book: Book, device: str) -> str | None:
    """The outcome of the findings that hold the one figure against the other."""
    both = {f"{device}.{_FAULT}", f"{device}.{_RATING}"}
    found = {each["outcome"] for each in book.trail.findings
             if each["item"] == device and both <= {key for keys in each["of"] for key in keys}}
    return next((each for each in MARKED_BY if each in found), None)
