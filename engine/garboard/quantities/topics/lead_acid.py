"""Short circuits of lead-acid batteries by IEC 61660-1: the peak, and after a second."""

from __future__ import annotations

from typing import Final

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.table import Cell, table
from garboard.values import OUTSIDE_METHOD, Number, Unknown, quotient

IEC61660 = cite("IEC 61660-1:1997", "from memory")
LEAD_ACID: Final = ("AGM", "gel", "flooded", "lead-carbon")
_VALID = ("lead-acid only; a short at the battery's own terminals, no conductor counted; not "
          "validated for lithium")


def factor(name: str) -> Cell:
    """A factor of the standard's table."""
    return table("lead-acid-iec61660-1").read("lead-acid", name)


@quantity("battery.iec61660_emf", dimension="voltage", unknowns="passed",
          needs={"chemistry": "chemistry", "stated": "open_circuit_voltage_max",
                 "cells": "cells_in_series"},
          method="Open-circuit voltage as recorded, else 1.05 times 2.0 V per cell",
          citation=IEC61660, valid=_VALID)
def iec61660_emf(chemistry: str | Unknown, stated: Number, cells: int | Unknown) -> Figure:
    outside = _outside(chemistry)
    if outside is not None:
        return Figure(outside)
    if not isinstance(stated, Unknown):
        return Figure(stated)
    if isinstance(cells, Unknown):
        return Figure(stated.joined(cells))
    above, cell = factor("above_nominal"), factor("cell")
    return Figure(above.value * cell.value * cells, (above.row, cell.row))


@quantity("battery.peak_fault_current", dimension="current",
          needs={"emf": "iec61660_emf", "resistance": "source_resistance"},
          method="E / (0.9 R) with R the source resistance: the peak of the short-circuit current",
          citation=IEC61660, valid=_VALID)
def peak_fault_current(emf: Number, resistance: Number) -> Figure:
    share = factor("peak_resistance")
    return Figure(quotient(emf, resistance * share.value), (share.row,))


@quantity("battery.one_second_fault_current", dimension="current",
          needs={"emf": "iec61660_emf", "resistance": "source_resistance"},
          method="0.95 E / (0.9 R + 0.1 R) with R the source resistance: the current after a "
                 "second",
          citation=IEC61660, valid=_VALID)
def one_second_fault_current(emf: Number, resistance: Number) -> Figure:
    driven, first, more = map(factor, ("second_emf", "peak_resistance", "second_resistance"))
    return Figure(quotient(emf * driven.value, resistance * (first.value + more.value)),
                  (driven.row, first.row, more.row))


def _outside(chemistry: str | Unknown) -> Unknown | None:
    if isinstance(chemistry, Unknown):
        return chemistry
    return None if chemistry in LEAD_ACID else Unknown.because(
        OUTSIDE_METHOD, detail=f"{chemistry} is not lead-acid")


QUANTITIES = (iec61660_emf, peak_fault_current, one_second_fault_current)
