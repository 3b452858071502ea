"""What every declared quantity owes: listed, with a source, a range, and a unit of its own."""

from __future__ import annotations

import ast
import importlib
import pkgutil
from pathlib import Path

import pytest

from garboard.quantities import Quantity, builtin, table, table_names, topics
from garboard.values.units import DIMENSIONS

QUANTITIES = builtin.garboard_quantities()


def test_every_topic_and_every_declaration_is_listed() -> None:
    names = [each.name for each in pkgutil.iter_modules(topics.__path__)]
    modules = [importlib.import_module(f"{topics.__name__}.{name}") for name in names]
    assert set(builtin.TOPICS) == set(modules)
    for module in modules:
        declared = {each.full_name for each in vars(module).values() if isinstance(each, Quantity)}
        assert declared <= {each.full_name for each in module.QUANTITIES}, module.__name__


def test_there_are_many_and_no_name_twice() -> None:
    assert len(QUANTITIES) > 150
    assert len({each.full_name for each in QUANTITIES}) == len(QUANTITIES)


@pytest.mark.parametrize("each", QUANTITIES, ids=[each.full_name for each in QUANTITIES])
def test_a_declaration_says_what_it_is(each: Quantity) -> None:
    assert each.method[0].isupper() or each.method[0] in "'(0123456789Ek"
    assert not each.method.endswith(".")
    assert each.valid
    assert each.citation.source
    assert each.kind != "number" or each.dimension in DIMENSIONS


def test_what_rests_on_a_table_from_memory_says_so() -> None:
    """A quantity that reads a table of figures nobody saw is itself marked from memory."""
    memory = {name for name in table_names() if table(name).citation.status == "from memory"}
    assert memory >= {"resting-voltages", "ampacity-iso10133", "conventional-currents-iec60269-gg"}
    marked = {each.full_name: each.citation.status for each in QUANTITIES}
    for name in ("conductor.engine_space_factor", "conductor.bundling_factor",
                 "conductor.metric_ampacity", "battery.open_circuit_voltage_min",
                 "battery.resting_voltage_full", "device.conventional_fusing_current",
                 "battery.peak_fault_current", "load.small_craft_voltage_drop"):
        assert marked[name] == "from memory", name


#: Figures in the calculations that are no matter of physics, norm or trade: how many are named,
#: how many are kept, metres in 1000 ft, the classes of stranding, the factors of a formula cited.
OF_FORM = {"buses.py": {20}, "conductors.py": {256}, "contributions.py": {20}, "faults.py": {20},
           "placement.py": {20}, "zones.py": {20}, "sharing.py": {64},
           "resistances.py": {304.8, 5, 6}, "time_constants.py": {1.75, 0.75, 40, 8, 20}}


def test_figures_stand_in_tables() -> None:
    """A figure of physics, a norm or the trade is a cell, so that a derivation can name it."""
    plain = {-1, 0, 1, 2, 3, 0.5, 100, 1000}
    folder = Path(builtin.__file__).parent / "topics"
    stray = {}
    for file in sorted(folder.glob("*.py")):
        numbers = {node.value for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
                   if isinstance(node, ast.Constant) and isinstance(node.value, (int, float))}
        left = numbers - plain - OF_FORM.get(file.name, set())
        if left:
            stray[file.name] = left
    assert stray == {}
