"""Which of two devices in series opens by the energies they need: only the nearer one should."""

from __future__ import annotations

from collections.abc import Mapping

from garboard.network import Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.topics.withstand import declared_for
from garboard.values import OUTSIDE_METHOD, Number, Truth, Unknown, quotient, smallest

_DEFINITION = cite("definition", "definition")
_ENERGIES = cite("common practice: a fuse before another stays whole when the energy that melts it "
                 "is above all that the other lets through", "common practice")
_VALID = ("fuses with both energies on record, the let-through declared at no less than the fault "
          "current; a device that batteries feed from one side, past another device")


@quantity("record.melting_energies", kind="opaque",
          needs={"ids": "devices.id", "values": "devices.melting_energy"},
          method="The least energy that melts every device, by its id", citation=_DEFINITION,
          valid="any record")
def melting_energies(ids: tuple[str, ...], values: tuple[Number, ...]) -> dict[str, Number]:
    return dict(zip(ids, values, strict=True))


@quantity("device.let_through_share_of_those_before", dimension="ratio", unknowns="passed",
          needs={"network": "network", "device": "id", "passed": "let_through",
                 "at": "let_through.at_current", "through": "through_current",
                 "melting": "record.melting_energies"},
          method="What it lets through, until the arc is out, over the least energy that melts a "
                 "device next before it, on its way from the batteries; of several that feed it "
                 "side by side each alone",
          citation=_ENERGIES, valid=_VALID)
def let_through_share_of_those_before(network: Network, device: str, passed: Number, at: Number,
                                      through: Number, melting: Mapping[str, Number]) -> Figure:
    before = network.before(device)
    if not before:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="no device stands before it"))
    energy = declared_for(through, passed, at)
    return Figure(quotient(energy, smallest([melting[each] for each in before])),
                  remarks=(f"before it: {', '.join(before)}",))


@quantity("device.energies_are_on_record", kind="truth", unknowns="passed",
          needs={"network": "network", "device": "id", "passed": "let_through",
                 "melting": "record.melting_energies"},
          method="Its let-through, and the energy that melts every device next before it, are on "
                 "record",
          citation=_DEFINITION, valid="any device")
def energies_are_on_record(network: Network, device: str, passed: Number,
                           melting: Mapping[str, Number]) -> bool:
    before = network.before(device)
    return bool(before) and not any(
        isinstance(each, Unknown) for each in (passed, *(melting[of] for of in before or ())))


@quantity("device.opens_first_by_energy", kind="truth",
          needs={"share": "let_through_share_of_those_before"},
          method="It lets through less than would melt any device next before it",
          citation=_ENERGIES, valid=_VALID)
def opens_first_by_energy(share: Number) -> Truth:
    verdict: Truth = share < 1.0
    return verdict


QUANTITIES = (melting_energies, let_through_share_of_those_before,
              energies_are_on_record, opens_first_by_energy)
