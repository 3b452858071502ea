"""What a short circuit does to a conductor: how long it withstands it, how hot it gets.

All heat stays in the metal (the adiabatic form), which holds up to five seconds. The insulation's
end temperature is not in the record, so the constant k lies between two ends: 160 °C, the lowest of
all insulations of the table, and 250 °C.
"""

from __future__ import annotations

import math

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.largest import LargestFaults
from garboard.quantities.spans import high_end, low_end, unrecorded
from garboard.quantities.table import Cell, table
from garboard.quantities.topics.faults import STATE, sided
from garboard.values import (
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Cause,
    Number,
    Unknown,
    largest,
    quotient,
)
from garboard.values.conductor_size import ConductorSize

_ADIABATIC = cite("IEC 60364-5-54 Annex A, k = 226 √ln((234.5 + end)/(234.5 + start))", "reprinted")
_NODAL = cite("nodal analysis of a resistive network, checked against ngspice", "definition")
_END = Cause(OUTSIDE_METHOD, detail="the end temperature of the insulation is not on record")


def adiabatic_limit(name: str) -> Cell:
    """An end of the range of the adiabatic form."""
    return table("short-circuit-range-iec60364-5-54").read("insulated", name)


def _constants() -> tuple[str, ...]:
    """The cells that every k of copper is made of."""
    constants = table("adiabatic-constants-iec60364-5-54")
    return tuple(constants.reference("copper", column) for column in constants.rows["copper"])


def constant_k(start: float, end: float, metal: str = "copper") -> float:
    """k in A√s/mm² from one temperature in °C to another."""
    constants = table("adiabatic-constants-iec60364-5-54").rows[metal]
    beta = constants["beta"]
    return constants["leading"] * math.sqrt(math.log((beta + end) / (beta + start)))


@quantity("conductor.largest_fault_current", dimension="current",
          needs={"faults": "record.largest_faults", "conductor": "id"},
          method="Current in the conductor for a short at its beginning, fed from either end: its "
                 "own resistance is not counted; the larger of the two",
          citation=_NODAL, valid=STATE, version="2")
def largest_fault_current(faults: LargestFaults, conductor: str) -> Figure:
    return sided(faults, faults.through(conductor, own_resistance=False))


@quantity("conductor.withstand_energy", dimension="let_through",
          needs={"size": "size", "insulation": "insulation", "copper": "is_copper"},
          method="k² S² with S the nominal cross-section and k from the temperature rating of the "
                 "insulation to its end temperature, which lies between 160 °C and 250 °C",
          citation=_ADIABATIC,
          valid="copper up to 300 mm², insulation ratings below 160 °C, up to 5 s")
def withstand_energy(size: ConductorSize, insulation: Number, copper: bool) -> Figure:
    lowest, highest, most_area = map(adiabatic_limit, ("lowest end", "highest end",
                                                       "greatest area"))
    if not copper or size.area_mm2 > most_area.value:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"{size.written}, copper: {copper}"))
    if high_end(insulation) >= lowest.value:
        return Figure(Unknown.because(
            OUTSIDE_METHOD, detail=f"insulation of {high_end(insulation):g} °C"))
    least = constant_k(high_end(insulation), lowest.value)
    most = constant_k(low_end(insulation), highest.value)
    causes = (_END, *(insulation.causes if isinstance(insulation, Bounds) else ()))
    return Figure(Bounds(*(((k * size.area_mm2) ** 2) for k in (least, most)),
                         basis=(UNRECORDED,), causes=causes),
                  (*_constants(), lowest.row, highest.row, most_area.row),
                  (f"k from {least:.1f} to {most:.1f} A√s/mm²",))


@quantity("conductor.withstand_time", dimension="time",
          needs={"energy": "withstand_energy", "current": "largest_fault_current"},
          method="k² S² / I² with the largest fault current through it; at least 5 s where the "
                 "form gives more",
          citation=_ADIABATIC, valid="up to 5 s, after which heat is lost and the form ends")
def withstand_time(energy: Number, current: Number) -> Figure:
    found, longest = quotient(quotient(energy, current), current), adiabatic_limit("longest time")
    if isinstance(found, Unknown) or high_end(found) <= longest.value:
        return Figure(found, (longest.row,))
    why = Unknown.because(OUTSIDE_METHOD, detail="the adiabatic form ends there").joined(found)
    return Figure(unrecorded(min(low_end(found), longest.value), math.inf, why), (longest.row,))


@quantity("conductor.let_through", dimension="let_through", unknowns="passed",
          needs={"values": "protecting_devices.let_through",
                 "at": "protecting_devices.let_through.at_current",
                 "current": "largest_fault_current"},
          method="The greatest let-through of the devices that protect it, each declared at a "
                 "current no less than the largest fault current through the conductor",
          citation=cite("definition", "definition"),
          valid="let-through figures declared with their current")
def let_through(values: tuple[Number, ...] | Unknown, at: tuple[Number, ...] | Unknown,
                current: Number) -> Number:
    if isinstance(values, Unknown) or isinstance(at, Unknown):
        return values.joined(at) if isinstance(values, Unknown) else largest(values)
    if not values:
        return Unknown.because(OUTSIDE_METHOD, detail="no device protects this conductor")
    found: list[Number] = []
    for value, declared_at in zip(values, at, strict=True):
        reaches = current <= declared_at
        if reaches is True:
            found.append(value)
        elif reaches is False:
            found.append(Unknown.because(
                OUTSIDE_METHOD, detail="let-through declared at less than the fault current"))
        else:
            found.append(reaches.joined(value))
    return largest(found)


@quantity("conductor.let_through_share", dimension="ratio",
          needs={"passed": "let_through", "withstood": "withstand_energy",
                 "clearing": "clearing_time"}, unknowns="passed", version="2",
          method="Let-through of its protection over the energy it withstands",
          citation=_ADIABATIC, valid="faults cleared within 5 s")
def let_through_share(passed: Number, withstood: Number, clearing: Number) -> Figure:
    if isinstance(passed, Unknown):
        return Figure(passed.joined(withstood) if isinstance(withstood, Unknown) else passed)
    return within_form(withstood if isinstance(withstood, Unknown)
                       else quotient(passed, withstood), clearing)


def within_form(found: Number, clearing: Number, rows: tuple[str, ...] = ()) -> Figure:
    """A figure of the adiabatic form, unless the fault certainly lasts longer than that holds."""
    longest = adiabatic_limit("longest time")
    if not isinstance(found, Unknown) and low_end(clearing) > longest.value:
        found = Unknown.because(OUTSIDE_METHOD, detail="not cleared within the time of the form")
    return Figure(found, (*rows, longest.row))


@quantity("conductor.final_temperature", dimension="temperature",
          needs={"passed": "let_through", "size": "size", "insulation": "insulation",
                 "copper": "is_copper", "clearing": "clearing_time"}, version="2",
          method="(234.5 + start) exp(I²t / (226² S²)) − 234.5 from the temperature rating of the "
                 "insulation, with the let-through of its protection",
          citation=_ADIABATIC, valid="copper; faults cleared within 5 s")
def final_temperature(passed: Number, size: ConductorSize, insulation: Number,
                      copper: bool, clearing: Number) -> Figure:
    if not copper:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="not of copper"))
    constants = table("adiabatic-constants-iec60364-5-54").rows["copper"]
    scale = (constants["leading"] * size.area_mm2) ** 2
    low, high = (heated(start, energy / scale) for start, energy in (
        (low_end(insulation), low_end(passed)), (high_end(insulation), high_end(passed))))
    if low == high:
        return within_form(low, clearing, _constants())
    parts = [each for each in (passed, insulation) if isinstance(each, Bounds)]
    return within_form(Bounds(low, high, basis=(UNRECORDED,), causes=tuple(
        cause for each in parts for cause in each.causes)), clearing, _constants())


def heated(start: float, exponent: float) -> float:
    """Temperature in °C of copper after an energy; infinite where it cannot be written down."""
    beta = table("adiabatic-constants-iec60364-5-54").rows["copper"]["beta"]
    return math.inf if exponent > 100 else (beta + start) * math.exp(exponent) - beta


QUANTITIES = (largest_fault_current, withstand_energy, withstand_time, let_through,
              let_through_share, final_temperature)
