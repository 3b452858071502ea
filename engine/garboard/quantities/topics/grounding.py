"""What the conductors to ground carry when a live conductor touches grounded metal."""

from __future__ import annotations

from typing import Final

from garboard.quantities.declaration import cite, quantity
from garboard.values import OUTSIDE_METHOD, Number, Truth, Unknown, largest
from garboard.values.conductor_size import ConductorSize

_WITHSTAND = cite("IEC 60364-5-54, k = 115 for copper in 70 °C PVC up to 300 mm²", "reprinted")
#: The constant k in A√s/mm²: the least of the usual insulations, since theirs is not recorded.
GROUNDING_K: Final = 115.0
_VALID = "copper, a fault cleared within 5 s; the insulation counts as 70 °C PVC"


def _energy(size: ConductorSize) -> float:
    return (GROUNDING_K * size.area_mm2) ** 2


@quantity("record.grounding_withstand_energy", dimension="let_through",
          needs={"size": "wiring.grounding_conductor.size"},
          method="k² S² of the grounding conductor", citation=_WITHSTAND, valid=_VALID)
def grounding_withstand_energy(size: ConductorSize) -> float:
    return _energy(size)


@quantity("record.bonding_withstand_energy", dimension="let_through",
          needs={"size": "wiring.bonding_conductor.size"},
          method="k² S² of the bonding conductor", citation=_WITHSTAND, valid=_VALID)
def bonding_withstand_energy(size: ConductorSize) -> float:
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
