"""Runs: traced cable runs from one terminal to another."""

from typing import Annotated, Self

from pydantic import Field, model_validator

from garboard.record.leaves import (
    NOT_RECORDED,
    Choice,
    Flag,
    Leaf,
    Measure,
    Reference,
    Size,
    Terminal,
    WordOrGroup,
)
from garboard.record.models.base import Model, Thing
from garboard.record.models.conductor import (
    CONDUCTOR_LENGTH,
    CONDUCTOR_RESISTANCE,
    FOUND_AT,
    INSULATION,
    Conductor,
)
from garboard.record.models.device import Device
from garboard.record.models.switch import Switch


class Through(Model):
    """One part that a run passes through: exactly one of the four."""

    conductor: Conductor | None = NOT_RECORDED
    fuse: Device | None = NOT_RECORDED
    breaker: Device | None = NOT_RECORDED
    switch: Switch | None = NOT_RECORDED

    @model_validator(mode="after")
    def _one_part(self) -> Self:
        if len(self.model_fields_set) != 1:
            raise ValueError("exactly one part in each item")
        return self


class Return(Model):
    """The way back of a run, where it is not like the way out."""

    size: Annotated[Leaf, Size("Size of the return")] = NOT_RECORDED
    length: Annotated[Leaf, Measure("Length of the return, one way", of="length",
                                    likely=CONDUCTOR_LENGTH)] = NOT_RECORDED
    insulation: Annotated[Leaf, Measure("Temperature rating of its insulation", of="temperature",
                                        lowest="any", likely=INSULATION)] = NOT_RECORDED
    resistance: Annotated[Leaf, Measure("Resistance of the return, one way", of="resistance",
                                        likely=CONDUCTOR_RESISTANCE,
                                        extras=FOUND_AT)] = NOT_RECORDED
    run: Annotated[Leaf, Reference("The run that is its return", to=("run",))] = NOT_RECORDED


class Run(Thing):
    """A cable run traced from one terminal to another."""

    subject = "run"
    title = "run"

    from_: Annotated[Leaf, Terminal("Where it begins, on the side of the source"),
                     Field(alias="from")]
    to: Annotated[Leaf, Terminal("Where it ends")]
    through: list[Through]
    length: Annotated[Leaf, Measure("Length of the whole run, one way", of="length",
                                    likely=CONDUCTOR_LENGTH)] = NOT_RECORDED
    return_: Annotated[
        Leaf,
        WordOrGroup("How the current comes back", among=("as outgoing", "neglected"),
                    group=Return),
        Field(alias="return")] = NOT_RECORDED
    starts_engine: Annotated[Leaf, Flag("It feeds the cranking motor of an engine")] = NOT_RECORDED
    use: Annotated[Leaf, Choice("What it is for", among=(
        "battery lead", "feeder", "charging", "load", "series link", "parallel link", "return",
        "sense", "bonding"))] = NOT_RECORDED
