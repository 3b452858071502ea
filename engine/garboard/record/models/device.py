"""Protective devices: fuses and breakers."""

from types import MappingProxyType
from typing import Annotated

from pydantic import Field

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
from garboard.record.models.base import Equipment, Model, NotDeterminable, Noun

#: Resistance of a joint, fuse or contact: small, and seldom more than this.
SMALL_RESISTANCE = ("1 µΩ", "5 Ω")


class BreakingPoint(Noun):
    """One declared breaking capacity: a current, at a voltage, up to a time constant."""

    subject = "device.breaks"
    title = "breaking capacity of a device"

    current: Annotated[Leaf, Measure("Greatest current it breaks", of="current",
                                     likely=("50 A", "500 kA"))] = NOT_RECORDED
    voltage: Annotated[Leaf, RatedVoltage("Voltage at which it breaks it")] = NOT_RECORDED
    time_constant: Annotated[Leaf, Measure("Greatest time constant of the circuit", of="time",
                                           likely=("10 µs", "1 s"))] = NOT_RECORDED


class Holder(Model):
    """What a fuse sits in."""

    rating: Annotated[Leaf, Measure("Rated current of the holder", of="current")] = NOT_RECORDED
    voltage: Annotated[Leaf, RatedVoltage("Rated voltage of the holder")] = NOT_RECORDED
    withstand_current: Annotated[Leaf, Measure("Current it withstands for a short time",
                                               of="current")] = NOT_RECORDED
    withstand_time: Annotated[Leaf, Measure("How long it withstands it", of="time")] = NOT_RECORDED
    covered: Annotated[Leaf, Flag("Its live parts are covered")] = NOT_RECORDED
    sound: Annotated[Leaf, Flag("It shows no heat, corrosion or looseness")] = NOT_RECORDED


class Device(Equipment):
    """A fuse or a breaker in a run."""

    subject = "device"
    title = "protective device"

    class_: Annotated[Leaf, Words("Class or style, such as T, blade, strip, thermal"),
                      Field(alias="class")] = NOT_RECORDED
    standard: Annotated[Leaf, Words("Standard it is made to")] = NOT_RECORDED
    rating: Annotated[Leaf, Measure("Rated current", of="current",
                                    likely=("100 mA", "6 kA"))] = NOT_RECORDED
    setting: Annotated[Leaf, Measure("Current an adjustable breaker is set to",
                                     of="current")] = NOT_RECORDED
    rated_temperature: Annotated[Leaf, Measure("Ambient temperature the rating holds at",
                                               of="temperature", lowest="any")] = NOT_RECORDED
    breaks: list[BreakingPoint] | NotDeterminable | None = NOT_RECORDED
    resistance: Annotated[Leaf, Measure("Own resistance, cold", of="resistance", lowest="zero",
                                        likely=SMALL_RESISTANCE)] = NOT_RECORDED
    curve_standard: Annotated[Leaf, Words("Standard of its time-current curve")] = NOT_RECORDED
    curve: Annotated[Leaf, Choice("How fast it opens on a moderate overload", among=(
        "fast", "normal", "slow", "short circuits only"))] = NOT_RECORDED
    let_through: Annotated[Leaf, Measure(
        "Greatest let-through energy", of="let_through", extras=MappingProxyType({
            "at_current": Measure("Current it is let through at", of="current"),
            "at_voltage": RatedVoltage("Voltage it is let through at"),
        }))] = NOT_RECORDED
    melting_energy: Annotated[Leaf, Measure(
        "Least energy that melts it, before any arc", of="let_through")] = NOT_RECORDED
    mounting: Annotated[Leaf, Choice("How it is mounted", among=(
        "post", "holder", "block", "panel", "in line"))] = NOT_RECORDED
    holder: Holder | None = NOT_RECORDED
    polarity_sensitive: Annotated[Leaf, Flag(
        "It breaks current in one direction only")] = NOT_RECORDED
    polarity_correct: Annotated[Leaf, Flag("It is fitted the right way round")] = NOT_RECORDED
    poles: Annotated[Leaf, Count("Poles it opens together")] = NOT_RECORDED
    trip_free: Annotated[Leaf, Flag(
        "It opens on a fault even when its handle is held")] = NOT_RECORDED
    manual_reset: Annotated[Leaf, Flag("It closes again only by hand")] = NOT_RECORDED
    covered: Annotated[Leaf, Flag("Its live parts are covered")] = NOT_RECORDED
    ignition_protected: Annotated[Leaf, Flag("It cannot ignite vapour around it")] = NOT_RECORDED
    spare_aboard: Annotated[Leaf, Flag("A spare of the same class and rating is aboard")] = (
        NOT_RECORDED)
    reachable: Annotated[Leaf, Flag("It can be reached without tools")] = NOT_RECORDED
    place: Annotated[Leaf, Reference("Place it stands in", to=("place",))] = NOT_RECORDED
