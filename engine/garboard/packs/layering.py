"""Who set what: the layers of a pack, and what they relaxed or retired."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final, Literal

from garboard.packs.rule import Rule

#: The field under which stands who added a rule or limit.
ADDED: Final = ""
Kind = Literal["rule", "limit", "head"]
#: Kind, name and field of what is set; the head has no name.
Key = tuple[Kind, str, str]


@dataclass(frozen=True, slots=True)
class LayerName:
    """A pack by name and version, and the digest of what it came to by itself."""

    pack: str
    version: str
    digest: str

    def as_data(self) -> dict[str, str]:
        return {"pack": self.pack, "version": self.version, "digest": self.digest}


@dataclass(frozen=True, slots=True)
class Relaxation:
    """Something a layer relaxed or retired, as every report has to say."""

    what: str
    change: Literal["relaxed", "retired"]
    by: str
    author: str
    why: str
    before: str | None = None
    after: str | None = None

    def as_data(self) -> dict[str, Any]:
        data = {"what": self.what, "change": self.change, "by": self.by, "author": self.author,
                "why": self.why, "before": self.before, "after": self.after}
        return {key: value for key, value in data.items() if value is not None}


@dataclass(frozen=True, slots=True)
class Retired:
    """A rule that a layer retired. It has findings still: not applicable, retired."""

    rule: Rule
    by: str
    author: str
    why: str

    def as_data(self) -> dict[str, Any]:
        return {**self.rule.as_data(),
                "retired": {"by": self.by, "author": self.author, "why": self.why}}


@dataclass(frozen=True, slots=True)
class Layering:
    """What a pack that builds on others remembers of how it came about.

    ``layers`` are the packs below, the lowest first; ``set_by`` says by key which layer set a
    thing, where that is not the layer that added it.
    """

    layers: tuple[LayerName, ...]
    set_by: Mapping[Key, str]
    relaxations: tuple[Relaxation, ...] = ()
    retired: tuple[Retired, ...] = ()

    def setter(self, kind: Kind, name: str, of: str) -> str:
        """The layer that set a field of a rule, a limit or the head."""
        return self.set_by.get((kind, name, of)) or self.set_by.get((kind, name, ADDED), "")

    def as_data(self) -> dict[str, Any]:
        """Plain data: layers, who set what, and what was relaxed or retired."""
        set_by: dict[str, Any] = {"head": {}, "limit": {}, "rule": {}}
        for (kind, name, of), layer in sorted(self.set_by.items()):
            holder = set_by[kind] if kind == "head" else set_by[kind].setdefault(name, {})
            holder[of or "added"] = layer
        return {"layers": [each.as_data() for each in self.layers], "set_by": set_by,
                "relaxations": [each.as_data() for each in self.relaxations]}

    @classmethod
    def from_data(cls, data: Mapping[str, Any], retired: tuple[Retired, ...]) -> Layering:
        """The layering of which this is the data; KeyError or TypeError where it is not."""
        _only_texts([data["layers"], data["set_by"], data["relaxations"]])
        set_by: dict[Key, str] = {("head", "", of if of != "added" else ADDED): layer
                                  for of, layer in data["set_by"]["head"].items()}
        for kind in ("limit", "rule"):
            for name, fields in data["set_by"][kind].items():
                for of, layer in fields.items():
                    set_by[kind, name, of if of != "added" else ADDED] = layer
        return cls(tuple(LayerName(**each) for each in data["layers"]), set_by,
                   tuple(Relaxation(**each) for each in data["relaxations"]), retired)


def _only_texts(data: object) -> None:
    """TypeError where anything but texts stands in mappings and lists."""
    if isinstance(data, (dict, list)):
        for each in data.values() if isinstance(data, dict) else data:
            _only_texts(each)
    elif not isinstance(data, str):
        raise TypeError(f"{data!r} is no text")
