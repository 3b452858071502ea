"""Ampacity with all factors of its surroundings at once, and what a conductor's size says."""

from __future__ import annotations

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import unrecorded
from garboard.quantities.table import table
from garboard.values import Number, Unknown
from garboard.values.conductor_size import ConductorSize

_DEFINITION = cite("definition", "definition")


@quantity("conductor.derated_ampacity", dimension="current", unknowns="passed",
          needs={"plain": "ampacity", "hot": "engine_space_factor", "crowded": "bundling_factor"},
          method="Ampacity times the engine-space factor times the bundling factor; a bundle that "
                 "is not recorded leaves it between the smallest factor of the table and 1",
          citation=cite("33 CFR 183.425 Table 5 notes 1 and 2", "from memory"),
          valid="as the ampacity and its factors; voluntary standards bundle at any voltage, the "
                "note itself is invoked for 50 V and more only")
def derated_ampacity(plain: Number, hot: Number, crowded: Number) -> Figure:
    if not isinstance(crowded, Unknown):
        return Figure(plain * hot * crowded)
    factors = table("bundling-factor-33cfr183-425")
    least = min((factors.read(row, "factor") for row in factors.rows), key=lambda cell: cell.value)
    return Figure(plain * hot * unrecorded(least.value, 1.0, crowded), (least.row,))


@quantity("conductor.area", dimension="area", needs={"size": "size"},
          method="AWG sizes by the formula of ASTM B258, SAE sizes by their least area, metric "
                 "sizes as named",
          citation=cite("ASTM B258", "from memory"), valid="sizes of the three systems")
def area(size: ConductorSize) -> float:
    return size.area_mm2


@quantity("conductor.is_metric", kind="truth", needs={"size": "size"},
          method="Its size is written in mm²", citation=_DEFINITION, valid="any size")
def is_metric(size: ConductorSize) -> bool:
    return size.system == "mm2"


QUANTITIES = (derated_ampacity, area, is_metric)
