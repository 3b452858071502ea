"""What lies between: unprotected zones, first and own devices, how conductors are fed."""

from __future__ import annotations

import pytest

from garboard.network import Network, Zone
from garboard.values import NOT_RECORDED, Bounds, Unknown

from .boats import boat

LENGTHS = {"w1": 0.5, "w2": 0.75, "w3": 1.0, "w4": 4.0, "w5": 0.25, "w6": 0.1}

HASTY = """
    pack-1 > w1 > bus-main
    pack-2 > w2 > bus-main
    pack-3 > w3 > bus-main
    bus-main > f0 w4 > load-a
    source-alternator > w5 f9 > bus-main"""
CORRECT = """
    pack-1 > w1 f1 w4 > bus-main
    pack-2 > w2 f2 w5 > bus-main
    bus-main > f0 w3 s1 > bus-panel
    bus-panel > b1 w6 > load-a"""


def zone(network: Network, battery: str) -> Zone:
    found = network.zone(battery)
    assert isinstance(found, Zone)
    return found


ZONES = {
    # runs, battery, conductors, devices, endings, longest, total
    "a fuse behind one lead": (
        CORRECT, "pack-1", ["w1"], ["f1"], ["f1 device"], 0.5, 0.5),
    "a fuse on the terminal": (
        "pack-1 > f1 w1 > load-a", "pack-1", [], ["f1"], ["f1 device"], 0.0, 0.0),
    "packs on a bus without fuses": (
        HASTY, "pack-1", ["w1", "w2", "w3"], ["f0", "f9"],
        ["f0 device", "f9 device", "pack-2.positive terminal", "pack-3.positive terminal"],
        1.5, 2.25),
    "switches do not protect": (
        "pack-1 > w1 s1 w2 f1 > load-a", "pack-1", ["w1", "w2"], ["f1"], ["f1 device"],
        1.25, 1.25),
    "a lead that forks at the post": (
        """pack-1 > w1 f1 > load-a
           pack-1 > w2 > load-starter""", "pack-1", ["w1", "w2"], ["f1"],
        ["f1 device", "load-starter.positive terminal"], 0.75, 1.25),
    "a bus where nothing else is joined": (
        "pack-1 > w1 > bus-main", "pack-1", ["w1"], [], ["bus-main dead end"], 0.5, 0.5),
    "a link between batteries in series": (
        """pack-1.positive > w1 > pack-2.negative
           pack-2.positive > w2 f2 > load-a""", "pack-1", ["w1"], [],
        ["pack-2.negative terminal"], 0.5, 0.5),
    "two ways that meet again": (
        """pack-1 > w1 > bus-main
           pack-1 > w2 > bus-main
           bus-main > f0 > load-a""", "pack-1", ["w1", "w2"], ["f0"], ["f0 device"], 0.75, 1.25),
}


@pytest.mark.parametrize("case", ZONES)
def test_unprotected_zone(case: str) -> None:
    runs, battery, conductors, devices, endings, longest, total = ZONES[case]
    found = zone(boat(runs), battery)
    assert sorted(found.conductors) == conductors
    assert sorted(found.devices) == devices
    assert sorted(f"{path.end} {path.ending}" for path in found.paths) == endings
    assert (found.longest(LENGTHS), found.total(LENGTHS)) == (longest, total)
    assert found.closed == all(ending.endswith("device") for ending in endings)


def test_zone_of_a_battery_that_no_run_leads_to_is_unknown() -> None:
    found = boat("pack-1 > f1 > bus-main", declared=("pack-2",)).zone("pack-2")
    assert isinstance(found, Unknown)
    assert (found.reason, found.paths) == (NOT_RECORDED, ("runs",))


def test_lengths_in_a_zone_may_be_bounded_or_unknown() -> None:
    found = zone(boat(HASTY), "pack-1")
    unknown = Unknown.because(NOT_RECORDED, "w3.length")
    longest = found.longest({**LENGTHS, "w3": unknown})
    assert isinstance(longest, Bounds) and longest.lo == 1.25  # to pack 2; further is not known
    assert isinstance(found.total({**LENGTHS, "w3": unknown}), Unknown)


@pytest.mark.parametrize(("flags", "sheathed"), [
    ({"w1": True, "w2": True, "w3": True}, True), ({"w1": True, "w2": False, "w3": True}, False)])
def test_sheathed_zone(flags: dict[str, bool], sheathed: bool) -> None:
    assert zone(boat(HASTY), "pack-1").sheathed(flags) is sheathed


OWN = {
    "each pack its own fuse": (CORRECT, {"pack-1": "f1", "pack-2": "f2"}),
    "no fuses but the main one": (HASTY, {"pack-1": None, "pack-2": None, "pack-3": None}),
    "only one pack has one": (
        """pack-1 > w1 f1 > bus-main
           pack-2 > w2 > bus-main
           bus-main > f0 > load-a""", {"pack-1": "f1", "pack-2": None}),
    "a fuse that two packs share": (
        """pack-1 > w1 > bus-a
           pack-2 > w2 > bus-a
           bus-a > f1 > bus-main
           pack-3 > f3 > bus-main
           bus-main > f0 > load-a""", {"pack-1": None, "pack-2": None, "pack-3": "f3"}),
    "two in a row: the nearest": (
        """pack-1 > f1 w1 b1 > bus-main
           pack-2 > f2 > bus-main""", {"pack-1": "f1", "pack-2": "f2"}),
    "two side by side are neither its own": (
        """pack-1 > f1 > bus-main
           pack-1 > f3 > bus-main
           pack-2 > f2 > bus-main""", {"pack-1": None, "pack-2": "f2"}),
    "packs joined post to post": (
        """pack-2 > w2 > pack-1
           pack-1 > f1 > bus-main""", {"pack-1": None, "pack-2": None}),
    "one fuse between two packs": (
        """pack-2 > w2 f2 > pack-1
           pack-1 > f1 > load-a""", {"pack-1": None, "pack-2": "f2"}),
    "a battery alone: its first device": ("pack-1 > w1 f1 > load-a", {"pack-1": "f1"}),
    "a battery alone with several first devices": (
        """pack-1 > w1 > bus-main
           bus-main > f1 > load-a
           bus-main > f2 > load-b""", {"pack-1": None}),
    "strings in series: at the top": (
        """pack-1.positive > w1 f9 > pack-2.negative
           pack-2.positive > f2 > bus-main
           pack-3.positive > w3 > pack-4.negative
           pack-4.positive > f4 > bus-main""",
        {"pack-1": "f2", "pack-2": "f2", "pack-3": "f4", "pack-4": "f4"}),
}


@pytest.mark.parametrize("case", OWN)
def test_own_device(case: str) -> None:
    runs, expected = OWN[case]
    network = boat(runs)
    assert {battery: network.related(battery, "own_device") for battery in expected} == expected


def test_first_device() -> None:
    network = boat(CORRECT)
    assert network.related("pack-1", "first_device") == "f1"
    assert boat("pack-1 > w1 > bus-main").related("pack-1", "first_device") is None
    several = boat(HASTY).related("pack-1", "first_device")
    assert isinstance(several, Unknown) and several.reason == "outside method"


PROTECTING = {
    # runs, conductor, the devices that protect it
    "behind its breaker": (CORRECT, "w6", {"b1"}),
    "between a pack and its fuse: the fuse": (CORRECT, "w1", {"f1"}),
    "between a fuse and the bus: a device at each end": (CORRECT, "w4", {"f1", "f2"}),
    "behind the main fuse": (CORRECT, "w3", {"f0"}),
    "between a pack and a bus with other packs: none": (HASTY, "w1", set()),
    "behind the main fuse of packs without fuses": (HASTY, "w4", {"f0"}),
    "a charging lead: the fuse at the bus": (HASTY, "w5", {"f9"}),
    "one battery on a bus with fuses only": (
        """pack-1 > w1 > bus-main
           bus-main > f1 > load-a
           bus-main > f2 > load-b""", "w1", {"f1", "f2"}),
    "one battery on a bus with a load straight on it": (
        """pack-1 > w1 > bus-main
           bus-main > f1 > load-a
           bus-main > w2 > load-b""", "w1", set()),
    "fed by nothing": ("bus-a > f1 w1 > load-a", "w1", set()),
}


@pytest.mark.parametrize("case", PROTECTING)
def test_protecting_devices(case: str) -> None:
    runs, conductor, expected = PROTECTING[case]
    found = boat(runs).related(conductor, "protecting_devices")
    assert isinstance(found, tuple) and set(found) == expected


def test_feeds_of_a_lead_between_fuse_and_bus() -> None:
    near, far = boat(HASTY.replace("w1 >", "w1 f1 w6 >")).feeds("w6")
    assert (near.end, near.batteries, near.feeding, near.closed) == ("from", (), ("f1",), True)
    assert (far.end, far.batteries) == ("to", ("pack-2", "pack-3"))
    assert set(far.devices) == {"f0", "f9"}
    assert (far.feeding, far.charging, far.closed) == ((), ("f9",), False)


def test_on_path_of_a_battery() -> None:
    network = boat(CORRECT + "\nbus-b > f7 w7 > load-b")
    assert [network.on_path_of_a_battery(each) for each in ("f1", "b1", "w6", "f7")] == [
        True, True, True, False]
