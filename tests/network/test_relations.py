"""Relations both ways: what they lead to, and what makes them unknown."""

from __future__ import annotations

import pytest

from garboard.network import Network
from garboard.record import SUBJECTS
from garboard.values import NOT_RECORDED, Unknown

from .boats import boat, record

RUNS = """
    pack-1.positive > w1 > pack-2.negative
    pack-2.positive > w2 f2 s2 > bus-main
    pack-3.positive > w3 > pack-4.negative
    pack-4.positive > w4 f4 > bus-main
    bus-main > f0 w0 > bus-panel
    bus-panel > b1 w5 > load-a
    source-a > w6 f6 > bus-main"""
FACTS = {
    "pack-1": {"place": "locker", "managed_by": "bms-1"},
    "pack-2": {"place": "locker", "managed_by": "bms-1"},
    "pack-3": {"place": "hold", "managed_by": "none"},
    "pack-4": {"place": "hold", "managed_by": "none"},
    "w1": {"crosses": ["locker", "hold"]},
    "f2": {"place": "locker"}, "f4": {"place": "hold"}, "f0": {"place": "hold"},
    "b1": {"place": "hold"}, "f6": {"place": "hold"}, "s2": {"worked_by": "bms-1"},
    "run-5": {"return": {"run": "run-6"}}, "run-6": {"return": "neglected"},
}
LISTS = {
    "places": [{"id": "locker"}, {"id": "hold"}],
    "management_systems": [
        {"id": "bms-1", "outputs": [{"name": "charge", "stops": ["source-a"],
                                     "acts_on": "charging must stop"}]},
        {"id": "bms-2", "outputs": [{"name": "load", "stops": ["load-a", "source-a"],
                                     "acts_on": "discharging must stop"}]}],
}
EXPECTED = {
    "pack-1": {"place": "locker", "managed_by": "bms-1", "string": "string-pack-1",
               "bank": "bank-bus-main", "own_device": "f2", "first_device": None},
    "pack-3": {"managed_by": None, "string": "string-pack-3"},
    "string-pack-1": {"batteries": ("pack-1", "pack-2"), "bank": "bank-bus-main",
                      "own_device": "f2"},
    "bank-bus-main": {"strings": ("string-pack-1", "string-pack-3"),
                      "batteries": ("pack-1", "pack-2", "pack-3", "pack-4"),
                      "sources": ("source-a",), "loads": ("load-a",),
                      "devices": ("f2", "f4", "f0", "b1", "f6"),
                      "buses": ("bus-main", "bus-panel")},
    "bms-1": {"batteries": ("pack-1", "pack-2"), "switches": ("s2",)},
    "bms-2": {"batteries": (), "switches": ()},
    "run-2": {"conductors": ("w2",), "devices": ("f2",), "switches": ("s2",)},
    "run-5": {"return_run": "run-6"},
    "run-6": {"return_run": None},
    "w1": {"run": "run-1", "places": ("locker", "hold")},
    "w2": {"protecting_devices": ("f2",)},
    "w5": {"protecting_devices": ("b1",)},
    "f2": {"run": "run-2", "place": "locker", "banks": ("bank-bus-main",)},
    "s2": {"run": "run-2", "worked_by": "bms-1", "banks": ("bank-bus-main",)},
    "bus-main": {"runs": ("run-2", "run-4", "run-5", "run-7"), "banks": ("bank-bus-main",)},
    "source-a": {"run": "run-7", "bank": "bank-bus-main", "stopped_by": ("bms-1",)},
    "load-a": {"run": "run-6", "bank": "bank-bus-main"},
    "locker": {"batteries": ("pack-1", "pack-2"), "sources": Unknown, "devices": ("f2",)},
    "vessel": {"record": "record"},
    "record": {"batteries": ("pack-1", "pack-2", "pack-3", "pack-4"), "banks": ("bank-bus-main",),
               "strings": ("string-pack-1", "string-pack-3"),
               "devices": ("f2", "f4", "f0", "b1", "f6"), "switches": ("s2",)},
}


@pytest.fixture(scope="module")
def network() -> Network:
    return boat(RUNS, FACTS, **LISTS)


@pytest.mark.parametrize("item", EXPECTED)
def test_relations(network: Network, item: str) -> None:
    for relation, expected in EXPECTED[item].items():
        found = network.related(item, relation)
        if expected is Unknown:
            assert isinstance(found, Unknown)
        else:
            assert not isinstance(found, Unknown)
            assert found == expected, relation


def test_every_relation_of_every_thing_answers(network: Network) -> None:
    """No relation of the table is left out, for anything aboard."""
    things = record(RUNS, FACTS, **LISTS).things
    subjects = {each.id: each.subject for each in things.values()}
    subjects |= {each.id: subject for subject, derived in network.derived.items()
                 for each in derived}
    for item, subject in subjects.items():
        for relation in SUBJECTS[subject].relations.values():
            found = network.related(item, relation.name)
            if not isinstance(found, Unknown) and found is not None:
                assert isinstance(found, tuple if relation.many else str), (item, relation)


def test_an_unknown_relation_or_thing_is_an_error(network: Network) -> None:
    with pytest.raises(KeyError):
        network.related("pack-1", "banks")
    with pytest.raises(KeyError):
        network.related("pack-9", "bank")


UNKNOWN = {
    # what is left unsaid: item, relation, the path that would tell
    "a battery's place": (
        {"facts": {"pack-1": {}}}, "pack-1", "place", ("pack-1.place",)),
    "one battery's place, asked of the place": (
        {"facts": {"pack-1": {}}}, "locker", "batteries", ("pack-1.place",)),
    "one battery's management, asked of the system": (
        {"facts": {"pack-3": {"place": "hold"}}}, "bms-1", "batteries", ("pack-3.managed_by",)),
    "what an output stops": (
        {"management_systems": [{"id": "bms-1", "outputs": [{"name": "charge"}]},
                                {"id": "bms-2", "outputs": []}]},
        "source-a", "stopped_by", ("bms-1.outputs[0].stops",)),
    "what makes an output act": (
        {"management_systems": [{"id": "bms-1", "outputs": [
            {"name": "charge", "stops": ["source-a"]}]}, {"id": "bms-2", "outputs": []}]},
        "source-a", "stopped_by", ("bms-1.outputs[0].acts_on",)),
    "the outputs of a system": (
        {"management_systems": [{"id": "bms-1"}, {"id": "bms-2", "outputs": []}]},
        "source-a", "stopped_by", ("bms-1.outputs",)),
    "the list of systems": (
        {"management_systems": None, "facts": {f"pack-{n}": {} for n in (1, 2, 3, 4)} | {
            "s2": {}}}, "source-a", "stopped_by", ("management_systems",)),
    "the run of a load": (
        {"declared": ("load-b",)}, "bank-bus-main", "loads", ("runs",)),
    "the run of a battery": ({"declared": ("pack-5",)}, "pack-5", "bank", ("runs",)),
    "the return of a run": ({}, "run-1", "return_run", ("run-1.return",)),
}


@pytest.mark.parametrize("case", UNKNOWN)
def test_what_nobody_recorded_is_unknown(case: str) -> None:
    changed, item, relation, paths = UNKNOWN[case]
    lists = LISTS | {key: value for key, value in changed.items()
                     if key not in ("facts", "declared")}
    network = boat(RUNS, FACTS | changed.get("facts", {}), changed.get("declared", ()), **lists)
    found = network.related(item, relation)
    assert isinstance(found, Unknown)
    assert (found.reason, found.paths) == (NOT_RECORDED, paths)


def test_without_runs_everything_derived_is_unknown() -> None:
    network = boat(None, declared=("pack-1", "source-a"))
    assert not network.traced
    for item, relation in (("pack-1", "string"), ("pack-1", "bank"), ("pack-1", "own_device"),
                           ("source-a", "bank"), ("record", "banks")):
        found = network.related(item, relation)
        assert isinstance(found, Unknown) and found.paths == ("runs",), relation
    assert isinstance(network.zone("pack-1"), Unknown)


def test_several_runs_to_a_load_are_not_one() -> None:
    network = boat("pack-1 > f1 > load-a\npack-1 > f2 > load-a")
    found = network.related("load-a", "run")
    assert isinstance(found, Unknown) and found.reason == "outside method"
