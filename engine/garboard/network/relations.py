"""Where the relations between things lead, recorded and derived ones alike.

A relation that nobody has recorded is unknown. A relation to many is known only when every fact
that could add a member is recorded: a battery whose place is not recorded could stand in any of
them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Final, cast

from garboard.network.layout import listed
from garboard.record import SUBJECTS, Record, Thing
from garboard.values import NOT_RECORDED, OUTSIDE_METHOD, Unknown

if TYPE_CHECKING:
    from garboard.network.network import Network

Related = str | tuple[str, ...] | Unknown | None

#: Relations that a thing's own reference leads to, where the field has another name.
_FIELDS: Final = {("conductor", "places"): "crosses"}
#: Relations to many that another subject's reference leads back from: (subject, its field).
_INVERSE: Final = {
    ("management_system", "batteries"): ("battery", "managed_by"),
    ("management_system", "switches"): ("switch", "worked_by"),
    ("place", "batteries"): ("battery", "place"),
    ("place", "sources"): ("source", "place"),
    ("place", "devices"): ("device", "place"),
}
_PARTS: Final = {"conductors": "conductor", "devices": "device", "switches": "switch"}


class Relations:
    """Finds what a relation of a thing leads to."""

    def __init__(self, record: Record, network: Network) -> None:
        self._record, self._network = record, network
        self._derived: dict[tuple[str, str], Callable[[str], Related]] = {
            ("battery", "string"): lambda each: network.string_of[each].id,
            ("battery", "bank"): self._bank_of_battery,
            ("battery", "own_device"): lambda each: self._own(network.string_of[each].id),
            ("battery", "first_device"): self._first_device,
            ("string", "batteries"): self._string_batteries,
            ("string", "bank"): lambda each: self._bank_of_battery(self._string_batteries(each)[0]),
            ("string", "own_device"): self._own,
            ("bank", "strings"): lambda each: tuple(s.id for s in network.bank(each).strings),
            ("bank", "batteries"): lambda each: network.bank(each).batteries,
            ("bank", "sources"): lambda each: self._on_bank(each, "source"),
            ("bank", "loads"): lambda each: self._on_bank(each, "load"),
            ("bank", "devices"): self._bank_devices,
            ("bank", "buses"): self._bank_buses,
            ("run", "return_run"): self._return_run,
            ("conductor", "protecting_devices"): network.protecting,
            ("device", "banks"): self._banks_of_branch,
            ("switch", "banks"): self._banks_of_branch,
            ("bus", "banks"): lambda each: tuple(bank.id for bank in network.banks_at(each)),
            ("bus", "runs"): lambda each: network.layout.runs_at.get(each, ()),
            ("source", "run"): self._run_to, ("load", "run"): self._run_to,
            ("source", "bank"): self._bank_of_user, ("load", "bank"): self._bank_of_user,
            ("source", "stopped_by"): self._stopped_by,
            ("vessel", "record"): lambda _: "record",
        }

    def find(self, item: str, relation: str) -> Related:
        """See ``Network.related``."""
        subject = self._subject(item)
        if relation not in SUBJECTS[subject].relations:
            raise KeyError(f"{subject} has no relation {relation!r}")
        known = SUBJECTS[subject].relations[relation]
        if subject == "record":
            return self._list(known.target, relation, known.many)
        key = (subject, relation)
        if known.derived and not self._network.traced:
            return _not_recorded("runs")
        if key in self._derived:
            return self._derived[key](item)
        if key in _INVERSE:
            return self._naming(item, *_INVERSE[key])
        if subject == "run":
            return self._parts(item, _PARTS[relation])
        if relation == "run":
            return self._network.layout.run_of[item]
        return self._recorded(self._record.things[item], _FIELDS.get(key, relation))

    def _subject(self, item: str) -> str:
        thing = self._record.things.get(item)
        if thing is not None:
            return thing.subject
        for subject, derived in self._network.derived.items():
            if any(each.id == item for each in derived):
                return subject
        raise KeyError(f"nothing is called {item!r}")

    # recorded ------------------------------------------------------------------------------------
    def _recorded(self, thing: Thing, field: str) -> Related:
        fact = thing.facts.get(field)
        if fact is None:
            return _not_recorded(f"{thing.id}.{field}")
        return cast(Related, fact.value)

    def _naming(self, item: str, subject: str, field: str) -> Related:
        """The things of a subject whose field names this one."""
        things = self._record.lists.get(subject)
        if things is None:
            return _not_recorded(_list_path(subject))
        values = [(thing.id, self._recorded(thing, field)) for thing in things]
        return _unless(_joined(value for _, value in values), lambda: tuple(
            identity for identity, value in values if value == item))

    def _parts(self, run: str, subject: str) -> Related:
        edges = self._network.graph.edges
        return tuple(part for part in self._network.layout.parts[run]
                     if edges[part].kind == subject)

    def _list(self, target: str, relation: str, many: bool) -> Related:
        if target in self._network.derived:
            if self._record.lists.get("battery") is None:
                return _not_recorded("batteries")
            if not self._network.traced:
                return _not_recorded("runs")
            return tuple(each.id for each in self._network.derived[target])
        things = self._record.lists.get(target)
        if things is None:
            return _not_recorded(_list_path(target))
        return tuple(thing.id for thing in things) if many else things[0].id

    def _return_run(self, run: str) -> Related:
        thing = self._record.things[run]
        if "return.run" in thing.facts:
            return cast(Related, thing.facts["return.run"].value)
        return None if "return" in thing.facts else _not_recorded(f"{run}.return")

    def _stopped_by(self, source: str) -> Related:
        systems = self._record.lists.get("management_system")
        if systems is None:
            return _not_recorded("management_systems")
        found: list[str] = []
        unknown: list[object] = []
        for system in systems:
            outputs = system.groups.get("outputs")
            if outputs is None:
                unknown.append(self._recorded(system, "outputs"))
                continue
            stops = [self._recorded(output, "stops") for output in outputs]
            unknown += stops
            if any(isinstance(each, tuple) and source in each for each in stops):
                found.append(system.id)
        return _unless(_joined(unknown), lambda: tuple(found))

    # derived -------------------------------------------------------------------------------------
    def _untraced(self, battery: str) -> Unknown | None:
        positive = self._network.graph.edges[battery].end
        if positive in self._network.layout.traced:
            return None
        return _not_recorded("runs", f"no run leads to {positive}")

    def _string_batteries(self, string: str) -> tuple[str, ...]:
        return next(each.batteries for each in self._network.strings if each.id == string)

    def _bank_of_battery(self, battery: str) -> Related:
        string = self._network.string_of[battery]
        return _unless(self._untraced(string.batteries[-1]),
                       lambda: self._network.bank_of[string.id].id)

    def _own(self, string: str) -> Related:
        top = self._string_batteries(string)[-1]
        return _unless(self._untraced(top), lambda: self._network.own_devices[string])

    def _first_device(self, battery: str) -> Related:
        devices = self._network.first_devices(battery)
        if isinstance(devices, Unknown):
            return devices
        if len(devices) > 1:
            return Unknown.because(OUTSIDE_METHOD, detail=(
                f"several devices stand first behind {battery}: {', '.join(devices)}"))
        return devices[0] if devices else None

    def _on_bank(self, identity: str, subject: str) -> Related:
        things = self._record.lists.get(subject)
        if things is None:
            return _not_recorded(_list_path(subject))
        bank = self._network.bank(identity)
        unknown = _joined((self._bank_untraced(identity),
                           *(self._terminal(thing.id) for thing in things)))
        return _unless(unknown, lambda: tuple(
            thing.id for thing in things if f"{thing.id}.positive" in bank.nodes))

    def _bank_untraced(self, identity: str) -> Unknown | None:
        bank = self._network.bank(identity)
        return _joined(self._untraced(string.batteries[-1]) for string in bank.strings)

    def _terminal(self, user: str) -> str | Unknown:
        """The positive terminal of a source or load, or unknown when no run leads to it."""
        terminal = f"{user}.positive"
        if terminal in self._network.layout.traced:
            return terminal
        return _not_recorded("runs", f"no run leads to {terminal}")

    def _bank_of_user(self, user: str) -> Related:
        terminal = self._terminal(user)
        if isinstance(terminal, Unknown):
            return terminal
        return next((bank.id for bank in self._network.banks if terminal in bank.nodes), None)

    def _run_to(self, user: str) -> Related:
        runs_at = self._network.layout.runs_at
        runs = runs_at.get(f"{user}.positive") or runs_at.get(f"{user}.negative") or ()
        if len(runs) == 1:
            return runs[0]
        if not runs:
            return _not_recorded("runs", f"no run leads to {user}")
        return Unknown.because(OUTSIDE_METHOD,
                               detail=f"several runs lead to {user}: {', '.join(runs)}")

    def _bank_devices(self, identity: str) -> Related:
        bank = self._network.bank(identity)
        edges = self._network.graph.of_kind("device")
        links = {node for string in bank.strings for battery in string.batteries[1:]
                 for node in self._network.layout.islands.around(
                     self._network.graph.edges[battery].start)}
        return _unless(self._bank_untraced(identity), lambda: tuple(
            edge.id for edge in edges if edge.start in bank.nodes or edge.start in links))

    def _bank_buses(self, identity: str) -> Related:
        bank = self._network.bank(identity)
        return _unless(self._bank_untraced(identity), lambda: tuple(
            bus.id for bus in listed(self._record, "bus") if bus.id in bank.nodes))

    def _banks_of_branch(self, branch: str) -> Related:
        return tuple(bank.id for bank in self._network.banks_at(
            self._network.graph.edges[branch].start))


def _not_recorded(path: str, detail: str = "") -> Unknown:
    return Unknown.because(NOT_RECORDED, path, detail)


def _list_path(subject: str) -> str:
    return SUBJECTS[subject].list_key or {"conductor": "runs", "device": "runs",
                                          "switch": "runs"}.get(subject, subject)


def _unless(unknown: Unknown | None, known: Callable[[], Related]) -> Related:
    """What is known, unless something it rests on is unknown."""
    return known() if unknown is None else unknown


def _joined(values: Iterable[object]) -> Unknown | None:
    """All unknowns among some values as one, or ``None``."""
    found: Unknown | None = None
    for value in values:
        if isinstance(value, Unknown):
            found = value if found is None else found.joined(value)
    return found
