"""The survey: when, where and by whom the record was taken."""

from typing import Annotated

from garboard.record.leaves import NOT_RECORDED, Day, Flag, Leaf, Measure, Words
from garboard.record.models.base import Noun


class Survey(Noun):
    """The visit on which the record was taken; its date is the date of an assessment."""

    subject = "survey"
    title = "survey"

    date: Annotated[Leaf, Day("Day of the survey")] = NOT_RECORDED
    place: Annotated[Leaf, Words("Where the vessel lay")] = NOT_RECORDED
    surveyor: Annotated[Leaf, Words("Who took the record")] = NOT_RECORDED
    client: Annotated[Leaf, Words("For whom")] = NOT_RECORDED
    reference: Annotated[Leaf, Words("File or order number")] = NOT_RECORDED
    purpose: Annotated[Leaf, Words("What the survey was asked to answer")] = NOT_RECORDED
    afloat: Annotated[Leaf, Flag("The vessel was afloat")] = NOT_RECORDED
    shore_power_connected: Annotated[Leaf, Flag("Shore power was connected")] = NOT_RECORDED
    ambient_temperature: Annotated[Leaf, Measure(
        "Temperature aboard during the survey", of="temperature", lowest="any",
        likely=("-40 °C", "60 °C"))] = NOT_RECORDED
    not_examined: Annotated[Leaf, Words("What could not be seen or was not looked at")] = (
        NOT_RECORDED)
