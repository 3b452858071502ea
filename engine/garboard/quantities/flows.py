"""The currents in the parts of an installation while its loads or its charging sources run.

Loads and sources are taken as currents. Where the batteries lie on one side of a part only, the
part carries what stands on the other side, whatever the resistances. Where they lie on both, as
with a battery's own lead, or where the part is in a ring, each current divides as the DC network
says, batteries of equal EMF.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal

from garboard.network import Circuit, Network, Side
from garboard.quantities.spans import high_end, low_end, total_at_least, unrecorded
from garboard.values import OUTSIDE_METHOD, Bounds, Number, Unknown, largest, total

Case = Literal["loads", "sources"]


class Flows:
    """``loads`` and ``sources``: the current of each in A, never negative, by id.

    ``circuit`` has equal EMFs. An unknown current leaves a sum open upwards.
    """

    def __init__(self, network: Network, circuit: Circuit, loads: Mapping[str, Number],
                 sources: Mapping[str, Number]) -> None:
        self.network, self._circuit = network, circuit
        self._loads, self._sources = loads, sources
        self._shares: dict[tuple[str, str], Number] = {}
        self._signed: dict[tuple[str, Case], Number] = {}

    def reaches(self, part: str) -> bool:
        """Whether a part is there and a battery on one of its sides."""
        if part not in self.network.graph.edges:
            return False
        sides = self.network.sides(part)
        return sides is None or bool(sides[0].strings or sides[1].strings)

    def signed(self, part: str, case: Case) -> Number:
        """The current from a part's start to its end while all of one kind run."""
        key = (part, case)
        if key not in self._signed:
            self._signed[key] = self._find_signed(part, case)
        return self._signed[key]

    def _find_signed(self, part: str, case: Case) -> Number:
        sides = self.network.sides(part)
        if sides is not None and not (sides[0].strings and sides[1].strings):
            if not sides[0].strings and not sides[1].strings:
                return Unknown.because(OUTSIDE_METHOD, detail="no battery reaches it")
            far, sign = (sides[1], 1.0) if sides[0].strings else (sides[0], -1.0)
            amount = total_at_least(self._of(far, case))
            return amount * (sign * self._towards(part) * (1.0 if case == "loads" else -1.0))
        return total(self._divided(part, case))

    def delivers(self, part: str, node: str, case: Case) -> bool:
        """Whether behind a part, seen from a node, there are batteries and nothing of a case.

        While only that case runs, its current then all flows one way.
        """
        sides = self.network.sides(part)
        if sides is None:
            return False
        edge = self.network.graph.edges[part]
        near, far = sides if edge.start == node else sides[::-1]
        taken = far.loads if case == "loads" else far.sources
        return bool(far.strings and near.strings) and not taken

    def may_deliver(self, part: str, node: str) -> bool:
        """Whether batteries stand, or may stand, behind a part, seen from a node."""
        sides = self.network.sides(part)
        if sides is None:
            return True
        edge = self.network.graph.edges[part]
        return bool(sides[1 if edge.start == node else 0].strings)

    def greatest(self, part: str, loads: Mapping[str, Number] | None = None,
                 sources: Mapping[str, Number] | None = None) -> Number:
        """The greatest current in a part, whichever loads and sources run; others in their place.

        ``loads`` and ``sources`` name all of the record; one that is off has a current of zero.
        """
        loads = self._loads if loads is None else loads
        sources = self._sources if sources is None else sources
        sides = self.network.sides(part)
        if sides is None or (sides[0].strings and sides[1].strings):
            return self._greatest_divided(part, loads, sources)
        if not sides[0].strings and not sides[1].strings:
            return Unknown.because(OUTSIDE_METHOD, detail="no battery reaches it")
        far = sides[1] if sides[0].strings else sides[0]
        return largest([total_at_least(loads[each] for each in far.loads),
                        total_at_least(sources[each] for each in far.sources)])

    def _of(self, side: Side, case: Case) -> Iterable[Number]:
        if case == "loads":
            return [self._loads[each] for each in side.loads]
        return [self._sources[each] for each in side.sources]

    def _towards(self, part: str) -> float:
        """On the negative side a load's current flows to the batteries, not from them."""
        edge = self.network.graph.edges[part]
        return -1.0 if self.network.polarity(edge.start) == "negative" else 1.0

    def _greatest_divided(self, part: str, loads: Mapping[str, Number],
                          sources: Mapping[str, Number]) -> Number:
        """All loads and sources that drive a current one way, and all that drive it the other."""
        forwards, backwards = [], []
        for case, sign in (("loads", 1.0), ("sources", -1.0)):
            amounts = loads if case == "loads" else sources
            for identity in self._connected(part, amounts):
                share = self._share(part, identity) * sign
                if isinstance(share, Unknown):
                    return share
                forwards.append(_at_least_part(share, amounts[identity]))
                backwards.append(_at_least_part(-share, amounts[identity]))
        return largest([total_at_least(forwards), total_at_least(backwards)])

    def _divided(self, part: str, case: Case) -> list[Number]:
        amounts = self._loads if case == "loads" else self._sources
        sign = 1.0 if case == "loads" else -1.0
        return [self._share(part, each) * sign * amounts[each]
                for each in self._connected(part, amounts)]

    def _connected(self, part: str, amounts: Mapping[str, Number]) -> list[str]:
        """Of some loads or sources, those that stand in the same island as a part."""
        layout = self.network.layout
        start = self.network.graph.edges[part].start
        return [each for each in amounts if layout.positive(each) in layout.traced
                and (layout.islands.joined(layout.positive(each), start)
                     or self.network.polarity(start) != "positive")]

    def _share(self, part: str, identity: str) -> Number:
        """The part of a load's current that flows through a part, from its start to its end."""
        node = self.network.attached(self.network.layout.positive(identity))
        key = (part, node)
        if key not in self._shares:
            self._shares[key] = self._circuit.currents_at(1.0, node, (part,))[part]
        return self._shares[key]


class Working:
    """The flows with every switch closed, and, where some were found open, as found too.

    A switch that can be closed will be, so a current counts in whichever state it is greater.
    """

    def __init__(self, *states: Flows) -> None:
        self.states = states

    def greatest(self, part: str, loads: Mapping[str, Number] | None = None,
                 sources: Mapping[str, Number] | None = None) -> Number:
        """The greatest current in a part in either state."""
        closed, *others = self.states
        return largest([closed.greatest(part, loads, sources), *(
            each.greatest(part, loads, sources) for each in others if each.reaches(part))])


def _at_least_part(share: Number, amount: Number) -> Number:
    """What a share of a current amounts to, counting only what flows forwards."""
    low, high = max(low_end(share), 0.0), max(high_end(share), 0.0)
    if high == 0.0:
        return 0.0
    counted: Number = low if low == high else Bounds(
        low, high, basis=share.basis if isinstance(share, Bounds) else (),
        causes=share.causes if isinstance(share, Bounds) else ())
    if isinstance(amount, Unknown):
        return unrecorded(0.0, float("inf"), amount)
    return counted * amount
