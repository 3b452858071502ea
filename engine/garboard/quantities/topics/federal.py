"""Figures that 33 CFR Part 183 Subpart I speaks of and no record states as they stand there."""

from __future__ import annotations

import math

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import high_end, low_end, unrecorded
from garboard.quantities.table import table
from garboard.values import OUTSIDE_METHOD, Number, Unknown, rounded, smallest


@quantity("battery.test_pull", dimension="force", needs={"mass": "mass"},
          method="The lesser of 90 pounds and twice its weight",
          citation=cite("33 CFR 183.420(a)", "read"), valid="any battery")
def test_pull(mass: Number) -> Figure:
    asked, constants = table("battery-pull-33cfr183-420"), table("physical-constants")
    pounds, weights = asked.read("any", "pounds"), asked.read("any", "weights")
    pound, gravity = (constants.read(name, "value") for name in ("pound-force", "standard gravity"))
    return Figure(smallest([pounds.value * pound.value, mass * (weights.value * gravity.value)]),
                  tuple(cell.row for cell in (pounds, weights, pound, gravity)))


@quantity("battery.movement_under_test_pull", dimension="length",
          needs={"moved": "restraint.movement", "force": "restraint.test_force",
                 "needed": "test_pull"},
          method="How far it moved, if it was pulled with the force that is asked for; at least "
                 "that where it was pulled with less, at most that where with more",
          citation=cite("33 CFR 183.420(a)", "read"), valid="pulls through the centre of gravity")
def movement_under_test_pull(moved: Number, force: Number, needed: Number) -> Number:
    weakest, strongest = rounded(low_end(force)), rounded(high_end(force))
    low = low_end(moved) if strongest <= low_end(needed) else 0.0
    high = high_end(moved) if weakest >= high_end(needed) else math.inf
    if (low, high) == (low_end(moved), high_end(moved)):
        return moved
    why = Unknown.because(OUTSIDE_METHOD, detail="it was pulled with another force than is asked "
                                                 "for")
    return unrecorded(low, high, why.joined(moved))


@quantity("source.rated_current_at_60", dimension="current",
          needs={"rated": "rated_current", "at": "rated_temperature"},
          method="Its rated current where that holds at 60 °C; at most that where it holds at "
                 "less, at least that where it holds at more",
          citation=cite("33 CFR 183.460(b)", "from memory"),
          valid="machines that give less the hotter they are")
def rated_current_at_60(rated: Number, at: Number) -> Figure:
    wanted, row = table("generator-rating-33cfr183-460").read("alternator or generator", "rated at")
    if low_end(at) == wanted == high_end(at):
        return Figure(rated, (row,))
    low = low_end(rated) if low_end(at) >= wanted else 0.0
    high = high_end(rated) if high_end(at) <= wanted else math.inf
    why = Unknown.because(OUTSIDE_METHOD, detail="the current at 60 °C is not on record")
    return Figure(unrecorded(low, high, why.joined(rated).joined(at)), (row,))


QUANTITIES = (test_pull, movement_under_test_pull, rated_current_at_60)
