"""Records with tolerances and missing facts: no draw inside them leaves what the trail states, and
what it states is no wider than it must be.

The largest fault currents are of a stated state: a device or switch without a resistance on record
has none. In draws that keep to this they stay within their bounds; in draws where such a part has
any resistance they still stay below the upper end, which is what a breaking capacity is held to.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count, product
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import pytest

from oracle.comparing import assessed, ends_of, figures, is_unknown
from oracle.drawing import KINDS, Traits, boat
from oracle.expected import Expected
from oracle.sheet import Figure, Sheet

POINTS = 300
CLOSE = 1e-6
TRAITS = {
    "tolerances": Traits(wide=0.3, most_batteries=4),
    "unrecorded": Traits(unrecorded=0.25, most_batteries=4),
    "own returns": Traits(wide=0.25, unrecorded=0.15, own_returns=True, most_batteries=3),
}
CASES = list(product(TRAITS, KINDS, range(3)))


def drawn_ends(own: Expected) -> dict[str, tuple[float, float]]:
    return {key: (float(each.min()), float(each.max())) for key, each in (
        own.charge_limits() | own.voltages()).items()}


def current_ends(own: Expected) -> dict[str, tuple[float, float]]:
    return {key: (float(each.min()), float(each.max())) for key, each in own.currents().items()}


def leaves(stated: Any, ends: tuple[float, float]) -> bool:
    """Whether a drawn value lies outside, or the trail gives no figure where there is one."""
    slack = CLOSE * max(*map(abs, ends), 1.0)
    if is_unknown(stated):
        return ends[1] > 1e-3
    low, high = ends_of(stated)
    return ends[0] < low - slack or ends[1] > high + slack


@pytest.mark.parametrize(("traits", "kind", "seed"), CASES, ids=[
    f"{traits} {kind.__name__} {seed}" for traits, kind, seed in CASES])
def test_no_draw_leaves_the_bounds(traits: str, kind: Any, seed: int, tmp_path: Path) -> None:
    drawn = boat(500 + seed, kind, TRAITS[traits])
    theirs = figures(assessed(drawn.text, tmp_path))
    own = Expected(Sheet(drawn.text, POINTS, seed), drawn.banks)
    above = {key: ends[1] for key, ends in current_ends(own).items()}
    bare = Expected(Sheet(drawn.text, POINTS, seed), drawn.banks, bare=True)
    ours = drawn_ends(own) | current_ends(bare)
    assert own.sheet.open, "nothing varies in this record"
    assert {key: (theirs.get(key), ends) for key, ends in ours.items()
            if key not in theirs or leaves(theirs[key], ends)} == {}
    assert {key: (theirs[key], most) for key, most in above.items()
            if passes(theirs[key], most)} == {}


def passes(stated: Any, most: float) -> bool:
    """Whether a drawn current lies above what the trail states as the most."""
    return not is_unknown(stated) and most > ends_of(stated)[1] + CLOSE * max(most, 1.0)


class Corners(NamedTuple):
    """A record, its sheet, and its currents at every choice of ends of what is not one number."""

    text: str
    sheet: Sheet
    found: dict[str, Figure]


def _narrow(kind: Any, seed: int) -> Iterator[Corners]:
    """Records with some tolerances or none, one after the other."""
    for number in count(900 + 100 * seed):
        drawn = boat(number, kind, Traits(wide=0.07, most_batteries=4))
        own = Expected(Sheet(drawn.text, 256, corners=True), drawn.banks)
        found = own.currents()
        yield Corners(drawn.text, own.sheet, found)


NARROW = list(product(KINDS, range(3)))


@pytest.mark.parametrize(("kind", "seed"), NARROW, ids=[
    f"{kind.__name__} {seed}" for kind, seed in NARROW])
def test_bounds_of_few_tolerances_are_their_corners(kind: Any, seed: int, tmp_path: Path) -> None:
    own = next(each for each in _narrow(kind, seed) if 0 < len(each.sheet.open) <= 8)
    theirs = figures(assessed(own.text, tmp_path))
    ours = own.found
    for key, each in ours.items():
        if is_unknown(theirs[key]):
            continue
        low, high = ends_of(theirs[key])
        width = float(np.ptp(each))
        assert high == pytest.approx(each.max(), rel=CLOSE)
        # the larger of two sides may be least at a point that is no corner
        assert each.min() - low <= 0.3 * width + CLOSE * each.max()
