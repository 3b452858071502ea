"""A limit met exactly passes, whatever a sum or product left in the last place.

Values stay what Python gives; two numbers are compared with 12 significant digits each.
"""

from __future__ import annotations

import math
import operator
import random
from decimal import ROUND_HALF_EVEN, Context, Decimal
from typing import Any

import pytest

from expressions.drawn import AMOUNTS, INFOS, VOCABULARY
from garboard.expressions import (
    FAILED,
    NOT_ASSESSED,
    PASSED,
    RuleSource,
    compile_rules,
    read_expression,
    working,
)
from garboard.expressions.runtime import compared
from garboard.values import Bounds, greatest_alike, least_alike, rounded

SIGNS = {"<": operator.lt, "<=": operator.le, ">": operator.gt, ">=": operator.ge,
         "==": operator.eq, "!=": operator.ne}


def outcome(text: str, **values: Any) -> str:
    return str(row(text, **values)[2])


def row(text: str, **values: Any) -> Any:
    rule = RuleSource("r", read_expression(text, VOCABULARY, "thing", INFOS), None, AMOUNTS)
    (found,) = compile_rules([rule]).run({"thing": [{"id": "t", **values}]})
    return found


def figure(number: float) -> float:
    return float(Context(prec=12, rounding=ROUND_HALF_EVEN).create_decimal(Decimal(number)))


# 0.8 * 3.5 is 2.8000000000000003 and 0.1 * 3 is 0.30000000000000004: worked out in binary
@pytest.mark.parametrize(("text", "x", "y", "expected"), [
    ("thing.x >= 0.8 * thing.y", 2.8, 3.5, PASSED),
    ("thing.x <= 0.1 * thing.y", 0.3, 3.0, PASSED),
    ("thing.x * 3 <= thing.y", 0.1, 0.3, PASSED),
    ("thing.x * 3 <= 0.3", 0.1, 0.0, PASSED), ("0.3 >= thing.x * 3", 0.1, 0.0, PASSED),
    ("thing.x * 3 > 0.3", 0.1, 0.0, FAILED), ("thing.x * 3 > thing.y", 0.1, 0.3, FAILED),
    ("thing.x * 3 == thing.y", 0.1, 0.3, PASSED), ("thing.x * 3 != 0.3", 0.1, 0.3, FAILED),
    ("thing.x - 0.9 <= 0.1", 1.0, 0.0, PASSED), ("0 < thing.x * 3 <= thing.y", 0.1, 0.3, PASSED),
    ("(thing.x * 3 if thing.on else thing.y) <= 0.3", 0.1, 0.0, PASSED),
    ("thing.x * 3 <= thing.y", 0.1, 0.29999999999, FAILED),
    ("thing.x <= half", 0.5000000000001, 0.0, PASSED),
    ("thing.x <= half", 0.50000000001, 0.0, FAILED),
])
def test_a_limit_met_exactly_passes(text: str, x: float, y: float, expected: str) -> None:
    assert outcome(text, x=x, y=y, on=True) == expected


def test_values_stay_what_python_gives() -> None:
    assert row("thing.x * 3 <= thing.y", x=0.1, y=0.3)[4] == (0.1 * 3, 0.3)


def test_the_working_shows_the_same_verdict_and_no_distance() -> None:
    rule = RuleSource("r", read_expression("thing.x * 3 <= thing.y", VOCABULARY, "thing", INFOS),
                      None, AMOUNTS)
    item = {"id": "t", "x": 0.1, "y": 0.3}
    shown = working(compile_rules([rule]), 0, item, {"thing": [item]})
    (each,) = shown.compared
    assert each.truth is True
    assert each.distance == 0


@pytest.mark.parametrize(("text", "expected"), [
    ("thing.x * 3 <= 0.3", PASSED), ("thing.x * 3 <= thing.y", PASSED),
    ("thing.x * 3 >= 0.3", NOT_ASSESSED), ("thing.x * 3 > thing.y", FAILED),
    ("thing.x * 3 < thing.y", NOT_ASSESSED),
])
def test_ends_of_bounds_are_compared_alike(text: str, expected: str) -> None:
    assert outcome(text, x=Bounds(0.05, 0.1), y=0.3) == expected


@pytest.mark.parametrize("seed", range(4))
def test_compiled_and_slow_agree_with_decimal_rounding_near_limits(seed: int) -> None:
    """Numbers a few units in the 12th to 16th digit from each other, with every sign."""
    draws = random.Random(seed)
    for _ in range(250):
        one = draws.choice((0.3, 1.0, 9.99999999999, 2.8, 1e-7, 12345.678, draws.uniform(0, 99)))
        other = one * (1 + draws.choice((0, 1, -1)) * draws.uniform(0, 10) * 10.0 ** draws.choice(
            (-16, -15, -13, -12, -11, -10)))
        for sign, holds in SIGNS.items():
            wanted = holds(figure(one), figure(other))
            assert compared(one, sign, other) is wanted
            text = f"thing.x * 1 {sign} thing.y"
            assert (outcome(text, x=one, y=other) == PASSED) is wanted, (one, sign, other)
            text = f"thing.x {sign} thing.y"  # what is read of a thing is rounded already
            assert (outcome(text, x=figure(one), y=figure(other)) == PASSED) is wanted, text
            for text, x in ((f"thing.x {sign} {other:.17f}", one),
                            (f"{one:.17f} {sign} thing.x", other)):
                left, right = ((x, float(f"{other:.17f}")) if text[0] == "t"
                               else (float(f"{one:.17f}"), x))
                assert (outcome(text, x=x) == PASSED) is holds(figure(left), figure(right)), text


@pytest.mark.parametrize("number", [0.0, 1.0, -1.0, 0.3, 0.1778, 1e-300, 5e-324, 1e300, 1.7e308,
                                    123456789012.5, -9.99999999999999])
def test_the_last_numbers_that_round_alike(number: float) -> None:
    least, greatest = least_alike(number), greatest_alike(number)
    assert least <= rounded(number) <= greatest
    assert rounded(least) == rounded(greatest) == rounded(number)
    for last, towards in ((least, -math.inf), (greatest, math.inf)):
        beyond = math.nextafter(last, towards)
        assert not math.isfinite(beyond) or rounded(beyond) != rounded(number) or number == 0
