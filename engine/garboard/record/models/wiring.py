"""The wiring as a whole: returns, grounding, bonding, documents."""

from typing import Annotated

from garboard.record.leaves import NOT_RECORDED, Choice, Flag, Leaf, Size, Words
from garboard.record.models.base import Model, Noun


class Grounding(Model):
    """The conductor that ties the DC negative to the vessel's ground."""

    fitted: Annotated[Leaf, Flag("There is one")] = NOT_RECORDED
    size: Annotated[Leaf, Size("Size of the conductor")] = NOT_RECORDED
    at: Annotated[Leaf, Words("Where it joins the DC negative")] = NOT_RECORDED
    one_point_only: Annotated[Leaf, Flag("It joins it at one point only")] = NOT_RECORDED


class Bonding(Model):
    """The conductor that ties underwater metal, tanks and casings together."""

    fitted: Annotated[Leaf, Flag("There is one")] = NOT_RECORDED
    size: Annotated[Leaf, Size("Size of the conductor")] = NOT_RECORDED
    carries_current: Annotated[Leaf, Flag("It serves as the return of a circuit")] = NOT_RECORDED


class Wiring(Noun):
    """What holds for the whole DC installation."""

    subject = "wiring"
    title = "wiring"

    returns: Annotated[Leaf, Choice(
        "How current comes back, where a run does not say otherwise",
        among=("as outgoing", "neglected", "own runs"))] = NOT_RECORDED
    negative_grounded: Annotated[Leaf, Flag("The DC negative is grounded")] = NOT_RECORDED
    grounding_conductor: Grounding | None = NOT_RECORDED
    bonding_conductor: Bonding | None = NOT_RECORDED
    diagram_aboard: Annotated[Leaf, Flag("A wiring diagram as fitted is aboard")] = NOT_RECORDED
    manual_aboard: Annotated[Leaf, Flag(
        "Makers' manuals of batteries and management systems are aboard")] = NOT_RECORDED
    crew_instructed: Annotated[Leaf, Flag(
        "The crew know how to isolate the batteries in an emergency")] = NOT_RECORDED
    battery_warning_sign: Annotated[Leaf, Flag(
        "Signs outside the boat tell of the batteries aboard")] = NOT_RECORDED
    chemistry_labelled: Annotated[Leaf, Flag(
        "Chemistry and voltage are labelled at the isolators")] = NOT_RECORDED
