"""How far a figure is from its limit: by how much it falls short, goes over, or has to spare."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from garboard.values import Bounds, rounded
from garboard.values.units import System, format_number, format_value

_DIGITS: Final = 3
_AT_LEAST: Final = (">=", ">")
_AT_MOST: Final = ("<=", "<")
#: A share of a temperature says nothing; neither does a share of a share.
_TEMPERATURE: Final = "temperature"
_RATIO: Final = "ratio"

Ends = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Margin:
    """The distance from a figure to its limit, in the canonical unit; negative: has to spare.

    ``share`` is that distance over the limit, where that means something. Both are bounds from the
    least to the greatest.
    """

    shortage: Ends
    share: Ends | None
    dimension: str | None
    below: bool

    def words(self, system: System) -> str:
        """``short by 8.67 kA, 30 %``, ``over by 0.172 m, 97 %`` or ``2.1 kA to spare, 13 %``."""
        least, most = self.shortage
        if least <= 0 <= most and least != most:
            return "on either side of the limit"
        if least == most == 0:
            return "exactly at the limit"
        spare = most <= 0
        amount = self._amount(system, spare)
        if self.share is not None and all(map(math.isfinite, self.share)):
            amount += f", {_between(*_turned(self.share, spare), 'ratio', system, digits=2)}"
        if spare:
            return f"{amount} to spare"
        return f"{'short' if self.below else 'over'} by {amount}"

    def _amount(self, system: System, spare: bool) -> str:
        ends = _turned(self.shortage, spare)
        if self.dimension == _RATIO:
            return _between(ends[0] * 100, ends[1] * 100, None, system) + " percentage points"
        if self.dimension == _TEMPERATURE:
            return _between(*ends, "temperature_difference", system).replace("K", "°C")
        return _between(*ends, self.dimension, system)


def margin_of(left: object, relation: str, right: object, dimension: str | None) -> Margin | None:
    """The margin of ``left relation right``; none where the two have no distance."""
    one, other = _ends(left), _ends(right)
    if one is None or other is None or relation not in (*_AT_LEAST, *_AT_MOST):
        return None
    below = relation in _AT_LEAST
    shortage = ((other[0] - one[1], other[1] - one[0]) if below
                else (one[0] - other[1], one[1] - other[0]))
    if any(map(math.isnan, shortage)):
        return None
    share = None
    counted = isinstance(left, int) and isinstance(right, int)
    if other[0] > 0 and one[0] >= 0 and dimension not in (_TEMPERATURE, _RATIO) and not counted:
        least, most = one[0] / other[1], one[1] / other[0]
        share = (1 - most, 1 - least) if below else (least - 1, most - 1)
    return Margin(shortage, share, dimension, below)


def _between(least: float, most: float, dimension: str | None, system: System,
             digits: int = _DIGITS) -> str:
    if least == most:
        return format_number(least, dimension, system, digits)
    if not math.isfinite(most):
        return f"at least {format_number(least, dimension, system, digits)}"
    return format_value(Bounds(least, most), dimension, system, digits)


def _turned(ends: Ends, spare: bool) -> Ends:
    return (-ends[1], -ends[0]) if spare else ends


def _ends(value: object) -> Ends | None:
    """The ends as they were compared: with 12 significant digits."""
    if isinstance(value, Bounds):
        return rounded(value.lo), rounded(value.hi)
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return None
    return rounded(value), rounded(value)
