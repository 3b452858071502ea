"""From a traced record to currents: nodes, polarity, returns, negative runs, series links."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from garboard.network import Circuit, Network, build_network
from garboard.values import Number, Unknown

from .boats import boat, record
from .three_packs import RESISTANCE
from .three_packs import circuit as three_packs

THREE_PACKS = """
    pack-1 > w1 f1 w4 > bus-main
    pack-2 > w2 f2 w5 > bus-main
    pack-3 > w3 f3 w6 > bus-main
    bus-main > f0 w7 > bus-panel"""
VALUES = {**RESISTANCE, "w4": RESISTANCE["x1"], "w5": RESISTANCE["x2"], "w6": RESISTANCE["x3"],
          "w7": RESISTANCE["feed"]}
NEGATIVES = """
    pack-1.negative > w11 > bus-negative
    pack-2.negative > w12 > bus-negative
    pack-3.negative > w13 > bus-negative"""
LEADS = {"w11": 0.1e-3, "w12": 0.2e-3, "w13": 0.3e-3}


def circuit(network: Network, values: Mapping[str, Number], emf: float = 26.8) -> Circuit:
    batteries = [edge.id for edge in network.graph.of_kind("battery")]
    return Circuit(network, values, dict.fromkeys(batteries, emf))


def test_three_packs_as_traced_give_the_known_figures() -> None:
    found = circuit(boat(THREE_PACKS), VALUES)
    for device in ("f0", "f1", "f2", "f3"):
        assert found.device_current(device, own_resistance=False) == \
            three_packs().device_current(device, own_resistance=False)
    assert found.fault_current("bus-panel") == three_packs().fault_current("panel")


def test_nodes_of_a_run() -> None:
    network = boat("pack-1 > w1 f1 w2 > bus-main")
    assert network.graph.nodes == (
        "pack-1.positive", "bus-main", "run-1/1", "run-1/2", "(return)")
    edges = {edge.id: (edge.start, edge.end, edge.kind) for edge in network.graph.edges.values()}
    assert edges == {
        "w1": ("pack-1.positive", "run-1/1", "conductor"),
        "f1": ("run-1/1", "run-1/2", "device"),
        "w2": ("run-1/2", "bus-main", "conductor"),
        "pack-1": ("(return)", "pack-1.positive", "battery")}


def test_negative_leads_lie_in_series_with_their_packs() -> None:
    """A fault from the positive to the negative bus: as if each lead were part of its pack."""
    network = boat(THREE_PACKS + NEGATIVES)
    assert network.graph.reference == "bus-negative"
    found = circuit(network, VALUES | LEADS)
    lumped = circuit(boat(THREE_PACKS), VALUES | {
        f"pack-{n}": VALUES[f"pack-{n}"] + LEADS[f"w1{n}"] for n in (1, 2, 3)})
    for device in ("f0", "f1", "f2", "f3"):
        assert found.device_current(device, own_resistance=True).value == pytest.approx(
            lumped.device_current(device, own_resistance=True).value)
    assert found.fault_current("bus-main") == pytest.approx(lumped.fault_current("bus-main"))


def test_a_fault_on_the_negative_side_returns_to_the_positive_side() -> None:
    network = boat(THREE_PACKS + NEGATIVES)
    found = circuit(network, VALUES | LEADS)
    assert network.graph.return_of("bus-negative") == "bus-main"
    assert found.fault_current("bus-negative") == found.fault_current("bus-main")


def test_a_device_in_a_negative_lead() -> None:
    """It carries its own pack's current, or that of the others, by the side of the fault."""
    runs = THREE_PACKS + NEGATIVES.replace("w11 >", "w11 f11 >")
    found = circuit(boat(runs), VALUES | LEADS | {"f11": 0.2e-3})
    through = found.device_current("f11", own_resistance=True)
    own = 26.8 / (2.1e-3 + 0.12e-3 + 0.2e-3 + 0.2e-3 + 0.1e-3 + 0.2e-3)
    others = sum(26.8 / (r + 0.32e-3 + lead + back) for r, lead, back in (
        (2.1e-3, 0.3e-3, 0.2e-3), (2.4e-3, 0.4e-3, 0.3e-3)))
    assert through.at_to == pytest.approx(own)
    assert through.side == "from"
    prospective = found.device_current("f11", own_resistance=False)
    assert prospective.at_from == pytest.approx(others)


def test_a_fault_at_a_load_is_across_its_own_terminals() -> None:
    runs = THREE_PACKS + NEGATIVES + """
        bus-panel > w20 > load-a
        load-a.negative > w21 > bus-negative"""
    network = boat(runs)
    found = circuit(network, VALUES | LEADS | {"w20": 5e-3, "w21": 7e-3})
    assert network.graph.return_of("load-a.positive") == "load-a.negative"
    folded = circuit(boat(THREE_PACKS + NEGATIVES + "\nbus-panel > w20 > load-a"),
                     VALUES | LEADS | {"w20": 12e-3})
    assert found.fault_current("load-a.positive") == pytest.approx(
        folded.fault_current("load-a.positive"))


def test_an_untraced_negative_lies_on_the_common_return() -> None:
    """With the negative of one pack not traced the others' leads still count."""
    network = boat(THREE_PACKS + "\n".join(NEGATIVES.splitlines()[:3]))
    assert network.graph.reference == "bus-negative"
    assert network.graph.edges["pack-3"].start == "bus-negative"


def test_without_a_negative_bus_the_first_traced_negative_is_the_return() -> None:
    network = boat("pack-1 > w1 > bus-main\npack-2 > w2 > bus-main\n"
                   "pack-2.negative > w3 > pack-1.negative")
    assert network.graph.reference == "pack-1.negative"


def test_where_only_loads_have_negative_runs_their_bus_is_the_return() -> None:
    network = boat("pack-1 > w1 f1 > bus-main\nbus-main > w2 > load-a\n"
                   "load-a.negative > w3 > bus-negative")
    assert network.graph.reference == "bus-negative"
    found = circuit(network, {"pack-1": 2e-3, "w1": 1e-3, "f1": 0.0, "w2": 3e-3, "w3": 4e-3}, 10.0)
    assert found.fault_current("load-a.positive") == pytest.approx(1000.0)
    assert found.fault_current("bus-main") == pytest.approx(10.0 / 3e-3)


def test_two_in_series_with_a_fault_at_the_link() -> None:
    """At the link only the lower battery drives; at the top both do."""
    network = boat("pack-1.positive > w1 > pack-2.negative\npack-2.positive > f2 > bus-main")
    assert network.carries("run-1") == "link"
    found = circuit(network, {"pack-1": 2e-3, "pack-2": 3e-3, "w1": 1e-3, "f2": 1e-3}, 12.8)
    assert found.fault_current("pack-1.positive") == pytest.approx(12.8 / 2e-3)
    assert found.fault_current("pack-2.negative") == pytest.approx(12.8 / 3e-3)
    assert found.fault_current("bus-main") == pytest.approx(25.6 / 7e-3)


def test_middle_of_one_string_beside_another() -> None:
    """A fault in the middle of a string is fed from above by the other string, against the upper
    battery, as well as from below."""
    network = boat("""pack-1.positive > w1 > pack-2.negative
                      pack-3.positive > w3 > pack-4.negative
                      pack-2.positive > w2 > bus-main
                      pack-4.positive > w4 > bus-main""")
    values = {**dict.fromkeys(("pack-1", "pack-2", "pack-3", "pack-4"), 2e-3),
              **dict.fromkeys(("w1", "w2", "w3", "w4"), 1e-3)}
    found = circuit(network, values, 12.8)
    below = 12.8 / 3e-3
    above = (25.6 - 12.8) / (2e-3 + 1e-3 + 2e-3 + 1e-3 + 1e-3 + 2e-3)
    assert found.fault_current("pack-2.negative") == pytest.approx(below + above)


@pytest.mark.parametrize(("runs", "run", "polarity"), [
    (THREE_PACKS, "run-1", "positive"), (THREE_PACKS, "run-4", "positive"),
    (THREE_PACKS + NEGATIVES, "run-5", "negative"),
    ("pack-1.positive > w1 > pack-2.negative\npack-2 > f1 > load-a", "run-1", "link"),
    ("bus-a > w1 > load-a", "run-1", "positive"),
    ("bus-a > w1 > load-a.negative", "run-1", "negative"),
    ("bus-a > w1 > bus-b", "run-1", "none"),
])
def test_what_a_run_carries(runs: str, run: str, polarity: str) -> None:
    assert boat(runs).carries(run) == polarity


def test_a_run_through_nothing_joins_without_resistance() -> None:
    network = boat("pack-1 > > bus-main\nbus-main > w1 > load-a")
    found = circuit(network, {"pack-1": 2e-3, "w1": 3e-3}, 12.8)
    assert found.fault_current("bus-main") == 6400.0
    assert found.fault_current("load-a.positive") == pytest.approx(2560.0)


def test_a_declared_contribution_adds_to_the_fault() -> None:
    network = boat("pack-1 > f1 > bus-main\nsource-a > w1 > bus-main")
    values = {"pack-1": 2e-3, "f1": 0.0, "w1": 1e-3}
    plain = Circuit(network, values, {"pack-1": 12.8})
    adding = Circuit(network, values, {"pack-1": 12.8}, {"source-a": 150.0})
    assert plain.fault_current("bus-main") == 6400.0
    assert adding.fault_current("bus-main") == 6550.0
    assert adding.device_current("f1", own_resistance=False).at_from == 150.0


def test_a_contribution_returns_by_the_sources_own_negative_run() -> None:
    """Its negative terminal is a point of its own, in the middle of a run or not."""
    network = boat("""pack-1 > f1 > bus-main
                      source-a > w1 > bus-main
                      pack-1.negative > w2 > bus-negative
                      source-a.negative > w3 > bus-negative""")
    values = {"pack-1": 2e-3, "f1": 0.0, "w1": 1e-3, "w2": 0.0, "w3": 1e-3}
    adding = Circuit(network, values, {"pack-1": 12.8}, {"source-a": 150.0})
    assert adding.fault_current("bus-main") == pytest.approx(6550.0)
    assert adding.branch_current("w3", fault="bus-main") == pytest.approx(-150.0)


def test_shares_of_a_bank() -> None:
    found = circuit(boat(THREE_PACKS), VALUES)
    shares = found.shares("bank-bus-main")
    conductance = {f"string-pack-{n}": 1 / (VALUES[f"pack-{n}"] + 0.32e-3 + VALUES[f"w{n + 3}"])
                   for n in (1, 2, 3)}
    total = sum(conductance.values())
    assert shares == pytest.approx({key: each / total for key, each in conductance.items()})
    assert found.shares("bank-bus-main", -90.0) == pytest.approx(shares)


def test_what_strings_of_unequal_voltage_drive_through_each_other() -> None:
    network = boat("pack-1 > f1 > bus-main\npack-2 > f2 > bus-main")
    found = Circuit(network, {"pack-1": 2e-3, "pack-2": 3e-3, "f1": 0.0, "f2": 1e-3},
                    {"pack-1": 13.4, "pack-2": 12.8})
    currents = found.string_currents("bank-bus-main", 0.0)
    assert currents == pytest.approx({"string-pack-1": 100.0, "string-pack-2": -100.0})


def test_shares_leave_other_banks_out() -> None:
    network = boat("""pack-1 > f1 > bus-house
                      bus-house > f3 > load-a
                      start-1 > w1 > bus-start
                      bus-start > w2 > load-b
                      bus-start > s1 > bus-house""")
    values = dict.fromkeys(("pack-1", "start-1", "f1", "f3", "w1", "w2", "s1"), 1e-3)
    found = circuit(network, values, 12.8)
    assert found.shares("bank-bus-house") == {"string-pack-1": 1.0}
    both = found.fault_current("bus-house")
    apart = found.without("s1").fault_current("bus-house")
    assert isinstance(both, float) and isinstance(apart, float) and both > apart


def test_a_point_that_no_battery_feeds_is_unknown() -> None:
    network = boat("pack-1 > f1 > bus-main\nbus-b > f2 w2 > load-b")
    values = {"pack-1": 2e-3, "f1": 0.0, "f2": 0.0, "w2": 1e-3}
    found = circuit(network, values)
    assert isinstance(found.fault_current("bus-b"), Unknown)
    assert isinstance(found.device_current("f2", own_resistance=False).value, Unknown)


def test_a_fault_from_a_point_to_itself_is_none() -> None:
    network = boat("pack-1 > f1 > bus-main")
    found = circuit(network, {"pack-1": 2e-3, "f1": 0.0})
    assert isinstance(found.fault_current("bus-main", back_to="bus-main"), Unknown)
    assert found.fault_current("(return)") == found.fault_current("bus-main")


def test_the_same_record_gives_the_same_network() -> None:
    one, other = (build_network(record(THREE_PACKS + NEGATIVES)) for _ in range(2))
    assert one.graph.nodes == other.graph.nodes
    assert list(one.graph.edges.values()) == list(other.graph.edges.values())
    assert one.strings == other.strings
