"""The whole record."""

from typing import Annotated

from pydantic import Field

from garboard.record.leaves import NOT_RECORDED, Leaf, Words
from garboard.record.models.answer import Answer
from garboard.record.models.base import Noun
from garboard.record.models.battery import Battery
from garboard.record.models.bus import Bus
from garboard.record.models.evidence import Evidence
from garboard.record.models.load import Load
from garboard.record.models.management import ManagementSystem
from garboard.record.models.place import Place
from garboard.record.models.run import Run
from garboard.record.models.source import Source
from garboard.record.models.survey import Survey
from garboard.record.models.vessel import Vessel
from garboard.record.models.wiring import Wiring


class InstallationRecord(Noun):
    """What is aboard, as found; a list left out is not recorded, an empty one says none aboard."""

    subject = "record"
    title = "record"

    format: Annotated[Leaf, Words("Name and version of this format",
                                  pattern="installation-record/1",
                                  example="installation-record/1")]
    vessel: Vessel | None = NOT_RECORDED
    survey: Survey | None = NOT_RECORDED
    wiring: Wiring | None = NOT_RECORDED
    places: Annotated[list[Place] | None, Field(
        description="Lockers, spaces and decks")] = NOT_RECORDED
    batteries: Annotated[list[Battery] | None, Field(
        description="Batteries and battery packs")] = NOT_RECORDED
    management_systems: Annotated[list[ManagementSystem] | None, Field(
        description="Battery management systems, internal ones too")] = NOT_RECORDED
    buses: Annotated[list[Bus] | None, Field(
        description="Bars, studs and panels where runs meet")] = NOT_RECORDED
    charging_sources: Annotated[list[Source] | None, Field(
        description="Everything that can charge a battery")] = NOT_RECORDED
    loads: Annotated[list[Load] | None, Field(
        description="Everything that draws current")] = NOT_RECORDED
    runs: Annotated[list[Run] | None, Field(
        description="Cable runs, each traced from one terminal to another")] = NOT_RECORDED
    answers: Annotated[dict[str, Answer | list[Answer]] | None, Field(
        description="Answers to the questions of packs, by the id of the question")] = NOT_RECORDED
    evidence: Annotated[list[Evidence] | None, Field(
        description="Photographs, papers and logs that facts rest on")] = NOT_RECORDED
