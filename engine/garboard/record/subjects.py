"""The table of subjects: what a rule can be about, its fields, parts and relations.

Fields and parts come from the models, relations from their own table; strings and banks are derived
from the runs and have neither fields nor a list in the record.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, Final

from garboard.record.field import Field
from garboard.record.leaves import Choice
from garboard.record.models.battery import Battery
from garboard.record.models.bus import Bus
from garboard.record.models.conductor import Conductor
from garboard.record.models.device import Device
from garboard.record.models.load import Load
from garboard.record.models.management import ManagementSystem
from garboard.record.models.place import Place
from garboard.record.models.record import InstallationRecord
from garboard.record.models.run import Run
from garboard.record.models.source import Source
from garboard.record.models.survey import Survey
from garboard.record.models.switch import Switch
from garboard.record.models.vessel import Vessel
from garboard.record.models.wiring import Wiring
from garboard.record.relations import RELATIONS, Relation
from garboard.record.shape import Shape, shape_of

_EMPTY: Final[Mapping[str, Any]] = MappingProxyType({})
DEVICE_KINDS: Final = ("fuse", "breaker")


@dataclass(frozen=True, slots=True)
class Subject:
    """A kind of thing.

    ``list_key`` is the key of the record that lists it, or ``None`` where it stands elsewhere (in
    the runs, or alone). ``groups`` are its lists of parts by name; the subject of each is in the
    table too, with ``part_of`` set, and no rule can be about it.
    """

    name: str
    title: str
    list_key: str | None
    fields: Mapping[str, Field]
    groups: Mapping[str, str]
    relations: Mapping[str, Relation]
    part_of: str | None = None
    derived: bool = False

    @property
    def recorded_in(self) -> str:
        """The key of the record in which its things are written down, or follow from."""
        if self.list_key is not None:
            return self.list_key
        if self.derived:
            return "batteries"
        return "runs" if self.name in IN_RUNS else self.name


#: Subjects whose things stand in the runs.
IN_RUNS: Final = ("conductor", "device", "switch")
#: The key of the record under which the things of a subject are listed.
LIST_KEYS: Final[Mapping[str, str]] = MappingProxyType({
    "place": "places", "battery": "batteries", "management_system": "management_systems",
    "bus": "buses", "source": "charging_sources", "load": "loads", "run": "runs",
})
_MODELS: Final = (Vessel, Survey, Wiring, Place, Battery, ManagementSystem, Run, Conductor, Device,
                  Switch, Bus, Source, Load, InstallationRecord)
#: Worked out from the runs; nobody writes them down.
_DERIVED: Final = {"string": "string of batteries in series", "bank": "battery bank"}


def _fields(shape: Shape) -> Mapping[str, Field]:
    fields = {entry.name: entry for slot in shape.leaves() for entry in slot.leaf.fields(slot.name)
              if entry.name != "id"}
    if shape.subject == "device":
        kind = Choice("Fuse or breaker, as it is written in the run", among=DEVICE_KINDS)
        fields["kind"] = kind.fields("kind")[0]
    return MappingProxyType(fields)


def _subjects() -> Mapping[str, Subject]:
    table: dict[str, Subject] = {}
    for model in _MODELS:
        shape = shape_of(model)
        parts = {} if model is InstallationRecord else {
            part.name: part.shape for part in shape.lists() if part.name != "through"}
        table[model.subject] = Subject(
            model.subject, model.title, LIST_KEYS.get(model.subject), _fields(shape),
            MappingProxyType({name: part.subject for name, part in parts.items()}),
            RELATIONS.get(model.subject, _EMPTY))
        for part in parts.values():
            table[part.subject] = Subject(part.subject, _title(part), None, _fields(part),
                                          _EMPTY, _EMPTY, part_of=model.subject)
    for name, title in _DERIVED.items():
        table[name] = Subject(name, title, None, _EMPTY, _EMPTY, RELATIONS[name], derived=True)
    return MappingProxyType(table)


def _title(shape: Shape) -> str:
    return str(getattr(shape.model, "title", ""))


SUBJECTS: Final[Mapping[str, Subject]] = _subjects()
