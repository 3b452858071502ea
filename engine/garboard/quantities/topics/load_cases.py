"""What a conductor carries in each load case: all loads, the critical ones only, all charging.

``conductor.continuous_current`` is the greatest of all loads and all charging; here each case
stands alone. A load of constant power counts at the lowest voltage it works at, where it draws the
most.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple, cast

from garboard.quantities.declaration import cite, quantity
from garboard.quantities.flows import Working
from garboard.quantities.spans import at_least_zero
from garboard.values import Number, Truth, chosen

Ids = tuple[str, ...]
Numbers = tuple[Number, ...]

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")
_CASE = ("loads of constant current, or of constant power at the lowest voltage they work at; what "
         "is not recorded leaves the figure open upwards; switches as for the continuous current")
_NEEDS = {"flows": "record.currents", "part": "id", "cases": "record.load_cases"}


class Case(NamedTuple):
    """The current of every load and every charging source in A, by id; zero where it is off."""

    loads: Mapping[str, Number]
    sources: Mapping[str, Number]


@quantity("record.load_cases", kind="opaque",
          needs={"loads": "loads.id", "drawn": "loads.continuous_current",
                 "surges": "loads.greatest_current", "critical": "loads.critical",
                 "sources": "sources.id", "given": "sources.current_max"},
          method="What every load draws and every source gives in each load case; a load of which "
                 "it is not recorded whether it is critical counts in part or whole among these",
          citation=_DEFINITION, valid="any record")
def load_cases(loads: Ids, drawn: Numbers, surges: Numbers, critical: tuple[Truth, ...],
               sources: Ids, given: Numbers) -> dict[str, Case]:
    idle = dict.fromkeys(sources, cast(Number, 0.0))

    def of_critical(currents: Numbers) -> Case:
        return Case({each: cast(Number, chosen(on, at_least_zero(current), 0.0))
                     for each, on, current in zip(loads, critical, currents, strict=True)}, idle)

    return {"all loads": Case(dict(zip(loads, drawn, strict=True)), idle),
            "critical loads": of_critical(drawn), "critical surges": of_critical(surges),
            "all charging": Case(dict.fromkeys(loads, 0.0), dict(zip(sources, given, strict=True)))}


def _in_case(name: str, flows: Working, part: str, cases: Mapping[str, Case]) -> Number:
    return flows.greatest(part, *cases[name])


@quantity("conductor.all_loads_current", dimension="current", needs=_NEEDS,
          method="What it carries with all loads on and no charging source",
          citation=_PRACTICE, valid=_CASE)
def all_loads_current(flows: Working, part: str, cases: Mapping[str, Case]) -> Number:
    return _in_case("all loads", flows, part, cases)


@quantity("conductor.critical_loads_current", dimension="current", needs=_NEEDS,
          method="What it carries with the critical loads on and nothing else",
          citation=_PRACTICE, valid=_CASE)
def critical_loads_current(flows: Working, part: str, cases: Mapping[str, Case]) -> Number:
    return _in_case("critical loads", flows, part, cases)


@quantity("conductor.critical_loads_surge_current", dimension="current", needs=_NEEDS,
          method="What it carries with the critical loads on and nothing else, each at the greater "
                 "of its continuous current and its surge",
          citation=_PRACTICE, valid="critical loads starting at once, an upper bound")
def critical_loads_surge_current(flows: Working, part: str, cases: Mapping[str, Case]) -> Number:
    return _in_case("critical surges", flows, part, cases)


@quantity("conductor.all_charging_current", dimension="current", needs=_NEEDS,
          method="What it carries with all charging sources at their greatest output and no load",
          citation=_PRACTICE, valid=_CASE)
def all_charging_current(flows: Working, part: str, cases: Mapping[str, Case]) -> Number:
    return _in_case("all charging", flows, part, cases)


QUANTITIES = (load_cases, all_loads_current, critical_loads_current, critical_loads_surge_current,
              all_charging_current)
