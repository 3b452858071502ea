"""Buses: bars, studs and panels where runs meet."""

from typing import Annotated

from garboard.record.leaves import NOT_RECORDED, Choice, Count, Flag, Leaf, Measure, Reference
from garboard.record.models.base import Equipment


class Bus(Equipment):
    """A bar, stud or panel where runs meet."""

    subject = "bus"
    title = "bus"

    rating: Annotated[Leaf, Measure("Current it carries continuously",
                                    of="current")] = NOT_RECORDED
    withstand_current: Annotated[Leaf, Measure("Short-circuit current it withstands",
                                               of="current")] = NOT_RECORDED
    withstand_time: Annotated[Leaf, Measure("How long it withstands it", of="time")] = NOT_RECORDED
    polarity: Annotated[Leaf, Choice("What it carries",
                                     among=("positive", "negative"))] = NOT_RECORDED
    covered: Annotated[Leaf, Flag("Its live parts are covered")] = NOT_RECORDED
    studs: Annotated[Leaf, Count("Studs or screws for runs")] = NOT_RECORDED
    most_lugs_on_a_stud: Annotated[Leaf, Count("Greatest number of lugs on one stud")] = (
        NOT_RECORDED)
    labelled: Annotated[Leaf, Flag("Its circuits are labelled")] = NOT_RECORDED
    place: Annotated[Leaf, Reference("Place it stands in", to=("place",))] = NOT_RECORDED
