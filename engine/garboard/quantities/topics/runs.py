"""Runs: how the current comes back, over what length and resistance."""

from __future__ import annotations

import math

from garboard.network import Network
from garboard.quantities.copper import CITATION, copper, copper_at, resistance_at_20
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import unrecorded
from garboard.quantities.topics.conductors import cooled
from garboard.values import CONFLICT, Number, Unknown, smallest
from garboard.values.conductor_size import ConductorSize

_DEFINITION = cite("definition", "definition")


@quantity("run.carries", kind="text", needs={"network": "network", "run": "id"},
          method="'positive' for a run from the positive side whose return may be folded into it; "
                 "'negative' for a run on the negative side; 'link' between batteries in series",
          citation=_DEFINITION, valid="any run")
def carries(network: Network, run: str) -> str:
    return network.carries(run)


@quantity("run.ends_at_a_battery", kind="truth", needs={"network": "network", "run": "id"},
          method="It leads to a terminal of a battery, whatever its use is said to be",
          citation=_DEFINITION, valid="any run")
def ends_at_a_battery(network: Network, run: str) -> bool:
    terminals = {node for edge in network.layout.batteries for node in (edge.start, edge.end)}
    return not terminals.isdisjoint(network.layout.ends[run])


@quantity("run.ends_at_a_load", kind="truth", needs={"network": "network", "run": "id"},
          method="It leads to the positive terminal of a load, whatever its use is said to be",
          citation=_DEFINITION, valid="any run")
def ends_at_a_load(network: Network, run: str) -> bool:
    return any(end in network.load_terminals for end in network.layout.ends[run])


@quantity("run.ends_at_a_source", kind="truth", needs={"network": "network", "run": "id"},
          method="It leads to the positive terminal of a charging source, whatever its use is said "
                 "to be",
          citation=_DEFINITION, valid="any run")
def ends_at_a_source(network: Network, run: str) -> bool:
    ends = network.layout.ends[run]
    return any(edge.end in ends for edge in network.layout.injectors)


@quantity("run.return_is_traced", kind="truth", needs={"network": "network", "run": "id"},
          method="It leads to the positive terminal of a battery, source or load whose negative "
                 "terminal is traced in runs of its own",
          citation=_DEFINITION, valid="any run")
def return_is_traced(network: Network, run: str) -> bool:
    return network.return_is_traced(run)


@quantity("run.returns", kind="text", unknowns="passed",
          needs={"word": "return", "size": "return.size", "length": "return.length",
                 "insulation": "return.insulation", "resistance": "return.resistance",
                 "own": "return.run", "traced": "return_is_traced",
                 "everywhere": "wiring.returns"},
          method="How the current comes back: 'own runs' where those are traced, else as the run "
                 "says, else as the whole wiring does: 'stated' (size and length, or resistance, "
                 "or only some of it), 'as outgoing', 'neglected' or 'own runs'. A run that says "
                 "what its traced return is like contradicts it",
          citation=_DEFINITION, valid="any run")
def returns(word: str | Unknown, size: ConductorSize | Unknown, length: Number,
            insulation: Number, resistance: Number, own: str | Unknown, traced: bool,
            everywhere: str | Unknown) -> str | Unknown:
    if not isinstance(own, Unknown):
        return "own runs"
    if not all(isinstance(each, Unknown) for each in (size, length, insulation, resistance)):
        word = "stated"
    if traced and not isinstance(word, Unknown) and word in ("stated", "as outgoing"):
        return Unknown.because(CONFLICT, detail="the run says what its return is like, and the "
                                                "negative terminal is traced in another run")
    if traced:
        return "own runs"
    if not isinstance(word, Unknown):
        return word
    return everywhere if not isinstance(everywhere, Unknown) else word.joined(everywhere)


@quantity("run.outgoing_length", dimension="length", needs={"lengths": "conductors.length"},
          method="Sum of the lengths of its conductors, one way", citation=_DEFINITION,
          valid="runs with conductors")
def outgoing_length(lengths: tuple[Number, ...]) -> Number:
    total: Number = 0.0
    for length in lengths:
        total = total + length
    return total


@quantity("run.return_cold_resistance", dimension="resistance", unknowns="passed",
          needs={"stated": "return.resistance", "found_at": "return.resistance.temperature",
                 "size": "return.size", "length": "return.length",
                 "coldest": "conductors.lowest_temperature", "insulation": "return.insulation"},
          method="Resistance of the return as stated, brought to the lowest temperature of the "
                 "run's conductors as theirs is; else a lower bound: annealed copper of the full "
                 "nominal area at that temperature. A missing fact leaves a resistance of at least "
                 "zero",
          citation=CITATION, valid="copper; the largest fault current (cold conductors)")
def return_cold_resistance(stated: Number, found_at: Number, size: ConductorSize | Unknown,
                           length: Number, coldest: tuple[Number, ...] | Unknown,
                           insulation: Number) -> Figure:
    temperature = coldest if isinstance(coldest, Unknown) else smallest(coldest)
    if not isinstance(stated, Unknown):
        return cooled(stated, found_at, temperature, insulation)
    if isinstance(size, Unknown) or isinstance(length, Unknown):
        return Figure(unrecorded(0.0, math.inf, stated.joined(size).joined(length)))
    if isinstance(temperature, Unknown):
        temperature = unrecorded(-copper().zero, math.inf, temperature)
    at_20 = resistance_at_20(length, size.area_mm2)
    return Figure(at_20 * copper_at(temperature), copper().rows)


QUANTITIES = (carries, ends_at_a_battery, ends_at_a_load, ends_at_a_source, return_is_traced,
              returns, outgoing_length, return_cold_resistance)
