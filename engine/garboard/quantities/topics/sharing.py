"""How strings in parallel share a current, what the bank as connected can give, one string out.

The current divides by the resistances between the cells and where the strings meet, whatever the
labels say. A bank gives what its hardest-pressed string gives over that string's share, never the
sum of the limits; with one string out the rest carry it all.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import accumulate
from typing import cast

from garboard.network import Circuit, Network
from garboard.quantities.declaration import Figure, Quantity, cite, quantity
from garboard.quantities.spans import at_least_zero, size, total_at_least
from garboard.values import (
    OUTSIDE_METHOD,
    Number,
    Truth,
    Unknown,
    chosen,
    format_value,
    largest,
    quotient,
    smallest,
    total,
)

Ids = tuple[str, ...]
Numbers = tuple[Number, ...]
Shares = Mapping[str, Number]

_DEFINITION = cite("definition", "definition")
_NODAL = cite("nodal analysis of a resistive network, checked against ngspice", "definition")
#: Each string taken out is a network of its own, asked for the share of every string left: the work
#: grows with the cube of their number.
MOST_TAKEN_OUT = 64
_STATE = "equal EMFs, so equal states of charge; current drawn where the strings meet"


@quantity("bank.shares", kind="opaque",
          needs={"bank": "id", "circuit": "record.largest_fault_circuit"},
          method="Part of a current drawn where the strings meet that each string carries, by "
                 "string", citation=_NODAL, valid=_STATE)
def bank_shares(bank: str, circuit: Circuit) -> dict[str, Number]:
    return circuit.shares(bank)


@quantity("bank.shares_as_found", kind="opaque",
          needs={"bank": "id", "circuit": "record.largest_fault_circuit", "network": "network"},
          method="The shares of the strings that were connected at the survey, where a switch was "
                 "found open; none where none was, or where none was connected",
          citation=_NODAL, valid=_STATE)
def bank_shares_as_found(bank: str, circuit: Circuit, network: Network) -> dict[str, Number]:
    if not network.found_open:
        return {}
    shares = circuit.without(*network.found_open).shares(bank)
    return {string: share for string, share in shares.items()
            if not ((isinstance(share, float) and share == 0.0) or _unreached(share))}


def _unreached(share: Number) -> bool:
    return isinstance(share, Unknown) and share.reason == OUTSIDE_METHOD and not share.paths


@quantity("bank.shares_one_out", kind="opaque",
          needs={"bank": "id", "circuit": "record.largest_fault_circuit", "network": "network"},
          method="The shares of the strings that are left, for each string taken out in turn",
          citation=_NODAL, valid=f"{_STATE}; at most {MOST_TAKEN_OUT} strings in the bank",
          version="2")
def bank_shares_one_out(bank: str, circuit: Circuit,
                        network: Network) -> dict[str, dict[str, Number]] | Unknown:
    strings = network.bank(bank).strings
    if len(strings) > MOST_TAKEN_OUT:
        return Unknown.because(OUTSIDE_METHOD, detail=(
            f"{bank} has {len(strings)} strings: at most {MOST_TAKEN_OUT} are taken out in turn"))
    found = {}
    for out in strings:
        shares = circuit.without(*out.batteries).shares(bank)
        found[out.id] = {each: share for each, share in shares.items() if each != out.id}
    return found


@quantity("string.share", dimension="ratio",
          needs={"string": "id", "shares": "bank.shares"},
          method="Its part of a current drawn where the strings meet", citation=_NODAL,
          valid=_STATE)
def string_share(string: str, shares: Shares) -> Number:
    return shares[string]


@quantity("bank.worst_share_departure", dimension="ratio",
          needs={"shares": "shares"},
          method="The greatest difference of a string's share from an equal share, over an equal "
                 "share", citation=_DEFINITION, valid=_STATE)
def worst_share_departure(shares: Shares) -> Figure:
    count = float(len(shares))
    return Figure(largest([size(share * count - 1.0) for share in shares.values()]),
                  remarks=_remarks(shares))


@quantity("string.discharge_current_limit", dimension="current",
          needs={"limits": "batteries.discharge.current_max"},
          method="The least discharging limit of the batteries in the string",
          citation=_DEFINITION, valid="one current through all of them")
def string_discharge_current_limit(limits: Numbers) -> Number:
    return smallest(limits)


@quantity("string.discharge_trip", dimension="current",
          needs={"trips": "batteries.managed_by.trips.discharge_current"},
          method="The least discharging current at which a management system in it disconnects",
          citation=_DEFINITION, valid="batteries with a management system")
def string_discharge_trip(trips: Numbers) -> Number:
    return smallest(trips)


def _least(ids: Ids, limits: Numbers, shares: Shares) -> Number:
    limit_of = dict(zip(ids, limits, strict=True))
    return smallest([quotient(limit_of[each], share) for each, share in shares.items()])


def _limit(ids: Ids, limits: Numbers, shares: Shares, as_found: Shares) -> Figure:
    return Figure(smallest([_least(ids, limits, each) for each in (shares, as_found) if each]),
                  remarks=_remarks(shares))


def _limit_one_out(ids: Ids, limits: Numbers, one_out: Mapping[str, Shares]) -> Figure:
    """The least over the strings taken out in turn."""
    if len(one_out) < 2:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="no other string is left"))
    found = {out: _least(ids, limits, shares) for out, shares in one_out.items()}
    return Figure(smallest(found.values()), remarks=tuple(
        f"without {out}: {format_value(value, 'current')}" for out, value in found.items()))


def _remarks(shares: Shares) -> Ids:
    return tuple(f"share of {string}: {format_value(share, 'ratio')}"
                 for string, share in shares.items())


def _bank_limit(name: str, what: str, limits: str) -> tuple[Quantity, Quantity]:
    """Two quantities: a limit of the bank as connected, and with any one string out."""
    how = (f"The least over the strings of {what} over its share of the current (shares by the DC "
           "network, equal EMFs); never the sum. With every switch closed or as found, the lesser")
    as_connected = quantity(
        f"bank.{name}", dimension="current", method=how, citation=_DEFINITION, valid=_STATE,
        needs={"ids": "strings.id", "limits": limits, "shares": "shares",
               "as_found": "shares_as_found"}, version="2")(_limit)
    one_out = quantity(
        f"bank.{name}_one_out", dimension="current", citation=_DEFINITION, valid=_STATE,
        method=f"{how}; for each string taken out in turn, the least",
        needs={"ids": "strings.id", "limits": limits,
               "one_out": "shares_one_out"})(_limit_one_out)
    return as_connected, one_out


discharge_limits = _bank_limit("discharge_current_limit", "its discharging limit",
                               "strings.discharge_current_limit")
discharge_trips = _bank_limit("discharge_trip", "the current its management system trips at",
                              "strings.discharge_trip")
charge_one_out = _bank_limit("charge_current_limit", "its charging limit",
                             "strings.charge_current_limit")[1]


@quantity("bank.load_current", dimension="current",
          needs={"currents": "loads.continuous_current"},
          method="Sum of the continuous currents of its loads", citation=_DEFINITION,
          valid="all loads at once; what is not recorded leaves it open upwards")
def bank_load_current(currents: Numbers) -> Number:
    return total_at_least(currents)


@quantity("bank.critical_load_current", dimension="current",
          needs={"currents": "loads.continuous_current", "critical": "loads.critical"},
          method="Sum of the continuous currents of its critical loads", citation=_DEFINITION,
          valid="the critical loads alone; a load of which that is not recorded counts in part or "
                "whole")
def bank_critical_load_current(currents: Numbers, critical: tuple[Truth, ...]) -> Number:
    return total_at_least(cast(Number, chosen(each, at_least_zero(current), 0.0))
                          for current, each in zip(currents, critical, strict=True))


@quantity("bank.currents_on_surge", kind="opaque",
          needs={"ids": "loads.id", "currents": "loads.continuous_current",
                 "greatest": "loads.greatest_current"},
          method="Sum of the continuous currents of its loads, with one of them at its surge, by "
                 "the id of that one",
          citation=_DEFINITION, valid="one load starting while all others run")
def currents_on_surge(ids: Ids, currents: Numbers, greatest: Numbers) -> dict[str, Number]:
    before = list(accumulate(map(at_least_zero, currents), initial=0.0))
    after = list(accumulate(map(at_least_zero, reversed(currents)), initial=0.0))[::-1]
    return {each: total_at_least((before[place], greatest[place], after[place + 1]))
            for place, each in enumerate(ids)}


@quantity("bank.surge_current", dimension="current", needs={"surges": "currents_on_surge"},
          method="Sum of the continuous currents of its loads, with that load at its surge which "
                 "adds the most",
          citation=_DEFINITION, valid="one load starting while all others run")
def bank_surge_current(surges: Mapping[str, Number]) -> Number:
    return largest(surges.values()) if surges else 0.0


@quantity("bank.trips_in_cascade", kind="truth",
          needs={"current": "load_current", "trip": "discharge_trip_one_out"},
          method="With any one string out, the loads draw more than the current at which the next "
                 "management system disconnects",
          citation=_DEFINITION, valid=_STATE)
def trips_in_cascade(current: Number, trip: Number) -> Truth:
    verdict: Truth = current > trip
    return verdict


@quantity("string.voltage_found", dimension="voltage",
          needs={"voltages": "batteries.voltage_found"},
          method="Sum of the voltages of its batteries as found at the survey",
          citation=_DEFINITION, valid="voltages found at rest, at the same time")
def string_voltage_found(voltages: Numbers) -> Number:
    return total(voltages)


@quantity("bank.equalising_current", dimension="current",
          needs={"bank": "id", "circuit": "record.largest_fault_circuit",
                 "batteries": "record.batteries.id", "found": "record.batteries.voltage_found"},
          method="The greatest current in a string when strings at the voltages found at the "
                 "survey are joined and nothing else draws",
          citation=_NODAL, valid="the first moment; voltages found with the strings apart")
def equalising_current(bank: str, circuit: Circuit, batteries: Ids, found: Numbers) -> Figure:
    joined = circuit.with_emfs(dict(zip(batteries, found, strict=True)))
    currents = joined.string_currents(bank, 0.0)
    return Figure(largest([size(each) for each in currents.values()]), remarks=tuple(
        f"{string}: {format_value(current, 'current')}" for string, current in currents.items()))


QUANTITIES = (bank_shares, bank_shares_as_found, bank_shares_one_out, string_share,
              worst_share_departure,
              string_discharge_current_limit, string_discharge_trip, *discharge_limits,
              *discharge_trips, charge_one_out, bank_load_current, bank_critical_load_current,
              currents_on_surge,
              bank_surge_current, trips_in_cascade, string_voltage_found, equalising_current)
