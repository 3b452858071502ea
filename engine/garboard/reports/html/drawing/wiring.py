"""What the diagram draws, from the record as written: runs, what they pass and what they join."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from garboard.trail import Trail

BATTERY: Final = "battery"
BUS: Final = "bus"
SOURCE: Final = "source"
LOAD: Final = "load"
POSITIVE: Final = "positive"
NEGATIVE: Final = "negative"

_LISTS: Final = {"batteries": BATTERY, "buses": BUS, "charging_sources": SOURCE, "loads": LOAD}
_PARTS: Final = {"conductor": "conductor", "fuse": "device", "breaker": "device",
                 "switch": "switch"}


@dataclass(frozen=True, slots=True)
class Part:
    """One thing drawn: its id, subject and kind (``fuse``, ``alternator``)."""

    id: str
    subject: str
    kind: str


@dataclass(frozen=True, slots=True)
class Run:
    """A traced run: its id, both ends (``pack-1.positive``, ``main-bus``) and what it passes."""

    id: str
    start: str
    end: str
    parts: tuple[Part, ...]

    def away_from(self, node: str) -> tuple[str, tuple[Part, ...]]:
        """The other end, and the parts in the order they are passed on the way there."""
        return (self.end, self.parts) if node == self.start else (self.start, self.parts[::-1])


@dataclass(frozen=True, slots=True)
class Wiring:
    """All runs of a record, and the things at their ends by id."""

    runs: tuple[Run, ...]
    things: Mapping[str, Part]

    def thing_at(self, node: str) -> Part | None:
        """The thing whose terminal, or bus, an end is."""
        return self.things.get(node.partition(".")[0])

    def is_bus(self, node: str) -> bool:
        """Whether an end is a bus."""
        thing = self.thing_at(node)
        return thing is not None and thing.subject == BUS


def wiring_of(trail: Trail) -> Wiring:
    """The wiring in the record of a trail; what is not as a record should be is left out."""
    things = {}
    for key, subject in _LISTS.items():
        for each in _mappings(trail.written.get(key)):
            identity = _identity(each)
            things[identity] = Part(identity, subject, _kind(trail, identity, subject))
    runs = [_run(trail, each) for each in _mappings(trail.written.get("runs"))]
    return Wiring(tuple(run for run in runs if run is not None), things)


def _run(trail: Trail, written: Mapping[str, Any]) -> Run | None:
    identity = _identity(written)
    ends = [trail.fact(f"{identity}.{key}") for key in ("from", "to")]
    start, end = (each["value"] if each is not None else None for each in ends)
    if not isinstance(start, str) or not isinstance(end, str):
        return None
    parts = tuple(Part(_identity(each), _PARTS[key], _kind(trail, _identity(each), key))
                  for through in _mappings(written.get("through"))
                  for key, each in through.items() if key in _PARTS and isinstance(each, Mapping))
    return Run(identity, start, end, parts)


def _kind(trail: Trail, identity: str, otherwise: str) -> str:
    """What a thing is; a fuse or breaker says so by the key it is written under."""
    fact = trail.fact(f"{identity}.kind")
    kind = fact["value"] if fact is not None else None
    return kind if isinstance(kind, str) and otherwise not in ("fuse", "breaker") else otherwise


def _identity(written: Mapping[str, Any]) -> str:
    return str(written.get("id", ""))


def _mappings(data: Any) -> Iterator[Mapping[str, Any]]:
    if isinstance(data, Sequence) and not isinstance(data, str):
        yield from (each for each in data if isinstance(each, Mapping))
