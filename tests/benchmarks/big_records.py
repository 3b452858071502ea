"""Records of any size, in the shapes that a growing installation can take.

Each shape has about ``runs`` runs. Every battery's resistance is known to ±10 %; lengths, sizes and
ratings are all recorded, apart from those of ``gaps``.

| shape | what it is |
|---|---|
| ``tree`` | six batteries in parallel, a main bus, distribution buses of twenty loads each |
| ``star`` | six batteries in parallel, all loads on one bus, breakers in the middle of the runs |
| ``bare`` | the same without any device in the runs of the loads |
| ``chain`` | one battery, bus after bus in a row, each with a load |
| ``bank`` | batteries in parallel, each on a run of its own, and one load |
| ``ladder`` | two rows of buses joined at every step: rings throughout |
| ``mesh`` | two batteries, and a tenth as many buses as runs, joined by runs in all directions |
| ``both`` | the tree with its negative side traced too, run by run |
| ``gaps`` | the tree with every third length and rating not recorded |
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Mapping
from itertools import pairwise
from typing import Any, Final

Data = dict[str, Any]
PER_BUS: Final = 20


def record(shape: str, runs: int) -> Data:
    """The data of a record of a shape; ``runs`` is 10 or more."""
    return SHAPES[shape](runs)


def _record(batteries: int, buses: list[str], loads: int, runs: list[Data]) -> Data:
    return {
        "format": "installation-record/1", "survey": {"date": "2026-01-15"},
        "vessel": {"name": "Heavy Traffic"}, "wiring": {"returns": "as outgoing"},
        "places": [{"id": "hold", "temperature": "-4 .. 40 °C"}],
        "batteries": [{"id": f"pack-{each}", "chemistry": "LFP", "nominal_voltage": "25.6 V",
                       "open_circuit_voltage_max": "26.8 V", "capacity": "200 Ah",
                       "internal_resistance": {"value": "2.1 mΩ", "plus_minus": "10 %"},
                       "place": "hold"} for each in range(batteries)],
        "management_systems": [], "charging_sources": [],
        "buses": [{"id": each} for each in buses],
        "loads": [{"id": f"load-{each}", "current": "5 A"} for each in range(loads)],
        "runs": runs,
    }


class _Runs:
    """Numbers conductors and devices one after the other."""

    def __init__(self) -> None:
        self.made: list[Data] = []

    def add(self, start: str, end: str, *parts: Mapping[str, Any]) -> None:
        number = len(self.made)
        through = [{kind: {"id": f"{kind[0]}{place}-{number}", **facts}}
                   for place, part in enumerate(parts) for kind, facts in part.items()]
        self.made.append({"id": f"run-{number}", "from": start, "to": end, "through": through})


def _fuse(rating: str) -> Data:
    return {"fuse": {"rating": rating, "resistance": "0.2 mΩ",
                     "breaks": [{"current": "20 kA", "voltage": "125 V DC"}]}}


def _breaker(rating: str) -> Data:
    return {"breaker": {"rating": rating, "resistance": "4 mΩ",
                        "breaks": [{"current": "5 kA", "voltage": "65 V DC"}]}}


def _cable(size: str, length: str) -> Data:
    return {"conductor": {"size": size, "length": length, "insulation": "105 °C",
                          "crosses": ["hold"]}}


def _batteries(runs: _Runs, count: int) -> None:
    for each in range(count):
        runs.add(f"pack-{each}", "main", _fuse("200 A"), _cable("50 mm2", "0.8 m"))


def _tree(count: int) -> Data:
    runs, batteries = _Runs(), min(6, count // 3)
    buses = [f"bus-{each}" for each in range(max(1, count // PER_BUS))]
    _batteries(runs, batteries)
    for bus in buses:
        runs.add("main", bus, _fuse("100 A"), _cable("35 mm2", "3 m"))
    loads = count - batteries - len(buses)
    for load in range(loads):
        runs.add(buses[load % len(buses)], f"load-{load}", _breaker("10 A"),
                 _cable("2.5 mm2", "4 m"))
    return _record(batteries, ["main", *buses], loads, runs.made)


def _star(count: int) -> Data:
    return _on_one_bus(count, lambda: (_cable("6 mm2", "0.3 m"), _breaker("10 A"),
                                       _cable("2.5 mm2", "4 m")))


def _bare(count: int) -> Data:
    return _on_one_bus(count, lambda: (_cable("2.5 mm2", "4 m"),))


def _on_one_bus(count: int, through: Callable[[], tuple[Data, ...]]) -> Data:
    runs, batteries = _Runs(), min(6, count // 3)
    _batteries(runs, batteries)
    for load in range(count - batteries):
        runs.add("main", f"load-{load}", *through())
    return _record(batteries, ["main"], count - batteries, runs.made)


def _chain(count: int) -> Data:
    runs, length = _Runs(), count // 2
    _batteries(runs, 1)
    buses = ["main", *(f"bus-{each}" for each in range(length))]
    for start, end in pairwise(buses):
        runs.add(start, end, _fuse("100 A"), _cable("35 mm2", "3 m"))
    for load in range(length):
        runs.add(buses[load + 1], f"load-{load}", _breaker("10 A"), _cable("2.5 mm2", "4 m"))
    return _record(1, buses, length, runs.made)


def _bank(count: int) -> Data:
    runs = _Runs()
    _batteries(runs, count - 1)
    runs.add("main", "load-0", _breaker("10 A"), _cable("2.5 mm2", "4 m"))
    return _record(count - 1, ["main"], 1, runs.made)


def _ladder(count: int) -> Data:
    runs, steps = _Runs(), max(2, count // 4)
    _batteries(runs, 2)
    rows = [["main", *(f"{side}-{each}" for each in range(steps))]
            for side in ("port", "starboard")]
    for row in rows:
        for start, end in pairwise(row):
            runs.add(start, end, _fuse("100 A"), _cable("35 mm2", "3 m"))
    for load, (port, starboard) in enumerate(zip(rows[0][1:], rows[1][1:], strict=True)):
        runs.add(port, starboard, _fuse("60 A"), _cable("16 mm2", "2 m"))
        runs.add(port, f"load-{load}", _breaker("10 A"), _cable("2.5 mm2", "4 m"))
    return _record(2, list(dict.fromkeys(rows[0] + rows[1])), steps, runs.made)


def _mesh(count: int) -> Data:
    runs, buses = _Runs(), ["main", *(f"bus-{each}" for each in range(max(2, count // 10)))]
    _batteries(runs, 2)
    for start, end in pairwise(buses):
        runs.add(start, end, _fuse("100 A"), _cable("35 mm2", "3 m"))
    drawn = random.Random(1)
    while len(runs.made) < count - 2:
        runs.add(*drawn.sample(buses, 2), _cable("35 mm2", "3 m"))
    for load in range(2):
        runs.add(buses[-1 - load], f"load-{load}", _breaker("10 A"), _cable("2.5 mm2", "4 m"))
    return _record(2, buses, 2, runs.made)


def _both(count: int) -> Data:
    data = _tree(count // 2)
    there = data["runs"]
    for number, run in enumerate(list(there)):
        ends = [run[end] if run[end] == "main" or run[end].startswith("bus") else
                f"{run[end]}.negative" for end in ("from", "to")]
        start, end = (each.replace("main", "main-negative").replace("bus", "back")
                      if "." not in each else each for each in ends)
        there.append({"id": f"back-{run['id']}", "from": start, "to": end, "through": [
            {"conductor": {"id": f"n-{number}", "size": "35 mm2", "length": "3 m",
                           "insulation": "105 °C", "crosses": ["hold"]}}]})
    data["buses"] += [{"id": each["id"].replace("main", "main-negative").replace("bus", "back")}
                      for each in data["buses"]]
    data["wiring"] = {"returns": "own runs"}
    return data


def _gaps(count: int) -> Data:
    data = _tree(count)
    for number, part in enumerate(_parts(data)):
        if number % 3 == 0:
            part.pop("length", None)
            part.pop("rating", None)
    return data


def _parts(data: Data) -> Iterator[Data]:
    for run in data["runs"]:
        for part in run["through"]:
            yield from part.values()


SHAPES: Final[Mapping[str, Callable[[int], Data]]] = {
    "tree": _tree, "star": _star, "bare": _bare, "chain": _chain, "bank": _bank,
    "ladder": _ladder, "mesh": _mesh, "both": _both, "gaps": _gaps,
}
