"""A rated voltage with its kind: ``160 V DC``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Final

from garboard.errors import ReadingError
from garboard.record.field import Field, FieldKind
from garboard.record.leaves.base import LeafKind
from garboard.record.leaves.likely import likely_ends, likely_slip
from garboard.values import Unknown
from garboard.values.units import read_number, read_voltage_kind

_LIKELY: Final = ("5 V", "1500 V")


@dataclass(frozen=True, slots=True, eq=False)
class RatedVoltage(LeafKind):
    """A voltage on direct or alternating current.

    Gives the facts ``<name>`` and ``<name>.kind`` (DC or AC). A label that shows a bare voltage is
    recorded as it is: the kind is then not recorded, and proves nothing on DC.
    """

    kind: ClassVar[FieldKind] = "number"

    @property
    def dimension(self) -> str | None:
        return "voltage"

    def read(self, written: object) -> tuple[float, str | None]:
        of_kind: str | None = None
        try:
            voltage, of_kind = read_voltage_kind(written)
        except ReadingError as error:
            if error.code != "voltage-kind-missing":
                raise
            voltage = read_number(written, "voltage")
        if voltage <= 0:
            raise ReadingError("value-not-positive", repr(written), "more than zero")
        return voltage, of_kind

    def likely_range(self) -> tuple[str, str] | None:
        return _LIKELY

    def unlikely(self, written: object, value: object) -> str | None:
        low, high = likely_ends(_LIKELY, "voltage")
        if isinstance(value, tuple) and not low <= value[0] <= high:
            return likely_slip(str(written), "voltage", (low, high))
        return None

    def parts(self, name: str, value: object) -> tuple[tuple[str, object], ...]:
        if isinstance(value, Unknown):
            return ((name, value), (f"{name}.kind", value))
        assert isinstance(value, tuple)
        voltage, of_kind = value
        whole = ((name, voltage),)
        return whole if of_kind is None else (*whole, (f"{name}.kind", of_kind))

    def fields(self, name: str) -> tuple[Field, ...]:
        of_kind = Field(f"{name}.kind", "text", None, ("DC", "AC"),
                        f"{self.meaning}: on direct or on alternating current")
        return (Field(name, "number", "voltage", None, self.meaning), of_kind,
                *self.extra_fields(name))

    def scalar_schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": r"[0-9]", "examples": ["160 V DC"]}
