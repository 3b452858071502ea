"""Charging sources."""

from typing import Annotated

from garboard.record.leaves import (
    NOT_RECORDED,
    Choice,
    Flag,
    Leaf,
    Measure,
    Reference,
    Words,
)
from garboard.record.models.base import Equipment, Model


class Stages(Model):
    """Voltages of the charging profile, as stored in the source."""

    bulk: Annotated[Leaf, Measure("Bulk", of="voltage")] = NOT_RECORDED
    absorption: Annotated[Leaf, Measure("Absorption", of="voltage")] = NOT_RECORDED
    float: Annotated[Leaf, Measure("Float", of="voltage")] = NOT_RECORDED
    equalising: Annotated[Leaf, Measure("Equalising", of="voltage")] = NOT_RECORDED


class Suppressor(Model):
    """What catches the voltage of an alternator whose battery is cut off."""

    fitted: Annotated[Leaf, Flag("A suppressor is fitted")] = NOT_RECORDED
    clamps_at: Annotated[Leaf, Measure("Voltage it clamps at", of="voltage")] = NOT_RECORDED


class Source(Equipment):
    """A charging source with a positive and a negative terminal."""

    subject = "source"
    title = "charging source"

    kind: Annotated[Leaf, Choice("What it is", among=(
        "alternator", "shore charger", "solar regulator", "DC converter", "wind", "hydro",
        "generator", "motor"))] = NOT_RECORDED
    place: Annotated[Leaf, Reference("Place it stands in", to=("place",))] = NOT_RECORDED
    fed_from: Annotated[Leaf, Reference("Battery or bus that feeds it, or none",
                                        to=("battery", "bus"), may_be_none=True)] = NOT_RECORDED
    nominal_voltage: Annotated[Leaf, Measure("Nominal output voltage", of="voltage")] = NOT_RECORDED
    current_max: Annotated[Leaf, Measure("Greatest output current", of="current")] = NOT_RECORDED
    rated_current: Annotated[Leaf, Measure("Rated output current", of="current")] = NOT_RECORDED
    rated_temperature: Annotated[Leaf, Measure("Temperature the rating holds at",
                                               of="temperature", lowest="any")] = NOT_RECORDED
    continuous_current: Annotated[Leaf, Measure("Output current it delivers hot for hours",
                                                of="current")] = NOT_RECORDED
    profile: Annotated[Leaf, Words("Charging profile as set in the source")] = NOT_RECORDED
    profile_read_out: Annotated[Leaf, Flag(
        "The stages were read out of the source, not from its paper")] = NOT_RECORDED
    stages: Stages | None = NOT_RECORDED
    equalising_enabled: Annotated[Leaf, Flag("Equalising is switched on")] = NOT_RECORDED
    tolerance: Annotated[Leaf, Measure("How far its voltage strays from the stages",
                                       of="voltage", lowest="zero",
                                       likely=("1 mV", "5 V"))] = NOT_RECORDED
    sense_point: Annotated[Leaf, Choice("Where it senses the voltage", among=(
        "own terminals", "battery", "bus"))] = NOT_RECORDED
    temperature_compensation: Annotated[Leaf, Measure(
        "Change of its voltage with battery temperature; 0 mV/K when switched off",
        of="temperature_coefficient", lowest="any")] = NOT_RECORDED
    stop_time: Annotated[Leaf, Measure("Time from the stop signal to no output current",
                                       of="time", lowest="zero")] = NOT_RECORDED
    stop_input: Annotated[Leaf, Flag("It has an input that stops it")] = NOT_RECORDED
    self_limiting: Annotated[Leaf, Flag("It limits its own output current")] = NOT_RECORDED
    fault_contribution: Annotated[Leaf, Measure("Current it adds to a short circuit",
                                                of="current", lowest="zero")] = NOT_RECORDED
    temperature_sensor: Annotated[Leaf, Flag(
        "It senses the temperature of the battery")] = NOT_RECORDED
    own_temperature_sensor: Annotated[Leaf, Flag(
        "It senses its own temperature and backs off")] = NOT_RECORDED
    suppressor: Suppressor | None = NOT_RECORDED
    bypasses_management: Annotated[Leaf, Flag(
        "It charges the cells by a way round the management system's disconnect")] = NOT_RECORDED
    suits_chemistry: Annotated[Leaf, Flag(
        "Its maker declares it fit for the chemistry it charges")] = NOT_RECORDED
    ammeter: Annotated[Leaf, Flag("Its output current can be read")] = NOT_RECORDED
    ignition_protected: Annotated[Leaf, Flag("It cannot ignite vapour around it")] = NOT_RECORDED
