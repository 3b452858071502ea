"""Batteries: chemistry, energy, source resistance, current into a dead short at the terminals."""

from __future__ import annotations

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.table import table
from garboard.values import OUTSIDE_METHOD, Number, Unknown, quotient

_PRACTICE = cite("common practice of the trade", "common practice")
_DEFINITION = cite("definition", "definition")


@quantity("battery.is_lithium", kind="truth", needs={"chemistry": "chemistry"},
          method="The chemistry is one of the lithium-ion chemistries of the table",
          citation=_DEFINITION, valid="chemistries of the table")
def battery_is_lithium(chemistry: str) -> Figure:
    chemistries = table("chemistries")
    cell = chemistries.cell(chemistry, "lithium")
    if cell is None:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"chemistry {chemistry!r}"))
    return Figure(cell == 1, (chemistries.reference(chemistry, "lithium"),))


@quantity("battery.energy_content", dimension="energy", unknowns="passed",
          needs={"stated": "energy", "voltage": "nominal_voltage", "capacity": "capacity"},
          method="Stated energy, else nominal voltage times capacity",
          citation=_DEFINITION, valid="any battery")
def battery_energy_content(stated: Number, voltage: Number, capacity: Number) -> Number:
    product = voltage * capacity
    return product if isinstance(stated, Unknown) else stated


@quantity("battery.source_resistance", dimension="resistance", unknowns="passed",
          needs={"measured": "internal_resistance", "emf": "open_circuit_voltage_max",
                 "declared": "short_circuit_current",
                 "credits_electronics": "short_circuit_current.credits_electronics"},
          method="Internal resistance as recorded; else open-circuit voltage over the declared "
                 "short-circuit current, unless that credits the management electronics",
          citation=_PRACTICE,
          valid="a linear source; a management system's electronics are never credited")
def battery_source_resistance(measured: Number, emf: Number, declared: Number,
                              credits_electronics: bool | Unknown) -> Number:
    if not isinstance(measured, Unknown):
        return measured
    if isinstance(declared, Unknown):
        return measured.joined(declared)
    if credits_electronics is False:
        return quotient(emf, declared)
    if credits_electronics is True:
        return measured
    return measured.joined(credits_electronics)


@quantity("battery.fault_current", dimension="current",
          needs={"emf": "open_circuit_voltage_max", "resistance": "source_resistance"},
          method="Greatest open-circuit voltage over source resistance",
          citation=cite("IEEE 946, I = E over total resistance", "from memory"),
          valid="a dead short at the terminals of one battery; arcs are not covered")
def battery_fault_current(emf: Number, resistance: Number) -> Number:
    return quotient(emf, resistance)


@quantity("record.has_lithium", kind="truth", needs={"lithium": "batteries.is_lithium"},
          method="Any battery aboard is lithium-ion", citation=_DEFINITION, valid="any record")
def record_has_lithium(lithium: tuple[bool | Unknown, ...]) -> bool | Unknown:
    verdict: bool | Unknown = False
    for each in lithium:
        verdict = verdict | each
    return verdict


@quantity("record.energy", dimension="energy", needs={"energies": "batteries.energy_content"},
          method="Sum of the energies of all batteries aboard", citation=_DEFINITION,
          valid="any record")
def record_energy(energies: tuple[Number, ...]) -> Number:
    total: Number = 0.0
    for each in energies:
        total = total + each
    return total


QUANTITIES = (battery_is_lithium, battery_energy_content, battery_source_resistance,
              battery_fault_current, record_has_lithium, record_energy)
