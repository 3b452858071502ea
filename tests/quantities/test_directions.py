"""Which way figures go when a fact changes: where that is certain, and where it is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.quantities import Figures
from garboard.values import Bounds, Unknown
from quantities.boats import figure, figures_of, work_boat
from quantities.test_sharing import bank

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").rglob("*.yaml"))
RECORDS = [file for file in EXAMPLES if "installation-record" in file.read_text("utf-8")]


def _size(size: str) -> Figures:
    return work_boat(("id: w1, size: 25 mm2", f"id: w1, size: {size}"))


SIZES = ("16 mm2", "25 mm2", "35 mm2", "50 mm2", "70 mm2", "95 mm2")


@pytest.mark.parametrize(("key", "grows"), [
    ("windlass.voltage_drop", False), ("windlass.small_craft_voltage_drop", False),
    ("windlass.lowest_voltage", True), ("windlass.smallest_fault_current", True),
    ("windlass.fault_current", True), ("w1.ampacity", True), ("w1.metric_ampacity", True)])
def test_a_larger_conductor(key: str, grows: bool) -> None:
    found = [figure(_size(size), key) for size in SIZES]
    assert found == sorted(found, reverse=not grows)
    assert found[0] != found[-1]


@pytest.mark.parametrize(("key", "grows"), [
    ("windlass.voltage_drop", True), ("windlass.smallest_fault_current", False),
    ("windlass.fault_current", False)])
def test_a_longer_conductor(key: str, grows: bool) -> None:
    found = [figure(work_boat(("length: 8.0 m", f"length: {metres} m")), key)
             for metres in (4, 6, 8, 12, 20)]
    assert found == sorted(found, reverse=not grows)


def test_a_better_lead_can_lower_what_the_bank_gives() -> None:
    """The named counterexample: less resistance in one string gives it more of the current."""
    equal = bank(("4 mΩ", 120.0, 13.3), ("4 mΩ", 120.0, 13.3))
    better = bank(("4 mΩ", 120.0, 13.3), ("2 mΩ", 120.0, 13.3))
    assert figure(equal, "bank-bus.discharge_current_limit") == pytest.approx(200.0)
    assert figure(better, "bank-bus.discharge_current_limit") == pytest.approx(150.0)


def test_another_string_can_lower_what_the_bank_gives() -> None:
    """The second named counterexample: a third pack, strong and small, takes most of it."""
    two = bank(("4 mΩ", 120.0, 13.3), ("4 mΩ", 120.0, 13.3))
    three = bank(("4 mΩ", 120.0, 13.3), ("4 mΩ", 120.0, 13.3), ("1 mΩ", 120.0, 13.3))
    assert (figure(three, "bank-bus.discharge_current_limit")
            < figure(two, "bank-bus.discharge_current_limit"))


RESISTANCES = (" resistance: 0.20 mΩ,", " resistance: 0.30 mΩ,", " resistance: 4 mΩ,",
               " resistance: 0.10 mΩ,")
FAULTS = ("f0.prospective_current", "f0.through_current", "b1.prospective_current",
          "panel.fault_current", "windlass.fault_current", "w0.largest_fault_current")


@pytest.mark.parametrize("gone", RESISTANCES)
@pytest.mark.parametrize("key", FAULTS)
def test_a_resistance_nobody_noted_never_lowers_the_largest_fault(key: str, gone: str) -> None:
    """Nor leaves it open: it is a figure where the whole record gives one."""
    whole, without = figure(work_boat(), key), figure(work_boat((gone, "")), key)
    assert isinstance(without, float)
    assert without >= whole


def test_a_fuse_with_more_resistance_can_raise_what_another_carries() -> None:
    """The named counterexample: beside a way of more resistance the other carries more."""
    second = ("  - id: windlass-feed", """  - id: second-feed
    from: main-bus
    to: panel
    through:
      - fuse: {id: f9, rating: 160 A, resistance: 0.30 mΩ}
      - conductor: {id: w9, resistance: 4 mΩ}
  - id: windlass-feed""")
    more = (second[0], second[1].replace("0.30 mΩ", "3 mΩ"))
    found = [figure(work_boat(each), "w0.surge_current") for each in (second, more)]
    assert found[1] > found[0]


def test_records_are_found() -> None:
    assert len(RECORDS) >= 3
    assert sum(any(not isinstance(each["fault_current"], Unknown)
                   for each in figures_of(file.read_text(encoding="utf-8")).subjects["bus"] or ())
               for file in RECORDS) >= 3


@pytest.mark.parametrize("file", RECORDS, ids=[file.stem for file in RECORDS])
def test_the_smallest_fault_is_not_above_the_largest(file: Path) -> None:
    boat = figures_of(file.read_text(encoding="utf-8"))
    compared, known = 0, 0
    for subject, small, large in (("bus", "smallest_fault_current", "fault_current"),
                                  ("load", "smallest_fault_current", "fault_current")):
        for item in boat.subjects[subject] or ():
            least, most = item[small], item[large]
            known += not isinstance(most, Unknown)
            if not isinstance(least, Unknown) and not isinstance(most, Unknown):
                low = least.lo if isinstance(least, Bounds) else least
                assert low <= (most.hi if isinstance(most, Bounds) else most), item.id
                compared += 1
    assert compared > 0 or not known


@pytest.mark.parametrize("file", RECORDS, ids=[file.stem for file in RECORDS])
def test_every_figure_of_every_example_can_be_computed(file: Path) -> None:
    """No calculation fails, whatever is not recorded."""
    boat = figures_of(file.read_text(encoding="utf-8"))
    for quantity in boat.registry:
        for item in boat.subjects[quantity.subject] or ():
            item[quantity.name]
    assert boat.failures == []
    assert len(boat.derivations) > 300
