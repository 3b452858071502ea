"""What a quantity needs, as a path of keys that an item can follow."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from garboard.errors import did_you_mean
from garboard.quantities.declaration import Quantity
from garboard.record import SUBJECTS

#: Names a path may start with besides those of the item itself.
ROOTS = ("record", "survey", "vessel", "wiring")


@dataclass(frozen=True, slots=True)
class Need:
    """One argument of a calculation function.

    ``root`` is ``item``, ``network``, or one of ``ROOTS``; ``keys`` are looked up one after the
    other, each in the item the one before led to. ``own`` is the only key of a need that is found
    in the item itself.
    """

    argument: str
    path: str
    root: str
    keys: tuple[str, ...]
    own: str | None = field(init=False)

    def __post_init__(self) -> None:
        single = self.root == "item" and len(self.keys) == 1
        object.__setattr__(self, "own", self.keys[0] if single else None)


def read_need(subject: str, argument: str, path: str,
              quantities: Mapping[str, Mapping[str, Quantity]]) -> Need:
    """Split a path into keys, checking each; LookupError with a hint for an unknown name."""
    if path == "network":
        return Need(argument, path, "network", ())
    parts = path.split(".")
    root = "item"
    if parts[0] in ROOTS and not _knows(subject, parts[0], quantities):
        root = subject = parts.pop(0)
    keys: list[str] = []
    while parts:
        key, subject = _next_key(subject, parts, quantities)
        keys.append(key)
    return Need(argument, path, root, tuple(keys))


def _next_key(subject: str, parts: list[str],
              quantities: Mapping[str, Mapping[str, Quantity]]) -> tuple[str, str]:
    """Take the longest known name off ``parts``; also the subject it leads to."""
    if not subject:
        raise LookupError(f"nothing can follow before {'.'.join(parts)!r}")
    for length in range(len(parts), 0, -1):
        name = ".".join(parts[:length])
        if _knows(subject, name, quantities):
            del parts[:length]
            relation = SUBJECTS[subject].relations.get(name)
            return name, relation.target if relation else ""
    known = [*SUBJECTS[subject].fields, *SUBJECTS[subject].relations, *quantities[subject]]
    raise LookupError(f"{subject} has no {'.'.join(parts)!r} {did_you_mean(parts[0], known)}")


def _knows(subject: str, name: str, quantities: Mapping[str, Mapping[str, Quantity]]) -> bool:
    known = SUBJECTS[subject]
    return (name == "id" or name in known.fields or name in known.relations
            or name in known.groups or name in quantities[subject])
