"""Reading a record the way a person with a calculator does: YAML, figures with units, tables.

Nothing here comes from the program. Each figure is an array with one entry per draw: the nominal
value alone, or draws between the ends that ``plus_minus`` or a missing fact leaves.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray
from ruamel.yaml import YAML

Figure = NDArray[np.float64]
Data = dict[str, Any]

#: One unit of each kind in V, A, Ω, m, °C, Ah, Wh.
UNITS = {"V": 1.0, "mV": 1e-3, "A": 1.0, "kA": 1e3, "mA": 1e-3, "Ω": 1.0, "mΩ": 1e-3, "µΩ": 1e-6,
         "m": 1.0, "cm": 1e-2, "mm": 1e-3, "in": 0.0254, "ft": 0.3048, "°C": 1.0, "Ah": 1.0,
         "Wh": 1.0, "kWh": 1e3}
#: Least area of SAE J378/J1127 cable in circular mils.
SAE_MILS = {"8": 14810, "6": 24538, "4": 37360, "2": 62450, "1": 77790, "1/0": 98980,
            "2/0": 125100, "3/0": 158600, "4/0": 205500}
SQUARE_MM_PER_MIL = 0.7853981633974483 * 0.0254**2
#: 33 CFR 183.425 Table 5: A at 60, 75, 80, 90, 105, 125 and 200 °C.
COLUMNS = (60, 75, 80, 90, 105, 125, 200)
AMPACITY = {"8": (55, 65, 70, 70, 80, 90, 100), "6": (80, 95, 100, 100, 120, 125, 135),
            "4": (105, 125, 130, 135, 160, 170, 180), "3": (120, 145, 150, 155, 180, 195, 210),
            "2": (140, 170, 175, 180, 210, 225, 240), "1": (165, 195, 210, 210, 245, 265, 280),
            "1/0": (195, 230, 245, 245, 285, 305, 325), "2/0": (225, 265, 285, 285, 330, 355, 370),
            "3/0": (260, 310, 330, 330, 385, 410, 430), "4/0": (300, 360, 385, 385, 445, 475, 510)}

_FIGURE = re.compile(r"\s*([-+]?[\d.]+(?:e[-+]?\d+)?)\s*(\S*)\s*")


def plain(text: str) -> float:
    """One figure in the units above."""
    number, unit = _FIGURE.fullmatch(text).groups()  # type: ignore[union-attr]
    return float(number) * UNITS[unit]


def ends(leaf: Any) -> tuple[float, float, float]:
    """Least, nominal and greatest value of a leaf."""
    if not isinstance(leaf, Mapping):
        if ".." in leaf:
            low, _, high = leaf.partition("..")
            unit = high.split()[-1]
            least, most = plain(f"{low.strip()} {unit}" if " " not in low.strip() else low), plain(
                high)
            return least, (least + most) / 2, most
        value = plain(leaf)
        return value, value, value
    value, off = plain(leaf["value"]), leaf.get("plus_minus")
    if off is None:
        return value, value, value
    reach = value * float(off[:-1]) / 100 if off.endswith("%") else plain(off)
    return value - reach, value, value + reach


def area(size: str) -> float:
    """Copper area in mm² of a size."""
    name, system = size.split()
    if system == "mm2":
        return float(name)
    if system == "SAE":
        return SAE_MILS[name] * SQUARE_MM_PER_MIL
    number = 1 - int(name[0]) if "/" in name else int(name)
    diameter: float = 0.127 * 92 ** ((36 - number) / 39)
    return 0.7853981633974483 * diameter**2


def table_current(size: str, insulation: float) -> float:
    """Ampacity by the table: the row of the next smaller AWG, the column not above the rating."""
    own = area(size)
    row = max((name for name in AMPACITY if area(f"{name} AWG") <= own * (1 + 1e-9)),
              key=lambda name: area(f"{name} AWG"))
    column = max(number for number, rated in enumerate(COLUMNS) if rated <= insulation)
    return AMPACITY[row][column]


class Sheet:
    """A record's data and its figures; ``draws`` is how many of each are drawn.

    ``corners``: not at random, but every choice of ends of what is not one number.
    """

    def __init__(self, text: str, draws: int = 1, seed: int = 0, corners: bool = False) -> None:
        self.data: Data = YAML(typ="safe").load(text)
        self.count, self._corners = draws, corners
        self._random = np.random.default_rng(seed)
        self._drawn: dict[str, Figure] = {}
        #: Names of the figures that are not one number.
        self.open: list[str] = []

    def list(self, key: str) -> list[Data]:
        return self.data.get(key) or []

    def figure(self, name: str, leaf: Any) -> Figure:
        """The figure of a leaf; ``name`` tells one fact from another."""
        if name not in self._drawn:
            least, nominal, most = ends(leaf)
            self.between(name, least, most, nominal)
        return self._drawn[name]

    def at_least_zero(self, name: str) -> Figure:
        """A resistance nobody has recorded."""
        if name not in self._drawn:
            self.open.append(name)
            drawn = 10 ** self._random.uniform(-7, 3, self.count)
            corner = self._random.random(self.count)
            drawn[corner < 0.3] = 1e-8
            drawn[corner > 0.8] = 1e4
            self._drawn[name] = drawn
        return self._drawn[name]

    def between(self, name: str, least: float, most: float,
                nominal: float | None = None) -> Figure:
        """Anything between two ends, at the ends more often than not."""
        if name not in self._drawn:
            drawn = least + self._shares() * (most - least)
            if nominal is not None and not self._corners:
                drawn[0] = nominal
            self._drawn[name] = drawn
            self.open += [name] if least < most else []
        return self._drawn[name]

    def _shares(self) -> Figure:
        if self._corners:
            return ((np.arange(self.count) >> len(self.open)) & 1).astype(float)
        shares = self._random.random(self.count)
        corner = self._random.random(self.count) < 0.6
        shares[corner] = np.round(shares[corner])
        return shares
