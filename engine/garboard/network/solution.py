"""One choice of values on a skeleton: what the rest of it amounts to, seen from two nodes."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import Final

from garboard.network.density import core_of
from garboard.network.graph import INJECTOR
from garboard.network.rest import Link, Local, Rest
from garboard.network.skeleton import Signed, Skeleton
from garboard.network.starmesh import INF, NOTHING, Amount, Net, NoAnswer, eliminate, join
from garboard.network.surroundings import Plan, Surroundings

#: From this many chains on, sums over a bundle without one chain are taken from running sums.
_LONG_BUNDLE: Final = 8


class Solution:
    """Resistances in Ω (0 and infinity allowed), EMFs in V, injected currents in A, by element.

    ``emf`` holds the injected current of an injector. ``draw`` is the current drawn from outside in
    A, positive from the first to the second node of a rest's ``draw``.
    """

    def __init__(self, skeleton: Skeleton, resistance: Sequence[Amount], emf: Sequence[Amount],
                 draw: Amount = 0.0) -> None:
        self._skeleton = skeleton
        self._resistance, self._emf, self._draw = resistance, emf, draw
        self._chains: dict[int, tuple[Amount, Amount] | None] = {}
        self._running: dict[int, tuple[list[_Sum], list[_Sum]]] = {}
        self._seen: dict[int, tuple[Rest, tuple[Amount, Amount]]] = {}

    def seen_from(self, rest: Rest | None) -> tuple[Amount, Amount]:
        """The rest of the network as one connection (g, s) from ``rest.u`` to ``rest.v``."""
        if rest is None:
            return (INF, 0.0)
        known = self._seen.get(id(rest))
        if known is not None:
            return known[1]
        result = None if rest.local is None or self._dense else self._quickly(rest)
        if result is None:
            result = self._by_links(rest)
        self._seen[id(rest)] = (rest, result)
        return result

    @cached_property
    def _dense(self) -> bool:
        """Whether a part of the network is not worked out: then each place is, for itself."""
        return bool(core_of(self._skeleton))

    def _by_links(self, rest: Rest) -> tuple[Amount, Amount]:
        net: Net = {}
        for link in rest.links:
            amount = self._amount(link)
            if amount is not None:
                join(net, link.u, link.v, *amount)
        if rest.draw is not None:
            join(net, rest.draw[0], rest.draw[1], 0.0, self._draw)
        for node in rest.order:
            eliminate(net, node)
        return net.get(rest.u, {}).get(rest.v, NOTHING)

    def _quickly(self, rest: Rest) -> tuple[Amount, Amount] | None:
        """The same by the surroundings; ``None`` where the equations elsewhere have no answer."""
        try:
            return self._by_surroundings(rest, rest.local or Local(-1, rest.u))
        except NoAnswer:
            return None

    def _by_surroundings(self, rest: Rest, local: Local) -> tuple[Amount, Amount]:
        if local.chain < 0:
            net = self._around_hub(rest.u)
        else:
            elements, nodes = self._skeleton.chains[local.chain]
            net = self._around_chain(local.chain)
            left_out = local.fault >= 0
            for first, last in ((0, local.position), (local.position + left_out, len(elements))):
                amount = self._piece(elements[first:last]) if first < last else None
                if amount is not None:
                    join(net, nodes[first], nodes[last], *amount)
            if left_out:
                join(net, local.fault, rest.v, INF, 0.0)
        for node in list(net):
            if node not in (rest.u, rest.v):
                eliminate(net, node)
        return net.get(rest.u, {}).get(rest.v, NOTHING)

    def _around_hub(self, hub: int) -> Net:
        surroundings, plan = self._surroundings
        return surroundings.around(hub) if hub in plan.later else {}

    def _around_chain(self, chain: int) -> Net:
        """The network around a chain, the chain itself left out."""
        surroundings, plan = self._surroundings
        if chain not in self._skeleton.bundle_of:
            return self._around_hub(self._skeleton.chains[chain].nodes[0])
        number = self._skeleton.bundle_of[chain]
        net = surroundings.around(plan.home[number], without=number)
        u, v, chains = self._skeleton.bundles[number]
        if len(chains) > 1:
            amount = self._amount(Link(u, v, (), number, (chain,)))
            if amount is not None:
                join(net, u, v, *amount)
        return net

    @cached_property
    def _surroundings(self) -> tuple[Surroundings, Plan]:
        skeleton = self._skeleton
        if "plan" not in skeleton.kept:
            skeleton.kept["plan"] = Plan(skeleton)
        plan: Plan = skeleton.kept["plan"]
        amounts = [self._amount(Link(each.u, each.v, (), number))
                   for number, each in enumerate(skeleton.bundles)]
        return Surroundings(plan, skeleton, amounts), plan

    def series(self, elements: Iterable[Signed]) -> tuple[Amount, Amount]:
        """Resistance and EMF of elements in series; a single infinity when one of them is open."""
        resistance: Amount = 0.0
        emf: Amount = 0.0
        for element, sign in elements:
            own = self._resistance[element]
            if isinstance(own, float) and own == math.inf:
                return math.inf, 0.0
            resistance = resistance + own
            emf = emf + self._emf[element] if sign > 0 else emf - self._emf[element]
        return resistance, emf

    def _amount(self, link: Link) -> tuple[Amount, Amount] | None:
        if link.bundle < 0:
            return self._piece(link.elements)
        chains = self._skeleton.bundles[link.bundle].chains
        if len(chains) < _LONG_BUNDLE or len(link.skipped) != 1:
            return _summed(self._chain(chain) for chain in chains if chain not in link.skipped)
        before, after = self._running_sums(link.bundle, chains)
        position = chains.index(link.skipped[0])
        return _summed((before[position], after[position + 1]))

    def _running_sums(self, bundle: int, chains: tuple[int, ...]) -> tuple[list[_Sum], list[_Sum]]:
        """Sums over the first 0, 1, 2 ... chains of a bundle, and over all but those."""
        if bundle not in self._running:
            before: list[_Sum] = [None]
            for chain in chains:
                before.append(_summed((before[-1], self._chain(chain))))
            after: list[_Sum] = [None]
            for chain in reversed(chains):
                after.append(_summed((self._chain(chain), after[-1])))
            self._running[bundle] = (before, after[::-1])
        return self._running[bundle]

    def _chain(self, number: int) -> tuple[Amount, Amount] | None:
        if number not in self._chains:
            self._chains[number] = self._piece(self._skeleton.chains[number].elements)
        return self._chains[number]

    def _piece(self, elements: tuple[Signed, ...]) -> tuple[Amount, Amount] | None:
        """Elements in series as (g, s); ``None`` when one of them is open."""
        first, sign = elements[0]
        if self._skeleton.elements[first].kind == INJECTOR:
            return (0.0, self._emf[first] * sign)
        resistance, emf = self.series(elements)
        if isinstance(resistance, float):
            if resistance == math.inf:
                return None
            if resistance < _LEAST:
                return (INF, emf)
        conductance = 1.0 / resistance
        return (conductance, conductance * emf)


#: 1 / resistance overflows below this, in Ω.
_LEAST: Final = 1e-300

_Sum = tuple[Amount, Amount] | None


def _summed(parts: Iterable[_Sum]) -> _Sum:
    """Connections side by side."""
    net: Net = {}
    for part in parts:
        if part is not None:
            join(net, 0, 1, *part)
    return net[0][1] if net else None
