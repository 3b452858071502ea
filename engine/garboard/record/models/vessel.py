"""The vessel."""

from typing import Annotated

from garboard.record.leaves import NOT_RECORDED, Choice, Count, Flag, Leaf, Measure, Words
from garboard.record.models.base import Model, Noun


class Engines(Model):
    """The engines aboard, outboards included."""

    count: Annotated[Leaf, Count("How many engines there are", least=0)] = NOT_RECORDED
    outboard_only: Annotated[Leaf, Flag("Every engine is an outboard")] = NOT_RECORDED
    gasoline_inboard: Annotated[Leaf, Flag(
        "An inboard gasoline engine drives the boat, a generator or other gear")] = NOT_RECORDED
    cranking_grounds_tied: Annotated[Leaf, Flag(
        "The grounded cranking circuits of all engines are tied by a common conductor",
    )] = NOT_RECORDED


class Vessel(Noun):
    """The boat itself."""

    subject = "vessel"
    title = "vessel"

    name: Annotated[Leaf, Words("Name of the vessel")] = NOT_RECORDED
    kind: Annotated[Leaf, Words("What kind of vessel it is, in a few words")] = NOT_RECORDED
    length: Annotated[Leaf, Measure("Length of the hull", of="length",
                                    likely=("1.5 m", "150 m"))] = NOT_RECORDED
    beam: Annotated[Leaf, Measure("Beam of the hull", of="length",
                                  likely=("50 cm", "30 m"))] = NOT_RECORDED
    hull: Annotated[Leaf, Choice("Material of the hull", among=(
        "fibre-reinforced plastic", "wood", "aluminium", "steel", "other"))] = NOT_RECORDED
    built: Annotated[Leaf, Count("Year the vessel was built", least=1800)] = NOT_RECORDED
    registration: Annotated[Leaf, Words("Registration or hull number")] = NOT_RECORDED
    fuel: Annotated[Leaf, Choice("Fuel of the engines aboard", among=(
        "gasoline", "diesel", "gas", "electric", "none", "several"))] = NOT_RECORDED
    waters: Annotated[Leaf, Choice("Waters it is used on", among=(
        "inland", "sheltered", "coastal", "offshore"))] = NOT_RECORDED
    use: Annotated[Leaf, Choice("What it is used for", among=(
        "private", "commercial", "passengers for hire", "government", "charter"))] = NOT_RECORDED
    persons: Annotated[Leaf, Count("Greatest number of persons aboard")] = NOT_RECORDED
    lived_aboard: Annotated[Leaf, Flag("People sleep or live aboard")] = NOT_RECORDED
    nominal_voltage: Annotated[Leaf, Measure(
        "Nominal voltage of the main DC system", of="voltage",
        likely=("5 V", "1000 V"))] = NOT_RECORDED
    propelled_by_battery: Annotated[Leaf, Flag("A battery bank drives the boat")] = NOT_RECORDED
    cooking_gas: Annotated[Leaf, Flag("Cooking gas is carried aboard")] = NOT_RECORDED
    engines: Engines | None = NOT_RECORDED
