"""The built-in quantities as a plugin like any other."""

from __future__ import annotations

from pathlib import Path

from garboard.hooks import hookimpl
from garboard.quantities.declaration import Quantity
from garboard.quantities.topics import (
    ampacity,
    batteries,
    buses,
    charging,
    cold,
    conductors,
    contributions,
    derating,
    devices,
    faults,
    federal,
    grounding,
    heating,
    holders,
    isolation,
    lead_acid,
    lead_acid_faults,
    load_cases,
    loads,
    mid_string,
    nominal,
    opening,
    placement,
    precharge,
    protection,
    ratings,
    resistances,
    runs,
    selectivity,
    sensing,
    sharing,
    smallest_faults,
    stopping,
    supply,
    time_constants,
    voltages,
    window,
    withstand,
    zones,
)

TOPICS = (ampacity, batteries, buses, charging, cold, conductors, contributions, derating,
          devices, faults, federal, grounding, heating, holders, isolation, lead_acid,
          lead_acid_faults, load_cases, loads,
          mid_string, nominal, opening, placement, precharge, protection, ratings, resistances,
          runs, selectivity, sensing, sharing, smallest_faults, stopping, supply, time_constants,
          voltages, window, withstand, zones)
MANIFEST = Path(__file__).parent / "manifest.json"


@hookimpl
def garboard_quantities() -> tuple[Quantity, ...]:
    """All built-in quantities."""
    return tuple(quantity for topic in TOPICS for quantity in topic.QUANTITIES)


@hookimpl
def garboard_manifest() -> str:
    """The manifest of the built-in quantities."""
    return str(MANIFEST)
