"""What a contactor closes on: the inrush of the loads behind it, precharged or not."""

from __future__ import annotations

from garboard.quantities.declaration import cite, quantity
from garboard.quantities.spans import high_end, unrecorded
from garboard.values import NOT_RECORDED, Number, Truth, Unknown, largest, quotient

_PRACTICE = cite("common practice of the trade", "common practice")
_DEFINITION = cite("definition", "definition")
_VALID = ("loads on one side of it; an upper bound, inductance and the capacitors' own resistance "
          "not counted")


@quantity("switch.making_current", dimension="current", unknowns="passed",
          needs={"inrush": "inrush_current", "worked_by": "worked_by",
                 "precharges": "worked_by.precharge", "reaches": "worked_by.precharge_to"},
          method="The inrush current of the loads it connects; where the management system that "
                 "works it precharges them, that times the part of the voltage that is still "
                 "missing when it closes: at most all of it where that is not on record",
          citation=_PRACTICE, valid=_VALID)
def making_current(inrush: Number, worked_by: object, precharges: Truth,
                   reaches: Number) -> Number:
    if isinstance(inrush, Unknown) or worked_by is None or precharges is False:
        return inrush
    if precharges is True and not isinstance(reaches, Unknown):
        return inrush * largest([1.0 - reaches, 0.0])
    why = Unknown.because(NOT_RECORDED, detail="how far the loads are precharged when it closes")
    for each in (precharges, reaches):
        why = why.joined(each) if isinstance(each, Unknown) else why
    return unrecorded(0.0, high_end(inrush), why.joined(inrush))


@quantity("switch.making_share", dimension="ratio",
          needs={"closes_on": "making_current", "rated": "make_current"},
          method="The current it closes on over the greatest it is made to close on",
          citation=_DEFINITION, valid=_VALID)
def making_share(closes_on: Number, rated: Number) -> Number:
    return quotient(closes_on, rated)


QUANTITIES = (making_current, making_share)
