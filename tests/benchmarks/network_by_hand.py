"""The currents of the corrected river survey launch, worked out with numpy for this boat alone.

Written as one would for a single survey: the topology stands here as numbers, there are no units,
no unknowns, no causes and no derivations. Bounds are found at the corners of the three packs'
resistances, all corners in one batch of matrices. The values come from the record as read.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product
from typing import Any, Final

import numpy as np

PACKS: Final = ("pack-1", "pack-2", "pack-3")
NODES: Final = ("return", "pack-1", "1/1", "1/2", "pack-2", "2/1", "2/2", "pack-3", "3/1", "3/2",
                "main-bus", "f/1", "f/2", "distribution-bus", "p/1", "panel", "i/1", "inverter",
                "w/1", "winch", "s/1", "sounder", "b/1", "bilge", "alternator", "a/1", "charger",
                "c/1", "solar", "so/1")
#: Conductors, devices and the switch, each from node to node; the return is no row of the matrix.
PARTS: Final = {
    "w1a": ("pack-1", "1/1"), "f1": ("1/1", "1/2"), "w1b": ("1/2", "main-bus"),
    "w2a": ("pack-2", "2/1"), "f2": ("2/1", "2/2"), "w2b": ("2/2", "main-bus"),
    "w3a": ("pack-3", "3/1"), "f3": ("3/1", "3/2"), "w3b": ("3/2", "main-bus"),
    "f0": ("main-bus", "f/1"), "w0": ("f/1", "f/2"), "main-switch": ("f/2", "distribution-bus"),
    "f4": ("distribution-bus", "p/1"), "w4": ("p/1", "panel"),
    "f5": ("distribution-bus", "i/1"), "w5": ("i/1", "inverter"),
    "b1": ("panel", "w/1"), "w6": ("w/1", "winch"),
    "b2": ("panel", "s/1"), "w7": ("s/1", "sounder"),
    "f8": ("distribution-bus", "b/1"), "w8": ("b/1", "bilge"),
    "w9": ("alternator", "a/1"), "f9": ("a/1", "distribution-bus"),
    "w10": ("charger", "c/1"), "f10": ("c/1", "distribution-bus"),
    "w11": ("solar", "so/1"), "f11": ("so/1", "distribution-bus"),
}
BUSES: Final = ("main-bus", "distribution-bus", "panel")
DEVICES: Final = tuple(part for part in PARTS if part[0] in "fb")
CONDUCTORS: Final = tuple(part for part in PARTS if part[0] == "w")
#: What protects each conductor from overload: on the battery leads the lesser of both ends.
PROTECTED_BY: Final = {
    "w1a": (("f1",),), "w2a": (("f2",),), "w3a": (("f3",),),
    "w1b": (("f1",), ("f2", "f3")), "w2b": (("f2",), ("f1", "f3")), "w3b": (("f3",), ("f1", "f2")),
    "w0": (("f0",),), "w4": (("f4",),), "w5": (("f5",),), "w6": (("b1",),), "w7": (("b2",),),
    "w8": (("f8",),), "w9": (("f9",),), "w10": (("f10",),), "w11": (("f11",),),
}
#: Areas of AWG 18 to 4/0 in mm² and their ampacities by insulation (33 CFR 183.425 Table 5).
AWG_AREAS: Final = np.array([0.823, 1.31, 2.08, 3.31, 5.26, 8.37, 13.3, 21.15, 26.67, 33.63, 42.41,
                             53.48, 67.43, 85.03, 107.2])
AMPACITY: Final = {90.0: np.array([20, 25, 35, 40, 55, 70, 100, 135, 155, 180, 210, 245, 285, 330,
                                   385.0]),
                   105.0: np.array([20, 25, 35, 45, 60, 80, 120, 160, 180, 210, 245, 285, 330, 385,
                                    445.0])}

_NUMBER = {node: number - 1 for number, node in enumerate(NODES)}
_ENDS = np.array([[_NUMBER[node] for node in PARTS[part]] for part in PARTS])
_PACK_NODES = np.array([_NUMBER[pack] for pack in PACKS])
_BUS_NODES = np.array([_NUMBER[bus] for bus in BUSES])
_PLACE = {part: place for place, part in enumerate(PARTS)}
_DEVICE_PLACES = np.array([_PLACE[device] for device in DEVICES])
_CONDUCTOR_PLACES = np.array([_PLACE[conductor] for conductor in CONDUCTORS])

Facts = Mapping[str, Any]


def facts_of(things: Mapping[str, Any]) -> Facts:
    """The values the calculation starts from, as arrays, from the things of a record."""
    packs = [things[pack] for pack in PACKS]
    wires = [things[wire] for wire in CONDUCTORS]
    places = {name: thing.value("temperature.low") for name, thing in things.items()
              if thing.subject == "place"}
    resistances = [pack.value("internal_resistance") for pack in packs]
    return {
        "emf": np.array([pack.value("open_circuit_voltage_max") for pack in packs]),
        "resistance": np.array([[each.lo, each.hi] for each in resistances]),
        "nominal": np.array([each.nominal for each in resistances]),
        "charge_limit": np.array([pack.value("charge.current_max") for pack in packs]),
        "area": np.array([wire.value("size").area_mm2 for wire in wires]),
        "length": np.array([wire.value("length") for wire in wires]),
        "insulation": np.array([wire.value("insulation") for wire in wires]),
        "coldest": np.array([min(places[each] for each in wire.value("crosses"))
                             for wire in wires]),
        "device_resistance": np.array([things[each].value("resistance") for each in DEVICES]),
        "rating": {each: things[each].value("rating") for each in DEVICES},
        "switch": things["main-switch"].value("resistance"),
        "source_current": [things[each].value("current_max")
                           for each in ("alternator", "shore-charger", "solar-regulator")],
    }


def by_hand(facts: Facts) -> dict[str, Any]:
    """All figures by the names the program gives them: arrays of low, high and nominal."""
    cold = (facts["length"] / 58 / facts["area"]) * ((facts["coldest"] + 234.5) / 254.5)
    parts = np.empty(len(PARTS))
    parts[_CONDUCTOR_PLACES] = 2 * cold
    parts[_DEVICE_PLACES] = facts["device_resistance"]
    parts[_PLACE["main-switch"]] = facts["switch"]
    packs = np.array([*product(*facts["resistance"]), facts["nominal"]])
    impedance, voltage = _solved(parts, packs, facts["emf"])
    prospective, through = _devices(impedance, voltage, parts)
    diagonal = impedance[:, _BUS_NODES, _BUS_NODES]
    shares = 1 / (packs + _leads(parts))
    shares /= shares.sum(axis=1, keepdims=True)
    return {
        "cold_resistance": cold, "loop_resistance": 2 * cold,
        "fault_current of batteries": _ranges(facts["emf"] / packs),
        "fault_current of buses": _ranges(voltage[:, _BUS_NODES] / diagonal),
        "prospective_current": _ranges(prospective), "through_current": _ranges(through),
        "ampacity": _ampacities(facts["area"], facts["insulation"]),
        "protection_rating": [min(sum(facts["rating"][each] for each in group)
                                  for group in PROTECTED_BY[wire]) for wire in CONDUCTORS],
        "charging_current_sum": sum(facts["source_current"]),
        "charge_current_limit": np.minimum(_ranges(facts["charge_limit"] / shares).min(axis=0),
                                           np.sum(facts["charge_limit"])),
    }


def _solved(parts: Any, packs: Any, emf: Any) -> tuple[Any, Any]:
    """Impedances between nodes and open-circuit voltages, for every choice of pack resistances."""
    size = len(NODES) - 1
    matrix = np.zeros((size, size))
    conductance = 1 / parts
    one, other = _ENDS.T
    np.add.at(matrix, (one, one), conductance)
    np.add.at(matrix, (other, other), conductance)
    np.add.at(matrix, (one, other), -conductance)
    np.add.at(matrix, (other, one), -conductance)
    matrices = np.repeat(matrix[None], len(packs), axis=0)
    matrices[:, _PACK_NODES, _PACK_NODES] += 1 / packs
    impedance = np.linalg.inv(matrices)
    return impedance, np.einsum("cnp,cp->cn", impedance[:, :, _PACK_NODES], emf / packs)


def _devices(impedance: Any, voltage: Any, parts: Any) -> tuple[Any, Any]:
    """Currents through every device for a short at either end, the larger; without and with it.

    The device is taken out by a change of rank one, then its shorted end joined to the return.
    """
    one, other = _ENDS[_DEVICE_PLACES].T
    conductance = 1 / parts[_DEVICE_PLACES]
    column = impedance[:, :, one] - impedance[:, :, other]
    across = (np.take_along_axis(column, one[None, None], 1)
              - np.take_along_axis(column, other[None, None], 1))[:, 0]
    rest = 1 - conductance * across
    bridge = rest < 1e-9
    factor = np.where(bridge, 0.0, conductance / np.where(bridge, 1.0, rest))
    drop = voltage[:, one] - voltage[:, other]
    found = []
    for near, far in ((one, other), (other, one)):
        at_near = np.take_along_axis(column, near[None, None], 1)[:, 0]
        at_far = np.take_along_axis(column, far[None, None], 1)[:, 0]
        z_near = impedance[:, near, near] + factor * at_near ** 2
        z_far = impedance[:, far, far] + factor * at_far ** 2
        z_both = impedance[:, near, far] + factor * at_near * at_far
        v_near = voltage[:, near] + factor * at_near * drop
        v_far = voltage[:, far] + factor * at_far * drop
        # a device with nothing but loads beyond: only what lies before it feeds a short behind it
        fed = ~bridge | (impedance[:, near, near] < impedance[:, far, far])
        z = np.where(bridge, impedance[:, near, near], z_near - z_both ** 2 / z_far)
        v = np.where(bridge, voltage[:, near], v_near - z_both * v_far / z_far)
        found.append((np.where(fed, v, 0.0), z))
    resistance = parts[_DEVICE_PLACES]
    return (np.maximum(*(v / z for v, z in found)),
            np.maximum(*(v / (z + resistance) for v, z in found)))


def _leads(parts: Any) -> Any:
    return np.array([sum(parts[_PLACE[f"{kind}{number}{end}"]] for kind, end in
                         (("w", "a"), ("f", ""), ("w", "b"))) for number in (1, 2, 3)])


def _ranges(values: Any) -> Any:
    """Low, high and nominal (the last choice) of each column."""
    return np.stack([values.min(axis=0), values.max(axis=0), values[-1]], axis=1)


def _ampacities(area: Any, insulation: Any) -> Any:
    rows = np.searchsorted(AWG_AREAS, area * 1.0001, side="right") - 1
    return np.where(insulation >= 105.0, AMPACITY[105.0][rows], AMPACITY[90.0][rows])
