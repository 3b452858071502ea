"""Figures from ratings alone: conventional currents of fuses, cranking, charging power."""

from __future__ import annotations

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import high_end
from garboard.quantities.table import table
from garboard.quantities.topics.lead_acid import LEAD_ACID
from garboard.values import OUTSIDE_METHOD, Number, Unknown, largest, smallest, total

_GG = cite("IEC 60269-1", "from memory")
_GG_VALID = "gG fuse-links from 16 A to 1250 A"
_CRANKING = cite("ABYC E-11 Table V-A (as reprinted)", "reprinted")
_DEFINITION = cite("definition", "definition")


@quantity("device.conventional_non_fusing_current", dimension="current",
          needs={"of": "class", "rating": "rating"},
          method="1.25 times its rating: a gG fuse carries it for the conventional time",
          citation=_GG, valid=_GG_VALID)
def conventional_non_fusing_current(of: str, rating: Number) -> Figure:
    return _conventional(of, rating, "non-fusing")


@quantity("device.conventional_fusing_current", dimension="current",
          needs={"of": "class", "rating": "rating"},
          method="1.6 times its rating: a gG fuse opens at it within the conventional time",
          citation=_GG, valid=_GG_VALID)
def conventional_fusing_current(of: str, rating: Number) -> Figure:
    return _conventional(of, rating, "fusing")


@quantity("device.conventional_time", dimension="time", needs={"of": "class", "rating": "rating"},
          method="The time in which a gG fuse opens at its conventional fusing current",
          citation=_GG, valid=_GG_VALID)
def conventional_time(of: str, rating: Number) -> Figure:
    return _conventional(of, rating, "time")


def _conventional(of: str, rating: Number, column: str) -> Figure:
    if of != "gG" or not isinstance(rating, float):
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"class {of}"))
    rows = table("conventional-currents-iec60269-gg")
    row = min((row for row in rows.rows if rows.rows[row]["least"] <= rating <= float(row)),
              key=float, default=None)
    if row is None:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"no group for {rating:g} A"))
    found = rows.rows[row][column]
    return Figure(found if column == "time" else found * rating, (rows.reference(row, column),))


@quantity("string.cold_cranking_current", dimension="current",
          needs={"currents": "batteries.cold_cranking_current",
                 "chemistries": "batteries.chemistry"},
          method="The least cold-cranking current of its batteries in series", citation=_DEFINITION,
          valid="lead-acid batteries")
def string_cold_cranking_current(currents: tuple[Number, ...],
                                 chemistries: tuple[str | Unknown, ...]) -> Number:
    for each in chemistries:
        if isinstance(each, Unknown):
            return each
        if each not in LEAD_ACID:
            return Unknown.because(OUTSIDE_METHOD, detail=f"{each} is not lead-acid")
    return smallest(currents)


@quantity("bank.cold_cranking_current", dimension="current",
          needs={"currents": "strings.cold_cranking_current"},
          method="Sum of the cold-cranking currents of its strings in parallel",
          citation=_DEFINITION, valid="lead-acid batteries")
def bank_cold_cranking_current(currents: tuple[Number, ...]) -> Number:
    return total(currents)


@quantity("bank.breaking_capacity_of_main", dimension="current",
          needs={"cranking": "cold_cranking_current", "voltage": "highest_system_voltage"},
          method="By the cold-cranking current of the bank, for the first device in series with it",
          citation=_CRANKING, valid="lead-acid banks of 12 V and 24 V")
def breaking_capacity_of_main(cranking: Number, voltage: Number) -> Figure:
    return _asked(cranking, voltage, "main")


@quantity("bank.breaking_capacity_of_branch", dimension="current",
          needs={"cranking": "cold_cranking_current", "voltage": "highest_system_voltage"},
          method="By the cold-cranking current of the bank, for every device beyond the first",
          citation=_CRANKING, valid="lead-acid banks of 12 V and 24 V")
def breaking_capacity_of_branch(cranking: Number, voltage: Number) -> Figure:
    return _asked(cranking, voltage, "branch")


def _asked(cranking: Number, voltage: Number, column: str) -> Figure:
    """The figure of the group that the greatest cranking current there may be falls in."""
    below = table("bounds-of-classes").read("24 V bank", "most")
    if not high_end(voltage) < below.value:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="above 24 V nominal").joined(voltage))
    rows = table("breaking-capacity-by-cranking")
    row = next((row for row in rows.rows if row != "no limit"
                and high_end(cranking) <= float(row)), "no limit")
    return Figure(rows.cell(row, column), (rows.reference(row, column), below.row))


@quantity("source.charging_power", dimension="power",
          needs={"current": "current_max", "voltage": "highest_stage_voltage"},
          method="Greatest output current times the highest stage voltage", citation=_DEFINITION,
          valid="an upper bound; the current falls before the highest stage ends")
def charging_power(current: Number, voltage: Number) -> Number:
    return current * voltage


@quantity("bank.charging_power", dimension="power", needs={"powers": "sources.charging_power"},
          method="Sum of the charging powers of its sources", citation=_DEFINITION,
          valid="all sources charging at once")
def bank_charging_power(powers: tuple[Number, ...]) -> Number:
    return total(powers)


@quantity("place.charging_power", dimension="power",
          needs={"powers": "batteries.bank.charging_power"},
          method="The greatest charging power of a bank with a battery in it",
          citation=_DEFINITION, valid="batteries connected to a bank")
def place_charging_power(powers: tuple[Number, ...]) -> Number:
    return largest(powers) if powers else 0.0


QUANTITIES = (conventional_non_fusing_current, conventional_fusing_current, conventional_time,
              string_cold_cranking_current, bank_cold_cranking_current, breaking_capacity_of_main,
              breaking_capacity_of_branch, charging_power, bank_charging_power,
              place_charging_power)
