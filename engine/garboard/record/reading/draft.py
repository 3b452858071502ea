"""A record while it is being read: things by id, and what must be checked once all are known."""

from __future__ import annotations

from dataclasses import dataclass, field

from garboard.record.answer import Answer
from garboard.record.leaves import LeafKind
from garboard.record.reading.notes import Notes
from garboard.record.subjects import IN_RUNS
from garboard.record.thing import DataPath, Thing


@dataclass(frozen=True, slots=True)
class Mention:
    """A place in the record that names other things: ids, and the subjects they may be of."""

    path: DataPath
    ids: tuple[str, ...]
    targets: tuple[str, ...]
    is_list: bool


@dataclass(slots=True)
class Draft:
    """Everything read so far."""

    notes: Notes
    things: dict[str, Thing] = field(default_factory=dict)
    lists: dict[str, list[Thing]] = field(default_factory=dict)
    evidence: dict[str, Thing] = field(default_factory=dict)
    answers: dict[str, tuple[Answer, ...]] = field(default_factory=dict)
    mentions: list[Mention] = field(default_factory=list)
    named_at: dict[str, DataPath] = field(default_factory=dict)
    #: Subjects of which something could not be read, so that ids may be missing.
    unread: set[str] = field(default_factory=set)

    def admit(self, thing: Thing) -> None:
        """Take in a thing under its id; a second one of the same id is a problem."""
        path = (*thing.path, "id")
        first = self.named_at.setdefault(thing.id, path)
        if first is not path:
            self.notes.refuse("id-twice", path, f"{thing.id!r}, first used at "
                              f"{self.notes.place(first)}", "an id used once in the record",
                              "give one of the two another id")
        elif thing.subject == "evidence":
            self.evidence[thing.id] = thing
        else:
            self.things[thing.id] = thing
        if thing.subject != "evidence":
            self.lists.setdefault(thing.subject, []).append(thing)

    def miss(self, subject: str) -> None:
        """Remember that things of a subject could not be read, nor what stands in them."""
        self.unread.update((subject, *IN_RUNS) if subject == "run" else (subject,))

    def mention(self, leaf: LeafKind, value: object, path: DataPath) -> None:
        """Remember that a leaf names other things."""
        targets = leaf.targets or ()
        if isinstance(value, str):
            self.mentions.append(Mention(path, (value,), targets, False))
        elif isinstance(value, tuple):
            self.mentions.append(Mention(path, value, targets, True))
