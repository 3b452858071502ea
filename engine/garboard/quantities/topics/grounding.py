"""What the conductors to ground carry when a live conductor touches grounded metal."""

from __future__ import annotations

from typing import Final

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.table import table
from garboard.quantities.topics.heating import adiabatic_limit
from garboard.values import OUTSIDE_METHOD, Number, Truth, Unknown, largest
from garboard.values.conductor_size import ConductorSize

_WITHSTAND = cite("IEC 60364-5-54, k = 115 for copper in 70 °C PVC up to 300 mm²", "reprinted")
#: The row of k that counts: that of the usual insulation, since theirs is not recorded.
_INSULATION: Final = "PVC 70 °C"
_VALID = "copper up to 300 mm², a fault cleared within 5 s; the insulation counts as 70 °C PVC"


def _energy(size: ConductorSize) -> Figure:
    most = adiabatic_limit("greatest area")
    if size.area_mm2 > most.value:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=size.written))
    k = table("short-circuit-temperatures-iec60364-5-54").read(_INSULATION, "k of copper")
    return Figure((k.value * size.area_mm2) ** 2, (k.row, most.row))


@quantity("record.grounding_withstand_energy", dimension="let_through",
          needs={"size": "wiring.grounding_conductor.size"},
          method="k² S² of the grounding conductor", citation=_WITHSTAND, valid=_VALID,
          version="2")
def grounding_withstand_energy(size: ConductorSize) -> Figure:
    return _energy(size)


@quantity("record.bonding_withstand_energy", dimension="let_through",
          needs={"size": "wiring.bonding_conductor.size"},
          method="k² S² of the bonding conductor", citation=_WITHSTAND, valid=_VALID,
          version="2")
def bonding_withstand_energy(size: ConductorSize) -> Figure:
    return _energy(size)


@quantity("record.largest_let_through", dimension="let_through",
          needs={"fed": "conductors.is_fed_by_a_battery", "protected": "conductors.is_protected",
                 "energies": "conductors.let_through"},
          method="The greatest let-through of the protection of any conductor that a battery feeds "
                 "past protection: what returns over grounded metal when such a conductor touches "
                 "it",
          citation=cite("definition", "definition"),
          valid="let-through figures declared with their current; unprotected conductors, as the "
                "cable of a starter, have none and are left out")
def largest_let_through(fed: tuple[Truth, ...], protected: tuple[Truth, ...],
                        energies: tuple[Number, ...]) -> Number:
    found = [energy for live, held, energy in zip(fed, protected, energies, strict=True)
             if live is not False and held is not False]
    return largest(found) if found else Unknown.because(
        OUTSIDE_METHOD, detail="no protected conductor is fed by a battery")


QUANTITIES = (grounding_withstand_energy, bonding_withstand_energy, largest_let_through)
