"""A switch that couples two banks lets what charges the one reach the other.

The start battery's alternator can charge the lithium bank over the combiner: its current counts,
its stages are held against the lithium trips, and the management of each lithium battery must stop
it.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from cli.ran import HERE, Ran

RECORD = (HERE / "coupled-banks.yaml").read_text("utf-8")
COMBINER = ("  - {id: k1, from: start-bus, to: house-bus, through: "
            "[{switch: {id: combiner, kind: relay, resistance: 0.5 mΩ}}]}")

STOP = "{name: stop, stops: [alternator, charger], acts_on: charging must stop}"


def _findings(garboard: Callable[..., Ran], coupling: str,
              output: str = STOP) -> dict[str, Any]:
    Path("coupled.yaml").write_text(
        RECORD.replace("COUPLING", coupling).replace("OUTPUT", output), "utf-8")
    ran = garboard("assess", "coupled.yaml", "--pack", "small-craft-lithium")
    assert ran.code in (1, 2), ran.err
    return {f"{each['rule']}/{each['item']}": each["outcome"]
            for each in ran.trail("coupled.trail.json")["assessment"]["findings"]}


@pytest.mark.parametrize(("coupling", "expected"), [(COMBINER, "failed"), ("", "not applicable")])
def test_equalising_behind_a_combiner(garboard: Callable[..., Ran], coupling: str,
                                      expected: str) -> None:
    assert _findings(garboard, coupling)["equalising-off/alternator"] == expected


@pytest.mark.parametrize(("coupling", "expected"), [(COMBINER, "failed"), ("", "passed")])
def test_the_sum_of_charging_currents_takes_in_what_is_behind_it(
        garboard: Callable[..., Ran], coupling: str, expected: str) -> None:
    # 160 A + 20 A against two packs of 60 A that share evenly, 120 A
    assert _findings(garboard, coupling)["charging-current-sum/bank-house-bus"] == expected


def test_its_stages_are_held_against_the_lithium_trips(garboard: Callable[..., Ran]) -> None:
    findings = _findings(garboard, COMBINER)
    assert findings["stage-under-trip/alternator"] == "failed"
    assert findings["stage-under-trip/charger"] == "passed"


def test_every_lithium_battery_must_be_able_to_stop_a_source(garboard: Callable[..., Ran]) -> None:
    both = _findings(garboard, COMBINER)
    assert both["charging-sources-stop/charger"] == "passed"
    one = _findings(garboard, COMBINER, "{name: alarm, stops: []}")
    assert one["charging-sources-stop/charger"] == "failed"
    assert one["charging-sources-stop/alternator"] == "failed"
