"""Charging: what can flow at once, what the bank accepts, and the cold."""

from __future__ import annotations

import math
from collections.abc import Mapping

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import low_end, unrecorded
from garboard.values import Bounds, Number, Truth, quotient, smallest, total

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")


@quantity("bank.charging_current_sum", dimension="current",
          needs={"currents": "sources.current_max"},
          method="Sum of the greatest output currents of all charging sources connected to it",
          citation=_PRACTICE, valid="all sources charging at once")
def charging_current_sum(currents: tuple[Number, ...]) -> Number:
    return total(currents)


@quantity("string.charge_current_limit", dimension="current",
          needs={"limits": "batteries.charge.current_max"},
          method="The least charging limit of the batteries in the string",
          citation=_DEFINITION, valid="one current through all of them")
def string_charge_current_limit(limits: tuple[Number, ...]) -> Number:
    return smallest(limits)


@quantity("bank.charge_current_limit", dimension="current",
          needs={"ids": "strings.id", "limits": "strings.charge_current_limit",
                 "shares": "shares", "as_found": "shares_as_found"},
          method="The least over the strings of its charging limit over its share of the current "
                 "(shares by the DC network, equal EMFs); never the sum of the limits. With every "
                 "switch closed or as found, the lesser",
          citation=_PRACTICE, valid="current entering where the strings meet; equal charge states",
          version="2")
def charge_current_limit(ids: tuple[str, ...], limits: tuple[Number, ...],
                         shares: Mapping[str, Number], as_found: Mapping[str, Number]) -> Figure:
    limit_of = dict(zip(ids, limits, strict=True))
    worst = [_limit_by_share(limit_of[string], share) for each in (shares, as_found)
             for string, share in each.items()]
    # the shares make one together, so the least is never above this: it only tightens bounds
    worst.append(total(limits))
    return Figure(smallest(worst), remarks=tuple(
        f"share of {string}: {_percent(share)}" for string, share in shares.items()))


def _limit_by_share(limit: Number, share: Number) -> Number:
    """A string's limit over its share; a share that may be nothing leaves it open upwards."""
    if isinstance(share, Bounds) and share.lo <= 0 < share.hi:
        return unrecorded(low_end(quotient(limit, share.hi)), math.inf, share)
    return quotient(limit, share)


def _percent(share: Number) -> str:
    return f"{100 * share:.1f} %" if isinstance(share, float) else "not a single figure"


@quantity("battery.charge_inhibited_in_cold", kind="truth",
          needs={"inhibit": "managed_by.inhibits_charge_below",
                 "limit": "charge.temperature.low"},
          method="The management system inhibits charging at or above the battery's own lowest "
                 "charging temperature",
          citation=_PRACTICE, valid="an inhibit that acts on every charging source")
def charge_inhibited_in_cold(inhibit: Number, limit: Number) -> Truth:
    verdict: Truth = inhibit >= limit
    return verdict


QUANTITIES = (charging_current_sum, string_charge_current_limit, charge_current_limit,
              charge_inhibited_in_cold)
