"""The question of a conversion, load circuit by load circuit: must anything but the bank change?

That a conductor is unchanged says that its ampacity is. It says nothing about what a fault now
puts through it, or whether its device can still clear one: those are looked at again, apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final

from garboard.reports.comparison.aboard import Aboard, Circuit, Known
from garboard.trail import Trail
from garboard.values import Bounds, Truth, Unknown

UNCHANGED: Final = "unchanged as recorded"
CHANGED: Final = "changed"
ADDED: Final = "not in the record before"
REMOVED: Final = "not in the record after"
UNKNOWN: Final = "not known"

AMPACITY: Final = "ampacity"
PROTECTION: Final = "protection"
WITHSTAND: Final = "withstand"
SELECTIVITY: Final = "selectivity"
WINDOW: Final = "voltage window"
#: Facts without which it cannot be said that a conductor is the same.
_WANTED: Final = ("size", "length", "insulation")
_LEFT_OUT: Final = ("note",)


@dataclass(frozen=True, slots=True)
class Check:
    """Something to be looked at again: a figure that must stand in a relation to another.

    ``against`` is the name of a figure, or a number; ``None``: the figure is a truth.
    """

    topic: str
    thing: str
    figure: str
    relation: str = ""
    against: str | float | None = None


CHECKS: Final = (
    Check(PROTECTION, "device", "breaking_capacity", ">=", "prospective_current"),
    Check(PROTECTION, "device", "voltage_rating", ">=", "highest_system_voltage"),
    Check(WITHSTAND, "conductor", "let_through_share", "<=", 1.0),
    Check(SELECTIVITY, "device", "opens_before_those_before_it"),
    Check(WINDOW, "load", "works_at_all_voltages"),
)


@dataclass(frozen=True, slots=True)
class Conductor:
    """A conductor of a circuit: whether it changed, in which facts, and its ampacity."""

    id: str
    state: str
    facts: tuple[tuple[str, Any, Any], ...]
    not_recorded: tuple[str, ...]
    ampacity: tuple[Known | None, Known | None]


@dataclass(frozen=True, slots=True)
class Looked:
    """A check of one thing before and after; ``None`` where the thing was not there."""

    check: Check
    item: str
    before: Truth | None
    after: Truth | None
    figures: tuple[tuple[Known | None, Known | None], tuple[Known | None, Known | None]]


@dataclass(frozen=True, slots=True)
class CircuitView:
    """A load circuit before and after. ``load_facts`` are those of the load that changed."""

    run: str
    load: str
    state: str
    load_facts: tuple[tuple[str, Any, Any], ...]
    conductors: tuple[Conductor, ...]
    looked: tuple[Looked, ...]

    def of(self, topic: str) -> tuple[Looked, ...]:
        """The checks of a topic."""
        return tuple(each for each in self.looked if each.check.topic == topic)

    def answer(self, topic: str) -> bool | None:
        """Whether all checks of a topic hold after; ``None``: one is not known, or there is none.
        """
        found = [each.after for each in self.of(topic)]
        if any(each is False for each in found):
            return False
        return True if found and all(each is True for each in found) else None


def circuits(before: Trail, after: Trail, one: Aboard, other: Aboard) -> tuple[CircuitView, ...]:
    """Every load circuit of either record, in the order of the later record."""
    facts = (_facts(before), _facts(after))
    runs = dict.fromkeys([*other.circuits, *one.circuits])
    return tuple(_circuit(run, one, other, facts) for run in runs)


def _circuit(run: str, one: Aboard, other: Aboard,
             facts: tuple[Mapping[str, Any], Mapping[str, Any]]) -> CircuitView:
    was, now = one.circuits.get(run), other.circuits.get(run)
    known = now or was
    assert known is not None
    conductors = tuple(
        _conductor(each, was, now, one, other, facts) for each in dict.fromkeys(
            [*(now.conductors if now else ()), *(was.conductors if was else ())]))
    looked = () if now is None else tuple(_looked(now, was, one, other))
    load_facts = () if was is None or now is None else _differing(
        *(each.get(known.load, {}) for each in facts))
    return CircuitView(run, known.load, _state(was, now, conductors), load_facts, conductors,
                       looked)


def _differing(before: Mapping[str, Any], after: Mapping[str, Any],
               ) -> tuple[tuple[str, Any, Any], ...]:
    return tuple((name, before.get(name), after.get(name)) for name in sorted({*before, *after})
                 if _plain(before.get(name)) != _plain(after.get(name)))


def _state(was: Circuit | None, now: Circuit | None, conductors: tuple[Conductor, ...]) -> str:
    if was is None:
        return ADDED
    if now is None:
        return REMOVED
    states = {each.state for each in conductors}
    if states <= {UNCHANGED}:
        return UNCHANGED if conductors else UNKNOWN
    return UNKNOWN if states <= {UNCHANGED, UNKNOWN} else CHANGED


def _conductor(item: str, was: Circuit | None, now: Circuit | None, one: Aboard, other: Aboard,
               facts: tuple[Mapping[str, Any], Mapping[str, Any]]) -> Conductor:
    before, after = (each.get(item, {}) for each in facts)
    ampacity = (one.figure(item, AMPACITY), other.figure(item, AMPACITY))
    if was is None or item not in was.conductors:
        return Conductor(item, ADDED, (), (), ampacity)
    if now is None or item not in now.conductors:
        return Conductor(item, REMOVED, (), (), ampacity)
    differing = _differing(before, after)
    missing = tuple(name for name in _WANTED if name not in before or name not in after)
    state = CHANGED if differing else UNKNOWN if missing else UNCHANGED
    return Conductor(item, state, differing, missing, ampacity)


def _looked(now: Circuit, was: Circuit | None, one: Aboard, other: Aboard) -> Iterator[Looked]:
    for check in CHECKS:
        things = {"device": now.devices, "conductor": now.conductors}.get(check.thing, (now.load,))
        there = () if was is None else (*was.devices, *was.conductors, was.load)
        for item in things:
            (before, sides), (after, its_sides) = (_holds(check, item, each)
                                                   for each in (one, other))
            yield Looked(check, item, before if item in there else None, after,
                         ((sides[0], its_sides[0]), (sides[1], its_sides[1])))


def _holds(check: Check, item: str, aboard: Aboard,
           ) -> tuple[Truth | None, tuple[Known | None, Known | None]]:
    left = aboard.figure(item, check.figure)
    right = (aboard.figure(item, check.against) if isinstance(check.against, str) else
             None if check.against is None else Known("", check.against, None))
    if left is None:
        return None, (left, right)
    if check.against is None:
        return (left.value if isinstance(left.value, (bool, Unknown)) else None), (left, right)
    if right is None:
        return None, (left, right)
    for unknown in (left.value, right.value):
        if isinstance(unknown, Unknown):
            return unknown, (left, right)
    return _compared(left.value, check.relation, right.value), (left, right)


def _compared(left: Any, relation: str, right: Any) -> Truth:
    """Guarded: with bounds on either side it holds, or does not, for all values inside them."""
    low, high = _ends(left)
    least, most = _ends(right)
    if relation == "<=":
        low, high, least, most = least, most, low, high
    if low >= most:
        return True
    if high < least:
        return False
    return Unknown.because("within uncertainty", "")


def _ends(value: Any) -> tuple[float, float]:
    return (value.lo, value.hi) if isinstance(value, Bounds) else (value, value)


def _facts(trail: Trail) -> dict[str, dict[str, Any]]:
    """The recorded facts of every thing, by its id and their names; remarks are left out."""
    found: dict[str, dict[str, Any]] = {}
    for path, fact in trail.assessment["record"]["read"].items():
        thing, _, name = path.partition(".")
        if name and name not in _LEFT_OUT:
            found.setdefault(thing, {})[name] = fact
    return found


def _plain(fact: Mapping[str, Any] | None) -> Any:
    """The value of a fact; a size is the same however it was written."""
    if fact is None:
        return None
    value = fact["value"]
    if isinstance(value, Mapping):
        return {key: each for key, each in value.items() if key != "written"}
    return value
