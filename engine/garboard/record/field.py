"""The table of fields: what every recorded field is called, holds, and means."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

FieldKind = Literal["number", "count", "text", "flag", "date", "size", "window", "reference",
                    "references"]


@dataclass(frozen=True, slots=True)
class Field:
    """One field of a subject.

    ``name`` is dotted where the field stands in a group (``charge.voltage_max``). A ``window`` is a
    permitted range; its ends are numbers of their own, ``<name>.low`` and ``<name>.high``. A
    ``reference`` holds the id of another thing of one of the subjects ``targets``; where it always
    leads to one subject, there is a relation of the same name. ``floor`` is the least value of a
    number or count and whether it must be more than that, where there is one.
    """

    name: str
    kind: FieldKind
    dimension: str | None
    choices: tuple[str, ...] | None
    meaning: str
    targets: tuple[str, ...] | None = None
    floor: tuple[float, bool] | None = None
