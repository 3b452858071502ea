"""Records made up at random: every figure of the trail against one worked out from the text."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from oracle.comparing import assessed, figures, is_unknown
from oracle.drawing import KINDS, Boat, Traits, boat
from oracle.expected import Expected
from oracle.sheet import Sheet

#: Relative difference that rounding to 12 digits and two ways of solving leave.
CLOSE = 1e-6
DRAWS = [(kind, own, seed) for kind in KINDS for own in (False, True) for seed in range(7)]


def expected(drawn: Boat) -> dict[str, Any]:
    """The second opinion on a record without anything left open."""
    own = Expected(Sheet(drawn.text), drawn.banks)
    found = {name: float(each[0])
             for name, each in (own.currents() | own.charge_limits() | own.voltages()).items()}
    assert own.sheet.open == []
    return found | own.walks() | own.sums()


def agree(theirs: Any, ours: Any) -> bool:
    """Whether the trail and the second opinion say the same; nothing stands for no current."""
    if is_unknown(theirs):
        return ours is None or (not isinstance(ours, bool) and abs(ours) < 1e-3)
    if isinstance(theirs, bool) or isinstance(ours, bool):
        return theirs is ours
    return isinstance(theirs, (int, float)) and ours is not None and (
        abs(theirs - ours) <= CLOSE * max(abs(ours), 1e-3))


@pytest.mark.parametrize(("kind", "own", "seed"), DRAWS, ids=[
    f"{kind.__name__}{' own returns' if own else ''} {seed}" for kind, own, seed in DRAWS])
def test_agreement(kind: Any, own: bool, seed: int, tmp_path: Path) -> None:
    drawn = boat(seed, kind, Traits(own_returns=own))
    theirs, ours = figures(assessed(drawn.text, tmp_path)), expected(drawn)
    assert theirs.keys() == ours.keys()
    assert len(ours) > 15
    assert {key: (value, ours[key]) for key, value in theirs.items()
            if not agree(value, ours[key])} == {}


def test_draws_differ_and_repeat() -> None:
    texts = {boat(seed, kind, Traits(own_returns=own)).text for kind, own, seed in DRAWS}
    assert len(texts) == len(DRAWS)
    kind, own, seed = DRAWS[-1]
    assert boat(seed, kind, Traits(own_returns=own)).text in texts
