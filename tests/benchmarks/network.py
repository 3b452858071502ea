"""The network and figures of the example against a calculation written by hand with numpy.

Run by hand: ``python tests/benchmarks/network.py``. Both start from the record as read and end with
the same figures, which is checked before anything is measured. Ours also says why, for every one.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.network_by_hand import BUSES, CONDUCTORS, DEVICES, PACKS, by_hand, facts_of
from benchmarks.side_by_side import medians, rounds_of
from garboard.assembly import Workshop, open_workshop
from garboard.assembly.collector import collector_held
from garboard.network import build_network
from garboard.quantities import Figures
from garboard.record import Record
from garboard.values import Bounds

ROOT = Path(__file__).resolve().parents[2]
EXAMPLE = ROOT / "examples" / "river-survey-launch" / "after-corrected.yaml"
#: The figures of each kind of thing, by the names they have in the calculation by hand.
FIGURES = {
    PACKS: {"fault_current": "fault_current of batteries"},
    BUSES: {"fault_current": "fault_current of buses"},
    DEVICES: {"prospective_current": "prospective_current", "through_current": "through_current"},
    CONDUCTORS: {name: name for name in ("cold_resistance", "loop_resistance", "ampacity",
                                         "protection_rating")},
    ("bank-main-bus",): {name: name for name in ("charging_current_sum", "charge_current_limit")},
}


def ours(workshop: Workshop, record: Record) -> dict[str, list[Any]]:
    """The same figures by the program, the collector held as in every assessment."""
    with collector_held():
        items = Figures(record, build_network(record), workshop.registry).items
        return {by_hand_name: [items[each][name] for each in things]
                for things, names in FIGURES.items() for name, by_hand_name in names.items()}


def solving(workshop: Workshop, record: Record) -> Callable[[], object]:
    """The currents alone, asked of a circuit whose resistances are there: bounds and causes, but
    no topology, no other figures and no derivations."""
    items = Figures(record, build_network(record), workshop.registry).items
    known = items["record"]["largest_fault_circuit"]

    def solve() -> object:
        circuit = known.without()
        return ([circuit.device_current(each, own_resistance=own)
                 for each in DEVICES for own in (False, True)],
                [circuit.fault_current(each) for each in BUSES])

    return solve


def check(mine: dict[str, list[Any]], other: dict[str, Any]) -> int:
    """How many figures there are; ends with a message where two differ by more than 1e-9."""
    count = 0
    for name, values in mine.items():
        others = other[name] if len(values) > 1 else [other[name]]
        for value, by_other in zip(values, others, strict=True):
            pair = ([value.lo, value.hi, value.nominal] if isinstance(value, Bounds) else [value])
            hand = list(by_other) if hasattr(by_other, "__len__") else [by_other] * len(pair)
            count += 1
            if len(pair) == 1:
                hand = hand[:1]
            if any(abs(a - b) > 1e-9 * abs(b) for a, b in zip(pair, hand, strict=True)):
                raise SystemExit(f"{name} differs: {pair} and {hand}")
    return count


def main() -> None:
    workshop = open_workshop()
    record = workshop.read_record(EXAMPLE)
    facts = facts_of(record.things)
    count = check(ours(workshop, record), by_hand(facts))
    times = medians({"by hand": lambda: by_hand(facts), "program": lambda: ours(workshop, record),
                     "network alone": lambda: build_network(record),
                     "currents alone": solving(workshop, record)},
                    rounds_of(sys.argv, 100))
    print(f"{count} figures: by hand with numpy {times['by hand']:.2f} ms, by the program "
          f"{times['program']:.2f} ms (of which the network {times['network alone']:.2f} ms, the "
          f"currents {times['currents alone']:.2f} ms), "
          f"ratio {times['program'] / times['by hand']:.1f}")


if __name__ == "__main__":
    main()
