"""The three lists of conductor sizes: AWG by formula, SAE by its minimum areas, metric by name.

AWG: ASTM B258, solid round wire of diameter 0.127 mm x 92^((36 - n)/39), with 1/0 = 0, 2/0 = -1,
3/0 = -2, 4/0 = -3. SAE: the minimum areas of primary and battery cable (SAE J378, J1127, J1128, as
reprinted in a cable catalogue), 3 to 11 % smaller than the AWG of the same number. Metric: the
nominal sizes of IEC 60228, classes 2 and 5; above 120 mm² and below 0.75 mm² from memory.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from garboard.values.rounding import rounded

#: Area of a circular mil (a circle of 0.001 in diameter) in mm².
CIRCULAR_MIL_MM2: Final = math.pi / 4 * 0.0254 ** 2

#: SAE minimum areas in circular mils.
SAE_CIRCULAR_MILS: Final[Mapping[str, int]] = MappingProxyType({
    "18": 1537, "16": 2336, "14": 3702, "12": 5833, "10": 9343, "8": 14810, "6": 24538,
    "4": 37360, "2": 62450, "1": 77790, "1/0": 98980, "2/0": 125100, "3/0": 158600, "4/0": 205500})

#: Nominal sizes of IEC 60228 in mm².
METRIC_SIZES: Final = (
    "0.5", "0.75", "1", "1.5", "2.5", "4", "6", "10", "16", "25", "35", "50", "70", "95", "120",
    "150", "185", "240", "300", "400", "500", "630")

#: The thinnest AWG size that is read.
THINNEST_AWG: Final = 40


def awg_diameter_mm(number: int) -> float:
    """Diameter of a solid wire of gauge ``number`` (1/0 is 0, 4/0 is -3), by ASTM B258."""
    power: float = 92.0 ** ((36 - number) / 39)
    return 0.127 * power


def awg_area_mm2(number: int) -> float:
    """Area of a solid wire of gauge ``number`` in mm², to 12 significant digits."""
    return rounded(math.pi / 4 * awg_diameter_mm(number) ** 2)


def _awg_name(number: int) -> str:
    return str(number) if number > 0 else f"{1 - number}/0"


#: AWG sizes by name, thinnest first, with their number in the formula.
AWG_NUMBERS: Final[Mapping[str, int]] = MappingProxyType(
    {_awg_name(number): number for number in range(THINNEST_AWG, -4, -1)})
