"""The largest fault currents: devices and switches without a resistance on record have none.

That is part of what the largest fault is (cells warm, new and full, conductors cold, joints and
devices zero, every source connected), so a missing resistance leaves no open end. Where one without
resistance would draw current away from the place asked about, as a device side by side with it
does, the greatest current over all its possible resistances counts.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import cached_property

from garboard.network import Circuit, Network, SidedCurrent
from garboard.network.circuit import larger_side
from garboard.quantities.spans import high_end, low_end, unrecorded
from garboard.values import UNRECORDED, Bounds, Number, Unknown, largest


class LargestFaults:
    """Answers about one record.

    ``circuit`` holds an unrecorded resistance as at least zero; ``contacts`` are the ids of the
    devices and switches without one. ``left_out``: charging sources and motors that declare no
    contribution. ``untraced``: why a battery is in none of the circuits, if one is; wherever it is
    joined, it adds to a fault, so that every current is at least what is found without it.
    """

    def __init__(self, network: Network, circuit: Circuit, contacts: tuple[str, ...],
                 left_out: tuple[str, ...] = (), untraced: Unknown | None = None) -> None:
        self._network, self._circuit, self._contacts = network, circuit, frozenset(contacts)
        self.left_out, self._untraced = left_out, untraced

    @cached_property
    def _without_contacts(self) -> Circuit:
        return self._circuit.with_resistances(dict.fromkeys(self._contacts, 0.0))

    def fault_current(self, node: str) -> Number:
        """Current in A of a short at a node."""
        return self._opened(self._traced_current(node))

    def _traced_current(self, node: str) -> Number:
        found = self._circuit.fault_current(node)
        if not self._contacts or isinstance(found, float):
            return found
        return _definite(found, self._without_contacts.fault_current(node))

    def through(self, part: str, *, own_resistance: bool) -> SidedCurrent:
        """The larger of the currents in A through a part for a short at either of its ends."""
        found = self._traced_through(part, own_resistance=own_resistance)
        if self._untraced is None:
            return found
        return SidedCurrent(self._opened(found.value), found.side, found.at_from, found.at_to)

    def _opened(self, current: Number) -> Number:
        if self._untraced is None or isinstance(current, Unknown):
            return current
        return unrecorded(low_end(current), math.inf, self._untraced)

    def _traced_through(self, part: str, *, own_resistance: bool) -> SidedCurrent:
        found = self._circuit.device_current(part, own_resistance=own_resistance)
        if not self._contacts or isinstance(found.value, float):
            return found
        least = self._without_contacts.device_current(part, own_resistance=own_resistance)
        sides = [_definite(*each) for each in
                 ((found.at_from, least.at_from), (found.at_to, least.at_to))]
        beside = self._open_beside(part)
        if beside:
            alone = self._without_contacts.without(*beside).device_current(
                part, own_resistance=own_resistance)
            sides = [_beside(*each) for each in
                     zip(sides, (alone.at_from, alone.at_to), strict=True)]
        return SidedCurrent(largest(sides), larger_side(*sides), *sides)

    def _open_beside(self, part: str) -> tuple[str, ...]:
        """The devices without a resistance on record that stand side by side with one."""
        if self._network.graph.edges[part].kind != "device":
            return ()
        return tuple(each for each in self._network.beside(part)
                     if each != part and each in self._contacts)


def contacts_of(resistances: Mapping[str, Number]) -> tuple[str, ...]:
    """The ids whose resistance is only known to be at least zero."""
    return tuple(each for each, value in resistances.items()
                 if isinstance(value, Bounds) and UNRECORDED in value.basis and value.lo == 0.0)


def _beside(found: Number, alone: Number) -> Number:
    """The current where another device of any resistance lies side by side.

    It grows with that resistance, up to the current alone; but where both have none it is any.
    """
    return alone if high_end(found) == math.inf else _at_least(found, alone)


def _definite(over_all: Number, at_zero: Number) -> Number:
    """From the least with contacts of no resistance to the greatest with any resistance.

    For each value of what else is not one number, the greatest current over all resistances lies
    between the two.
    """
    if isinstance(at_zero, Unknown):
        return over_all
    if isinstance(over_all, Unknown):
        return unrecorded(low_end(at_zero), math.inf, over_all)
    if high_end(at_zero) >= high_end(over_all):
        return at_zero
    return _at_least(over_all, at_zero)


def _at_least(found: Number, least: Number) -> Number:
    """Bounds with their low end raised to that of a figure which is not above the true one."""
    if isinstance(found, Unknown) or isinstance(least, Unknown) or low_end(least) <= low_end(found):
        return found
    low, high = min(low_end(least), high_end(found)), high_end(found)
    return high if low == high else Bounds(
        low, high, basis=(UNRECORDED,), causes=found.causes if isinstance(found, Bounds) else ())
