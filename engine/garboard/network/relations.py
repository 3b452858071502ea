"""Where the relations between things lead, recorded and derived ones alike.

A relation that nobody has recorded is unknown. A relation to many is known only when every fact
that could add a member is recorded: a battery whose place is not recorded could stand in any of
them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, cast

from garboard.network.derived_relations import DerivedRelations
from garboard.network.related import (
    Related,
    joined,
    list_path,
    not_recorded,
    recorded,
    unless,
)
from garboard.record import SUBJECTS, Record, Thing
from garboard.values import OUTSIDE_METHOD, Truth, Unknown

if TYPE_CHECKING:
    from garboard.network.network import Network

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


#: What makes an output act that stops a charging source: not that discharging must stop.
_STOPPING: Final = ("charging must stop", "both")


def _stops(output: Thing, source: str) -> Truth:
    """Whether an output of a management system stops a charging source when charging must stop."""
    named = recorded(output, "stops")
    if isinstance(named, Unknown):
        return named
    if not (isinstance(named, tuple) and source in named):
        return False
    acts_on = recorded(output, "acts_on")
    if isinstance(acts_on, Unknown):
        return acts_on
    return acts_on in _STOPPING or (acts_on == "alarm" and Unknown.because(
        OUTSIDE_METHOD, f"{output.id}.acts_on", "which alarms make its output act"))


class Relations:
    """Finds what a relation of a thing leads to."""

    def __init__(self, record: Record, network: Network) -> None:
        self._record, self._network = record, network
        self._derived = DerivedRelations(record, network)

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
            return not_recorded("runs")
        if self._derived.answers(*key):
            return self._derived.find(*key, item)
        if key == ("run", "return_run"):
            return self._return_run(item)
        if key == ("source", "stopped_by"):
            return self._stopped_by(item)
        if key in _INVERSE:
            return self._naming(item, *_INVERSE[key])
        if subject == "run":
            return self._parts(item, _PARTS[relation])
        if relation == "run":
            return self._network.layout.run_of[item]
        return recorded(self._record.things[item], _FIELDS.get(key, relation))

    def _subject(self, item: str) -> str:
        thing = self._record.things.get(item)
        if thing is not None:
            return thing.subject
        for subject, derived in self._network.derived.items():
            if any(each.id == item for each in derived):
                return subject
        raise KeyError(f"nothing is called {item!r}")

    # recorded ------------------------------------------------------------------------------------
    def _naming(self, item: str, subject: str, field: str) -> Related:
        """The things of a subject whose field names this one."""
        things = self._record.lists.get(subject)
        if things is None:
            return not_recorded(list_path(subject))
        values = [(thing.id, recorded(thing, field)) for thing in things]
        return unless(joined(value for _, value in values), lambda: tuple(
            identity for identity, value in values if value == item))

    def _parts(self, run: str, subject: str) -> Related:
        edges = self._network.graph.edges
        return tuple(part for part in self._network.layout.parts[run]
                     if edges[part].kind == subject)

    def _list(self, target: str, relation: str, many: bool) -> Related:
        if target in self._network.derived:
            if self._record.lists.get("battery") is None:
                return not_recorded("batteries")
            if not self._network.traced:
                return not_recorded("runs")
            return tuple(each.id for each in self._network.derived[target])
        things = self._record.lists.get(target)
        if things is None:
            return not_recorded(list_path(target))
        return tuple(thing.id for thing in things) if many else things[0].id

    def _return_run(self, run: str) -> Related:
        thing = self._record.things[run]
        if "return.run" in thing.facts:
            return cast(Related, thing.facts["return.run"].value)
        return None if "return" in thing.facts else not_recorded(f"{run}.return")

    def _stopped_by(self, source: str) -> Related:
        systems = self._record.lists.get("management_system")
        if systems is None:
            return not_recorded("management_systems")
        found: list[str] = []
        unknown: list[object] = []
        for system in systems:
            outputs = system.groups.get("outputs")
            if outputs is None:
                unknown.append(recorded(system, "outputs"))
                continue
            stops = [_stops(output, source) for output in outputs]
            unknown += stops
            if any(each is True for each in stops):
                found.append(system.id)
        return unless(joined(unknown), lambda: tuple(found))
