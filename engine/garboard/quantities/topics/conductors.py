"""Conductors: resistance, the loop with its return, ampacity, the rating that protects them."""

from __future__ import annotations

import math
from functools import lru_cache

from garboard.quantities.copper import CITATION, copper, copper_at, resistance_at_20
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import high_end, low_end, unrecorded
from garboard.quantities.table import table
from garboard.values import (
    NOT_RECORDED,
    OUTSIDE_METHOD,
    Bounds,
    Number,
    Unknown,
    quotient,
    smallest,
)
from garboard.values.conductor_size import ConductorSize, awg_names, awg_size


@quantity("conductor.lowest_temperature", dimension="temperature", unknowns="passed",
          needs={"places": "places.temperature.low"},
          method="The lowest temperature of the places the conductor lies in",
          citation=cite("definition", "definition"), valid="places with a recorded temperature")
def lowest_temperature(places: tuple[Number, ...] | Unknown) -> Number:
    if isinstance(places, Unknown):
        return places
    if not places:
        return Unknown.because(NOT_RECORDED, detail="no place is recorded for this conductor")
    return smallest(places)


@quantity("conductor.cold_resistance", dimension="resistance", unknowns="passed",
          needs={"stated": "resistance", "found_at": "resistance.temperature", "size": "size",
                 "length": "length", "coldest": "lowest_temperature", "insulation": "insulation",
                 "material": "material"},
          method="Resistance as stated, brought from the temperature it was found at to the lowest "
                 "of the places it lies in; else a lower bound: annealed copper of the full "
                 "nominal area at that lowest temperature. Found at an unrecorded temperature it "
                 "may have been as hot as its insulation allows; a stated one without any "
                 "temperature on record counts as stated. A missing fact leaves a resistance of at "
                 "least zero",
          citation=CITATION, version="2",
          valid="copper; of another metal the stated resistance is not brought to another "
                "temperature, and without one copper of the same area has the least; the largest "
                "fault current (cold conductors)")
def cold_resistance(stated: Number, found_at: Number, size: ConductorSize | Unknown,
                    length: Number, coldest: Number, insulation: Number,
                    material: str | Unknown) -> Figure:
    if not isinstance(stated, Unknown):
        if not isinstance(material, Unknown) and material == "aluminium":
            return Figure(unrecorded(0.0, high_end(stated), Unknown.because(
                OUTSIDE_METHOD, detail="its resistance at another temperature: not of copper")))
        return cooled(stated, found_at, coldest, insulation)
    if isinstance(size, Unknown) or isinstance(length, Unknown):
        missing = stated.joined(size).joined(length)
        return Figure(unrecorded(0.0, math.inf, missing))
    at_20 = resistance_at_20(length, size.area_mm2)
    return Figure(at_20 * copper_at(_as_cold_as(coldest, insulation)), copper().rows)


def cooled(stated: Number, found_at: Number, coldest: Number, insulation: Number) -> Figure:
    """A stated resistance of copper at the lowest temperature it meets."""
    cold = copper_at(_as_cold_as(coldest, insulation))
    if not isinstance(found_at, Unknown):
        return Figure(stated * quotient(cold, copper_at(found_at)), copper().rows)
    if isinstance(coldest, Unknown):
        return Figure(stated, remarks=("as stated: no temperature is on record for it",))
    hottest = copper_at(max(high_end(coldest), high_end(insulation)))
    share = unrecorded(low_end(cold) / low_end(hottest), 1.0, found_at.joined(insulation))
    return Figure(stated * share, copper().rows)


def _as_cold_as(coldest: Number, insulation: Number) -> Number:
    """The lowest temperature of its places; unrecorded, anything its insulation allows."""
    if not isinstance(coldest, Unknown):
        return coldest
    hottest = math.inf if isinstance(insulation, (Unknown, Bounds)) else insulation
    return unrecorded(-copper().zero, hottest, coldest)


@quantity("conductor.loop_resistance", dimension="resistance", unknowns="passed",
          needs={"outgoing": "cold_resistance", "carries": "run.carries",
                 "returns": "run.returns", "length": "length", "run_length": "run.outgoing_length",
                 "in_run": "run.conductors.id",
                 "return_resistance": "run.return_cold_resistance"},
          method="Resistance out, plus this conductor's share of the return of its run (as the "
                 "outgoing conductor, or by its share of the run's length); none on a negative or "
                 "series conductor. An unrecorded return is at least zero",
          citation=cite("common practice of the trade", "common practice"),
          valid="a return that lies beside its outgoing conductor")
def loop_resistance(outgoing: Number, carries: str, returns: str | Unknown, length: Number,
                    run_length: Number, in_run: tuple[str, ...],
                    return_resistance: Number) -> Figure:
    if carries != "positive":
        return Figure(outgoing)
    if isinstance(returns, Unknown):
        return Figure(outgoing + unrecorded(0.0, math.inf, returns))
    if returns == "own runs":
        return Figure(outgoing)
    if returns == "as outgoing":
        return Figure(outgoing * 2.0)
    if returns == "neglected":
        return Figure(outgoing, remarks=("the record neglects the return",))
    return Figure(outgoing + return_resistance * share_of_run(length, run_length, in_run))


def share_of_run(length: Number, run_length: Number, in_run: tuple[str, ...]) -> Number:
    """The part of a run's return that lies beside one of its conductors."""
    if len(in_run) == 1:
        return 1.0
    share = quotient(length, run_length)
    return unrecorded(0.0, 1.0, share) if isinstance(share, Unknown) else share


@quantity("conductor.ampacity", dimension="current",
          needs={"size": "size", "insulation": "insulation"},
          method="Table 5 by AWG size and insulation rating; a size in mm² or SAE takes the row of "
                 "the next smaller AWG by area; an insulation rating between two columns takes "
                 "the lower column",
          citation=cite("33 CFR 183.425 Table 5", "read"),
          valid="18 AWG to 4/0 AWG with a row in the table, insulation of 60 °C and more, "
                "ambient 30 °C, not bundled; nothing is interpolated")
def ampacity(size: ConductorSize, insulation: Number) -> Figure:
    allowed = table("ampacity-33cfr183-425")
    row = _ampacity_row(size)
    if row is None or row not in allowed.rows:
        return Figure(Unknown.because(
            OUTSIDE_METHOD, detail=f"{allowed.title}: no row for {size.written}"))
    rating = insulation.lo if isinstance(insulation, Bounds) else insulation
    columns = [column for column in allowed.rows[row] if float(column) <= rating]
    if not columns:
        return Figure(Unknown.because(
            OUTSIDE_METHOD, detail=f"{allowed.title}: no column for insulation of {rating:g} °C"))
    remarks = () if size.system == "AWG" else (f"{size.written} reads as {row} AWG",)
    return Figure(allowed.cell(row, columns[-1]), (allowed.reference(row, columns[-1]),), remarks)


@lru_cache(maxsize=256)
def _ampacity_row(size: ConductorSize) -> str | None:
    """The size's own AWG row, or for other systems the largest AWG that is not larger by area."""
    if size.system == "AWG":
        return size.name
    rows = table("ampacity-33cfr183-425").rows
    fitting = [name for name in awg_names() if name in rows
               and awg_size(name).area_mm2 <= size.area_mm2]
    return max(fitting, key=lambda name: awg_size(name).area_mm2, default=None)


QUANTITIES = (lowest_temperature, cold_resistance, loop_resistance, ampacity)
