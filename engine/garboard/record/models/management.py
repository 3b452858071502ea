"""Management systems: what watches over batteries and may cut them off."""

from typing import Annotated

from garboard.record.leaves import (
    NOT_RECORDED,
    Choice,
    Flag,
    Leaf,
    Measure,
    Reference,
    References,
    Words,
)
from garboard.record.models.base import Equipment, Model, NotDeterminable, Noun

_CELL = ("100 mV", "6 V")


class Trips(Model):
    """Values at which it disconnects."""

    voltage_high: Annotated[Leaf, Measure("Highest pack voltage", of="voltage")] = NOT_RECORDED
    voltage_low: Annotated[Leaf, Measure("Lowest pack voltage", of="voltage")] = NOT_RECORDED
    cell_voltage_high: Annotated[Leaf, Measure("Highest cell voltage", of="voltage",
                                               likely=_CELL)] = NOT_RECORDED
    cell_voltage_low: Annotated[Leaf, Measure("Lowest cell voltage", of="voltage",
                                              likely=_CELL)] = NOT_RECORDED
    charge_current: Annotated[Leaf, Measure("Charge current", of="current")] = NOT_RECORDED
    discharge_current: Annotated[Leaf, Measure("Discharge current", of="current")] = NOT_RECORDED
    short_circuit_current: Annotated[Leaf, Measure("Current it takes for a short circuit",
                                                   of="current")] = NOT_RECORDED
    temperature_high: Annotated[Leaf, Measure("Highest temperature", of="temperature",
                                              lowest="any")] = NOT_RECORDED
    temperature_low: Annotated[Leaf, Measure("Lowest temperature", of="temperature",
                                             lowest="any")] = NOT_RECORDED


class Delays(Model):
    """How long a value must stand before it disconnects."""

    voltage_high: Annotated[Leaf, Measure("Delay at highest voltage", of="time",
                                          lowest="zero")] = NOT_RECORDED
    voltage_low: Annotated[Leaf, Measure("Delay at lowest voltage", of="time",
                                         lowest="zero")] = NOT_RECORDED
    charge_current: Annotated[Leaf, Measure("Delay at charge current", of="time",
                                            lowest="zero")] = NOT_RECORDED
    discharge_current: Annotated[Leaf, Measure("Delay at discharge current", of="time",
                                               lowest="zero")] = NOT_RECORDED
    short_circuit: Annotated[Leaf, Measure("Delay at a short circuit", of="time",
                                           lowest="zero")] = NOT_RECORDED
    temperature: Annotated[Leaf, Measure("Delay at high or low temperature", of="time",
                                         lowest="zero")] = NOT_RECORDED


class Warning(Model):
    """What it does before it disconnects."""

    before_disconnect: Annotated[Leaf, Flag("It warns before it disconnects")] = NOT_RECORDED
    time: Annotated[Leaf, Measure("How long before", of="time", lowest="zero")] = NOT_RECORDED
    alarm: Annotated[Leaf, Choice("How it warns", among=(
        "sound", "light", "sound and light", "message", "none"))] = NOT_RECORDED
    heard_at: Annotated[Leaf, Words("Where the alarm is heard or seen")] = NOT_RECORDED
    heard_at_helm: Annotated[Leaf, Flag("It is heard or seen at the helm")] = NOT_RECORDED
    voltage_high: Annotated[Leaf, Measure("Pack voltage at which it warns of too much",
                                          of="voltage")] = NOT_RECORDED
    voltage_low: Annotated[Leaf, Measure("Pack voltage at which it warns of too little",
                                         of="voltage")] = NOT_RECORDED
    temperature_high: Annotated[Leaf, Measure("Temperature at which it warns", of="temperature",
                                              lowest="any")] = NOT_RECORDED


class Output(Noun):
    """A contact, signal or bus message by which it acts on other equipment."""

    subject = "management_system.outputs"
    title = "output of a management system"

    name: Annotated[Leaf, Words("Name of the output")] = NOT_RECORDED
    stops: Annotated[Leaf, References(
        "Charging sources and loads that it stops; an empty list stops nothing",
        to=("source", "load"))] = NOT_RECORDED
    opens: Annotated[Leaf, References("Switches that it opens", to=("switch",))] = NOT_RECORDED
    acts_on: Annotated[Leaf, Choice("What makes it act", among=(
        "charging must stop", "discharging must stop", "both", "alarm"))] = NOT_RECORDED
    fail_safe: Annotated[Leaf, Flag(
        "A broken wire or lost supply stops what it stops")] = NOT_RECORDED
    acts_in: Annotated[Leaf, Measure("Time from signal to effect", of="time",
                                     lowest="zero")] = NOT_RECORDED
    before_disconnect: Annotated[Leaf, Flag(
        "It acts before the management system disconnects the battery")] = NOT_RECORDED
    tested: Annotated[Leaf, Flag("It was seen to work at the survey")] = NOT_RECORDED


class ManagementSystem(Equipment):
    """A battery management system."""

    subject = "management_system"
    title = "management system"

    kind: Annotated[Leaf, Choice("Built into the battery, or outside it",
                                 among=("internal", "external"))] = NOT_RECORDED
    place: Annotated[Leaf, Reference("Place it stands in", to=("place",))] = NOT_RECORDED
    firmware: Annotated[Leaf, Words("Firmware version")] = NOT_RECORDED
    watches_cells: Annotated[Leaf, Flag("It measures every cell")] = NOT_RECORDED
    balances_cells: Annotated[Leaf, Flag("It balances the cells")] = NOT_RECORDED
    trips: Trips | None = NOT_RECORDED
    delays: Delays | None = NOT_RECORDED
    warning: Warning | None = NOT_RECORDED
    outputs: list[Output] | NotDeterminable | None = NOT_RECORDED
    inhibits_charge_below: Annotated[Leaf, Measure(
        "Cell temperature below which it stops charging", of="temperature",
        lowest="any")] = NOT_RECORDED
    inhibits_charge_above: Annotated[Leaf, Measure(
        "Cell temperature above which it stops charging", of="temperature",
        lowest="any")] = NOT_RECORDED
    separate_charge_discharge_paths: Annotated[Leaf, Flag(
        "It can stop charging while discharging goes on, and the reverse")] = NOT_RECORDED
    reconnects: Annotated[Leaf, Choice("How it reconnects after a trip", among=(
        "by itself", "when a charger is found", "by hand", "not at all"))] = NOT_RECORDED
    precharge: Annotated[Leaf, Flag("It precharges capacitive loads")] = NOT_RECORDED
    precharge_to: Annotated[Leaf, Measure(
        "Share of the battery's voltage that loads are precharged to before it closes", of="ratio",
        lowest="zero", likely=("10 %", "100 %"))] = NOT_RECORDED
    continuous_current: Annotated[Leaf, Measure("Current it carries continuously",
                                                of="current")] = NOT_RECORDED
    break_current: Annotated[Leaf, Measure("Greatest current it can interrupt",
                                           of="current")] = NOT_RECORDED
    break_voltage: Annotated[Leaf, Measure("Voltage up to which it can interrupt that current",
                                           of="voltage")] = NOT_RECORDED
    disconnects_by: Annotated[Leaf, Choice("What it disconnects with", among=(
        "transistors", "contactor", "nothing"))] = NOT_RECORDED
    standby_current: Annotated[Leaf, Measure("Current it draws by itself", of="current",
                                             likely=("1 µA", "10 A"))] = NOT_RECORDED
    keeps_log: Annotated[Leaf, Flag("It keeps a log that can be read out")] = NOT_RECORDED
    behaviour_documented: Annotated[Leaf, Flag(
        "The maker's description of when and how it disconnects is at hand")] = NOT_RECORDED
