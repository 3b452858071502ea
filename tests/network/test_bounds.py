"""Bounds are true: no choice of values inside the input bounds gives a result outside them."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Mapping

import pytest

from garboard.network import Circuit, Edge, Graph, currents, narrowing, variables
from garboard.values import (
    ASSUMPTION,
    CALCULATION_ERROR,
    NOT_RECORDED,
    TOLERANCE,
    UNRECORDED,
    Bounds,
    Cause,
    Number,
    Unknown,
)

from .generate import Made, network
from .three_packs import EMF, RESISTANCE, circuit, graph, ten_percent

DRAWS = 2000
#: Part of a result by which two ways of working it out may differ.
ROUNDING = 1e-9
FROM_ZERO = Bounds(0.0, math.inf, basis=(UNRECORDED,),
                   causes=(Cause(NOT_RECORDED, "f1.resistance"),))


class Asked:
    """A network with bounds, its figures, and the ends that draws have reached."""

    def __init__(self, made: Made, seed: int, unrecorded: float = 0.08) -> None:
        self.made, self.draw = made, random.Random(seed)
        self.resistance: dict[str, Number] = {
            edge: self._widened(edge, value, unrecorded)
            for edge, value in made.resistance.items()}
        self.emf: dict[str, Number] = {
            edge: value if self.draw.random() < 0.5 else Bounds(value - 0.5, value + 0.5, value)
            for edge, value in made.emf.items()}
        self.point = self.draw.choice(made.points)
        self.bounds = self.figures(self.resistance, self.emf)

    def _widened(self, edge: str, value: float, unrecorded: float) -> Number:
        kind = self.draw.random()
        if not edge.startswith("b") and kind < unrecorded:
            return FROM_ZERO
        if kind < 0.5:
            part = self.draw.choice((0.05, 0.3, 0.9))
            return Bounds(value * (1 - part), value * (1 + part), value)
        return value

    def figures(self, resistance: Mapping[str, Number],
                emf: Mapping[str, Number]) -> dict[str, Number]:
        """Every kind of figure there is."""
        circuit = Circuit(self.made.graph, resistance, emf)
        found: dict[str, Number] = {}
        for point in self.made.points[::3]:
            found[f"fault {point}"] = circuit.fault_current(point)
        for device in self.made.devices[:3]:
            for own in (False, True):
                sided = circuit.device_current(device, own_resistance=own)
                found |= {f"{device} {own}": sided.value, f"{device} {own} from": sided.at_from,
                          f"{device} {own} to": sided.at_to}
        for edge in list(made_edges(self.made))[::4]:
            found[f"branch {edge}"] = circuit.branch_current(edge, fault=self.point)
        drawn = circuit.currents_at(100.0, "bus0", list(emf)[:2])
        return found | {f"share {battery}": current for battery, current in drawn.items()}

    def inside(self, value: Number) -> float:
        """A value inside its bounds: an end, or somewhere between."""
        if not isinstance(value, Bounds):
            assert isinstance(value, float)
            return value
        if value.hi == math.inf:
            return self.draw.choice((0.0, 10 ** self.draw.uniform(-6, 0), math.inf))
        return self.draw.choice((value.lo, value.hi, self.draw.uniform(value.lo, value.hi)))

    def drawn(self) -> dict[str, Number]:
        """The figures for values inside the bounds."""
        return self.figures({edge: self.inside(value) for edge, value in self.resistance.items()},
                            {edge: self.inside(value) for edge, value in self.emf.items()})


def made_edges(made: Made) -> tuple[str, ...]:
    return tuple(made.graph.edges)


def contains(bounds: Number, value: float) -> bool:
    if isinstance(bounds, Unknown):
        return True
    slack = ROUNDING * max(1.0, abs(value))
    low, high = (bounds.lo, bounds.hi) if isinstance(bounds, Bounds) else (bounds, bounds)
    return low - slack <= value <= high + slack


def never_left(asked: Asked, draws: int) -> int:
    """Check draws; the number of figures compared."""
    compared = 0
    for _ in range(draws):
        for name, value in asked.drawn().items():
            if isinstance(value, float):
                assert contains(asked.bounds[name], value), (name, asked.bounds[name], value)
                compared += 1
    return compared


@pytest.mark.parametrize("seed", range(40))
def test_draws_never_leave_the_bounds(seed: int) -> None:
    """2,000 draws over 40 networks: series and parallel, meshed, unequal EMFs, unrecorded parts."""
    asked = Asked(network(seed), seed)
    assert never_left(asked, DRAWS // 40) > 100


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("limit", [0, 3])
def test_draws_never_leave_the_bounds_of_the_narrowing(
        seed: int, limit: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """With hardly any corners enumerated, signs and intervals alone must hold."""
    for module in (variables, currents, narrowing):
        monkeypatch.setattr(module, "ENUMERATED", limit)
    asked = Asked(network(seed, meshed=True, spread=3.0, sources=4), seed)
    assert never_left(asked, 20) > 100


@pytest.mark.parametrize("seed", range(8))
def test_narrowed_bounds_contain_the_exact_ones_and_are_not_much_wider(
        seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    made = network(seed, sources=3, loads=1)
    exact = Asked(made, seed, unrecorded=0.0).bounds
    for module in (variables, currents, narrowing):
        monkeypatch.setattr(module, "ENUMERATED", 0)
    narrowed = Asked(made, seed, unrecorded=0.0).bounds
    wider = []
    for name, bounds in exact.items():
        other = narrowed[name]
        if isinstance(bounds, Bounds):
            assert isinstance(other, Bounds)
            assert contains(other, bounds.lo) and contains(other, bounds.hi), name
            wider.append((other.hi - other.lo) / (bounds.hi - bounds.lo))
    wider.sort()
    assert not wider or wider[len(wider) // 2] < 1.05


@pytest.mark.parametrize("seed", range(20))
def test_bounds_are_reached_at_corners(seed: int) -> None:
    """With few uncertain values the ends are those of the best and worst corner, no wider."""
    made = network(seed, sources=3, loads=1)
    draw = random.Random(seed)
    chosen = draw.sample(sorted(made.resistance), 4)
    resistance: dict[str, Number] = dict(made.resistance)
    for edge in chosen:
        resistance[edge] = Bounds(0.5 * made.resistance[edge], 2.0 * made.resistance[edge])
    point = made.points[-1]
    found = Circuit(made.graph, resistance, made.emf).fault_current(point)
    values = []
    for factors in itertools.product((0.5, 2.0), repeat=len(chosen)):
        corner = dict(made.resistance)
        for edge, factor in zip(chosen, factors, strict=True):
            corner[edge] *= factor
        value = Circuit(made.graph, corner, made.emf).fault_current(point)
        assert isinstance(value, float)
        values.append(value)
    low, high = (found.lo, found.hi) if isinstance(found, Bounds) else (found, found)
    assert (low, high) == pytest.approx((min(values), max(values)), rel=1e-9)


# counterexamples: where solving twice, all low and all high, would be wrong

def test_a_larger_resistance_can_raise_a_branch_current() -> None:
    """Unequal EMFs: the full battery gives the less, the more the flat one beside it resists."""
    edges = [Edge("full", "return", "bus", "battery"), Edge("flat", "return", "bus", "battery"),
             Edge("feed", "bus", "far", "conductor")]
    plain = Graph(["bus", "far"], edges, "return")

    def in_feed(flat: float) -> float:
        value = Circuit(plain, {"full": 5e-3, "flat": flat, "feed": 5e-3},
                        {"full": 13.4, "flat": 4.0}).branch_current("feed", fault="far")
        assert isinstance(value, float)
        return value

    assert in_feed(4e-3) > in_feed(2e-3)
    bounded = Circuit(plain, {"full": 5e-3, "flat": Bounds(2e-3, 4e-3), "feed": 5e-3},
                      {"full": 13.4, "flat": 4.0}).branch_current("feed", fault="far")
    assert isinstance(bounded, Bounds)
    assert (bounded.lo, bounded.hi) == pytest.approx((in_feed(2e-3), in_feed(4e-3)))


def test_a_flat_battery_beside_a_full_one_absorbs() -> None:
    """The total at the far end falls as the flat battery's resistance falls."""
    edges = [Edge("full", "return", "bus", "battery"), Edge("flat", "return", "bus", "battery"),
             Edge("feed", "bus", "far", "conductor")]
    values = {"full": 1e-3, "feed": 9e-3}
    emf = {"full": 13.4, "flat": 9.0}
    plain = Graph(["bus", "far"], edges, "return")
    low = Circuit(plain, {**values, "flat": 1e-3}, emf).fault_current("far")
    high = Circuit(plain, {**values, "flat": 9e-3}, emf).fault_current("far")
    assert isinstance(low, float) and isinstance(high, float) and low < high
    found = Circuit(plain, {**values, "flat": Bounds(1e-3, 9e-3)}, emf).fault_current("far")
    assert isinstance(found, Bounds)
    assert (found.lo, found.hi) == pytest.approx((low, high))
    absorbed = Circuit(plain, {**values, "flat": 1e-3}, emf).branch_current("flat", fault="far")
    assert isinstance(absorbed, float) and absorbed < 0


def _linked(link: Number) -> Circuit:
    """Two strings of unequal voltage, joined by a link at the posts and by leads to a bus."""
    edges = [Edge("one", "return", "p", "battery"), Edge("two", "return", "q", "battery"),
             Edge("link", "p", "q", "conductor"), Edge("lead-1", "p", "bus", "conductor"),
             Edge("lead-2", "q", "bus", "conductor")]
    return Circuit(Graph(["p", "q", "bus"], edges, "return"),
                   {"one": 2e-3, "two": 6e-3, "lead-1": 3e-3, "lead-2": 1e-3, "link": link},
                   {"one": 13.4, "two": 12.2})


def test_the_link_between_strings_changes_direction_with_the_fault() -> None:
    """The current in a link is no larger at its least resistance than at its greatest, by sign."""
    at_bus = _linked(1e-3).branch_current("link", fault="bus")
    at_p = _linked(1e-3).branch_current("link", fault="p")
    assert isinstance(at_bus, float) and isinstance(at_p, float)
    assert at_bus > 0 > at_p


def test_bounds_through_a_link_between_strings() -> None:
    wide = Bounds(1e-4, 1e-1)
    for fault in ("bus", "p", "q"):
        for branch in ("link", "lead-1", "one", "two"):
            bounds = _linked(wide).branch_current(branch, fault=fault)
            for step in range(41):
                value = _linked(1e-4 * 1000 ** (step / 40)).branch_current(branch, fault=fault)
                assert isinstance(value, float)
                assert contains(bounds, value)


def test_two_corners_are_not_enough_for_shares() -> None:
    """A string's least share has its own resistance high and the others low."""
    packs: dict[str, Number] = {f"pack-{n}": ten_percent(RESISTANCE[f"pack-{n}"])
                                for n in (1, 2, 3)}
    bounded = circuit(packs).currents_at(100.0, "bus", ("pack-1",))["pack-1"]
    assert isinstance(bounded, Bounds)
    same_way = [circuit({pack: RESISTANCE[pack] * factor for pack in packs}).currents_at(
        100.0, "bus", ("pack-1",))["pack-1"] for factor in (0.9, 1.1)]
    assert all(isinstance(each, float) and bounded.lo < each < bounded.hi for each in same_way)
    worst = circuit({"pack-1": 2.1e-3 * 1.1, "pack-2": 2.1e-3 * 0.9,
                     "pack-3": 2.4e-3 * 0.9}).currents_at(100.0, "bus", ("pack-1",))["pack-1"]
    assert bounded.lo == pytest.approx(worst)


@pytest.mark.parametrize("seed", range(10))
def test_draws_of_injected_and_drawn_currents(seed: int) -> None:
    """Contributions of chargers and the current drawn are known within bounds too."""
    asked = Asked(network(seed, sources=3), seed, unrecorded=0.0)
    made = asked.made
    charger = Edge("charger", "return", "bus0", "injector")
    with_charger = Graph(made.graph.nodes, (*made.graph.edges.values(), charger), "return")
    injected, total = Bounds(0.0, 300.0), Bounds(-50.0, 150.0)

    def figures(resistance: Mapping[str, Number], emf: Mapping[str, Number], adds: Number,
                drawn: Number) -> dict[str, Number]:
        c = Circuit(with_charger, resistance, emf, {"charger": adds})
        found: dict[str, Number] = {point: c.fault_current(point) for point in made.points[::4]}
        for device in made.devices[:2]:
            found[device] = c.device_current(device, own_resistance=True).value
        return found | c.currents_at(drawn, "bus0", list(emf)[:2])

    bounds = figures(asked.resistance, asked.emf, injected, total)
    for _ in range(40):
        drawn = figures(
            {edge: asked.inside(value) for edge, value in asked.resistance.items()},
            {edge: asked.inside(value) for edge, value in asked.emf.items()},
            asked.inside(injected), asked.inside(total))
        for name, value in drawn.items():
            assert isinstance(value, float)
            assert contains(bounds[name], value), name


# what comes with the bounds

def test_an_unrecorded_resistance_is_at_least_zero() -> None:
    """It bounds the largest fault current and leaves the smallest open down to nothing."""
    unknown = Unknown.because(NOT_RECORDED, "f0.resistance")
    found = circuit({"f0": unknown}).fault_current("panel")
    assert isinstance(found, Bounds)
    assert found.lo == 0.0
    assert found.hi == circuit({"f0": 0.0}).fault_current("panel")
    assert found.nominal is None
    assert (found.basis, found.causes) == ((UNRECORDED,), unknown.causes)


def test_an_unrecorded_resistance_off_the_path_does_not_matter() -> None:
    unknown = Unknown.because(NOT_RECORDED, "feed.resistance")
    assert circuit({"feed": unknown}).fault_current("bus") == circuit().fault_current("bus")


@pytest.mark.parametrize("field", ["resistance", "emf"])
def test_an_unknown_battery_makes_unknown_what_it_feeds(field: str) -> None:
    unknown = Unknown.because(NOT_RECORDED, "pack-1.internal_resistance")
    c = circuit(**{field: {"pack-1": unknown}})
    found = c.fault_current("panel")
    assert isinstance(found, Unknown) and found.causes == unknown.causes
    own = c.device_current("f1", own_resistance=False)
    assert own.at_from == circuit().device_current("f1", own_resistance=False).at_from
    assert isinstance(own.at_to, Unknown) and own.side is None
    assert isinstance(own.value, Bounds) and own.value.lo == own.at_from


def test_causes_name_only_what_matters() -> None:
    packs: dict[str, Number] = {
        f"pack-{n}": Bounds(1.9e-3, 2.5e-3, causes=(Cause(NOT_RECORDED, f"pack-{n}.r"),))
        for n in (1, 2, 3)}
    own = circuit(packs).device_current("f1", own_resistance=False)
    assert isinstance(own.at_from, Bounds) and isinstance(own.at_to, Bounds)
    assert [cause.path for cause in own.at_from.causes] == ["pack-2.r", "pack-3.r"]
    assert [cause.path for cause in own.at_to.causes] == ["pack-1.r"]


def test_a_calculation_error_is_never_absorbed() -> None:
    error = Unknown.because(CALCULATION_ERROR, detail="w1: failed")
    found = circuit({"w1": error}).fault_current("panel")
    assert isinstance(found, Unknown) and found.is_error


def test_nominal_only_when_every_value_has_one() -> None:
    with_nominal = circuit({"pack-1": ten_percent(2.1e-3)}).fault_current("panel")
    assert isinstance(with_nominal, Bounds)
    assert with_nominal.nominal == circuit().fault_current("panel")
    without = circuit({"pack-1": ten_percent(2.1e-3), "pack-2": Bounds(2e-3, 3e-3)})
    found = without.fault_current("panel")
    assert isinstance(found, Bounds) and found.nominal is None


def test_basis_is_carried() -> None:
    assumed = Bounds(1e-4, 2e-4, basis=(ASSUMPTION,), causes=(Cause(NOT_RECORDED, "w1.r"),))
    found = circuit({"w1": assumed, "pack-2": ten_percent(2.1e-3)}).fault_current("panel")
    assert isinstance(found, Bounds)
    assert found.basis == (ASSUMPTION, TOLERANCE)
    certain = Bounds(1.2e-4, 1.2e-4, basis=(ASSUMPTION,))
    kept = circuit({"w1": certain}).fault_current("panel")
    assert isinstance(kept, Bounds) and kept.lo == kept.hi and kept.assumed


def test_bounds_through_zero_are_cut_at_zero() -> None:
    found = circuit({"w1": Bounds(-1e-4, 1e-4)}).fault_current("panel")
    cut = circuit({"w1": Bounds(0.0, 1e-4)}).fault_current("panel")
    assert isinstance(found, Bounds) and isinstance(cut, Bounds)
    assert (found.lo, found.hi) == (cut.lo, cut.hi)


@pytest.mark.parametrize("bad", [-1e-3, math.nan])
def test_a_negative_resistance_or_no_number_is_an_error(bad: float) -> None:
    with pytest.raises(ValueError, match="w1"):
        circuit({"w1": bad})


def test_a_missing_value_is_an_error_not_a_default() -> None:
    with pytest.raises(KeyError):
        Circuit(graph(), {}, {})
    with pytest.raises(KeyError):
        Circuit(graph(), RESISTANCE, {"pack-1": EMF})


def test_a_source_of_no_resistance_has_no_limit() -> None:
    battery = Graph(["bus"], [Edge("b", "return", "bus", "battery")], "return")
    found = Circuit(battery, {"b": 0.0}, {"b": 13.0}).fault_current("bus")
    assert isinstance(found, Unknown) and found.reason == "outside method"
    bounded = Circuit(battery, {"b": Bounds(0.0, 1e-3)}, {"b": 13.0}).fault_current("bus")
    assert isinstance(bounded, Bounds)
    assert (bounded.lo, bounded.hi) == (pytest.approx(13_000), math.inf)


@pytest.mark.parametrize("seed", range(15))
def test_equal_voltages_have_exact_bounds_by_two_solutions(seed: int) -> None:
    """Between the return and any point all low and all high give the bounds, and no draw leaves
    them; between any two points, where hardly anything may flow, they hold as well."""
    made = network(seed, spread=0.0)
    draw = random.Random(seed)
    resistance = {edge: Bounds(0.7 * r, 1.4 * r) for edge, r in made.resistance.items()}
    bounded = Circuit(made.graph, resistance, made.emf)
    draws = [Circuit(made.graph, {edge: draw.choice((each.lo, each.hi, draw.uniform(
        each.lo, each.hi))) for edge, each in resistance.items()}, made.emf) for _ in range(15)]
    low, high = (Circuit(made.graph, {edge: factor * r for edge, r in made.resistance.items()},
                         made.emf) for factor in (1.4, 0.7))
    for point in made.points[::3]:
        to_return = bounded.fault_current(point)
        assert isinstance(to_return, Bounds)
        assert (to_return.lo, to_return.hi) == pytest.approx(
            (low.fault_current(point), high.fault_current(point)), rel=1e-9)
        across = bounded.fault_current(point, back_to=made.points[1])
        for each in draws:
            value = each.fault_current(point)
            assert isinstance(value, float) and contains(to_return, value)
            between = each.fault_current(point, back_to=made.points[1])
            assert isinstance(between, Unknown) or contains(across, between)


def test_figures_are_rounded_to_twelve_digits() -> None:
    found = circuit().fault_current("panel")
    assert isinstance(found, float) and found == float(f"{found:.11e}")
