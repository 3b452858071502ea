"""What lies around a node before any protective device, and the devices that bound it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from garboard.network.layout import Layout
from garboard.network.ways import Ways


@dataclass(frozen=True, slots=True)
class Around:
    """Batteries and loads in reach past no device, and the devices on the border, nearest first.

    Each device comes with whether its ``from`` end is the one on this side.
    """

    batteries: tuple[str, ...]
    loads: tuple[str, ...]
    devices: tuple[tuple[str, bool], ...]


def find_around(node: str, layout: Layout, ways: Ways, loads: Mapping[str, str]) -> Around:
    """What lies around a node; ``loads`` are the ids of the loads by their positive terminal."""
    reached = ways.reached(node, past_devices=False)
    devices: dict[str, bool] = {}
    for each in reached:
        for step in ways.steps(each):
            if step.edge.kind == "device" and step.node not in reached:
                devices.setdefault(step.edge.id, step.edge.start == each)
    return Around(
        tuple(edge.id for edge in layout.batteries if edge.end in reached),
        tuple(loads[each] for each in reached if each in loads),
        tuple(devices.items()))
