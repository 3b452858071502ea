"""The benchmark's rules give what the function written by hand gives, missing facts and all."""

from __future__ import annotations

import random

import pytest

from benchmarks.rules import program, same
from benchmarks.rules_by_hand import by_hand
from benchmarks.rules_material import RULES, record


@pytest.mark.parametrize("missing", [0.0, 0.05, 0.3])
def test_eighty_rules_agree_with_the_function_written_by_hand(missing: float) -> None:
    compiled = program()
    assert len(RULES) == 80
    for seed in range(5):
        things = record(random.Random(seed), missing)
        same(compiled.run(things), by_hand(things))
