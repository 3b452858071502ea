"""The functions an expression may call. There are no others, and none reaches beyond its values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final


@dataclass(frozen=True, slots=True)
class Function:
    """One function.

    ``least`` and ``most`` count plain arguments (``most`` of ``None``: any number; 0: it takes none
    and only gathers). ``gathers`` marks those that run through several things, as in
    ``sum(s.current_max for s in bank.sources)``.
    """

    name: str
    least: int
    most: int | None
    gathers: bool
    example: str
    meaning: str


FUNCTIONS: Final[Mapping[str, Function]] = MappingProxyType({each.name: each for each in (
    Function("abs", 1, 1, False, "abs(a.voltage - b.voltage)",
             "the number without its sign"),
    Function("all", 0, 0, True, "all(b.chemistry == \"LFP\" for b in bank.batteries)",
             "true when it holds for every one, and when there is none"),
    Function("any", 0, 0, True, "any(b.is_heated for b in bank.batteries)",
             "true when it holds for one of them at least"),
    Function("count", 1, 1, True, "count(b for b in bank.batteries if b.is_heated)",
             "how many there are, or for how many it holds"),
    Function("exists", 1, 1, False, "exists(battery.own_device)",
             "whether there is such a thing aboard"),
    Function("max", 2, None, True, "max(s.current_max for s in bank.sources)",
             "the greatest of several numbers; of none it is not known"),
    Function("min", 2, None, True, "min(conductor.ampacity, device.rating)",
             "the least of several numbers; of none it is not known"),
    Function("sqrt", 1, 1, False, "sqrt(device.let_through / some_time)",
             "the square root; of a negative number it is not known"),
    Function("sum", 0, 0, True, "sum(s.current_max for s in bank.sources)",
             "the sum; of none it is 0"),
)})
FUNCTION_NAMES: Final = tuple(sorted(FUNCTIONS))
GATHERING_NAMES: Final = tuple(sorted(name for name, each in FUNCTIONS.items() if each.gathers))
