"""Switches: isolators, contactors, relays, and shunts that sit in a run."""

from typing import Annotated

from garboard.record.leaves import (
    NOT_RECORDED,
    Choice,
    Count,
    Flag,
    Leaf,
    Measure,
    RatedVoltage,
    Reference,
    Words,
)
from garboard.record.models.base import Equipment
from garboard.record.models.device import SMALL_RESISTANCE


class Switch(Equipment):
    """Something in a run that opens and closes it without protecting it, or a shunt."""

    subject = "switch"
    title = "switch"

    kind: Annotated[Leaf, Choice("What it is", among=(
        "isolator", "contactor", "relay", "shunt"))] = NOT_RECORDED
    standard: Annotated[Leaf, Words("Standard it is made to")] = NOT_RECORDED
    rated_voltage: Annotated[Leaf, RatedVoltage("Rated voltage")] = NOT_RECORDED
    continuous_current: Annotated[Leaf, Measure("Current it carries continuously",
                                                of="current")] = NOT_RECORDED
    make_current: Annotated[Leaf, Measure("Greatest current it can close on",
                                          of="current")] = NOT_RECORDED
    break_current: Annotated[Leaf, Measure("Greatest current it can open",
                                           of="current")] = NOT_RECORDED
    break_voltage: Annotated[Leaf, RatedVoltage(
        "Voltage at which it can open that current")] = NOT_RECORDED
    withstand_current: Annotated[Leaf, Measure("Current it withstands for a short time",
                                               of="current")] = NOT_RECORDED
    withstand_time: Annotated[Leaf, Measure("How long it withstands it", of="time")] = NOT_RECORDED
    resistance: Annotated[Leaf, Measure("Resistance when closed", of="resistance", lowest="zero",
                                        likely=SMALL_RESISTANCE)] = NOT_RECORDED
    poles: Annotated[Leaf, Count("Poles it opens together")] = NOT_RECORDED
    polarity_sensitive: Annotated[Leaf, Flag(
        "It opens current in one direction only")] = NOT_RECORDED
    on_lost_signal: Annotated[Leaf, Choice("What it does when its signal or supply is lost",
                                           among=("opens", "closes", "stays"))] = NOT_RECORDED
    found: Annotated[Leaf, Choice("How it was found", among=("closed", "open"))] = NOT_RECORDED
    worked_by: Annotated[Leaf, Reference("Management system that works it, or none",
                                         to=("management_system",),
                                         may_be_none=True)] = NOT_RECORDED
    reachable: Annotated[Leaf, Flag("It can be reached quickly without tools")] = NOT_RECORDED
    reachable_from_outside: Annotated[Leaf, Flag(
        "It can be worked from outside the space the batteries stand in")] = NOT_RECORDED
    labelled: Annotated[Leaf, Flag("A label says what it isolates")] = NOT_RECORDED
    covered: Annotated[Leaf, Flag("Its live parts are covered")] = NOT_RECORDED
    ignition_protected: Annotated[Leaf, Flag("It cannot ignite vapour around it")] = NOT_RECORDED
    place: Annotated[Leaf, Reference("Place it stands in", to=("place",))] = NOT_RECORDED
