"""What stays fed when the isolators are opened."""

from __future__ import annotations

from garboard.network import Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.values import Truth, Unknown, any_of, negated

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")
Names = tuple[str, ...]
Truths = tuple[Truth, ...]


@quantity("switch.is_isolator", kind="truth", needs={"kind": "kind"},
          method="Its recorded kind", citation=_DEFINITION, valid="any switch")
def is_isolator(kind: str) -> bool:
    return kind == "isolator"


@quantity("switch.is_isolator_at_hand", kind="truth", unknowns="passed",
          needs={"is_isolator": "is_isolator", "reachable": "reachable"},
          method="It is an isolator and is reached without tools",
          citation=_PRACTICE, valid="any switch")
def is_isolator_at_hand(is_isolator: Truth, reachable: Truth) -> Truth:
    return is_isolator & reachable


@quantity("bank.can_be_cut_off", kind="truth",
          needs={"network": "network", "bank": "id", "switches": "record.switches.id",
                 "at_hand": "record.switches.is_isolator_at_hand", "loads": "record.loads.id",
                 "critical": "record.loads.critical"},
          method="With every isolator open that is reached without tools, the bank feeds no load "
                 "but critical ones; contactors and other switches count as closed",
          citation=_PRACTICE, valid="runs traced from the bank to every load")
def can_be_cut_off(network: Network, bank: str, switches: Names, at_hand: Truths, loads: Names,
                   critical: Truths) -> Figure:
    certain = [switch for switch, truth in zip(switches, at_hand, strict=True) if truth is True]
    possible = [switch for switch, truth in zip(switches, at_hand, strict=True)
                if truth is not False]
    doubts = [truth for truth in at_hand if isinstance(truth, Unknown)]
    fed_still, fed_perhaps = (network.loads_fed(bank, opened) for opened in (possible, certain))
    verdict: Truth = True
    left: list[str] = []
    for load, truth in zip(loads, critical, strict=True):
        fed = _whether_fed(load, fed_still, fed_perhaps, doubts)
        verdict = verdict & (negated(fed) | truth)
        if fed is not False and truth is not True:
            left.append(load)
    return Figure(verdict, remarks=(f"still fed: {', '.join(left)}",) if left else ())


def _whether_fed(load: str, surely: dict[str, Truth], perhaps: dict[str, Truth],
                 doubts: list[Unknown]) -> Truth:
    """Fed whatever the doubtful switches are, or fed only if one of them is no isolator at hand."""
    if surely[load] is not False or perhaps[load] is False:
        return surely[load]
    return any_of(doubts)


QUANTITIES = (is_isolator, is_isolator_at_hand, can_be_cut_off)
