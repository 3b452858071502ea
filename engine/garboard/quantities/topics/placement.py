"""How far protective devices stand from what feeds their conductors."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, cast

from garboard.network import Feed, Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.values import (
    CONFLICT,
    OUTSIDE_METHOD,
    Number,
    Truth,
    Unknown,
    all_of,
    chosen,
    largest,
    total,
)

_DEFINITION = cite("definition", "definition")
#: The kind of load that starts an engine.
CRANKING: Final = "cranking motor"
_STUB = ("the positive side; only what batteries feed past a device already, as a branch from a "
         "bus: the conductors straight behind a battery are in its unprotected zone")


def _stub(network: Network, conductor: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The conductors from the fed end of a run to its first device, if this one is among them, and
    the devices that feed that end."""
    parts = network.layout.parts[network.layout.run_of[conductor]]
    one, other = network.feeds(conductor)
    ways = [(_to_device(network, each, conductor), end.feeding)
            for end, each in ((one, parts), (other, parts[::-1])) if _fed_past_a_device(end)]
    return max(ways, key=lambda way: len(way[0]), default=((), ()))


def _fed_past_a_device(end: Feed) -> bool:
    return end.fed and not end.batteries


def _to_device(network: Network, parts: tuple[str, ...], conductor: str) -> tuple[str, ...]:
    kinds = [network.graph.edges[part].kind for part in parts]
    if "device" not in kinds:
        return ()
    before = [part for part, kind in zip(parts, kinds[:kinds.index("device")], strict=False)
              if kind == "conductor"]
    return tuple(before) if conductor in before else ()


@quantity("conductor.lies_before_its_device", kind="truth",
          needs={"network": "network", "conductor": "id"},
          method="It lies between the end at which its run is fed and the first device in that run",
          citation=_DEFINITION, valid=_STUB)
def lies_before_its_device(network: Network, conductor: str) -> bool:
    return bool(_stub(network, conductor)[0])


@quantity("conductor.length_before_its_device", dimension="length",
          needs={"network": "network", "conductor": "id", "lengths": "record.conductor_lengths"},
          method="Length along the conductors from the end at which its run is fed to the first "
                 "device in that run",
          citation=_DEFINITION, valid=_STUB)
def length_before_its_device(network: Network, conductor: str,
                             lengths: Mapping[str, Number]) -> Figure:
    stub, _ = _stub(network, conductor)
    if not stub:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="it does not lie before a device"))
    return Figure(total([lengths[each] for each in stub]),
                  remarks=(f"conductors: {', '.join(stub)}",))


@quantity("conductor.sheathed_before_its_device", kind="truth",
          needs={"network": "network", "conductor": "id", "sheaths": "record.conductor_sheaths"},
          method="Every conductor from the end at which its run is fed to the first device in that "
                 "run is sheathed all along",
          citation=_DEFINITION, valid=_STUB)
def sheathed_before_its_device(network: Network, conductor: str,
                               sheaths: Mapping[str, Truth]) -> Truth:
    stub, _ = _stub(network, conductor)
    if not stub:
        return Unknown.because(OUTSIDE_METHOD, detail="it does not lie before a device")
    return all_of(sheaths[each] for each in stub)


@quantity("conductor.rating_before_its_device", dimension="current",
          needs={"network": "network", "conductor": "id", "ratings": "record.device_ratings"},
          method="What the devices let pass that feed the end at which its run is fed, added",
          citation=_DEFINITION, valid=_STUB)
def rating_before_its_device(network: Network, conductor: str,
                             ratings: Mapping[str, Number]) -> Figure:
    stub, feeding = _stub(network, conductor)
    if not stub:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="it does not lie before a device"))
    return Figure(total([ratings[each] for each in feeding]),
                  remarks=(f"fed past: {', '.join(feeding)}",))


@quantity("conductor.is_fed_from_both_ends", kind="truth",
          needs={"network": "network", "conductor": "id", "carries": "run.carries"},
          method="Batteries feed it at both of its ends, on the positive side",
          citation=_DEFINITION, valid="conductors in traced runs, switches closed")
def is_fed_from_both_ends(network: Network, conductor: str, carries: str) -> bool:
    return carries == "positive" and all(end.fed for end in network.feeds(conductor))


@quantity("conductor.is_fed_without_a_device", kind="truth",
          needs={"network": "network", "conductor": "id", "carries": "run.carries"},
          method="At one of its ends a battery feeds it past no protective device, on the positive "
                 "side",
          citation=_DEFINITION, valid="conductors in traced runs, switches closed")
def is_fed_without_a_device(network: Network, conductor: str, carries: str) -> bool:
    return carries == "positive" and any(end.batteries for end in network.feeds(conductor))


@quantity("record.load_kinds", kind="opaque", unknowns="passed",
          needs={"ids": "loads.id", "kinds": "loads.kind"},
          method="What every load is, by its id", citation=_DEFINITION, valid="any record")
def load_kinds(ids: tuple[str, ...] | Unknown, kinds: tuple[str | Unknown, ...] | Unknown,
               ) -> dict[str, str | Unknown] | Unknown:
    if isinstance(ids, Unknown):
        return ids
    if isinstance(kinds, Unknown):
        return kinds
    return dict(zip(ids, kinds, strict=True))


@quantity("run.cranks_an_engine", kind="truth", unknowns="passed",
          needs={"network": "network", "run": "id", "stated": "starts_engine",
                 "kinds": "record.load_kinds"},
          method="As recorded, unless the load at its end is something else than a cranking "
                 "motor; else not where it ends at a charging source; else whether the load "
                 "at its end is a cranking motor; else not where no load aboard is one",
          citation=_DEFINITION, valid="every load aboard on record", version="2")
def cranks_an_engine(network: Network, run: str, stated: Truth,
                     kinds: Mapping[str, str | Unknown] | Unknown) -> Truth:
    ends = network.layout.ends[run]
    here = [] if isinstance(kinds, Unknown) else [
        kind for load, kind in kinds.items() if network.layout.positive(load) in ends]
    if not isinstance(stated, Unknown):
        other = not any(isinstance(kind, Unknown) or kind == CRANKING for kind in here)
        return Unknown.because(CONFLICT, f"{run}.starts_engine", (
            f"{run} is said to start an engine, and feeds a {here[0]}"
            )) if stated and here and other else stated
    if any(edge.end in ends for edge in network.layout.injectors):
        return False
    if isinstance(kinds, Unknown):
        return stated.joined(kinds)
    asked = here or [*kinds.values()]
    for kind in asked:
        if isinstance(kind, Unknown):
            return stated.joined(kind)
    cranking = CRANKING in asked
    return cranking if here or not cranking else stated


@quantity("record.cranking_conductors", kind="opaque",
          needs={"ids": "conductors.id", "values": "conductors.run.cranks_an_engine"},
          method="Whether every conductor is in a run that feeds a cranking motor, by its id",
          citation=_DEFINITION, valid="any record")
def cranking_conductors(ids: tuple[str, ...], values: tuple[Truth, ...]) -> dict[str, Truth]:
    return dict(zip(ids, values, strict=True))


@quantity("battery.unprotected_length_but_cranking", dimension="length",
          needs={"network": "network", "battery": "id", "lengths": "record.conductor_lengths",
                 "cranking": "record.cranking_conductors"},
          method="As the unprotected length, without the ways that go through nothing but runs "
                 "that feed a cranking motor",
          citation=_DEFINITION,
          valid="the positive side; switches and management electronics never count as protection")
def unprotected_length_but_cranking(network: Network, battery: str, lengths: Mapping[str, Number],
                                    cranking: Mapping[str, Truth]) -> Figure:
    zone = network.zone(battery)
    if isinstance(zone, Unknown):
        return Figure(zone)
    ways = (*(path.conductors for path in zone.paths), *zone.rings)
    found = [_unless(all_of(cranking[each] for each in way),
                     total([lengths[each] for each in way])) for way in ways]
    ends = ", ".join(f"{path.end} ({path.ending})" for path in zone.paths[:20])
    return Figure(largest(found or [0.0]), remarks=(f"it ends at: {ends or 'nothing'}",))


def _unless(exempt: Truth, length: Number) -> Number:
    """A length, or nothing where it is exempt; between the two where that is not known."""
    return cast(Number, chosen(exempt, 0.0, length))


@quantity("source.unprotected_length", dimension="length",
          needs={"network": "network", "source": "id", "lengths": "record.conductor_lengths"},
          method="Longest way along conductors from its positive terminal to a protective device, "
                 "another terminal or a dead end",
          citation=_DEFINITION, valid="the positive side; a device inside the source is not seen")
def source_unprotected_length(network: Network, source: str,
                              lengths: Mapping[str, Number]) -> Figure:
    zone = network.zone(source)
    if isinstance(zone, Unknown):
        return Figure(zone)
    ends = ", ".join(f"{path.end} ({path.ending})" for path in zone.paths[:20])
    return Figure(zone.longest(lengths), remarks=(f"it ends at: {ends or 'nothing'}",))


@quantity("source.leads_to_devices", kind="truth", needs={"network": "network", "source": "id"},
          method="Every way from its positive terminal leads to a protective device, and none to "
                 "another terminal or a dead end before it",
          citation=_DEFINITION, valid="the positive side; a device inside the source is not seen")
def source_leads_to_devices(network: Network, source: str) -> Figure:
    zone = network.zone(source)
    if isinstance(zone, Unknown):
        return Figure(zone)
    ends = ", ".join(f"{path.end} ({path.ending})" for path in zone.paths[:20])
    return Figure(zone.closed, remarks=(f"it ends at: {ends or 'nothing'}",))


@quantity("source.unprotected_zone_sheathed", kind="truth",
          needs={"network": "network", "source": "id", "sheaths": "record.conductor_sheaths"},
          method="Every conductor between its positive terminal and the first protective device is "
                 "sheathed all along",
          citation=_DEFINITION, valid="the positive side")
def source_unprotected_zone_sheathed(network: Network, source: str,
                                     sheaths: Mapping[str, Truth]) -> Truth:
    zone = network.zone(source)
    return zone if isinstance(zone, Unknown) else zone.sheathed(sheaths)


QUANTITIES = (lies_before_its_device, length_before_its_device, sheathed_before_its_device,
              rating_before_its_device, is_fed_from_both_ends, is_fed_without_a_device,
              load_kinds, cranks_an_engine, cranking_conductors, unprotected_length_but_cranking,
              source_unprotected_length, source_leads_to_devices, source_unprotected_zone_sheathed)
