"""Loads."""

from typing import Annotated

from garboard.record.leaves import NOT_RECORDED, Choice, Flag, Leaf, Measure, Reference
from garboard.record.models.base import Equipment, Model


class LoadVoltage(Model):
    """The voltages a load works at."""

    min: Annotated[Leaf, Measure("Least voltage it works at", of="voltage")] = NOT_RECORDED
    max: Annotated[Leaf, Measure("Greatest voltage it stands", of="voltage")] = NOT_RECORDED


class Load(Equipment):
    """Something that draws current, with a positive and a negative terminal."""

    subject = "load"
    title = "load"

    kind: Annotated[Leaf, Choice("What it is", among=(
        "electronics", "navigation lights", "lighting", "motor", "pump", "bilge pump", "blower",
        "inverter", "DC converter", "heating", "cooling", "cranking motor", "windlass", "thruster",
        "winch", "propulsion", "alarm", "panel", "other"))] = NOT_RECORDED
    power: Annotated[Leaf, Measure("Power it draws", of="power")] = NOT_RECORDED
    current: Annotated[Leaf, Measure("Current it draws", of="current")] = NOT_RECORDED
    voltage: LoadVoltage | None = NOT_RECORDED
    cut_out: Annotated[Leaf, Measure("Voltage below which it switches itself off",
                                     of="voltage")] = NOT_RECORDED
    surge_current: Annotated[Leaf, Measure("Greatest current when it starts",
                                           of="current")] = NOT_RECORDED
    surge_time: Annotated[Leaf, Measure("How long the surge lasts", of="time")] = NOT_RECORDED
    capacitance: Annotated[Leaf, Measure("Input capacitance", of="capacitance")] = NOT_RECORDED
    fault_contribution: Annotated[Leaf, Measure(
        "Current it feeds back into a short circuit, as a running motor does", of="current",
        lowest="zero")] = NOT_RECORDED
    duty: Annotated[Leaf, Measure("Share of the time it runs", of="ratio", lowest="zero",
                                  likely=("0.1 %", "100 %"))] = NOT_RECORDED
    drop_allowed: Annotated[Leaf, Measure("Voltage drop allowed up to it", of="ratio",
                                          likely=("0.5 %", "20 %"))] = NOT_RECORDED
    critical: Annotated[Leaf, Flag(
        "The boat or the people aboard are in danger without it")] = NOT_RECORDED
    second_supply: Annotated[Leaf, Flag(
        "It goes on working when this bank is cut off")] = NOT_RECORDED
    second_supply_from: Annotated[Leaf, Reference(
        "Battery, bus or source that feeds it then, or none", to=("battery", "bus", "source"),
        may_be_none=True)] = NOT_RECORDED
    ignition_protected: Annotated[Leaf, Flag("It cannot ignite vapour around it")] = NOT_RECORDED
    place: Annotated[Leaf, Reference("Place it stands in", to=("place",))] = NOT_RECORDED
