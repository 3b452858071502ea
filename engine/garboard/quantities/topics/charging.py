"""Charging: what can flow at once, what the bank accepts, which sources can be stopped, cold."""

from __future__ import annotations

from collections.abc import Sequence

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.item import Item
from garboard.values import Number, Truth, Unknown, any_of, smallest

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")


@quantity("bank.charging_current_sum", dimension="current",
          needs={"currents": "sources.current_max"},
          method="Sum of the greatest output currents of all charging sources connected to it",
          citation=_PRACTICE, valid="all sources charging at once")
def charging_current_sum(currents: tuple[Number, ...]) -> Number:
    total: Number = 0.0
    for current in currents:
        total = total + current
    return total


@quantity("string.charge_current_limit", dimension="current",
          needs={"limits": "batteries.charge.current_max"},
          method="The least charging limit of the batteries in the string",
          citation=_DEFINITION, valid="one current through all of them")
def string_charge_current_limit(limits: tuple[Number, ...]) -> Number:
    return smallest(limits)


@quantity("bank.charge_current_limit", dimension="current",
          needs={"strings": "strings", "limits": "strings.charge_current_limit",
                 "circuit": "record.largest_fault_circuit", "bank": "id"},
          method="The least over the strings of its charging limit over its share of the current "
                 "(shares by the DC network); never the sum of the limits",
          citation=_PRACTICE, valid="current entering where the strings meet; equal charge states")
def charge_current_limit(strings: Sequence[Item], limits: tuple[Number, ...], circuit: object,
                         bank: str) -> Figure:
    shares = circuit.shares(bank)  # type: ignore[attr-defined]
    parts = []
    for string, limit in zip(strings, limits, strict=True):
        share = shares[string.id]
        if isinstance(share, Unknown):
            return Figure(share)
        parts.append(limit / share)
    return Figure(smallest(parts))


@quantity("source.can_be_stopped", kind="truth", unknowns="passed",
          needs={"source": "id", "outputs": "record.management_systems.outputs"},
          method="An output of a management system is recorded as stopping it",
          citation=_DEFINITION, valid="outputs recorded with what each stops")
def can_be_stopped(source: str, outputs: tuple[object, ...] | Unknown) -> Truth:
    if isinstance(outputs, Unknown):
        return outputs
    return any_of(_stops(output, source) for output in outputs)


def _stops(output: object, source: str) -> Truth:
    if isinstance(output, Unknown):
        return output
    stopped = output["stops"] if isinstance(output, Item) else ()
    return stopped if isinstance(stopped, Unknown) else source in stopped


@quantity("battery.charge_inhibited_in_cold", kind="truth",
          needs={"inhibit": "managed_by.inhibits_charge_below",
                 "limit": "charge.temperature.low"},
          method="The management system inhibits charging at or above the battery's own lowest "
                 "charging temperature",
          citation=_PRACTICE, valid="an inhibit that acts on every charging source")
def charge_inhibited_in_cold(inhibit: Number, limit: Number) -> Truth:
    verdict: Truth = inhibit >= limit
    return verdict


QUANTITIES = (charging_current_sum, string_charge_current_limit, charge_current_limit,
              can_be_stopped, charge_inhibited_in_cold)
