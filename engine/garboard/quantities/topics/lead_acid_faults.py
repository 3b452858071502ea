"""Short circuits fed by lead-acid batteries, at buses and devices, by IEC 61660-1 from memory.

The standard's R_BBr is 0.9 of the battery's resistance plus that of its conductors and of the
common branch; the peak is EMF over R_BBr, the current after a second 0.95 EMF over R_BBr plus 0.1
of the battery's resistance. Both are linear in the network, so several strings are solved together:
once with every battery at 0.9 of its resistance, once with all of it and 0.95 of the EMFs.
Inductance delays the peak and does not change it in this form; how long that takes is not given,
for the inductance of a run is only known to be at most a figure. Chargers, machines and motors have
forms of their own in the standard; what they add is not in these figures. A battery joined to the
place that is not lead-acid puts it outside the method.
"""

from __future__ import annotations

from collections.abc import Mapping

from garboard.network import Circuit, Network
from garboard.quantities.declaration import Figure, quantity
from garboard.quantities.largest import LargestFaults, contacts_of
from garboard.quantities.topics.faults import sided
from garboard.quantities.topics.lead_acid import IEC61660, factor
from garboard.values import Number

Ids = tuple[str, ...]
Numbers = tuple[Number, ...]
Forms = Mapping[str, LargestFaults]

_VALID = ("lead-acid batteries only, whatever else is joined to the place; a dead short in the "
          "state of the largest fault; the part of the batteries alone; not validated for lithium")
_ALONE = "of batteries alone: what chargers, machines and motors add is not counted"
_NEEDS = {"forms": "record.lead_acid_faults"}
_PEAK = ("peak_resistance",)
_SECOND = ("second_emf", "peak_resistance", "second_resistance")


@quantity("record.lead_acid_faults", kind="opaque",
          needs={"network": "network", "circuit": "largest_fault_circuit",
                 "ids": "batteries.id", "emfs": "batteries.iec61660_emf",
                 "internal": "batteries.source_resistance",
                 "devices": "devices.least_resistance", "device_ids": "devices.id",
                 "switches": "switches.least_resistance", "switch_ids": "switches.id"},
          method="The circuit of the largest fault with the battery resistances and EMFs of the "
                 "peak, and with those of the current after a second",
          citation=IEC61660, valid=_VALID)
def lead_acid_faults(network: Network, circuit: Circuit, ids: Ids, emfs: Numbers,
                     internal: Numbers, devices: Numbers, device_ids: Ids, switches: Numbers,
                     switch_ids: Ids) -> Forms:
    contacts = contacts_of({**dict(zip(device_ids, devices, strict=True)),
                            **dict(zip(switch_ids, switches, strict=True))})

    def form(emf_share: float, resistance_share: float) -> LargestFaults:
        changed = circuit.with_resistances({each: value * resistance_share for each, value in
                                            zip(ids, internal, strict=True)})
        changed = changed.with_emfs({each: value * emf_share for each, value in
                                     zip(ids, emfs, strict=True)})
        return LargestFaults(network, changed, contacts)

    first, more = factor("peak_resistance").value, factor("second_resistance").value
    return {"peak": form(1.0, first), "one second": form(factor("second_emf").value, first + more)}


def _rows(names: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(factor(name).row for name in names)


@quantity("bus.peak_fault_current", dimension="current", needs={**_NEEDS, "bus": "id"},
          method="The peak of the current into a short at the bus: every battery at 0.9 of its "
                 "resistance",
          citation=IEC61660, valid=_VALID)
def bus_peak_fault_current(forms: Forms, bus: str) -> Figure:
    return Figure(forms["peak"].fault_current(bus), _rows(_PEAK), (_ALONE,))


@quantity("bus.one_second_fault_current", dimension="current", needs={**_NEEDS, "bus": "id"},
          method="The current into a short at the bus after a second: 0.95 of every EMF, all of "
                 "every resistance",
          citation=IEC61660, valid=_VALID)
def bus_one_second_fault_current(forms: Forms, bus: str) -> Figure:
    return Figure(forms["one second"].fault_current(bus), _rows(_SECOND), (_ALONE,))


@quantity("device.peak_fault_current", dimension="current", needs={**_NEEDS, "device": "id"},
          method="The peak of the current through the device's place, replaced by a link, for a "
                 "short at either of its terminals; the larger of the two",
          citation=IEC61660, valid=_VALID)
def device_peak_fault_current(forms: Forms, device: str) -> Figure:
    return _through(forms["peak"], device, _PEAK)


@quantity("device.one_second_fault_current", dimension="current", needs={**_NEEDS, "device": "id"},
          method="As the peak, after a second", citation=IEC61660, valid=_VALID)
def device_one_second_fault_current(forms: Forms, device: str) -> Figure:
    return _through(forms["one second"], device, _SECOND)


def _through(faults: LargestFaults, device: str, names: tuple[str, ...]) -> Figure:
    found = sided(faults, faults.through(device, own_resistance=False))
    return Figure(found.value, _rows(names), (*found.remarks, _ALONE))


QUANTITIES = (lead_acid_faults, bus_peak_fault_current, bus_one_second_fault_current,
              device_peak_fault_current, device_one_second_fault_current)
