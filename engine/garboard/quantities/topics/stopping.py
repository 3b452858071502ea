"""Stopping charging sources before a management system disconnects, and what happens if not."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.item import Item
from garboard.quantities.spans import high_end, unrecorded
from garboard.quantities.table import table
from garboard.values import (
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Cause,
    Number,
    Truth,
    Unknown,
    all_of,
    any_of,
    largest,
    member_of,
    negated,
    quotient,
    smallest,
)

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")
_OUTPUTS = ("outputs recorded with what each stops and what makes it act; one that acts on alarms "
            "leaves it open, since which alarms is not on record")
_LOAD_DUMP = cite("ISO 16750-2 test A (as reprinted)", "reprinted")


@quantity("source.can_be_stopped", kind="truth", unknowns="passed",
          needs={"source": "id", "outputs": "record.management_systems.outputs"},
          method="An output of a management system that acts when charging must stop is recorded "
                 "as stopping it; one that acts on discharging only is not",
          citation=_DEFINITION, valid=_OUTPUTS, version="2")
def can_be_stopped(source: str, outputs: tuple[Item | Unknown, ...] | Unknown) -> Truth:
    if isinstance(outputs, Unknown):
        return outputs
    return any_of(_stops(output, source) for output in outputs)


@quantity("management_system.stops_by_source", kind="opaque", unknowns="passed",
          needs={"sources": "record.sources.id", "outputs": "outputs"},
          method="Whether one of its outputs that acts when charging must stop is recorded as "
                 "stopping a charging source, by the source's id",
          citation=_DEFINITION, valid=_OUTPUTS, version="2")
def stops_by_source(sources: tuple[str, ...] | Unknown,
                    outputs: tuple[Item, ...] | Unknown) -> dict[str, Truth] | Unknown:
    if isinstance(sources, Unknown):
        return sources
    if isinstance(outputs, Unknown):
        return dict.fromkeys(sources, outputs)
    return {source: any_of(_stops(output, source) for output in outputs) for source in sources}


@quantity("source.stopped_by_all", kind="truth",
          needs={"source": "id", "lithium": "banks.batteries.is_lithium",
                 "systems": "banks.batteries.managed_by.stops_by_source"},
          method="The management system of every lithium battery it can charge, also over a switch "
                 "that couples two banks, has an output that stops it",
          citation=_PRACTICE, valid=f"lithium batteries with a management system; {_OUTPUTS}",
          version="2")
def stopped_by_all(source: str, lithium: tuple[Truth, ...],
                   systems: tuple[Mapping[str, Truth] | Unknown, ...]) -> Truth:
    return all_of((each if isinstance(each, Unknown) else each[source]) | negated(of_lithium)
                  for of_lithium, each in zip(lithium, systems, strict=True))


@quantity("source.stop_is_fail_safe", kind="truth",
          needs={"source": "id", "outputs": "record.management_systems.outputs"},
          method="Every output that stops it when charging must stop does so on a broken wire or "
                 "lost supply too; none at all is no",
          citation=_PRACTICE, valid=_OUTPUTS, version="2")
def stop_is_fail_safe(source: str, outputs: tuple[Any, ...]) -> Truth:
    return _every_stop(source, outputs, "fail_safe")


@quantity("source.stops_before_disconnect", kind="truth",
          needs={"source": "id", "outputs": "record.management_systems.outputs"},
          method="Every output that stops it when charging must stop does so before its management "
                 "system disconnects; none at all is no",
          citation=_PRACTICE, valid=_OUTPUTS)
def stops_before_disconnect(source: str, outputs: tuple[Any, ...]) -> Truth:
    return _every_stop(source, outputs, "before_disconnect")


@quantity("source.longest_stop_time", dimension="time",
          needs={"source": "id", "own": "stop_time",
                 "outputs": "record.management_systems.outputs"},
          method="The longest time in which an output that stops it when charging must stop "
                 "acts, plus its own time from the stop signal to no output current (field decay, "
                 "relay, bus message)",
          citation=_PRACTICE, valid=_OUTPUTS, version="2")
def longest_stop_time(source: str, own: Number, outputs: tuple[Any, ...]) -> Number:
    times: list[Number] = []
    for output in outputs:
        stops = _stops(output, source)
        if stops is not False:
            time = output["acts_in"]
            times.append(time if stops is True else stops.joined(time))
    if not times:
        return Unknown.because(OUTSIDE_METHOD, detail="no output stops it")
    return largest(times) + own


@quantity("source.least_warning_time", dimension="time",
          needs={"warns": "bank.batteries.managed_by.warning.before_disconnect",
                 "times": "bank.batteries.managed_by.warning.time"},
          method="The least time by which a management system of the bank it charges warns before "
                 "it disconnects; none where one does not warn",
          citation=_DEFINITION, valid="batteries with a management system")
def least_warning_time(warns: tuple[Truth, ...], times: tuple[Number, ...]) -> Number:
    found = [0.0 if does is False else (does.joined(time) if isinstance(does, Unknown) else time)
             for does, time in zip(warns, times, strict=True)]
    return smallest(found)


@quantity("source.load_dump_voltage", dimension="voltage", unknowns="passed",
          needs={"kind": "kind", "nominal": "nominal_voltage", "fitted": "suppressor.fitted",
                 "clamps_at": "suppressor.clamps_at"},
          method="Where an alternator has a suppressor, the voltage that clamps at; else the range "
                 "of the load-dump test for its nominal voltage",
          citation=_LOAD_DUMP,
          valid="alternators of 12 V and 24 V nominal whose battery is cut off at full output")
def load_dump_voltage(kind: str | Unknown, nominal: Number, fitted: Truth,
                      clamps_at: Number) -> Figure:
    if isinstance(kind, Unknown):
        return Figure(kind)
    if kind != "alternator":
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"a {kind}"))
    if fitted is True:
        return Figure(clamps_at)
    if isinstance(fitted, Unknown):
        return Figure(fitted)
    return _tested(nominal, "voltage")


@quantity("source.load_dump_time", dimension="time",
          needs={"kind": "kind", "nominal": "nominal_voltage"},
          method="Range of durations of the load-dump test for its nominal voltage",
          citation=_LOAD_DUMP, valid="alternators of 12 V and 24 V nominal")
def load_dump_time(kind: str, nominal: Number) -> Figure:
    if kind != "alternator":
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"a {kind}"))
    return _tested(nominal, "time")


def _tested(nominal: Number, what: str) -> Figure:
    if isinstance(nominal, Unknown):
        return Figure(nominal)
    tests = table("load-dump-iso16750-2")
    row = f"{nominal:g} V" if isinstance(nominal, float) else ""
    low, high = tests.cell(row, f"{what} low"), tests.cell(row, f"{what} high")
    if low is None or high is None:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"{tests.title}: no row for it"))
    why = Cause(OUTSIDE_METHOD, detail="where in the range of the test this alternator lies")
    return Figure(Bounds(low, high, basis=(UNRECORDED,), causes=(why,)),
                  tuple(tests.reference(row, f"{what} {end}") for end in ("low", "high")))


@quantity("source.duty_share", dimension="ratio", unknowns="passed",
          needs={"greatest": "current_max", "accepted": "bank.charge_current_limit",
                 "continuous": "continuous_current"},
          method="The lesser of its greatest output and what the bank accepts, over the current it "
                 "delivers hot for hours: a lithium bank takes all it is given until it is full",
          citation=_PRACTICE, valid="one source alone; its continuous output as recorded")
def duty_share(greatest: Number, accepted: Number, continuous: Number) -> Number:
    if isinstance(greatest, Unknown):
        return greatest
    asked = (unrecorded(0.0, high_end(greatest), accepted) if isinstance(accepted, Unknown)
             else smallest([greatest, accepted]))
    return quotient(asked, continuous)


@quantity("source.rated_for_its_place", kind="truth",
          needs={"rated": "rated_temperature", "hottest": "place.temperature.high"},
          method="Its rating holds at the highest temperature of the place it stands in",
          citation=_DEFINITION, valid="ratings and places with a temperature on record")
def rated_for_its_place(rated: Number, hottest: Number) -> Truth:
    verdict: Truth = hottest <= rated
    return verdict


def _every_stop(source: str, outputs: tuple[Any, ...], fact: str) -> Truth:
    """Whether an output stops a source, and a fact holds of every one that does."""
    verdict: Truth = any_of(_stops(output, source) for output in outputs)
    for output in outputs:
        verdict = verdict & ((_stops(output, source) ^ True) | output[fact])
    return verdict


def _stops(output: Item | Unknown | Mapping[str, Any], source: str) -> Truth:
    """Whether an output stops a source when charging must stop."""
    if isinstance(output, Unknown):
        return output
    named = member_of(source, output["stops"])
    word = output["acts_on"]
    if isinstance(word, Unknown):
        return named & word
    if word == "alarm":
        return named & Unknown.because(OUTSIDE_METHOD, detail="which alarms make its output act")
    return named & (word in ("charging must stop", "both"))


QUANTITIES = (can_be_stopped, stops_by_source, stopped_by_all, stop_is_fail_safe,
              stops_before_disconnect, longest_stop_time,
              least_warning_time, load_dump_voltage, load_dump_time, duty_share,
              rated_for_its_place)
