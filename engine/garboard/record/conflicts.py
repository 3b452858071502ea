"""Facts that contradict each other, and the figures within which they are taken to agree.

- The length of a run agrees with the sum of its conductors within 5 % of the larger; otherwise all
  these lengths are in doubt.
- A declared short-circuit current agrees with open-circuit voltage over internal resistance within
  a factor of 2, because the resistance and the peak are taken at different times; otherwise current
  and resistance are in doubt (the voltage has other witnesses). A current that credits the
  electronics may be as small as it likes.
- The energy agrees with nominal voltage times capacity within 10 %, because labels round; otherwise
  all three are in doubt.
- The greatest open-circuit voltage lies between 0.98 and 1.35 times the nominal voltage, whatever
  the chemistry (lead-acid rests at 1.08 when full, lithium cells at 1.05 to 1.2); the voltage found
  at the survey is at most 1.25 times the greatest open-circuit voltage, or else 1.4 times the
  nominal, for it may be charging. Otherwise the two are in doubt: most often one is a slip of the
  pen by a factor of ten.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from garboard.record.conflict import Conflict
from garboard.record.fact import Fact
from garboard.record.thing import Thing
from garboard.values import CONFLICT, Bounds, Cause, Unknown
from garboard.values.units import format_value

LENGTH_SHARE: Final = 0.05
CURRENT_FACTOR: Final = 2.0
ENERGY_SHARE: Final = 0.10
RESTING_LEAST: Final = 0.98
RESTING_MOST: Final = 1.35
FOUND_OVER_RESTING: Final = 1.25
FOUND_OVER_NOMINAL: Final = 1.4

_Interval = tuple[float, float]


def find_conflicts(things: Iterable[Thing]) -> dict[str, Conflict]:
    """All contradictions by the path of each fact in doubt; those facts then read as unknown."""
    conflicts: dict[str, Conflict] = {}
    for thing in things:
        if thing.subject == "run":
            found = [*_run_length(thing)]
        elif thing.subject == "battery":
            found = [*_resting_voltage(thing), *_voltage_found(thing),
                     *_short_circuit_current(thing), *_energy(thing)]
        else:
            continue
        for doubtful, code, words in found:
            _doubt(conflicts, doubtful, code, words)
    return conflicts


_Doubtful = list[tuple[Thing, str]]


def _doubt(conflicts: dict[str, Conflict], doubtful: _Doubtful, code: str, words: str) -> None:
    paths = tuple(f"{thing.id}.{name}" for thing, name in doubtful)
    readings = tuple(thing.facts[name].value for thing, name in doubtful)
    conflict = Conflict(code, paths, readings, words)
    unknown = Unknown(Cause(CONFLICT, path, words) for path in paths)
    for (thing, name), path in zip(doubtful, paths, strict=True):
        earlier = thing.facts[name].value
        value = earlier.joined(unknown) if isinstance(earlier, Unknown) else unknown
        thing.facts[name] = replace(thing.facts[name], value=value)
        conflicts.setdefault(path, conflict)


def _run_length(run: Thing) -> Iterator[tuple[_Doubtful, str, str]]:
    conductors = [part for part in run.groups.get("through", ()) if part.subject == "conductor"]
    stated = _interval(run.facts.get("length"))
    lengths = [(part, _interval(part.facts.get("length"))) for part in conductors]
    known = [(part, length) for part, length in lengths if length is not None]
    if stated is None or not known:
        return
    low = sum(length[0] for _, length in known)
    high = sum(length[1] for _, length in known) if len(known) == len(lengths) else math.inf
    if _meet(stated, (low, high), 1 - LENGTH_SHARE):
        return
    words = (f"{run.id} is {_shown(run.facts['length'], 'length')} long, its conductors together "
             f"{'' if math.isfinite(high) else 'at least '}{format_value(low, 'length')}")
    yield [(run, "length"), *((part, "length") for part, _ in known)], "run-length", words


def _short_circuit_current(battery: Thing) -> Iterator[tuple[_Doubtful, str, str]]:
    facts = battery.facts
    declared = _interval(facts.get("short_circuit_current"))
    voltage = _interval(facts.get("open_circuit_voltage_max"))
    resistance = _interval(facts.get("internal_resistance"))
    if declared is None or voltage is None or resistance is None or resistance[1] <= 0:
        return
    low = voltage[0] / resistance[1]
    high = voltage[1] / resistance[0] if resistance[0] > 0 else math.inf
    if battery.value("short_circuit_current.credits_electronics") is True:
        low = 0.0
    if _meet(declared, (low, high), 1 / CURRENT_FACTOR):
        return
    words = (f"{battery.id} is declared to give {_shown(facts['short_circuit_current'], 'current')}"
             f", its voltage over its resistance gives "
             f"{format_value(voltage[0] / resistance[1], 'current')}")
    yield ([(battery, "short_circuit_current"), (battery, "internal_resistance")],
           "short-circuit-current", words)


def _energy(battery: Thing) -> Iterator[tuple[_Doubtful, str, str]]:
    names = ("energy", "nominal_voltage", "capacity")
    energy, voltage, capacity = (_interval(battery.facts.get(name)) for name in names)
    if energy is None or voltage is None or capacity is None:
        return
    product = (voltage[0] * capacity[0], voltage[1] * capacity[1])
    if _meet(energy, product, 1 - ENERGY_SHARE):
        return
    words = (f"{battery.id} has an energy of {_shown(battery.facts['energy'], 'energy')}, its "
             f"voltage times its capacity is {format_value(product[0], 'energy')}")
    yield [(battery, name) for name in names], "energy", words


def _resting_voltage(battery: Thing) -> Iterator[tuple[_Doubtful, str, str]]:
    names = ("open_circuit_voltage_max", "nominal_voltage")
    resting, nominal = (_interval(battery.facts.get(name)) for name in names)
    if resting is None or nominal is None:
        return
    if resting[1] >= RESTING_LEAST * nominal[0] and resting[0] <= RESTING_MOST * nominal[1]:
        return
    words = (f"{battery.id} rests at up to {_shown(battery.facts[names[0]], 'voltage')} with a "
             f"nominal voltage of {_shown(battery.facts[names[1]], 'voltage')}")
    yield [(battery, name) for name in names], "resting-voltage", words


def _voltage_found(battery: Thing) -> Iterator[tuple[_Doubtful, str, str]]:
    found = _interval(battery.facts.get("voltage_found"))
    if found is None:
        return
    for name, most in (("open_circuit_voltage_max", FOUND_OVER_RESTING),
                       ("nominal_voltage", FOUND_OVER_NOMINAL)):
        other = _interval(battery.facts.get(name))
        if other is None:
            continue
        if found[0] > most * other[1]:
            shown = (_shown(battery.facts[each], "voltage") for each in ("voltage_found", name))
            words = "{} was found at {}, its {} is {}".format(
                battery.id, next(shown), name.replace("_", " "), next(shown))
            yield [(battery, "voltage_found"), (battery, name)], "voltage-found", words
        return


def _meet(one: _Interval, other: _Interval, share: float) -> bool:
    """Whether two intervals meet once each end may be off by a share of the larger."""
    return one[1] >= other[0] * share and other[1] >= one[0] * share


def _interval(fact: Fact | None) -> _Interval | None:
    value = None if fact is None else fact.value
    if isinstance(value, Bounds):
        return value.lo, value.hi
    return (value, value) if isinstance(value, float) else None


def _shown(fact: Fact, dimension: str) -> str:
    return format_value(fact.value, dimension)
