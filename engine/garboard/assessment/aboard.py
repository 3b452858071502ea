"""The figures and circuits of a record that a comparison holds against those of another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from garboard.network import build_network
from garboard.quantities import Figures, Item, Registry
from garboard.record import Record
from garboard.reports import Aboard, Circuit, Known
from garboard.values import Unknown

#: What is computed for every item of a subject.
COMPARED: Final[Mapping[str, tuple[str, ...]]] = {
    "bus": ("fault_current", "smallest_fault_current"),
    "battery": ("fault_current", "source_resistance", "unprotected_length"),
    "bank": ("highest_system_voltage", "lowest_voltage", "charge_current_limit",
             "charging_current_sum", "discharge_current_limit"),
    "source": ("highest_stage_voltage", "lowest_overvoltage_trip"),
    "device": ("breaking_capacity", "prospective_current", "smallest_fault_current",
               "voltage_rating", "highest_system_voltage", "opens_before_those_before_it"),
    "conductor": ("ampacity", "protection_rating", "largest_fault_current", "let_through_share"),
    "load": ("fault_current", "highest_voltage", "lowest_voltage", "works_at_all_voltages"),
}


def aboard_of(record: Record, registry: Registry) -> Aboard:
    """Those figures, as this program computes them, and the circuits of the loads."""
    figures = Figures(record, build_network(record), registry)
    known = {}
    for subject, names in COMPARED.items():
        for item in _items(figures, subject):
            for name in names:
                quantity = registry.by_subject[subject][name]
                known[f"{item.id}.{name}"] = Known(quantity.full_name, item[name],
                                                   quantity.dimension)
    return Aboard(known, {each.run: each for each in _circuits(figures)})


def _items(figures: Figures, subject: str) -> tuple[Item, ...]:
    items = figures.subjects[subject]
    return items if isinstance(items, tuple) else ()


def _circuits(figures: Figures) -> Iterator[Circuit]:
    for load in _items(figures, "load"):
        run = load["run"]
        if isinstance(run, Item):
            yield Circuit(run.id, load.id, _ids(run["conductors"]), _ids(run["devices"]))


def _ids(items: object) -> tuple[str, ...]:
    if isinstance(items, Unknown) or not isinstance(items, tuple):
        return ()
    return tuple(each.id for each in items)
