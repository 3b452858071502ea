"""Places: lockers, spaces and decks that things stand in or cables cross."""

from typing import Annotated

from garboard.record.leaves import NOT_RECORDED, Choice, Flag, Leaf, Measure, Window, Words
from garboard.record.models.base import Model, Thing


class Openings(Model):
    """What lets air in and out of a place."""

    low_area: Annotated[Leaf, Measure("Free area of the openings low down", of="area",
                                      lowest="zero")] = NOT_RECORDED
    high_area: Annotated[Leaf, Measure("Free area of the openings at the top", of="area",
                                       lowest="zero")] = NOT_RECORDED
    to_living_space: Annotated[Leaf, Flag("An opening leads into a living space")] = NOT_RECORDED
    fan: Annotated[Leaf, Flag("A fan moves air through the place")] = NOT_RECORDED


class Detection(Model):
    """What would notice trouble in a place."""

    smoke: Annotated[Leaf, Flag("A smoke detector is fitted")] = NOT_RECORDED
    heat: Annotated[Leaf, Flag("A heat or temperature detector is fitted")] = NOT_RECORDED
    gas: Annotated[Leaf, Flag("A gas or vapour detector is fitted")] = NOT_RECORDED
    water: Annotated[Leaf, Flag("A high-water or bilge alarm is fitted")] = NOT_RECORDED
    heard_at: Annotated[Leaf, Words("Where the alarm is heard")] = NOT_RECORDED


class Place(Thing):
    """A locker, space or deck area."""

    subject = "place"
    title = "place"

    kind: Annotated[Leaf, Choice("What kind of place it is", among=(
        "battery space", "locker", "engine space", "living space", "wheelhouse", "cockpit",
        "open deck", "bilge", "void", "other"))] = NOT_RECORDED
    temperature: Annotated[Leaf, Window("Air temperature met there, lowest to highest",
                                        of="temperature")] = NOT_RECORDED
    engine_space: Annotated[Leaf, Flag("It is an engine space")] = NOT_RECORDED
    height_over_bilge: Annotated[Leaf, Measure(
        "Height of its floor over the highest bilge water, 0 m where it can be wet", of="length",
        lowest="zero", likely=("1 mm", "10 m"))] = NOT_RECORDED
    openings: Openings | None = NOT_RECORDED
    vented_to_open_air: Annotated[Leaf, Flag(
        "Gas released there leaves to the open air, not into another space")] = NOT_RECORDED
    vent_path: Annotated[Leaf, Words("Way that released gas takes")] = NOT_RECORDED
    detection: Detection | None = NOT_RECORDED
    ignition_sources: Annotated[Leaf, Flag(
        "Something there can ignite gas or vapour")] = NOT_RECORDED
    gasoline_vapour: Annotated[Leaf, Flag(
        "Gasoline vapour can collect there: tank, engine, fittings or hoses, not isolated",
    )] = NOT_RECORDED
    heat_sources: Annotated[Leaf, Flag(
        "Exhaust, heater or other source of heat there")] = NOT_RECORDED
    occupied: Annotated[Leaf, Flag("People work, sleep or live in it")] = NOT_RECORDED
    sprayed: Annotated[Leaf, Flag("Spray, rain or bilge water can reach it")] = NOT_RECORDED
    reachable: Annotated[Leaf, Flag("It can be reached without tools")] = NOT_RECORDED
    aft_of_collision_bulkhead: Annotated[Leaf, Flag(
        "It lies aft of the collision bulkhead")] = NOT_RECORDED
    fire_boundary: Annotated[Leaf, Words("Fire rating of its boundary")] = NOT_RECORDED
    extinguishing: Annotated[Leaf, Words("What puts out or cools a fire there")] = NOT_RECORDED
    warning_sign: Annotated[Leaf, Flag(
        "A sign at its entrance tells of the batteries inside")] = NOT_RECORDED
