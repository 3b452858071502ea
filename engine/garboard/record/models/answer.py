"""Answers to the questions of packs."""

from typing import Annotated, Any

from pydantic import Field

from garboard.record.leaves import NOT_RECORDED, Day, Leaf, Reference, References, Words
from garboard.record.models.base import Model

#: What an answer can be about.
ANSWERABLE = ("place", "battery", "management_system", "run", "conductor", "device", "switch",
              "bus", "source", "load")


class Answer(Model):
    """What a person answered on the spot."""

    may_be_nothing = frozenset({"value"})

    value: Annotated[Any, Field(description="The answer, in the form the question asks for")]
    about: Annotated[Leaf, Reference(
        "Thing it is about, where the question is asked of each", to=ANSWERABLE)] = NOT_RECORDED
    by: Annotated[Leaf, Words("Who answered")] = NOT_RECORDED
    on: Annotated[Leaf, Day("Day of the answer")] = NOT_RECORDED
    until: Annotated[Leaf, Day("Last day on which it holds")] = NOT_RECORDED
    evidence: Annotated[Leaf, References("Evidence it rests on", to=("evidence",))] = NOT_RECORDED
    note: Annotated[Leaf, Words("Anything else worth writing down about it")] = NOT_RECORDED
