"""The edges of ranges: a figure at the edge, and beyond it unknown, outside method, with a reason.

Each row is a calculation, its arguments at the edge and beyond it; ``None`` for beyond means that
there is no such argument. What is open on one side (at least, at most) counts as no figure.
"""

from __future__ import annotations

import math
from typing import Any

import pytest

from garboard.quantities import Figure, Quantity, builtin
from garboard.values import NOT_RECORDED, OUTSIDE_METHOD, Bounds, Unknown
from garboard.values.conductor_size import read_size

KNOWN: dict[str, Quantity] = {each.full_name: each for each in builtin.garboard_quantities()}
MISSING = Unknown.because(NOT_RECORDED, "x.y")
S = read_size
EDGES: list[tuple[str, str, tuple[Any, ...], tuple[Any, ...]]] = [
    ("largest row of Table 5", "conductor.ampacity", (S("4/0 AWG"), 60.0), (S("5 AWG"), 60.0)),
    ("smallest row of Table 5", "conductor.ampacity", (S("18 AWG"), 60.0), (S("20 AWG"), 60.0)),
    ("smallest metric size with a row", "conductor.ampacity", (S("1 mm2"), 60.0),
     (S("0.75 mm2"), 60.0)),
    ("lowest insulation of Table 5", "conductor.ampacity", (S("2 AWG"), 60.0),
     (S("2 AWG"), 59.9)),
    ("engine-space factor", "conductor.engine_space_factor", (True, 60.0), (True, 59.9)),
    ("metric ampacity, smallest", "conductor.metric_ampacity", (S("0.75 mm2"), 60.0),
     (S("0.5 mm2"), 60.0)),
    ("metric ampacity, largest", "conductor.metric_ampacity", (S("150 mm2"), 60.0),
     (S("185 mm2"), 60.0)),
    ("metric ampacity, other systems", "conductor.metric_ampacity", (S("16 mm2"), 60.0),
     (S("6 AWG"), 60.0)),
    ("metric ampacity, insulation", "conductor.metric_ampacity", (S("16 mm2"), 60.0),
     (S("16 mm2"), 59.0)),
    ("metric engine-space factor", "conductor.metric_engine_space_factor", (True, 70.0),
     (True, 69.0)),
    ("resistance, smallest row", "conductor.greatest_resistance_at_20",
     (S("0.75 mm2"), 1.0, 5, False, True, MISSING), (S("0.5 mm2"), 1.0, 5, False, True, MISSING)),
    ("resistance, largest row", "conductor.greatest_resistance_at_20",
     (S("120 mm2"), 1.0, 5, False, True, MISSING), (S("150 mm2"), 1.0, 5, False, True, MISSING)),
    ("resistance, copper only", "conductor.greatest_resistance_at_20",
     (S("35 mm2"), 1.0, 5, False, True, MISSING), (S("35 mm2"), 1.0, 5, False, False, MISSING)),
    ("hot resistance, copper only", "conductor.greatest_resistance",
     (0.001, MISSING, MISSING, MISSING, 90.0, 5.0, 0.0, True),
     (0.001, MISSING, MISSING, MISSING, 90.0, 5.0, 0.0, False)),
    ("cold resistance, copper only", "conductor.cold_resistance",
     (0.001, 20.0, S("35 mm2"), 1.0, 5.0, 90.0, "copper"),
     (0.001, 20.0, S("35 mm2"), 1.0, 5.0, 90.0, "aluminium")),
    ("withstand, greatest area", "conductor.withstand_energy", (S("300 mm2"), 90.0, True),
     (S("400 mm2"), 90.0, True)),
    ("withstand, insulation", "conductor.withstand_energy", (S("35 mm2"), 159.9, True),
     (S("35 mm2"), 160.0, True)),
    ("withstand, copper only", "conductor.withstand_energy", (S("35 mm2"), 90.0, True),
     (S("35 mm2"), 90.0, False)),
    ("withstand time, 5 s", "conductor.withstand_time", (5e6, 1000.0), (5.1e6, 1000.0)),
    ("share, 5 s", "conductor.let_through_share", (1.0, 2.0, 5.0), (1.0, 2.0, 5.01)),
    ("final temperature, 5 s", "conductor.final_temperature",
     (1e6, S("35 mm2"), 90.0, True, 5.0), (1e6, S("35 mm2"), 90.0, True, 5.01)),
    ("final temperature, copper only", "conductor.final_temperature",
     (1e6, S("35 mm2"), 90.0, True, 1.0), (1e6, S("35 mm2"), 90.0, False, 1.0)),
    ("let-through, declared current", "conductor.let_through", ((1e4,), (5000.0,), 5000.0),
     ((1e4,), (5000.0,), 5000.1)),
    ("holder, declared current", "device.holder_let_through_share",
     (1e4, 1000.0, 1000.0, 2e4), (1e4, 999.0, 1000.0, 2e4)),
    ("grounding conductor, greatest area", "record.grounding_withstand_energy", (S("300 mm2"),),
     (S("400 mm2"),)),
    ("bonding conductor, greatest area", "record.bonding_withstand_energy", (S("300 mm2"),),
     (S("400 mm2"),)),
    ("gG, least rating", "device.conventional_fusing_current", ("gG", 16.0), ("gG", 15.9)),
    ("gG, greatest rating", "device.conventional_fusing_current", ("gG", 1250.0),
     ("gG", 1250.1)),
    ("gG only", "device.conventional_non_fusing_current", ("gG", 100.0), ("aM", 100.0)),
    ("gG only, time", "device.conventional_time", ("gG", 100.0), ("gPV", 100.0)),
    ("UL 248-14, 30 A", "device.opening_points", (30.0, "UL 248-14"), (30.1, "UL 248-14")),
    ("UL 248-14, 35 A", "device.opening_points", (35.0, "UL 248-14"), (34.9, "UL 248-14")),
    ("UL 248-14, 60 A", "device.opening_points", (60.0, "UL 248-14"), (60.1, "UL 248-14")),
    ("UL 248-2, 1200 A", "device.opening_points", (1200.0, "UL 248-2"), (1200.1, "UL 248-2")),
    ("UL 248, carrying to 600 A", "device.opening_points", (600.0, "UL 248-15"),
     (600.1, "UL 248-15")),
    ("opening, lowest gate", "device.opening_time", (40.5, "40.5 A opened within 3600 s"),
     (40.4, "40.5 A opened within 3600 s")),
    ("load dump at 24 V", "source.load_dump_time", ("alternator", 24.0), ("alternator", 36.0)),
    ("load dump of alternators", "source.load_dump_time", ("alternator", 12.0), ("charger", 12.0)),
    ("cranking table, 24 V banks", "bank.breaking_capacity_of_main", (900.0, 28.8), (900.0, 57.6)),
    ("cranking table, branch", "bank.breaking_capacity_of_branch", (900.0, 14.4), (900.0, 57.6)),
    ("IEC 61660-1, lead-acid", "battery.iec61660_emf", ("AGM", 13.2, 6), ("LFP", 13.2, 4)),
    ("chemistries, lithium or not", "battery.is_lithium", ("LFP",), ("sodium",)),
    ("chemistries, full cell", "battery.resting_voltage_full", ("LFP", 4), ("sodium", 4)),
    ("inductance, twenty times as long as thick", "conductor.greatest_inductance",
     (S("50 mm2"), 0.17, "as outgoing", "positive"), (S("50 mm2"), 0.07, "as outgoing",
                                                      "positive")),
    ("inductance, a return of known length", "conductor.greatest_inductance",
     (S("50 mm2"), 1.0, "as outgoing", "positive"), (S("50 mm2"), 1.0, "other", "positive")),
]


def found(name: str, arguments: tuple[Any, ...]) -> Any:
    value = KNOWN[name].function(*arguments)
    return value.value if isinstance(value, Figure) else value


def is_figure(value: Any) -> bool:
    """Whether a value says something on both sides."""
    if isinstance(value, Bounds):
        return math.isfinite(value.lo) and math.isfinite(value.hi) and value.lo < value.hi
    return not isinstance(value, Unknown)


@pytest.mark.parametrize(("what", "name", "at", "beyond"), EDGES, ids=[row[0] for row in EDGES])
def test_edge(what: str, name: str, at: tuple[Any, ...], beyond: tuple[Any, ...]) -> None:
    assert is_figure(found(name, at))
    outside = found(name, beyond)
    causes = outside.causes
    assert OUTSIDE_METHOD in [cause.reason for cause in causes]
    assert any(cause.detail for cause in causes)
    assert isinstance(outside, Unknown) or outside.hi == math.inf or outside.lo == 0.0


@pytest.mark.parametrize(("what", "name", "at", "beyond"), EDGES, ids=[row[0] for row in EDGES])
def test_the_range_is_stated(what: str, name: str, at: tuple[Any, ...],
                             beyond: tuple[Any, ...]) -> None:
    assert KNOWN[name].valid
    assert len(at) == len(KNOWN[name].needs) == len(beyond)
