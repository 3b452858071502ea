"""What lies unprotected behind a battery, and what protects each conductor."""

from __future__ import annotations

from garboard.network import Feed, Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.values import OUTSIDE_METHOD, Number, Truth, Unknown, largest, smallest

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")
#: How many things a remark names at most.
_MOST_NAMED = 20
_ZONE = "the positive side; switches and management electronics never count as protection"


@quantity("battery.is_paralleled", kind="truth", needs={"strings": "bank.strings.id"},
          method="Its bank has more than one string", citation=_DEFINITION,
          valid="batteries whose positive terminal is traced")
def is_paralleled(strings: tuple[str, ...]) -> bool:
    return len(strings) > 1


@quantity("record.conductor_lengths", kind="opaque",
          needs={"ids": "conductors.id", "values": "conductors.length"},
          method="The length of every conductor, by its id", citation=_DEFINITION,
          valid="any record")
def conductor_lengths(ids: tuple[str, ...], values: tuple[Number, ...]) -> dict[str, Number]:
    return dict(zip(ids, values, strict=True))


@quantity("record.conductor_sheaths", kind="opaque",
          needs={"ids": "conductors.id", "values": "conductors.sheathed"},
          method="Whether every conductor is sheathed, by its id", citation=_DEFINITION,
          valid="any record")
def conductor_sheaths(ids: tuple[str, ...], values: tuple[Truth, ...]) -> dict[str, Truth]:
    return dict(zip(ids, values, strict=True))


@quantity("record.device_ratings", kind="opaque",
          needs={"ids": "devices.id", "values": "devices.rating"},
          method="The rating of every device, by its id", citation=_DEFINITION,
          valid="any record")
def device_ratings(ids: tuple[str, ...], values: tuple[Number, ...]) -> dict[str, Number]:
    return dict(zip(ids, values, strict=True))


@quantity("battery.unprotected_length", dimension="length",
          needs={"network": "network", "battery": "id", "lengths": "record.conductor_lengths"},
          method="Longest way along conductors from the positive terminal to a protective device, "
                 "another terminal or a dead end",
          citation=_DEFINITION, valid=_ZONE)
def unprotected_length(network: Network, battery: str, lengths: dict[str, Number]) -> Figure:
    zone = network.zone(battery)
    if isinstance(zone, Unknown):
        return Figure(zone)
    ends = _named(tuple(f"{path.end} ({path.ending})" for path in zone.paths)) or "nothing"
    return Figure(zone.longest(lengths), remarks=(
        f"conductors: {_named(zone.conductors) or 'none'}", f"it ends at: {ends}"))


@quantity("battery.unprotected_zone_sheathed", kind="truth",
          needs={"network": "network", "battery": "id", "sheaths": "record.conductor_sheaths"},
          method="Every conductor before the first protective device is sheathed all along",
          citation=_DEFINITION, valid=_ZONE)
def unprotected_zone_sheathed(network: Network, battery: str,
                              sheaths: dict[str, Truth]) -> Truth:
    zone = network.zone(battery)
    if isinstance(zone, Unknown):
        return zone
    return zone.sheathed(sheaths)


@quantity("device.on_path_of_a_battery", kind="truth",
          needs={"network": "network", "device": "id"},
          method="Current of a battery can reach it at one of its ends, switches closed",
          citation=_DEFINITION, valid="devices in traced runs")
def on_path_of_a_battery(network: Network, device: str) -> bool:
    return network.on_path_of_a_battery(device)


@quantity("conductor.is_fed_by_a_battery", kind="truth",
          needs={"network": "network", "conductor": "id", "carries": "run.carries"},
          method="A battery feeds it at one of its ends, on the positive side",
          citation=_DEFINITION,
          valid="conductors in traced runs; returns and links between batteries in series are not "
                "counted as fed")
def is_fed_by_a_battery(network: Network, conductor: str, carries: str) -> bool:
    return carries == "positive" and any(feed.fed for feed in network.feeds(conductor))


@quantity("conductor.is_protected", kind="truth", needs={"network": "network", "conductor": "id"},
          method="No battery feeds it without passing a protective device; the lead between a "
                 "battery and its first device counts as protected by that device when nothing "
                 "else joins in between",
          citation=_PRACTICE, valid=_ZONE)
def is_protected(network: Network, conductor: str) -> Figure:
    devices = network.protecting(conductor)
    return Figure(bool(devices), remarks=(f"protected by: {_named(devices) or 'nothing'}",))


@quantity("conductor.protection_rating", dimension="current",
          needs={"network": "network", "conductor": "id", "ratings": "record.device_ratings"},
          method="What the devices at the end that feeds it let pass, devices side by side added. "
                 "Of a conductor fed from both ends, as a battery lead, the lesser of its two "
                 "ends, since an overload along it passes both",
          citation=_PRACTICE,
          valid="overload; a fault on a conductor that is fed from both ends is not covered")
def protection_rating(network: Network, conductor: str, ratings: dict[str, Number]) -> Figure:
    one, other = network.feeds(conductor)
    parts = []
    for near, far in ((one, other), (other, one)):
        if near.fed:
            groups = (_feeding(near), _closing(far, near))
            passes = [_sum(group, ratings) for group in groups if group]
            if passes:
                parts.append(smallest(passes))
    if not parts or not network.protecting(conductor):
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="no device protects this conductor"))
    return Figure(largest(parts), remarks=(
        f"at its 'from' end: {_named(one.devices) or 'no device'}",
        f"at its 'to' end: {_named(other.devices) or 'no device'}"))


def _named(ids: tuple[str, ...]) -> str:
    """Devices and the like by name; of very many the first and how many more."""
    more = len(ids) - _MOST_NAMED
    return ", ".join(ids[:_MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def _feeding(feed: Feed) -> tuple[str, ...]:
    """The devices all feeding current passes at this end, or none when some passes without."""
    return () if feed.batteries else feed.feeding


def _closing(far: Feed, near: Feed) -> tuple[str, ...]:
    """The devices at the far end of a lead that all current along it passes, if it is such a lead.

    They count where that end feeds too, or where a battery stands unprotected at the near end.
    """
    return far.devices if far.closed and (far.fed or near.batteries) else ()


def _sum(devices: tuple[str, ...], ratings: dict[str, Number]) -> Number:
    total: Number = 0.0
    for device in devices:
        total = total + ratings[device]
    return total


QUANTITIES = (conductor_lengths, conductor_sheaths, device_ratings, is_paralleled,
              unprotected_length, unprotected_zone_sheathed, on_path_of_a_battery,
              is_fed_by_a_battery, is_protected, protection_rating)
