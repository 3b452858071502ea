"""What all models of the record format have in common.

A model declares what may be written about one noun: each field with its kind of leaf, dimension and
meaning. The table of subjects, the reader and the JSON Schema are all made from these declarations.
"""

from typing import Annotated, ClassVar

from pydantic import BaseModel, ConfigDict, model_validator

from garboard.record.leaves import NOT_RECORDED, Identity, Leaf, References, Words


class Model(BaseModel):
    """A frozen piece of a record as written: nothing is converted, unknown keys are refused."""

    model_config = ConfigDict(strict=True, extra="forbid", frozen=True, defer_build=True,
                              populate_by_name=False)
    #: Keys behind which nothing may be written: null is a value of its own there.
    may_be_nothing: ClassVar[frozenset[str]] = frozenset()

    @model_validator(mode="before")
    @classmethod
    def _refuse_nothing(cls, data: object) -> object:
        """A key with nothing behind it is a slip; what is not recorded is left out."""
        if isinstance(data, dict):
            empty = [key for key, each in data.items()
                     if each is None and key not in cls.may_be_nothing]
            if empty:
                raise ValueError(f"nothing behind {', '.join(map(str, empty))}")
        return data


class Noun(Model):
    """A model that is a subject of its own; ``title`` is what people call it."""

    subject: ClassVar[str]
    title: ClassVar[str]


class NotDeterminable(Model):
    """In place of a list of parts: it could not be found out."""

    not_determinable: Annotated[Leaf, Words("Why it could not be found out")]
    evidence: Annotated[Leaf, References("Evidence it rests on",
                                         to=("evidence",))] = NOT_RECORDED
    note: Annotated[Leaf, Words("Anything else worth writing down about it")] = NOT_RECORDED


class Thing(Noun):
    """One thing aboard, found again by its id."""

    id: Annotated[Leaf, Identity("Unique id in the record: lower-case letters, digits, hyphens")]
    name: Annotated[Leaf, Words("What people aboard call it")] = NOT_RECORDED
    note: Annotated[Leaf, Words("Anything else worth writing down about it")] = NOT_RECORDED


class Equipment(Thing):
    """A thing somebody made and sold."""

    maker: Annotated[Leaf, Words("Maker as named on the label")] = NOT_RECORDED
    type: Annotated[Leaf, Words("Type designation as on the label")] = NOT_RECORDED
    serial_number: Annotated[Leaf, Words("Serial number as on the label")] = NOT_RECORDED
