"""The data of a record with one design change in it; the record itself is left as it is."""

from __future__ import annotations

from collections.abc import Mapping
from copy import deepcopy
from dataclasses import dataclass
from typing import Any, Final

from garboard.packs.permissible import DeviceClass
from garboard.record import DataPath

#: What a device of another class keeps of the one it replaces. Everything else is to be found out.
_KEPT: Final = ("id", "rating", "setting", "place")
#: What a conductor of another size does not keep: what was found of the old one.
_OF_THE_OLD_CONDUCTOR: Final = ("resistance",)


@dataclass(frozen=True, slots=True)
class Change:
    """A change in words, and the data of the record with it."""

    words: str
    written: Mapping[str, Any]


def with_size(written: Mapping[str, Any], paths: list[DataPath], size: str) -> dict[str, Any]:
    """The record with the conductors at some paths of another size."""
    data = deepcopy(dict(written))
    for path in paths:
        conductor = _at(data, path)
        conductor["size"] = size
        for name in _OF_THE_OLD_CONDUCTOR:
            conductor.pop(name, None)
    return data


def with_class(written: Mapping[str, Any], path: DataPath, taken: DeviceClass) -> dict[str, Any]:
    """The record with the device at a path replaced by a fuse of a class, of the same rating."""
    data = deepcopy(dict(written))
    place = _at(data, path[:-1])
    old = place.pop(path[-1])
    place["fuse"] = {**{name: old[name] for name in _KEPT if name in old}, **_of_class(taken)}
    return data


def with_device(written: Mapping[str, Any], run: DataPath, at_start: bool, identity: str,
                rating: str, taken: DeviceClass) -> dict[str, Any]:
    """The record with a fuse at one end of a run."""
    data = deepcopy(dict(written))
    through = _at(data, run)["through"]
    part = {"fuse": {"id": identity, "rating": rating, **_of_class(taken)}}
    through.insert(0 if at_start else len(through), part)
    return data


def _of_class(taken: DeviceClass) -> dict[str, Any]:
    data: dict[str, Any] = {"class": taken.device_class,
                            "breaks": [point.as_data() for point in taken.breaks]}
    for name in ("mounting", "curve"):
        if getattr(taken, name) is not None:
            data[name] = getattr(taken, name)
    return data


def _at(data: Any, path: DataPath) -> Any:
    for step in path:
        data = data[step]
    return data
