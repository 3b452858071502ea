"""Guarded acceptance held against the probability that a measured figure conforms.

JCGM 106:2012 (from memory; the probabilities are calculated here by the standard library): a figure
y with the standard uncertainty u conforms with the probability Φ((TU - y)/u) - Φ((TL - y)/u). With
an expanded uncertainty of 2 u and one limit, guarded acceptance passes exactly where that is at
least Φ(2), and fails exactly where it is at most Φ(-2); between the two it is undecided
(ILAC-G8:09/2019, the rule for a guard band of the expanded uncertainty, read).
"""

from __future__ import annotations

import random
from statistics import NormalDist

import pytest

from garboard.values import UNCERTAINTY, Bounds, Unknown

#: y, u, lower limit, upper limit, the probability, its rounding, guarded acceptance
WORKED = {
    "upper limit 10, conditional pass": (9.5, 0.4, None, 10.0, 0.8944, 4, None),
    "at the limit": (10.0, 0.4, None, 10.0, 0.5, 12, None),
    "viscosity of oil": (13.6, 1.8, 12.5, 16.3, 0.6626, 4, None),
    "breakdown of a Zener diode": (-5.47, 0.05, None, -5.4, 0.9192, 4, None),
    "upper limit 10, pass": (9.1, 0.4, None, 10.0, 0.9878, 4, True),
    "upper limit 10, conditional fail": (10.3, 0.4, None, 10.0, 0.2266, 4, None),
    "upper limit 10, fail": (10.9, 0.4, None, 10.0, 0.0122, 4, False),
}


def probability(y: float, u: float, least: float | None, most: float | None) -> float:
    normal = NormalDist(y, u)
    return (1.0 if most is None else normal.cdf(most)) - (
        0.0 if least is None else normal.cdf(least))


def guarded(y: float, u: float, least: float | None, most: float | None) -> bool | None:
    """The verdict of the program; None where it is undecided."""
    figure = Bounds(y - 2 * u, y + 2 * u, y, basis=(UNCERTAINTY,))
    verdict = (True if most is None else figure <= most) & (True if least is None
                                                             else figure >= least)
    return None if isinstance(verdict, Unknown) else verdict


@pytest.mark.parametrize("name", WORKED)
def test_worked_figures(name: str) -> None:
    *given, conforms, digits, verdict = WORKED[name]
    assert round(probability(*given), digits) == conforms
    assert guarded(*given) is verdict


def test_a_guard_band_leaves_the_risk_it_is_made_for() -> None:
    """With 1.64 u of guard at most 5 % of what is accepted does not conform."""
    assert round(NormalDist().cdf(1.64), 4) == 0.9495


def test_guarded_acceptance_is_a_floor_under_the_probability() -> None:
    draws = random.Random(106)
    certain = NormalDist().cdf(2)
    seen = set()
    for _ in range(2_000):
        y, u, most = draws.uniform(-5, 5), draws.uniform(0.05, 2), draws.uniform(-5, 5)
        if abs(abs(y - most) - 2 * u) < 1e-9:
            continue
        conforms = probability(y, u, None, most)
        verdict = guarded(y, u, None, most)
        assert verdict is (True if conforms > certain else False if conforms < 1 - certain
                           else None), (y, u, most)
        seen.add(verdict)
    assert seen == {True, False, None}
