"""What feeds a short circuit besides batteries and has no contribution on record."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from functools import reduce
from typing import Any, Final

from garboard.network import Network
from garboard.network.sides import Side
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.largest import LargestFaults
from garboard.quantities.spans import high_end, low_end, unrecorded
from garboard.quantities.topics.faults import MOTORS
from garboard.values import Number, Unknown, largest, total

Ids = tuple[str, ...]
Words = tuple[str | Unknown, ...]
Numbers = tuple[Number, ...]
Currents = Mapping[str, Number]

_DEFINITION = cite("definition", "definition")
#: Charging sources that make their current with electronics, and limit it so.
CHARGERS: Final = ("shore charger", "solar regulator", "DC converter")
#: Multiples of the currents up to which what cannot decide may be left out.
MOST_MULTIPLE: Final = 20
#: How many machines a figure names, with what is missing of each.
MOST_NAMED: Final = 20
_HOW = ("that declare no contribution and feed the device in the fault that puts most through it. "
        "In a short at one of its ends only what stands beyond the other flows through it; where "
        "both ends can come to the larger current, the greater sum")
_VALID = ("machines in reach over conductors, devices, closed switches and buses; one whose runs "
          "are not traced counts as in reach; multiples of the figure up to 20")


@quantity("record.undeclared_machines", kind="opaque", unknowns="passed",
          needs={"sources": "sources.id", "source_kinds": "sources.kind",
                 "declared": "sources.fault_contribution", "rated": "sources.rated_current",
                 "most": "sources.current_max", "loads": "loads.id", "load_kinds": "loads.kind",
                 "fed_back": "loads.fault_contribution", "drawn": "loads.continuous_current"},
          method="By its id, nothing up to the rated or greatest current of every alternator, "
                 "generator and other source that turns, and of every load that is a motor, that "
                 "declares no fault contribution. What is of no kind on record counts as one",
          citation=_DEFINITION, valid="charging sources and loads with their currents on record")
def undeclared_machines(
        sources: Ids | Unknown, source_kinds: Words | Unknown, declared: Numbers | Unknown,
        rated: Numbers | Unknown, most: Numbers | Unknown, loads: Ids | Unknown,
        load_kinds: Words | Unknown, fed_back: Numbers | Unknown, drawn: Numbers | Unknown,
        ) -> Currents | Unknown:
    found: dict[str, Number] = {}
    if isinstance(sources, Unknown) or isinstance(loads, Unknown):
        return _missing(sources, loads)
    for name, kind, said, *currents in _each(sources, source_kinds, declared, rated, most):
        if isinstance(said, Unknown) and kind not in CHARGERS:
            found[name] = _up_to(_greatest(currents), said, kind)
    for name, kind, said, *currents in _each(loads, load_kinds, fed_back, drawn):
        if isinstance(said, Unknown) and (isinstance(kind, Unknown) or kind in MOTORS):
            found[name] = _up_to(_greatest(currents), said, kind)
    return found


@quantity("record.undeclared_chargers", kind="opaque", unknowns="passed",
          needs={"sources": "sources.id", "kinds": "sources.kind",
                 "declared": "sources.fault_contribution", "rated": "sources.rated_current",
                 "most": "sources.current_max"},
          method="By its id, nothing up to the rated or greatest current of every charger, solar "
                 "regulator and converter that declares no fault contribution",
          citation=_DEFINITION, valid="charging sources with their currents on record")
def undeclared_chargers(sources: Ids | Unknown, kinds: Words | Unknown,
                        declared: Numbers | Unknown, rated: Numbers | Unknown,
                        most: Numbers | Unknown) -> Currents | Unknown:
    if isinstance(sources, Unknown):
        return sources
    return {name: _up_to(_greatest(currents), said, kind)
            for name, kind, said, *currents in _each(sources, kinds, declared, rated, most)
            if isinstance(said, Unknown) and kind in CHARGERS}


@quantity("device.undeclared_machine_current", dimension="current", unknowns="passed",
          needs={"network": "network", "device": "id", "faults": "record.largest_faults",
                 "machines": "record.undeclared_machines"},
          method=f"Nothing up to the sum of the currents of the machines {_HOW}",
          citation=_DEFINITION, valid=_VALID)
def undeclared_machine_current(network: Network, device: str, faults: LargestFaults | Unknown,
                               machines: Currents | Unknown) -> Figure:
    return _adding(network, device, faults, machines)


@quantity("device.undeclared_charger_current", dimension="current", unknowns="passed",
          needs={"network": "network", "device": "id", "faults": "record.largest_faults",
                 "chargers": "record.undeclared_chargers"},
          method=f"Nothing up to the sum of the greatest currents of the chargers {_HOW}",
          citation=_DEFINITION, valid=_VALID)
def undeclared_charger_current(network: Network, device: str, faults: LargestFaults | Unknown,
                               chargers: Currents | Unknown) -> Figure:
    return _adding(network, device, faults, chargers)


def _adding(network: Network, device: str, faults: LargestFaults | Unknown,
            currents: Currents | Unknown) -> Figure:
    if isinstance(currents, Unknown):
        return Figure(unrecorded(0.0, math.inf, currents))
    islands, layout = network.layout.islands, network.layout
    here = islands.of(network.graph.edges[device].start)
    joined = [each for each in currents if layout.positive(each) not in layout.traced
              or islands.of(layout.positive(each)) == here]
    groups = [joined]
    sides = network.sides(device)
    if sides is not None and not isinstance(faults, Unknown) and joined:
        found = faults.through(device, own_resistance=False)
        groups = _deciding([
            (current, [each for each in joined if each not in beyond])
            for current, beyond in ((found.at_to, _standing(sides[1])),
                                    (found.at_from, _standing(sides[0])))], currents)
    feeding = max(groups, key=lambda group: _most(group, currents))
    return Figure(_sum(feeding, currents), remarks=(
        f"they are: {', '.join(feeding[:MOST_NAMED]) or 'none'}",))


def _sum(names: list[str], currents: Currents) -> Number:
    """Their sum; what is missing is named of the largest only, where there are very many."""
    if not names:
        return 0.0
    named = sorted(names, key=lambda each: (-high_end(currents[each]), each))[:MOST_NAMED]
    why = total([currents[each] for each in named])
    return why if isinstance(why, float) else unrecorded(0.0, _most(names, currents), why)


def _standing(side: Side) -> frozenset[str]:
    return frozenset((*side.sources, *side.loads))


def _deciding(ways: list[tuple[Number, list[str]]], currents: Currents) -> list[list[str]]:
    """What feeds a device in a short at either end: where it can come to the larger of the two.

    ``ways``: for a short at each end the current without the machines, and the machines that feed
    the device from the other.
    """
    most = max(low_end(current) for current, _ in ways)
    return [feeding for current, feeding in ways
            if not high_end(current) + MOST_MULTIPLE * _most(feeding, currents) < most]


def _most(names: list[str], currents: Currents) -> float:
    return sum(high_end(currents[each]) for each in names)


def _each(names: Ids, *columns: tuple[object, ...] | Unknown) -> Iterator[tuple[Any, ...]]:
    """Row by row; a column that is not known as a whole is not in any row."""
    return zip(names, *([each] * len(names) if isinstance(each, Unknown) else each
                        for each in columns), strict=True)


def _greatest(currents: list[Number]) -> Number:
    """The greatest of the currents on record; unknown where none is."""
    known = [each for each in currents if not isinstance(each, Unknown)]
    return largest(known or currents)


def _up_to(current: Number, *missing: object) -> Number:
    """Nothing up to a current, for as long as what is missing is not known."""
    why = [each for each in (*missing, current) if isinstance(each, Unknown)]
    return unrecorded(0.0, high_end(current), reduce(Unknown.joined, why))


def _missing(*lists: object) -> Unknown:
    unknown = [each for each in lists if isinstance(each, Unknown)]
    return reduce(Unknown.joined, unknown)


QUANTITIES = (undeclared_machines, undeclared_chargers, undeclared_machine_current,
              undeclared_charger_current)
