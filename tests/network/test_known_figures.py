"""Figures known beforehand: worked by hand, from published rules of thumb, from common practice."""

from __future__ import annotations

import pytest

from garboard.network import Circuit, Edge, Graph
from garboard.values import Bounds

from .three_packs import RESISTANCE, circuit, ten_percent

HUNDREDTH_OF_A_PERCENT = 1e-4


@pytest.mark.parametrize(("device", "prospective", "side"), [
    ("f0", 28_672, "to"), ("f1", 16_211, "from"), ("f2", 15_544, "from"), ("f3", 15_451, "from")])
def test_prospective_current_of_three_packs(device: str, prospective: float, side: str) -> None:
    found = circuit().device_current(device, own_resistance=False)
    assert found.value == pytest.approx(prospective, rel=HUNDREDTH_OF_A_PERCENT)
    assert found.side == side


@pytest.mark.parametrize(("device", "through"), [("f0", 24_707), ("f1", 14_462)])
def test_through_current_of_three_packs(device: str, through: float) -> None:
    found = circuit().device_current(device, own_resistance=True)
    assert found.value == pytest.approx(through, rel=HUNDREDTH_OF_A_PERCENT)


def test_fault_at_the_panel_of_three_packs() -> None:
    assert circuit().fault_current("panel") == pytest.approx(13_503, rel=HUNDREDTH_OF_A_PERCENT)


def test_bounds_of_three_packs_with_internal_resistance_within_ten_percent() -> None:
    packs = {pack: ten_percent(RESISTANCE[pack]) for pack in ("pack-1", "pack-2", "pack-3")}
    found = circuit(packs).device_current("f0", own_resistance=False).value
    assert isinstance(found, Bounds)
    assert found.lo == pytest.approx(26_593, rel=HUNDREDTH_OF_A_PERCENT)
    assert found.hi == pytest.approx(31_103, rel=HUNDREDTH_OF_A_PERCENT)
    assert found.nominal == pytest.approx(28_672, rel=HUNDREDTH_OF_A_PERCENT)


def test_a_pack_feeds_a_fault_on_its_own_side_past_no_device() -> None:
    """Fault between pack 1 and f1: f1 carries the others, pack 1 gives 26.8 V / 2.22 mΩ."""
    c = circuit()
    assert c.branch_current("w1", fault="in-1") == pytest.approx(26.8 / 2.22e-3)
    at_f1 = c.branch_current("f1", fault="in-1")
    assert isinstance(at_f1, float)
    assert -at_f1 == pytest.approx(14_462, rel=HUNDREDTH_OF_A_PERCENT)


def _bank(emf: float, internal: float, strings: int, series: int = 1, link: float = 0.0,
          loop: float = 0.0) -> Circuit:
    """Equal strings on a bus, each behind a link, and a loop from the bus to a point."""
    edges: list[Edge] = []
    resistance: dict[str, float] = {}
    for string in range(strings):
        below = "return"
        for position in range(series):
            name, top = f"b{string}-{position}", f"t{string}-{position}"
            edges.append(Edge(name, below, top, "battery"))
            resistance[name] = internal
            below = top
        edges.append(Edge(f"f{string}", below, "bus", "device"))
        resistance[f"f{string}"] = link
    edges.append(Edge("loop", "bus", "point", "conductor"))
    resistance["loop"] = loop
    nodes = [node for edge in edges for node in (edge.start, edge.end)]
    emfs = {name: emf for name in resistance if name.startswith("b")}
    return Circuit(Graph(nodes, edges, "return"), resistance, emfs)


def test_60_six_units_two_in_series_three_in_parallel() -> None:
    """Check value 60: six 6 V units of 2400 A as 2S3P give 7200 A; series members do not add."""
    assert _bank(6.0, 6.0 / 2400, 3, series=2).fault_current("bus") == pytest.approx(7200)


@pytest.mark.parametrize(("strings", "series", "amperes"), [
    (1, 1, 3325), (4, 1, 13_300), (1, 4, 3325), (2, 2, 6650)])
def test_61_series_and_parallel_units(strings: int, series: int, amperes: float) -> None:
    """Check value 61: units of 13.3 V and 4 mΩ."""
    found = _bank(13.3, 4e-3, strings, series).fault_current("bus")
    assert found == pytest.approx(amperes, rel=1e-9)


def test_62_four_units_behind_links_and_a_loop() -> None:
    """Check value 62: four in parallel, 0.5 mΩ link each, 3 mΩ common loop: 3224 A."""
    found = _bank(13.3, 4e-3, 4, link=0.5e-3, loop=3e-3).fault_current("point")
    assert found == pytest.approx(3224, abs=1)


def test_63_one_unit_and_a_loop_of_cable() -> None:
    """Check value 63: 4 mΩ and a loop of 3 m of 50 mm² class 5 (1.158 mΩ): 2579 A."""
    found = _bank(13.3, 4e-3, 1, loop=3 * 0.386e-3).fault_current("point")
    assert found == pytest.approx(2579, abs=2)


def test_65_parallel_sharing() -> None:
    """Check value 65: strings of 4.0, 4.5, 5.0 and 5.5 mΩ share 29.3, 26.0, 23.4 and 21.3 %."""
    edges = [Edge(f"b{n}", "return", "bus", "battery") for n in range(4)]
    resistance = dict(zip((edge.id for edge in edges), (4e-3, 4.5e-3, 5e-3, 5.5e-3), strict=True))
    c = Circuit(Graph(["bus"], edges, "return"), resistance, dict.fromkeys(resistance, 13.3))
    found = c.currents_at(100.0, "bus", tuple(resistance))
    assert [round(current, 1) for current in found.values()] == [29.3, 26.0, 23.4, 21.3]


def test_four_batteries_of_ten_kiloamperes_give_forty_at_the_bus() -> None:
    """Common practice: 40 kA at the bus, and 30 kA through one's own fuse from the other three."""
    c = _bank(13.0, 1.3e-3, 4)
    assert c.fault_current("bus") == pytest.approx(40_000)
    own = c.device_current("f0", own_resistance=False)
    assert (own.value, own.side) == (pytest.approx(30_000), "from")
    assert own.at_to == pytest.approx(10_000)


def test_lithium_in_place_of_lead_at_the_same_terminals() -> None:
    """Common practice: a large lead-acid bank gives 3 to 5 kA, one lithium battery 10 to 20 kA."""
    assert _bank(12.8, 3.2e-3, 1).fault_current("bus") == pytest.approx(4000)
    assert _bank(13.4, 1.0e-3, 1).fault_current("bus") == pytest.approx(13_400)


def test_bridge_worked_by_hand() -> None:
    """A Wheatstone bridge off balance: 10 V; arms 1, 2, 3 and 4 Ω; bridge 5 Ω; source 0 Ω.

    With p and q the potentials of the bridge's ends, (10-p)/1 = p/3 + (p-q)/5 and
    (10-q)/2 + (p-q)/5 = q/4, that is 23p - 3q = 150 and 19q - 4p = 100, give p = 126/17 V and
    q = 116/17 V. With p shorted, q = 100/19 V.
    """
    edges = [Edge("source", "return", "top", "battery"), Edge("a", "top", "p", "conductor"),
             Edge("b", "top", "q", "conductor"), Edge("c", "p", "return", "conductor"),
             Edge("d", "q", "return", "conductor"), Edge("bridge", "p", "q", "device")]
    resistance = {"source": 0.0, "a": 1.0, "b": 2.0, "c": 3.0, "d": 4.0, "bridge": 5.0}
    c = Circuit(Graph(["top", "p", "q"], edges, "return"), resistance, {"source": 10.0})
    assert c.branch_current("bridge") == pytest.approx(2 / 17)
    assert c.branch_current("source") == pytest.approx(42 / 17 + 29 / 17)
    assert c.fault_current("p") == pytest.approx(10 + 20 / 19)
