"""A value as JSON data and back: numbers, bounds, unknowns, texts, truths, dates, sizes, lists.

| value | data |
|---|---|
| number, truth, text, none | itself |
| bounds | ``{"lo": n, "hi": n, "nominal": n, "basis": [..], "causes": [..]}``, each n may be null |
| unknown | ``{"unknown": [{"reason": .., "path": .., "detail": ..}]}`` |
| date | ``{"date": "2026-04-18"}`` |
| conductor size | ``{"size": "2/0", "system": "AWG", "area_mm2": n, "written": "2/0 AWG"}`` |
| several | a list |

Numbers are in canonical units; an open side is null. Data keep every value exactly: a whole number
stays a whole number, and minus zero its sign. Canonical bytes know neither ``1.0`` nor ``-0.0``;
whoever reads a value back from bytes says with ``kind`` that a measured number is meant.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from datetime import date
from types import NoneType
from typing import Any, Final

from garboard.values import Bounds, Cause, Unknown
from garboard.values.conductor_size import ConductorSize

_AS_THEY_ARE: Final = frozenset({float, int, bool, str, NoneType})


def value_as_data(value: object) -> Any:
    """JSON data of a value; TypeError for what is none (an item, a network)."""
    kind = type(value)
    if kind in _AS_THEY_ARE:
        return value
    if isinstance(value, Bounds):
        return {"lo": _end(value.lo), "hi": _end(value.hi), "nominal": value.nominal,
                "basis": list(value.basis), "causes": causes_as_data(value)}
    if isinstance(value, Unknown):
        return {"unknown": causes_as_data(value)}
    if isinstance(value, (tuple, list)):
        return [value_as_data(each) for each in value]
    if kind is date:
        return {"date": str(value)}
    if isinstance(value, ConductorSize):
        return {"size": value.name, "system": value.system, "area_mm2": value.area_mm2,
                "written": value.written}
    raise TypeError(f"{kind.__name__} {value!r} is not a value of a trail")


def causes_as_data(value: Bounds | Unknown) -> list[dict[str, str]]:
    """The causes of bounds or of an unknown, in their order."""
    return [{"reason": cause.reason, "path": cause.path, "detail": cause.detail}
            for cause in value.causes]


def value_from_data(data: Any, kind: str | None = None) -> Any:
    """The value of such data; of the kind ``number`` it is a float however it was written."""
    if isinstance(data, Mapping):
        return _from_mapping(data)
    if isinstance(data, str) or data is None or isinstance(data, bool):
        return data
    if isinstance(data, Sequence):
        return tuple(value_from_data(each, kind) for each in data)
    return float(data) if kind == "number" else data


def _from_mapping(data: Mapping[str, Any]) -> object:
    if "unknown" in data:
        return Unknown(_causes(data["unknown"]))
    if "lo" in data:
        lo = -math.inf if data["lo"] is None else float(data["lo"])
        hi = math.inf if data["hi"] is None else float(data["hi"])
        nominal = None if data["nominal"] is None else float(data["nominal"])
        return Bounds(lo, hi, nominal, basis=tuple(data["basis"]), causes=_causes(data["causes"]))
    if "date" in data:
        return date.fromisoformat(data["date"])
    return ConductorSize(data["written"], data["system"], data["size"], float(data["area_mm2"]))


def _causes(data: Sequence[Mapping[str, str]]) -> tuple[Cause, ...]:
    return tuple(Cause(each["reason"], each["path"], each["detail"]) for each in data)


def _end(number: float) -> float | None:
    return number if math.isfinite(number) else None
