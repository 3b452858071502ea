"""Installation records made up at random as YAML text, the same for a seed on every machine."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

Data = dict[str, Any]

METRIC = ("16 mm2", "25 mm2", "35 mm2", "50 mm2", "70 mm2", "95 mm2", "120 mm2")
GAUGES = ("8 AWG", "6 AWG", "4 AWG", "2 AWG", "1 AWG", "1/0 AWG", "3/0 AWG", "4/0 AWG",
          "4 SAE", "2 SAE", "1/0 SAE", "4/0 SAE")
INSULATIONS = ("75 °C", "90 °C", "105 °C", "125 °C", "200 °C")
RATINGS = (100, 125, 150, 175, 200, 225, 250, 300, 400)


@dataclass(frozen=True)
class Traits:
    """What a kind of record has; shares are probabilities."""

    unequal: float = 0.5
    stated: float = 0.5
    wide: float = 0.0
    unrecorded: float = 0.0
    own_returns: bool = False
    most_batteries: int = 8


@dataclass
class Boat:
    """A record's text, and the banks it was drawn with: strings of batteries by bus."""

    text: str
    banks: dict[str, list[list[str]]]


@dataclass
class Drawing:
    """A record in the making."""

    seed: int
    traits: Traits
    banks: dict[str, list[list[str]]] = field(default_factory=dict)
    lists: dict[str, list[Data]] = field(default_factory=lambda: {
        "places": [], "batteries": [], "buses": [], "charging_sources": [], "loads": [],
        "runs": []})
    _count: int = 0

    def __post_init__(self) -> None:
        self.draw = random.Random(self.seed)
        for number in range(self.draw.randint(1, 3)):
            low = self.draw.randint(-15, 12)
            self.lists["places"].append({"id": f"place-{number}",
                                         "temperature": f"{low} .. {low + 40} °C"})
        self.returns = "own runs" if self.traits.own_returns else self.draw.choice(
            ("as outgoing", "neglected"))

    # figures -------------------------------------------------------------------------------------
    def likely(self, share: float) -> bool:
        return self.draw.random() < share

    def _spread(self, text: str, per_cent: tuple[int, ...] = (2, 5, 10, 20)) -> Any:
        if not self.likely(self.traits.wide):
            return text
        return {"value": text, "plus_minus": f"{self.draw.choice(per_cent)} %"}

    def resistance(self, least: float, most: float) -> Any:
        """A resistance between two figures in mΩ."""
        ohms = round(self.draw.uniform(least, most), 3)
        return self._spread(self.draw.choice((f"{ohms:g} mΩ", f"{round(ohms * 1000):d} µΩ")))

    def found(self, resistance: Any) -> Any:
        """A resistance with the temperature it was found at, unless that is what nobody noted."""
        if self.traits.unrecorded and self.likely(0.5):
            return resistance
        leaf = resistance if isinstance(resistance, dict) else {"value": resistance}
        return {**leaf, "temperature": f"{self.draw.randint(5, 60)} °C"}

    def length(self, least: float, most: float) -> str:
        metres = self.draw.uniform(least, most)
        return self.draw.choice((f"{metres:.2f} m", f"{metres * 100:.0f} cm",
                                 f"{metres / 0.0254:.1f} in", f"{metres / 0.3048:.2f} ft"))

    def amperes(self) -> str:
        return f"{self.draw.choice(RATINGS)} A"

    # parts ---------------------------------------------------------------------------------------
    def name(self, letter: str) -> str:
        self._count += 1
        return f"{letter}{self._count}"

    def conductor(self) -> Data:
        data: Data = {"id": self.name("w"), "length": self.length(0.1, 4)}
        places = [each["id"] for each in self.lists["places"]]
        data["crosses"] = self.draw.sample(places, self.draw.randint(1, len(places)))
        if self.likely(0.7):
            data["insulation"] = self.draw.choice(INSULATIONS)
        if self.likely(self.traits.stated):
            data["resistance"] = self.found(self.resistance(0.05, 1.5))
            return {"conductor": data}
        data["size"] = self.draw.choice(METRIC + GAUGES)
        if self.likely(self.traits.unrecorded):
            del data[self.draw.choice(("size", "crosses"))]
            data.pop("insulation", None)
        return {"conductor": data}

    def device(self) -> Data:
        data: Data = {"id": self.name("f"), "rating": self.amperes(),
                      "resistance": self.resistance(0.05, 0.8)}
        if self.likely(self.traits.unrecorded):
            del data["resistance"]
        return {self.draw.choice(("fuse", "fuse", "breaker")): data}

    def switch(self, name: str | None = None) -> Data:
        data: Data = {"id": name or self.name("s"), "kind": "isolator",
                      "resistance": self.resistance(0.02, 0.3)}
        if self.likely(self.traits.unrecorded):
            del data["resistance"]
        return {"switch": data}

    def run(self, start: str, end: str, parts: list[Data], **more: Any) -> str:
        """A run, written down from either end."""
        name = self.name("run-")
        if self.likely(0.3):
            start, end, parts = end, start, parts[::-1]
        data: Data = {"id": name, "from": start, "to": end, **more}
        if "return" not in more and not self.traits.own_returns and self.likely(0.3):
            conductors = [part for part in parts if "conductor" in part]
            data["return"] = self._way_back(len(conductors))
        self.lists["runs"].append({**data, "through": parts})
        return name

    def _way_back(self, conductors: int) -> Any:
        places = [place for place in self.lists["places"] if "temperature" in place]
        words = ["as outgoing", "neglected"]
        if conductors and places:
            words += ["size", "resistance"]
        word = self.draw.choice(words)
        if word == "size":
            return {"size": self.draw.choice(METRIC), "length": self.length(0.2, 3)}
        if word == "resistance":
            return {"resistance": self.found(self.resistance(0.05, 1))}
        return word

    def lead(self, fused: bool = True, switched: bool = False) -> list[Data]:
        """Parts in any order: one to three conductors, a device, perhaps a switch."""
        parts = [self.conductor() for _ in range(self.draw.randint(1, 3))]
        parts += [self.device()] if fused else []
        parts += [self.switch()] if switched else []
        self.draw.shuffle(parts)
        return parts

    # things --------------------------------------------------------------------------------------
    def bus(self, name: str) -> str:
        self.lists["buses"].append({"id": name})
        return name

    def battery(self, volts: float) -> str:
        name = self.name("pack-")
        data: Data = {"id": name, "chemistry": "LFP", "energy": f"{self.draw.randint(10, 60)}00 Wh",
                      "open_circuit_voltage_max": f"{volts:g} V",
                      "charge": {"current_max": f"{self.draw.randint(5, 20)}0 A"}}
        if self.likely(0.8):
            data["internal_resistance"] = self.resistance(1, 6)
            data["open_circuit_voltage_max"] = self._spread(f"{volts:g} V", (1, 2, 4))
        else:
            data["short_circuit_current"] = {"value": f"{self.draw.randint(20, 160) / 10} kA",
                                             "credits_electronics": "no"}
        self.lists["batteries"].append(data)
        return name

    def bank(self, bus: str, strings: int, series: int, volts: float, fused: float = 0.8,
             middle: float = 0.3) -> None:
        """Strings of batteries on a bus."""
        self.banks[bus] = []
        for _ in range(strings):
            string = []
            for _ in range(series):
                apart = self.draw.uniform(-0.4, 0.4) if self.likely(self.traits.unequal) else 0.0
                string.append(self.battery(round((volts + apart) / series, 2)))
            for lower, upper in pairwise(string):
                parts = [self.conductor()] + ([self.device()] if self.likely(middle) else [])
                self.run(f"{lower}.positive", f"{upper}.negative", parts)
            self._ends(string, bus, fused)
            self.banks[bus].append(string)

    def _ends(self, string: list[str], bus: str, fused: float) -> None:
        """The leads of a string; with returns of its own to the negative bus."""
        back = {}
        if self.traits.own_returns:
            parts = [self.conductor()] + ([self.switch()] if self.likely(0.4) else [])
            back = {"return": {"run": self.run(f"{string[0]}.negative", "negative-bus", parts)}}
        self.run(f"{string[-1]}.positive", bus,
                 self.lead(self.likely(fused), self.likely(0.2)), **back)

    def load(self, bus: str) -> None:
        name = self.name("load-")
        self.lists["loads"].append({"id": name, "current": self.amperes()})
        self._hang_on(name, bus, back_to=name)

    def source(self, bus: str, volts: float) -> None:
        name = self.name("source-")
        stages = {"absorption": f"{volts + self.draw.uniform(0.5, 1.5):.1f} V",
                  "float": f"{volts:.1f} V"}
        data: Data = {"id": name, "current_max": f"{self.draw.randint(2, 15)}0 A", "stages": stages}
        data["equalising_enabled"] = self.draw.choice(("yes", "no"))
        if data["equalising_enabled"] == "yes" or self.likely(0.5):
            stages["equalising"] = f"{volts + self.draw.uniform(1, 4):.1f} V"
        data["tolerance"] = f"{self.draw.choice((0, 0.1, 0.2))} V"
        if self.likely(0.3):
            data["fault_contribution"] = self._spread(f"{self.draw.randint(1, 9)}00 A")
        self.lists["charging_sources"].append(data)
        self._hang_on(name, bus, back_to=name)

    def _hang_on(self, name: str, bus: str, back_to: str) -> None:
        back = {}
        if self.traits.own_returns:
            back = {"return": {"run": self.run(f"{name}.negative", "negative-bus",
                                               [self.conductor()])}}
        self.run(bus, name, self.lead(self.likely(0.9)), **back)

    def finished(self) -> Boat:
        head = {"format": "installation-record/1", "vessel": {"name": f"Draw {self.seed}"},
                "survey": {"date": "2026-01-15"}, "wiring": {"returns": self.returns},
                "management_systems": []}
        lines = [f"{key}: {flow(value)}" for key, value in head.items()]
        if self.likely(self.traits.unrecorded):
            lines = [line for line in lines if not line.startswith("wiring: {returns: as out")]
            lines.append("wiring: {}") if len(lines) < 5 else None
        for key, things in self.lists.items():
            lines.append(f"{key}:" if things else f"{key}: []")
            lines += [f"  - {flow(each)}" for each in things]
        return Boat("\n".join(lines) + "\n", self.banks)


def flow(value: Any) -> str:
    """YAML in one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {flow(each)}" for key, each in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(flow, value)) + "]"
    return str(value)


# kinds of installation ---------------------------------------------------------------------------
def _equipped(drawing: Drawing, bus: str, volts: float) -> None:
    """A main feed to a panel, loads on the panel and the bus, charging sources."""
    panel = drawing.bus(f"{bus}-panel")
    drawing.run(bus, panel, drawing.lead(drawing.likely(0.9), drawing.likely(0.6)))
    for _ in range(drawing.draw.randint(1, 2)):
        drawing.load(drawing.draw.choice((bus, panel)))
    for _ in range(drawing.draw.randint(0, 2)):
        drawing.source(bus, volts)


def parallel(drawing: Drawing) -> None:
    """One to eight batteries in parallel."""
    bus = drawing.bus("main-bus")
    drawing.bank(bus, drawing.draw.randint(1, drawing.traits.most_batteries), 1, 26.8)
    _equipped(drawing, bus, 27.0)


def series(drawing: Drawing) -> None:
    """2S, 4S, or two or three strings of two in parallel."""
    bus = drawing.bus("main-bus")
    strings, each = drawing.draw.choice(((1, 2), (1, 4), (2, 2), (3, 2)))
    drawing.bank(bus, strings, each, 26.8)
    _equipped(drawing, bus, 27.0)


def ring(drawing: Drawing) -> None:
    """Batteries on several buses that are joined in a ring, with fuses in some of its sides."""
    bus = drawing.bus("main-bus")
    drawing.bank(bus, drawing.draw.randint(1, 4), 1, 26.8, fused=1.0)
    others = [drawing.bus(f"bus-{number}") for number in range(drawing.draw.randint(2, 3))]
    corners = [bus, *others]
    for one, other in zip(corners, [*others, bus], strict=True):
        drawing.run(one, other, drawing.lead(drawing.likely(0.6), drawing.likely(0.2)))
    if len(corners) > 3 and drawing.likely(0.5):
        drawing.run(corners[0], corners[2], drawing.lead())
    drawing.load(drawing.draw.choice(others))
    drawing.source(drawing.draw.choice(corners), 27.0)


def two_banks(drawing: Drawing) -> None:
    """A start bank and a house bank, apart or with a combining switch between them."""
    house, start = drawing.bus("house-bus"), drawing.bus("start-bus")
    joined = drawing.likely(0.6)
    volts = 13.4 if joined else 26.8
    strings, each = (1, 2) if not joined and drawing.likely(0.4) else (2, 1)
    drawing.bank(house, strings, each, volts)
    _equipped(drawing, house, volts)
    drawing.bank(start, drawing.draw.randint(1, 2), 1, 12.8)
    drawing.load(start)
    drawing.source(start, 13.4)
    if joined:
        parts = [drawing.conductor(), drawing.switch("combiner"), drawing.conductor()]
        if drawing.likely(0.7):
            parts.insert(drawing.draw.randint(0, 3), drawing.device())
        drawing.run(house, start, parts)


KINDS: tuple[Callable[[Drawing], None], ...] = (parallel, series, ring, two_banks)


def boat(seed: int, kind: Callable[[Drawing], None], traits: Traits) -> Boat:
    """A record of a kind."""
    drawing = Drawing(seed, traits)
    if traits.own_returns:
        drawing.bus("negative-bus")
    kind(drawing)
    return drawing.finished()
