"""The greatest resistances: hot conductors at their standard's maximum, with their joints.

They stand for the smallest fault current and for the voltage drop. A missing fact leaves the
resistance open upwards: the smallest current is then unknown, the drop *at least* a figure.
"""

from __future__ import annotations

import math

from garboard.quantities.copper import copper, copper_at, resistance_at_20
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import at_least_zero, high_end, low_end, unrecorded
from garboard.quantities.table import Table, table
from garboard.quantities.topics.conductors import share_of_run
from garboard.values import (
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Number,
    Truth,
    Unknown,
    largest,
    quotient,
)
from garboard.values.conductor_size import ConductorSize, awg_size

_IEC60228 = cite("IEC 60228 (greatest resistance, three agreeing reprints); FAA AC 43.13-1B "
                 "Table 11-9 and page 11-22", "reprinted")
_DEFINITION = cite("definition", "definition")
_METRES = 304.8  # in 1000 ft


@quantity("conductor.greatest_resistance_at_20", dimension="resistance", unknowns="passed",
          needs={"size": "size", "length": "length", "stranding": "resistance_class",
                 "tinned": "tinned", "is_copper": "is_copper", "stated": "resistance"},
          method="Greatest resistance of its standard at 20 °C times its length, one way: of a "
                 "size in mm² by class of stranding and tinning, of those that may be where one is "
                 "not recorded; of a size in AWG or SAE anything from annealed copper of its area, "
                 "which is the least for SAE, to tin-plated aircraft wire of its AWG size, or of "
                 "the next smaller by area where that has no row or the size is SAE",
          citation=_IEC60228,
          valid="copper; sizes with a row in the tables; joints not counted", version="2")
def greatest_resistance_at_20(size: ConductorSize | Unknown, length: Number,
                              stranding: int | Unknown, tinned: Truth, is_copper: Truth,
                              stated: Number) -> Figure:
    if isinstance(size, Unknown) or isinstance(length, Unknown):
        missing = size if isinstance(size, Unknown) else length
        assert isinstance(missing, Unknown)
        return Figure(missing.joined(length).joined(stated))
    if is_copper is not True:
        return Figure(is_copper if isinstance(is_copper, Unknown) else Unknown.because(
            OUTSIDE_METHOD, detail="the tables are of copper"))
    if size.system == "mm2":
        return _of_metric(size, length, stranding, tinned)
    return _of_gauge(size, length, stated)


@quantity("conductor.is_copper", kind="truth", unknowns="passed",
          needs={"material": "material", "stranding": "resistance_class", "tinned": "tinned"},
          method="As recorded; else true for tinned strands and for stranding of class 5 or 6, "
                 "which are of copper only",
          citation=cite("IEC 60228", "reprinted"), valid="copper and aluminium conductors")
def is_copper(material: str | Unknown, stranding: int | Unknown, tinned: Truth) -> Truth:
    if not isinstance(material, Unknown):
        return material == "copper"
    if tinned is True or (not isinstance(stranding, Unknown) and stranding in (5, 6)):
        return True
    return material


def _of_metric(size: ConductorSize, length: Number, stranding: int | Unknown,
               tinned: Truth) -> Figure:
    rows = table("resistance-iec60228")
    if size.name not in rows.rows:
        return Figure(Unknown.because(OUTSIDE_METHOD,
                                      detail=f"{rows.title}: no row for {size.written}"))
    classes = ("2", "5") if isinstance(stranding, Unknown) else (
        ("5",) if stranding in (5, 6) else ("2",))
    finishes = ("plain", "tinned") if isinstance(tinned, Unknown) else (
        ("tinned",) if tinned else ("plain",))
    columns = [f"{each} {finish}" for each in classes for finish in finishes]
    found = [rows.rows[size.name][column] for column in columns]
    missing = [each for each in (stranding, tinned) if isinstance(each, Unknown)]
    per_km: Number = found[0]
    if missing:
        per_km = Bounds(min(found), max(found), basis=(UNRECORDED,),
                        causes=missing[0].joined(missing[-1]).causes)
    return Figure(length * per_km / 1000.0,
                  tuple(rows.reference(size.name, column) for column in columns))


def _of_gauge(size: ConductorSize, length: Number, stated: Number) -> Figure:
    rows = table("resistance-ac43-13-1b")
    pure = low_end(resistance_at_20(1.0, size.area_mm2))
    row = _row_of(size, rows)
    most = None if row is None else rows.cell(row, "tinned")
    if row is None or most is None or most / _METRES <= pure:
        return Figure(Unknown.because(OUTSIDE_METHOD,
                                      detail=f"{rows.title}: no row fits {size.written}"))
    why = stated if isinstance(stated, Unknown) else Unknown.because(OUTSIDE_METHOD)
    per_metre = Bounds(pure, most / _METRES, basis=(UNRECORDED,), causes=why.causes)
    remarks = () if size.name == row and size.system == "AWG" else (
        f"{size.written} has no more resistance than wire of {row} AWG",)
    return Figure(length * per_metre, (rows.reference(row, "tinned"), *copper().rows), remarks)


def _row_of(size: ConductorSize, rows: Table) -> str | None:
    """The row of an AWG size, else of the largest AWG that is not larger by area."""
    if size.system == "AWG" and size.name in rows.rows:
        return size.name
    fitting = [name for name in rows.rows if awg_size(name).area_mm2 <= size.area_mm2]
    return max(fitting, key=lambda name: awg_size(name).area_mm2, default=None)


@quantity("conductor.greatest_resistance", dimension="resistance", unknowns="passed",
          needs={"stated": "resistance", "drop": "drop_found", "drop_at": "drop_found_at",
                 "at_20": "greatest_resistance_at_20", "insulation": "insulation",
                 "coldest": "lowest_temperature", "joints": "joint_resistance",
                 "is_copper": "is_copper"}, version="2",
          method="The measured drop over its current, else the resistance as recorded (each taken "
                 "at anything from the lowest temperature of its places to that of its insulation) "
                 "plus its joints; else its standard's maximum plus its joints; all at the "
                 "temperature rating of its insulation. Unrecorded joints are at least zero",
          citation=_IEC60228, valid="copper; one way; a conductor as hot as its insulation allows")
def greatest_resistance(stated: Number, drop: Number, drop_at: Number, at_20: Number,
                        insulation: Number, coldest: Number, joints: Number,
                        is_copper: Truth) -> Figure:
    joints = at_least_zero(joints)
    measured = quotient(drop, drop_at)
    found, basis = (measured, "drop as measured") if not isinstance(measured, Unknown) else (
        stated, "resistance as recorded")
    if isinstance(found, Unknown):
        return Figure(at_20 * copper_at(insulation) + joints,
                      copper().rows, ("standard's maximum at the temperature of the insulation",))
    if is_copper is False:
        return Figure(Unknown.because(
            OUTSIDE_METHOD, detail="its resistance at another temperature: not of copper"))
    hottest, least = high_end(copper_at(insulation)), low_end(copper_at(coldest))
    grown = unrecorded(1.0, max(1.0, hottest / least) if least > 0 else math.inf,
                       Unknown.because(OUTSIDE_METHOD,
                                       detail="at which temperature the resistance was found")
                       .joined(insulation).joined(coldest))
    if found is measured:
        return Figure(measured * grown, copper().rows,
                      (f"{basis}, with the joints it lay across",))
    return Figure(found * grown + joints, copper().rows, (basis,))


@quantity("run.return_greatest_resistance", dimension="resistance", unknowns="passed",
          needs={"stated": "return.resistance", "size": "return.size", "length": "return.length",
                 "insulation": "return.insulation"},
          method="Of a return with a size of its own: at least that of annealed copper of the full "
                 "nominal area at the temperature of its insulation, open upwards, since its class "
                 "is not recorded; stated, at least as stated",
          citation=_IEC60228, valid="copper")
def return_greatest_resistance(stated: Number, size: ConductorSize | Unknown, length: Number,
                               insulation: Number) -> Figure:
    if not isinstance(stated, Unknown):
        return Figure(unrecorded(low_end(stated), math.inf, Unknown.because(
            OUTSIDE_METHOD, detail="at which temperature the return's resistance was found")))
    if isinstance(size, Unknown) or isinstance(length, Unknown):
        return Figure(unrecorded(0.0, math.inf, stated.joined(size).joined(length)))
    least = low_end(resistance_at_20(length, size.area_mm2) * copper_at(insulation))
    return Figure(unrecorded(max(least, 0.0), math.inf, stated), copper().rows)


@quantity("conductor.greatest_loop_resistance", dimension="resistance", unknowns="passed",
          needs={"outgoing": "greatest_resistance", "cold": "cold_resistance",
                 "carries": "run.carries", "returns": "run.returns", "length": "length",
                 "run_length": "run.outgoing_length", "in_run": "run.conductors.id",
                 "return_resistance": "run.return_greatest_resistance"},
          method="Greatest resistance out, plus this conductor's share of the return of its run "
                 "(as the outgoing conductor, or by its share of the run's length); none on a "
                 "negative or series conductor, nor where the record neglects the return. An "
                 "unrecorded return is at least zero, a conductor without a greatest resistance at "
                 "least its cold resistance",
          citation=cite("common practice of the trade", "common practice"),
          valid="a return that lies beside its outgoing conductor")
def greatest_loop_resistance(outgoing: Number, cold: Number, carries: str,
                             returns: str | Unknown, length: Number, run_length: Number,
                             in_run: tuple[str, ...], return_resistance: Number) -> Figure:
    if isinstance(outgoing, Unknown):
        outgoing = unrecorded(max(low_end(cold), 0.0), math.inf, outgoing)
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


@quantity("conductor.joint_drop", dimension="voltage",
          needs={"resistance": "joint_resistance", "current": "continuous_current"},
          method="Resistance of its joints and ends times its continuous current",
          citation=_DEFINITION, valid="joints measured together")
def joint_drop(resistance: Number, current: Number) -> Number:
    return resistance * current


@quantity("conductor.joint_loss", dimension="power",
          needs={"resistance": "joint_resistance", "current": "continuous_current"},
          method="Resistance of its joints and ends times the square of its continuous current",
          citation=_DEFINITION, valid="joints measured together")
def joint_loss(resistance: Number, current: Number) -> Number:
    size = largest([current, 0.0])
    return resistance * size * size


QUANTITIES = (is_copper, greatest_resistance_at_20, greatest_resistance, return_greatest_resistance,
              greatest_loop_resistance, joint_drop, joint_loss)
