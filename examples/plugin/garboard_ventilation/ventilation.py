"""Two figures of a place: the free area of its openings, and how evenly low and high share it."""

from __future__ import annotations

from pathlib import Path

from garboard.hooks import hookimpl
from garboard.quantities import Quantity, cite, quantity
from garboard.values import Number, largest, quotient, smallest


@quantity("place.vent_area", dimension="area",
          needs={"low": "openings.low_area", "high": "openings.high_area"},
          method="Free area of the openings low down and at the top together",
          citation=cite("definition", "definition"), valid="openings measured without mesh")
def vent_area(low: Number, high: Number) -> Number:
    return low + high


@quantity("place.vent_balance", dimension="ratio",
          needs={"low": "openings.low_area", "high": "openings.high_area"},
          method="The smaller of the free areas low down and at the top over the larger: air that "
                 "rises needs a way in as wide as its way out",
          citation=cite("common practice of the trade", "common practice"),
          valid="natural draught, no fan")
def vent_balance(low: Number, high: Number) -> Number:
    return quotient(smallest([low, high]), largest([low, high]))


@hookimpl
def garboard_quantities() -> tuple[Quantity, ...]:
    """The quantities of this plugin."""
    return (vent_area, vent_balance)


@hookimpl
def garboard_manifest() -> str:
    """The manifest, in the folder of the top-level package."""
    return str(Path(__file__).with_name("manifest.json"))
