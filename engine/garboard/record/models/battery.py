"""Batteries."""

from types import MappingProxyType
from typing import Annotated

from garboard.record.leaves import (
    NOT_RECORDED,
    Choice,
    Count,
    Day,
    Flag,
    Leaf,
    Measure,
    Reference,
    Window,
    Words,
)
from garboard.record.models.base import Equipment, Model, NotDeterminable, Noun
from garboard.record.models.battery_mounting import NearFuel, Restraint

#: Other names of the chemistries, for the hint of a refusal.
_CHEMISTRIES = MappingProxyType({
    **dict.fromkeys(("lifepo4", "lifepo", "lfp4", "lithium iron phosphate"), ("LFP",)),
    **dict.fromkeys(("lithium", "li-ion", "lithium-ion", "lithium ion"), ("LFP", "NMC", "NCA")),
    **dict.fromkeys(("lead-acid", "lead acid", "lead"), ("flooded", "AGM", "gel")),
    **dict.fromkeys(("wet", "wet cell", "open", "efb"), ("flooded",)),
    **dict.fromkeys(("lead carbon", "carbon"), ("lead-carbon",)),
    **dict.fromkeys(("nicd", "ni-cd"), ("nickel-cadmium",)),
    **dict.fromkeys(("nimh", "ni-mh"), ("nickel-metal-hydride",)),
})

INGRESS_PATTERN = r"IP[0-6X][0-9X][A-Z]?"

#: Extra keys of a resistance or current that was measured.
MEASURED_WITH = MappingProxyType({
    "method": Words("How it was measured"),
    "at": Choice("Between which points it was measured",
                 among=("terminals", "posts", "cells", "lugs", "other")),
    "temperature": Measure("Temperature of the cells then", of="temperature", lowest="any"),
    "charge_state": Measure("Charge state of the battery then", of="ratio", lowest="zero",
                            likely=("0 %", "100 %")),
})


class ChargeCurrentAtTemperature(Noun):
    """One step of the maker's charge current against temperature."""

    subject = "battery.charge.current_by_temperature"
    title = "charge current at a temperature"

    temperature: Annotated[Leaf, Window("Cell temperature of this step",
                                        of="temperature")] = NOT_RECORDED
    current_max: Annotated[Leaf, Measure("Greatest charge current in this step", of="current",
                                         lowest="zero")] = NOT_RECORDED


class Charge(Model):
    """What the maker permits when charging."""

    voltage_max: Annotated[Leaf, Measure("Greatest charge voltage", of="voltage")] = NOT_RECORDED
    float_voltage_max: Annotated[Leaf, Measure(
        "Greatest voltage it may be held at for long", of="voltage")] = NOT_RECORDED
    current_max: Annotated[Leaf, Measure("Greatest charge current", of="current")] = NOT_RECORDED
    current_advised: Annotated[Leaf, Measure(
        "Charge current the maker advises", of="current")] = NOT_RECORDED
    temperature: Annotated[Leaf, Window("Cell temperatures at which it may be charged",
                                        of="temperature")] = NOT_RECORDED
    equalising_permitted: Annotated[Leaf, Flag(
        "The maker permits an equalising charge")] = NOT_RECORDED
    current_by_temperature: list[ChargeCurrentAtTemperature] | NotDeterminable | None = NOT_RECORDED


class Discharge(Model):
    """What the maker permits when discharging."""

    current_max: Annotated[Leaf, Measure("Greatest continuous discharge current",
                                         of="current")] = NOT_RECORDED
    peak_current: Annotated[Leaf, Measure("Greatest discharge current for a short time",
                                          of="current")] = NOT_RECORDED
    peak_time: Annotated[Leaf, Measure("How long the peak current may last",
                                       of="time")] = NOT_RECORDED
    voltage_min: Annotated[Leaf, Measure("Least voltage on discharge", of="voltage")] = NOT_RECORDED
    temperature: Annotated[Leaf, Window("Cell temperatures at which it may be discharged",
                                        of="temperature")] = NOT_RECORDED


class Permitted(Model):
    """How many of its kind the maker permits together."""

    series: Annotated[Leaf, Count("Greatest number in series; 1 is none")] = NOT_RECORDED
    parallel: Annotated[Leaf, Count("Greatest number in parallel; 1 is none")] = NOT_RECORDED


class Heater(Model):
    """A heater in or at the battery."""

    fitted: Annotated[Leaf, Flag("There is a heater")] = NOT_RECORDED
    power: Annotated[Leaf, Measure("Power of the heater", of="power")] = NOT_RECORDED
    works_without_charger: Annotated[Leaf, Flag(
        "It heats without a charging source running")] = NOT_RECORDED


class Conformity(Model):
    """Standards and tests that documents aboard show."""

    cell_standard: Annotated[Leaf, Words("Standard the cells are certified to")] = NOT_RECORDED
    battery_standard: Annotated[Leaf, Words(
        "Standard the battery is certified to")] = NOT_RECORDED
    transport_tested: Annotated[Leaf, Flag("A transport test summary is at hand")] = NOT_RECORDED
    for_marine_use: Annotated[Leaf, Flag("The maker declares it fit for marine use")] = NOT_RECORDED
    operating_limits_at_hand: Annotated[Leaf, Flag(
        "The maker's operating limits are at hand in writing")] = NOT_RECORDED


class Battery(Equipment):
    """A battery or battery pack with a positive and a negative terminal."""

    subject = "battery"
    title = "battery"

    chemistry: Annotated[Leaf, Choice("Chemistry of the cells", among=(
        "LFP", "NMC", "NCA", "LMO", "LCO", "LTO", "AGM", "gel", "flooded", "lead-carbon",
        "nickel-cadmium", "nickel-metal-hydride"), also_called=_CHEMISTRIES)] = NOT_RECORDED
    cells_in_series: Annotated[Leaf, Count("Cells in series inside it")] = NOT_RECORDED
    cells_in_parallel: Annotated[Leaf, Count("Cells in parallel inside it")] = NOT_RECORDED
    nominal_voltage: Annotated[Leaf, Measure(
        "Nominal voltage", of="voltage", likely=("1 V", "1000 V"))] = NOT_RECORDED
    capacity: Annotated[Leaf, Measure("Rated capacity", of="charge")] = NOT_RECORDED
    capacity_rate: Annotated[Leaf, Measure(
        "Discharge time the capacity is rated for", of="time")] = NOT_RECORDED
    energy: Annotated[Leaf, Measure("Rated energy", of="energy")] = NOT_RECORDED
    open_circuit_voltage_max: Annotated[Leaf, Measure(
        "Open-circuit voltage when full and rested: the EMF of a fault", of="voltage",
        likely=("1 V", "1000 V"))] = NOT_RECORDED
    internal_resistance: Annotated[Leaf, Measure(
        "Internal resistance between the terminals", of="resistance",
        likely=("10 µΩ", "1 Ω"), extras=MEASURED_WITH)] = NOT_RECORDED
    short_circuit_current: Annotated[Leaf, Measure(
        "Greatest current into a dead short at its terminals, as the maker declares it",
        of="current", likely=("50 A", "100 kA"), extras=MappingProxyType({
            "credits_electronics": Flag(
                "The figure counts on the management electronics to limit or cut the current"),
            "at": Choice("Between which points it holds", among=("terminals", "cells", "other")),
            "time": Measure("When the peak is reached", of="time"),
        }))] = NOT_RECORDED
    cold_cranking_current: Annotated[Leaf, Measure(
        "Cold-cranking current", of="current", extras=MappingProxyType({
            "standard": Words("Standard the rating is to")}))] = NOT_RECORDED
    charge: Charge | None = NOT_RECORDED
    discharge: Discharge | None = NOT_RECORDED
    storage_temperature: Annotated[Leaf, Window("Temperatures at which it may be stored",
                                                of="temperature")] = NOT_RECORDED
    charge_state: Annotated[Leaf, Measure(
        "Charge state found at the survey", of="ratio", lowest="zero",
        likely=("0 %", "100 %"))] = NOT_RECORDED
    voltage_found: Annotated[Leaf, Measure("Voltage found at the survey",
                                           of="voltage")] = NOT_RECORDED
    state_of_health: Annotated[Leaf, Measure(
        "Remaining share of the rated capacity", of="ratio",
        likely=("10 %", "120 %"))] = NOT_RECORDED
    managed_by: Annotated[Leaf, Reference(
        "Management system that watches over it, or none",
        to=("management_system",), may_be_none=True)] = NOT_RECORDED
    place: Annotated[Leaf, Reference("Place it stands in", to=("place",))] = NOT_RECORDED
    permitted: Permitted | None = NOT_RECORDED
    mass: Annotated[Leaf, Measure("Mass", of="mass", likely=("500 g", "2000 kg"))] = NOT_RECORDED
    restraint: Restraint | None = NOT_RECORDED
    orientation: Annotated[Leaf, Choice("How it is mounted", among=(
        "upright", "on its side", "on its end", "upside down"))] = NOT_RECORDED
    orientation_permitted: Annotated[Leaf, Flag(
        "The maker permits this way of mounting")] = NOT_RECORDED
    near_fuel: NearFuel | None = NOT_RECORDED
    terminal_cover: Annotated[Leaf, Flag(
        "Its live terminals are covered or booted")] = NOT_RECORDED
    terminal_kind: Annotated[Leaf, Choice("Kind of terminal or connector", among=(
        "stud", "bolt", "post clamp", "plug", "spring clip", "other"))] = NOT_RECORDED
    ingress: Annotated[Leaf, Words("Ingress protection class", pattern=INGRESS_PATTERN,
                                   example="IP65")] = NOT_RECORDED
    vent_hose: Annotated[Leaf, Flag("Its vent is led out through a hose")] = NOT_RECORDED
    heater: Heater | None = NOT_RECORDED
    made: Annotated[Leaf, Day("Day it was made")] = NOT_RECORDED
    in_service_since: Annotated[Leaf, Day("Day it went into service")] = NOT_RECORDED
    firmware: Annotated[Leaf, Words("Firmware version of its electronics")] = NOT_RECORDED
    starts: Annotated[Leaf, Choice("What it starts", among=(
        "nothing", "main engine", "generator", "several"))] = NOT_RECORDED
    conformity: Conformity | None = NOT_RECORDED
