"""Arithmetic on ends: what the ends of a sum, difference, product or quotient are.

An infinite end stands for an open side, so nought times an open side is nought. The ends go through
the same floating-point operation a point would go through; rounding is monotone, so the result
contains the result of every pair of points.
"""

from __future__ import annotations

import math
import operator
from collections.abc import Callable
from typing import Final, NamedTuple

Ends = tuple[float, float]


class Operation(NamedTuple):
    """One arithmetic operation: on two pairs of ends, and on two points."""

    ends: Callable[[Ends, Ends], Ends]
    point: Callable[[float, float], float]


def _sum(a: Ends, b: Ends) -> Ends:
    return a[0] + b[0], a[1] + b[1]


def _difference(a: Ends, b: Ends) -> Ends:
    return a[0] - b[1], a[1] - b[0]


def _product(a: Ends, b: Ends) -> Ends:
    corners = [0.0 if x == 0 or y == 0 else x * y for x in a for y in b]
    return min(corners), max(corners)


def _quotient(a: Ends, b: Ends) -> Ends:
    if b[0] <= 0 <= b[1]:
        raise ZeroDivisionError
    # between two open sides a quotient takes any size, which the other corners show
    corners = [0.0 if math.isinf(x) and math.isinf(y) else x / y for x in a for y in b]
    return min(corners), max(corners)


SUM: Final = Operation(_sum, operator.add)
DIFFERENCE: Final = Operation(_difference, operator.sub)
PRODUCT: Final = Operation(_product, operator.mul)
QUOTIENT: Final = Operation(_quotient, operator.truediv)
