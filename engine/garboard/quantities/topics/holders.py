"""What the holder of a fuse withstands while its fuse opens."""

from __future__ import annotations

from garboard.quantities.declaration import cite, quantity
from garboard.quantities.topics.withstand import declared_for
from garboard.values import Number, quotient

_DEFINITION = cite("definition", "definition")
_VALID = "faults no longer than the stated time; let-through figures declared with their current"


@quantity("device.holder_withstand_energy", dimension="let_through",
          needs={"current": "holder.withstand_current", "time": "holder.withstand_time"},
          method="Square of the holder's short-time withstand current times the time",
          citation=_DEFINITION, valid="faults no longer than the stated time")
def holder_withstand_energy(current: Number, time: Number) -> Number:
    return current * current * time


@quantity("device.holder_let_through_share", dimension="ratio",
          needs={"passed": "let_through", "at": "let_through.at_current",
                 "through": "through_current", "withstood": "holder_withstand_energy"},
          method="What the fuse lets through, declared at no less than the current through it, "
                 "over the energy its holder withstands",
          citation=_DEFINITION, valid=_VALID)
def holder_let_through_share(passed: Number, at: Number, through: Number,
                             withstood: Number) -> Number:
    return quotient(declared_for(through, passed, at), withstood)


QUANTITIES = (holder_withstand_energy, holder_let_through_share)
