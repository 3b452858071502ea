"""What a current rests on: unknown values, what bounds come from, whether there is a source.

Found per chain and kept, so that a question costs a look at each chain that matters.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, NamedTuple

from garboard.network.graph import BATTERY, INJECTOR
from garboard.network.ranges import Ranges
from garboard.network.rest import Rest
from garboard.network.skeleton import Signed, Skeleton
from garboard.values import Bounds, Cause, Causes, Number, Unknown


class Grounds(NamedTuple):
    """What some elements contribute, apart from their figures."""

    has_source: bool = False
    unknown: Unknown | None = None
    basis: frozenset[str] = frozenset()
    causes: Causes = ()
    #: Whether every value has a nominal figure.
    nominal: bool = True


NOTHING: Final = Grounds()


class GroundsOf:
    """Finds the grounds of elements and rests of one skeleton; ``draw`` is a current in A."""

    def __init__(self, skeleton: Skeleton, ranges: Ranges, draw: Number) -> None:
        self._skeleton, self._ranges = skeleton, ranges
        self._drawn = _of_value(draw)._replace(has_source=True)
        self._chains: dict[int, Grounds] = {}
        self._rests: dict[int, tuple[Rest, Grounds]] = {}

    def rest(self, rest: Rest | None) -> Grounds:
        """The grounds of everything that matters in a rest."""
        if rest is None:
            return NOTHING
        known = self._rests.get(id(rest))
        if known is None:
            known = self._rests[id(rest)] = (rest, self._find(rest))
        return known[1]

    def elements(self, elements: Iterable[Signed]) -> Grounds:
        """The grounds of some elements."""
        parts = []
        for element, _ in elements:
            source = self._skeleton.elements[element].kind in (BATTERY, INJECTOR)
            unknown = self._ranges.unknown.get(element)
            bounds = self._ranges.bounded.get(element, ())
            if source or unknown is not None or bounds:
                parts.append(Grounds(
                    source, unknown, frozenset(b for each in bounds for b in each.basis),
                    tuple(cause for each in bounds for cause in each.causes),
                    all(each.nominal is not None for each in bounds)))
        return joined(parts)

    def _find(self, rest: Rest) -> Grounds:
        parts: list[Grounds] = [] if rest.draw is None else [self._drawn]
        for link in rest.links:
            if link.bundle < 0:
                parts.append(self.elements(link.elements))
            else:
                parts += [self._chain(chain)
                          for chain in self._skeleton.bundles[link.bundle].chains
                          if chain not in link.skipped]
        return joined(parts)

    def _chain(self, number: int) -> Grounds:
        known = self._chains.get(number)
        if known is None:
            known = self._chains[number] = self.elements(self._skeleton.chains[number].elements)
        return known


def joined(parts: list[Grounds]) -> Grounds:
    """The grounds of several parts together."""
    if len(parts) == 1:
        return parts[0]
    has_source, unknown, nominal = False, None, True
    basis: set[str] = set()
    causes: set[Cause] = set()
    for part in parts:
        has_source = has_source or part.has_source
        nominal = nominal and part.nominal
        basis |= part.basis
        causes.update(part.causes)
        if part.unknown is not None:
            unknown = part.unknown if unknown is None else unknown.joined(part.unknown)
    return Grounds(has_source, unknown, frozenset(basis),
                   tuple(sorted(causes, key=Cause.order)), nominal)


def _of_value(value: Number) -> Grounds:
    if isinstance(value, Unknown):
        return Grounds(unknown=value)
    if isinstance(value, Bounds):
        return Grounds(basis=frozenset(value.basis), causes=value.causes,
                       nominal=value.nominal is not None)
    return NOTHING
