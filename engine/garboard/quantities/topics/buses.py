"""Buses: which side they are on as traced, and what the devices at them let flow over them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from garboard.network import Network
from garboard.network.sides import Side
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.values import NOT_RECORDED, OUTSIDE_METHOD, Number, Unknown, largest, total

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")
_POSITIVE: Final = "positive"


@quantity("bus.carries", kind="text", needs={"network": "network", "bus": "id"},
          method="The side its runs lead to: 'positive', 'negative', 'link' between batteries in "
                 "series, or 'none'; what is recorded of it does not count",
          citation=_DEFINITION, valid="buses that a run leads to")
def bus_carries(network: Network, bus: str) -> str | Unknown:
    if bus not in network.layout.traced:
        return Unknown.because(NOT_RECORDED, "runs", f"no run leads to {bus}")
    return network.polarity(bus)


@quantity("bus.is_fed_without_a_device", kind="truth", needs={"network": "network", "bus": "id"},
          method="A battery feeds it past no protective device, on the positive side",
          citation=_DEFINITION, valid="traced runs, switches closed")
def bus_is_fed_without_a_device(network: Network, bus: str) -> Figure:
    batteries = network.around(bus).batteries if network.polarity(bus) == _POSITIVE else ()
    return Figure(bool(batteries), remarks=(f"such are: {', '.join(batteries[:20]) or 'none'}",))


@quantity("bus.current_let_by_devices", dimension="current",
          needs={"network": "network", "bus": "id", "ratings": "record.device_ratings"},
          method="The largest rating of a device in a run at it. Where a battery feeds it past no "
                 "device, what all devices around it let pass to loads, or from charging sources, "
                 "added, whichever is more",
          citation=_PRACTICE,
          valid="buses with a device in a run; where a battery and a load are joined to it past "
                "no device, nothing limits what flows over it")
def current_let_by_devices(network: Network, bus: str, ratings: Mapping[str, Number]) -> Figure:
    layout, around = network.layout, network.around(bus)
    own = [part for run in layout.runs_at.get(bus, ()) for part in layout.parts[run]
           if network.graph.edges[part].kind == "device"]
    if not around.batteries or network.polarity(bus) != _POSITIVE:
        return Figure(largest([ratings[each] for each in own]) if own else Unknown.because(
            OUTSIDE_METHOD, detail="no device in a run at it"))
    if around.loads:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=(
            f"no device between {around.batteries[0]} and {around.loads[0]} limits it")))
    beyond = {each: _beyond(network, each, starts_here) for each, starts_here in around.devices}
    taking = [each for each, side in beyond.items() if side is None or side.loads]
    giving = [each for each, side in beyond.items() if side is None or side.sources]
    return Figure(largest([*(total([ratings[each] for each in group])
                             for group in (taking, giving) if group),
                           *(ratings[each] for each in own), 0.0]),
                  remarks=(f"to loads: {', '.join(taking[:20]) or 'none'}",
                           f"from sources: {', '.join(giving[:20]) or 'none'}"))


def _beyond(network: Network, device: str, starts_here: bool) -> Side | None:
    """What stands beyond a device; ``None`` where it is part of a ring."""
    sides = network.sides(device)
    return None if sides is None else sides[1 if starts_here else 0]


QUANTITIES = (bus_carries, bus_is_fed_without_a_device, current_let_by_devices)
