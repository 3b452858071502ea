"""What surrounds every hub and chain, worked out for all of them in two passes.

Hubs are eliminated one after the other, the return last. Passing up, each hub hands the next what
it and all before it amount to; passing down, each gets back what all the rest amounts to. So the
whole network around any chain is known as a few connections between the chain's two hubs and the
return, without solving anew for each place: one factorisation per choice of values.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from garboard.network.blocks import elimination
from garboard.network.skeleton import Skeleton
from garboard.network.starmesh import Amount, Net, eliminate, join

#: A connection: u, v, g, s.
Wire = tuple[int, int, Amount, Amount]
#: From this many parts on, sums without one part are taken from running sums.
_MANY: Final = 6


class Plan:
    """The order of elimination of a skeleton's hubs, and who hands on to whom."""

    def __init__(self, skeleton: Skeleton) -> None:
        root = skeleton.reference
        steps = elimination([(each.u, each.v) for each in skeleton.bundles], (root,))
        self.order = [node for node, _ in steps]
        place = {node: number for number, node in enumerate(self.order)}
        place[root] = len(self.order)
        #: For each hub the later hubs it is joined to, the return always among them.
        self.later = {node: tuple(dict.fromkeys((*around, root))) for node, around in steps}
        self.later[root] = ()
        self.children: dict[int, list[int]] = {node: [] for node in (*self.order, root)}
        for node in self.order:
            self.children[min(self.later[node], key=place.__getitem__)].append(node)
        #: For each bundle the hub it belongs to, and the bundles of each hub.
        self.home = [min(each.u, each.v, key=place.__getitem__) for each in skeleton.bundles]
        self.bundles: dict[int, list[int]] = {node: [] for node in (*self.order, root)}
        for number, hub in enumerate(self.home):
            self.bundles[hub].append(number)


class Surroundings:
    """The connections around every hub for one choice of values.

    ``amounts`` gives (g, s) of each bundle, ``None`` where it is open.
    """

    def __init__(self, plan: Plan, skeleton: Skeleton,
                 amounts: list[tuple[Amount, Amount] | None]) -> None:
        self._plan = plan
        self._parts: dict[int, list[list[Wire]]] = {}
        self._running: dict[int, tuple[list[list[Wire]], list[list[Wire]]]] = {}
        self._root = skeleton.reference
        up: dict[int, list[Wire]] = {}
        for hub in (*plan.order, self._root):
            parts: list[list[Wire]] = []
            for number in plan.bundles[hub]:
                bundle, amount = skeleton.bundles[number], amounts[number]
                parts.append([] if amount is None else [(bundle.u, bundle.v, *amount)])
            parts += [up[child] for child in plan.children[hub]]
            self._parts[hub] = parts
            net = _net(parts)
            eliminate(net, hub)
            up[hub] = _wires(net)
        self._down: dict[int, list[Wire]] = {}

    def around(self, hub: int, without: int | None = None) -> Net:
        """Everything around a hub as connections between it and later hubs.

        ``without`` leaves one of its own bundles out.
        """
        if not self._down:
            self._hand_down()
        left_out = None if without is None else self._plan.bundles[hub].index(without)
        return _net((*self._except(hub, left_out), self._down[hub]))

    def _hand_down(self) -> None:
        plan = self._plan
        self._down[self._root] = []
        for hub in (self._root, *reversed(plan.order)):
            first = len(plan.bundles[hub])
            for number, child in enumerate(plan.children[hub], start=first):
                net = _net((*self._except(hub, number), self._down[hub]))
                for node in (hub, *plan.later[hub]):
                    if node not in plan.later[child]:
                        eliminate(net, node)
                self._down[child] = _wires(net)

    def _except(self, hub: int, number: int | None) -> list[list[Wire]]:
        """The parts of a hub but one, those of a long list summed up."""
        parts = self._parts[hub]
        if number is None:
            return parts
        if len(parts) < _MANY:
            return parts[:number] + parts[number + 1:]
        if hub not in self._running:
            self._running[hub] = (_sums(parts), _sums(parts[::-1])[::-1])
        before, after = self._running[hub]
        return [before[number], after[number + 1]]


def _net(parts: Iterable[list[Wire]]) -> Net:
    net: Net = {}
    for part in parts:
        for u, v, g, s in part:
            join(net, u, v, g, s)
    return net


def _wires(net: Net) -> list[Wire]:
    return [(u, v, g, s) for u, row in net.items() for v, (g, s) in row.items() if u < v]


def _sums(parts: list[list[Wire]]) -> list[list[Wire]]:
    """Running sums of parts: of none, the first, the first two ..."""
    sums: list[list[Wire]] = [[]]
    for part in parts:
        sums.append(_wires(_net((sums[-1], part))))
    return sums
