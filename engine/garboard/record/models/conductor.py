"""Conductors: one length of cable between two joints."""

from types import MappingProxyType
from typing import Annotated

from garboard.record.leaves import (
    NOT_RECORDED,
    Choice,
    Count,
    Flag,
    Leaf,
    Measure,
    References,
    Size,
    Words,
)
from garboard.record.models.base import Thing

CONDUCTOR_RESISTANCE = ("1 µΩ", "10 Ω")
CONDUCTOR_LENGTH = ("1 cm", "100 m")
INSULATION = ("50 °C", "300 °C")
#: Extra key of a resistance that was measured or calculated for a temperature.
FOUND_AT = MappingProxyType({
    "temperature": Measure("Temperature of the conductor it holds at", of="temperature",
                           lowest="any")})


class Conductor(Thing):
    """One length of cable in a run; state size and length, or its resistance directly."""

    subject = "conductor"
    title = "conductor"

    size: Annotated[Leaf, Size("Size as AWG, SAE or square millimetres")] = NOT_RECORDED
    length: Annotated[Leaf, Measure("Length of this conductor, one way", of="length",
                                    likely=CONDUCTOR_LENGTH)] = NOT_RECORDED
    insulation: Annotated[Leaf, Measure(
        "Temperature rating of the insulation, as printed on the jacket", of="temperature",
        lowest="any", likely=INSULATION)] = NOT_RECORDED
    insulation_voltage: Annotated[Leaf, Measure("Rated voltage of the insulation",
                                                of="voltage")] = NOT_RECORDED
    insulation_standard: Annotated[Leaf, Words(
        "Standard or type printed on the jacket")] = NOT_RECORDED
    oil_resistant: Annotated[Leaf, Flag("The insulation resists oil")] = NOT_RECORDED
    resistance: Annotated[Leaf, Measure("Resistance, one way", of="resistance",
                                        likely=CONDUCTOR_RESISTANCE,
                                        extras=FOUND_AT)] = NOT_RECORDED
    resistance_class: Annotated[Leaf, Count("Class of stranding after IEC 60228",
                                            among=(2, 5, 6))] = NOT_RECORDED
    material: Annotated[Leaf, Choice("Metal of the conductor",
                                     among=("copper", "aluminium"))] = NOT_RECORDED
    stranding: Annotated[Leaf, Choice("How it is built",
                                      among=("solid", "stranded"))] = NOT_RECORDED
    tinned: Annotated[Leaf, Flag("Its strands are tinned")] = NOT_RECORDED
    polarity: Annotated[Leaf, Choice("What it carries", among=(
        "positive", "negative", "series link", "sense", "bonding"))] = NOT_RECORDED
    sheathed: Annotated[Leaf, Flag(
        "Its whole length runs in a sheath, conduit or enclosure besides its own insulation",
    )] = NOT_RECORDED
    sheathed_length: Annotated[Leaf, Measure(
        "Length from the source on that runs in a sheath, conduit or enclosure", of="length",
        lowest="zero", likely=CONDUCTOR_LENGTH)] = NOT_RECORDED
    bundled_with: Annotated[Leaf, Count(
        "Current-carrying conductors in the same bundle, this one included")] = NOT_RECORDED
    crosses: Annotated[Leaf, References("Places it lies in or crosses",
                                        to=("place",))] = NOT_RECORDED
    joints: Annotated[Leaf, Count("Joints and splices in it, its two ends not counted",
                                  least=0)] = NOT_RECORDED
    joint_resistance: Annotated[Leaf, Measure("Resistance of its joints and ends together",
                                              of="resistance", lowest="zero")] = NOT_RECORDED
    drop_found: Annotated[Leaf, Measure("Voltage drop measured along it", of="voltage",
                                        lowest="zero", likely=("10 µV", "100 V"))] = NOT_RECORDED
    drop_found_at: Annotated[Leaf, Measure("Current at which the drop was measured",
                                           of="current")] = NOT_RECORDED
    ends_covered: Annotated[Leaf, Flag("Its live ends are covered or booted")] = NOT_RECORDED
    lugs: Annotated[Leaf, Choice("How its ends are made", among=(
        "crimped", "crimped and soldered", "soldered", "clamped", "bare"))] = NOT_RECORDED
    most_lugs_on_a_stud: Annotated[Leaf, Count(
        "Greatest number of lugs on a stud at its ends")] = NOT_RECORDED
    torque: Annotated[Leaf, Measure("Torque its ends were tightened to",
                                    of="torque")] = NOT_RECORDED
    torque_advised: Annotated[Leaf, Measure("Torque the maker advises",
                                            of="torque")] = NOT_RECORDED
    supported_every: Annotated[Leaf, Measure("Greatest distance between supports", of="length",
                                             )] = NOT_RECORDED
    protected_from_chafe: Annotated[Leaf, Flag(
        "It is protected where it passes edges and bulkheads")] = NOT_RECORDED
    marked: Annotated[Leaf, Flag("It is marked or colour-coded")] = NOT_RECORDED
