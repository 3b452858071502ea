"""How a calculation is declared: what it is of, what it needs, by which method, within which range.

    @quantity("battery.fault_current", dimension="current",
              needs={"emf": "open_circuit_voltage_max", "resistance": "source_resistance"},
              method="EMF over source resistance", citation=cite("common practice"),
              valid="a linear source: no management electronics credited")
    def battery_fault_current(emf, resistance):
        return quotient(emf, resistance)

A need is a path from the item (``run.conductors.length`` gives a tuple), from ``record``,
``vessel`` or ``wiring``, or the word ``network`` for the DC network itself.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Final, Literal

from garboard.values import Bounds, Unknown

Kind = Literal["number", "count", "truth", "text", "opaque"]
KINDS: Final = ("number", "count", "truth", "text", "opaque")

#: How far a citation's figure has been confirmed.
FROM_MEMORY: Final = "from memory"
STATUSES: Final = ("read", "reprinted", FROM_MEMORY, "common practice", "definition")


@dataclass(frozen=True, slots=True)
class Citation:
    """Where a method or a table comes from, and how sure we are of it."""

    source: str
    status: str

    def __post_init__(self) -> None:
        if self.status not in STATUSES:
            raise ValueError(f"{self.status!r} is not one of {', '.join(STATUSES)}")

    def as_data(self) -> dict[str, str]:
        return {"source": self.source, "status": self.status}


@dataclass(frozen=True, slots=True)
class Figure:
    """A result with more to say than its value: table rows read, remarks for the working."""

    value: object
    table_rows: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Quantity:
    """A figure that can be computed for every item of a subject.

    ``unknowns`` says what happens when a single needed value is unknown: ``joined`` (the result is
    unknown with the same causes; the function is not called) or ``passed`` (the function deals with
    it). Bounds are always passed. Parts of a tuple may always be unknown or bounds.
    """

    subject: str
    name: str
    kind: Kind
    dimension: str | None
    needs: Mapping[str, str]
    method: str
    citation: Citation
    valid: str
    version: str
    function: Callable[..., object] = field(compare=False)
    unknowns: Literal["joined", "passed"] = "joined"
    origin: str = "garboard"

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(f"{self.full_name}: {self.kind!r} is not a kind of quantity")
        if (self.kind == "number") != (self.dimension is not None):
            raise ValueError(f"{self.full_name}: a number, and only a number, has a dimension")

    @property
    def full_name(self) -> str:
        return f"{self.subject}.{self.name}"

    def as_data(self) -> dict[str, object]:
        """What the manifest and the trail say of it (everything but the function)."""
        return {
            "name": self.full_name, "kind": self.kind, "dimension": self.dimension,
            "needs": dict(self.needs), "method": self.method,
            "citation": self.citation.as_data(), "valid": self.valid, "version": self.version,
        }


def cite(source: str, status: str = "read") -> Citation:
    """A citation; ``status`` is one of ``STATUSES``."""
    return Citation(source, status)


def quantity(name: str, *, dimension: str | None = None, kind: Kind = "number",
             needs: Mapping[str, str], method: str, citation: Citation, valid: str,
             version: str = "1", unknowns: Literal["joined", "passed"] = "joined",
             ) -> Callable[[Callable[..., Any]], Quantity]:
    """Turn a plain function into a declared quantity; ``name`` is ``subject.name``."""
    subject, _, short = name.partition(".")

    def declare(function: Callable[..., Any]) -> Quantity:
        return Quantity(subject, short, kind, dimension, dict(needs), method, citation, valid,
                        version, function, unknowns)

    return declare


Value = float | int | bool | str | Bounds | Unknown | None
