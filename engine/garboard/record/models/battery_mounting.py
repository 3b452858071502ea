"""How a battery is held, and how near fuel it stands."""

from typing import Annotated

from garboard.record.leaves import NOT_RECORDED, Flag, Leaf, Measure, Words
from garboard.record.models.base import Model


class Restraint(Model):
    """What holds the battery in its place."""

    fitted: Annotated[Leaf, Flag("It is held by a tray, strap, clamp or bracket")] = NOT_RECORDED
    kind: Annotated[Leaf, Words("What holds it")] = NOT_RECORDED
    movement: Annotated[Leaf, Measure(
        "How far it moves in any direction under the test pull", of="length", lowest="zero",
        likely=("0 mm", "30 cm"))] = NOT_RECORDED
    test_force: Annotated[Leaf, Measure("Pull it was tested with", of="force")] = NOT_RECORDED
    holds_upside_down: Annotated[Leaf, Flag(
        "It would stay in place with the boat upside down")] = NOT_RECORDED


class NearFuel(Model):
    """Fuel parts near the battery."""

    above_or_below: Annotated[Leaf, Flag(
        "It is directly above or below a fuel tank, filter or fuel-line fitting")] = NOT_RECORDED
    line_distance: Annotated[Leaf, Measure(
        "Distance to the nearest metallic fuel line or part above its top", of="length",
        lowest="zero")] = NOT_RECORDED
    line_shielded: Annotated[Leaf, Flag(
        "That fuel line is shielded by insulating material")] = NOT_RECORDED
