"""The values of a circuit's elements as ranges: both ends, the nominal figure, and what is unknown.

A resistance is never negative: bounds that reach below zero are cut there. An unrecorded
resistance of a conductor, device or switch is *at least zero*: at one end a joint of no resistance,
at the other as good as no connection. A battery's unknown resistance or EMF stays unknown.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Final

from garboard.network.graph import BATTERY, INJECTOR, JOINT, Edge
from garboard.values import UNRECORDED, Bounds, Number, Unknown

_INF: Final = math.inf
#: Ω at the open end of a resistance. No connection at all would leave a current from outside (a
#: draw, a charging source) nowhere to flow, though it flows through any resistance there can be.
_AS_GOOD_AS_OPEN: Final = 1e30


class Ranges:
    """For each element: resistance in Ω and EMF in V (of an injector: its current in A).

    Raises KeyError for an element without a value, ValueError for a negative resistance or a figure
    that is no number.
    """

    def __init__(self, elements: Sequence[Edge], resistance: Mapping[str, Number],
                 emf: Mapping[str, Number], injected: Mapping[str, Number]) -> None:
        self.resistance_lo: list[float] = []
        self.resistance_hi: list[float] = []
        self.emf_lo: list[float] = []
        self.emf_hi: list[float] = []
        self._resistance_nominal: list[float | None] = []
        self._emf_nominal: list[float | None] = []
        #: Elements whose value is unknown.
        self.unknown: dict[int, Unknown] = {}
        self.bounded: dict[int, tuple[Bounds, ...]] = {}
        for number, edge in enumerate(elements):
            if edge.kind == INJECTOR:
                values: tuple[Number, Number] = (0.0, injected[edge.id])
            elif edge.kind == BATTERY:
                values = (resistance[edge.id], emf[edge.id])
            elif edge.kind == JOINT:
                values = (0.0, 0.0)
            else:
                values = (_at_least_zero(resistance[edge.id]), 0.0)
            self._add(number, edge, *values)

    def _add(self, number: int, edge: Edge, resistance: Number, emf: Number) -> None:
        if type(resistance) is float and type(emf) is float and resistance >= 0 and abs(emf) < _INF:
            self.resistance_lo.append(resistance)
            self.resistance_hi.append(resistance)
            self._resistance_nominal.append(resistance)
            self.emf_lo.append(emf)
            self.emf_hi.append(emf)
            self._emf_nominal.append(emf)
            return
        unknown = [value for value in (resistance, emf) if isinstance(value, Unknown)]
        if unknown:
            self.unknown[number] = unknown[0].joined(unknown[-1])
            resistance = emf = 0.0
        low, high, nominal = _ends(edge, resistance)
        if high < 0 or (low < 0 and not isinstance(resistance, Bounds)):
            raise ValueError(f"the resistance of {edge.id!r} is negative: {resistance!r}")
        self.resistance_lo.append(max(low, 0.0))
        self.resistance_hi.append(min(high, _AS_GOOD_AS_OPEN) if low < high else high)
        self._resistance_nominal.append(None if nominal is None else max(nominal, 0.0))
        low, high, nominal = _ends(edge, emf)
        if math.isinf(low) or math.isinf(high):
            if not isinstance(emf, Bounds):
                raise ValueError(f"the voltage of {edge.id!r} is infinite")
            self.unknown[number] = Unknown(emf.causes)
            low = high = 0.0
        self.emf_lo.append(low)
        self.emf_hi.append(high)
        self._emf_nominal.append(nominal)
        bounds = tuple(value for value in (resistance, emf) if isinstance(value, Bounds))
        if bounds:
            self.bounded[number] = bounds

    @property
    def exact(self) -> bool:
        """Whether every value is a single known number."""
        return not self.bounded and not self.unknown

    def resistance_varies(self, element: int) -> bool:
        return self.resistance_lo[element] < self.resistance_hi[element]

    def emf_varies(self, element: int) -> bool:
        return self.emf_lo[element] < self.emf_hi[element]

    def nominal(self) -> tuple[list[float], list[float]]:
        """Nominal resistances and EMFs; the low end where there is no nominal."""
        return ([low if value is None else value for value, low in
                 zip(self._resistance_nominal, self.resistance_lo, strict=True)],
                [low if value is None else value for value, low in
                 zip(self._emf_nominal, self.emf_lo, strict=True)])


def _at_least_zero(resistance: Number) -> Number:
    if isinstance(resistance, Unknown) and not resistance.is_error:
        return Bounds(0.0, math.inf, basis=(UNRECORDED,), causes=resistance.causes)
    return resistance


def _ends(edge: Edge, value: Number) -> tuple[float, float, float | None]:
    if isinstance(value, Bounds):
        return value.lo, value.hi, value.nominal
    if isinstance(value, Unknown) or math.isnan(value):
        raise ValueError(f"{edge.id!r} has {value!r} where a number is needed")
    return float(value), float(value), float(value)
