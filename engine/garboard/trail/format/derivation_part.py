"""How a figure came about: the calculation, its inputs, the table rows it read."""

from __future__ import annotations

from pydantic import Field

from garboard.trail.format.part import OpenPart, Part
from garboard.trail.format.value import Value


class InputPart(Part):
    """One argument of a calculation."""

    name: str = Field(description="Name of the argument.")
    of: list[str] = Field(description="Keys of the facts and figures that went into it.")


class DerivationPart(Part):
    """One computed figure of one item."""

    quantity: str = Field(description="The calculation: subject and name.")
    version: str = Field(description="Version of the calculation.")
    kind: str = Field(description="number, count, truth, text, or opaque (no value is kept).")
    dimension: str | None = Field(description="Dimension of a number.")
    unit: str | None = Field(description="Canonical unit of a number.")
    value: Value = Field(description="The result.")
    inputs: list[InputPart] = Field(description="What went into it.")
    table_rows: list[str] = Field(description="Rows of tables that were read.")
    remarks: list[str] = Field(description="What the calculation has to say about the result.")


class MethodSourcePart(OpenPart):
    """Where a method comes from."""

    source: str = Field(description="The document or practice.")
    status: str = Field(description="How sure that is.")


class QuantityPart(Part):
    """A calculation that was used."""

    method: str = Field(description="The method in words.")
    citation: MethodSourcePart = Field(description="Where the method comes from.")
    version: str = Field(description="Its version.")
    valid: str = Field(description="Within which range it holds.")
    origin: str = Field(description="Which plugin supplies it; 'garboard' is built in.")


class IrregularityPart(Part):
    """Something odd about the wiring as recorded."""

    code: str = Field(description="What kind of irregularity.")
    items: list[str] = Field(description="Ids of the items concerned.")
    text: str = Field(description="In words.")
