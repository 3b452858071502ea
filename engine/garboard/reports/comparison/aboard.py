"""What of a record is held against that of another: figures, and the circuits by what is in them.

Figures are those of this program for both records, so that a pack that does not apply to one of
them, and therefore computed nothing, does not hide what changed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Known:
    """A figure of an item: a number (canonical unit), bounds, a truth, or an unknown.

    ``quantity`` is its full name (``bus.fault_current``).
    """

    quantity: str
    value: object
    dimension: str | None


@dataclass(frozen=True, slots=True)
class Circuit:
    """A cable run to a load, by ids: its load, its conductors and its protective devices."""

    run: str
    load: str
    conductors: tuple[str, ...]
    devices: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Aboard:
    """Figures by key (``main-bus.fault_current``), and the circuits of the loads by their runs."""

    figures: Mapping[str, Known]
    circuits: Mapping[str, Circuit]

    def figure(self, item: str, name: str) -> Known | None:
        """A figure of an item, where it was asked for."""
        return self.figures.get(f"{item}.{name}")
