"""Facts that contradict each other read as unknown, all of them, each with the paths of all."""

from __future__ import annotations

import pytest

from garboard.record import Record
from garboard.values import CONFLICT, Bounds, Unknown
from record.launch import changed, problems, read


def battery(fields: str) -> Record:
    return read("format: installation-record/1\nbatteries:\n  - {id: b, " + fields + "}\n")


def run(length: str, *conductors: str) -> Record:
    parts = ", ".join(f"{{conductor: {{id: w{at}{', length: ' + each if each else ''}}}}}"
                      for at, each in enumerate(conductors))
    return read("format: installation-record/1\nbuses: [{id: a}, {id: b}]\nruns:\n"
                f"  - {{id: r, from: a, to: b, length: {length}, through: [{parts}]}}\n")


def doubted(record: Record) -> set[str]:
    """The paths in doubt, after checking that each of them reads as conflict with all paths."""
    for path, conflict in record.conflicts.items():
        thing, _, name = path.partition(".")
        value = record.things[thing].value(name)
        assert isinstance(value, Unknown)
        assert value.reason == CONFLICT
        assert set(conflict.paths) <= set(value.paths)
        assert path in conflict.paths
        assert len(conflict.readings) == len(conflict.paths)
    return set(record.conflicts)


CURRENT = {"b.short_circuit_current", "b.internal_resistance"}
ENERGY = {"b.energy", "b.nominal_voltage", "b.capacity"}


@pytest.mark.parametrize(("fields", "paths"), [
    # 26.8 V over 2 mΩ are 13.4 kA
    ("short_circuit_current: 13.4 kA", set()),
    ("short_circuit_current: 26.8 kA", set()),
    ("short_circuit_current: 26.9 kA", CURRENT),
    ("short_circuit_current: 6.7 kA", set()),
    ("short_circuit_current: 6.6 kA", CURRENT),
    ("short_circuit_current: {value: 6.6 kA, credits_electronics: no}", CURRENT),
    ("short_circuit_current: {value: 600 A, credits_electronics: yes}", set()),
    ("short_circuit_current: {value: 27 kA, credits_electronics: yes}", CURRENT),
    ("short_circuit_current: {value: 6.6 kA, plus_minus: 5 %}", set()),
    ("short_circuit_current: {not_determinable: no label}", set()),
    ("short_circuit_current: .. 5 kA", CURRENT),
    ("short_circuit_current: 5 kA ..", set()),
])
def test_a_declared_current_is_held_against_voltage_over_resistance(
        fields: str, paths: set[str]) -> None:
    record = battery(f"open_circuit_voltage_max: 26.8 V, internal_resistance: 2 mΩ, {fields}")
    assert doubted(record) == paths
    assert record.things["b"].value("open_circuit_voltage_max") == 26.8


def test_bounds_of_the_resistance_count() -> None:
    record = battery("open_circuit_voltage_max: 26.8 V, short_circuit_current: 26.9 kA, "
                     "internal_resistance: {value: 2 mΩ, plus_minus: 1 %}")
    assert doubted(record) == set()


@pytest.mark.parametrize(("fields", "paths"), [
    ("energy: 5.12 kWh", set()), ("energy: 4.608 kWh", set()), ("energy: 4.6 kWh", ENERGY),
    ("energy: 5.68 kWh", set()), ("energy: 5.7 kWh", ENERGY), ("energy: 2.56 kWh", ENERGY),
    ("energy: {value: 5.7 kWh, plus_minus: 1 %}", set()),
])
def test_the_energy_is_held_against_voltage_times_capacity(fields: str, paths: set[str]) -> None:
    assert doubted(battery(f"nominal_voltage: 25.6 V, capacity: 200 Ah, {fields}")) == paths


RESTING = {"b.open_circuit_voltage_max", "b.nominal_voltage"}


@pytest.mark.parametrize(("fields", "paths"), [
    # the same battery with a slip of the pen by a factor of ten, and what is found on full charge
    ("open_circuit_voltage_max: 26.8 V, nominal_voltage: 25.6 V, voltage_found: 26.4 V", set()),
    ("open_circuit_voltage_max: 2.68 V, nominal_voltage: 25.6 V", RESTING),
    ("open_circuit_voltage_max: 26.8 V, nominal_voltage: 2.56 V", RESTING),
    ("open_circuit_voltage_max: 268 V, nominal_voltage: 25.6 V", RESTING),
    ("open_circuit_voltage_max: 24 V, nominal_voltage: 48 V", RESTING),
    ("open_circuit_voltage_max: 12.9 V, nominal_voltage: 12 V", set()),
    ("open_circuit_voltage_max: 12.0 V, nominal_voltage: 12 V", set()),
    ("open_circuit_voltage_max: 16.8 V, nominal_voltage: 14.4 V", set()),
    ("open_circuit_voltage_max: {value: 24 V, plus_minus: 2 V}, nominal_voltage: 25.6 V", set()),
    ("open_circuit_voltage_max: 12.9 V, nominal_voltage: 12 V, voltage_found: 14.4 V", set()),
    ("open_circuit_voltage_max: 26.8 V, voltage_found: 264 V",
     {"b.open_circuit_voltage_max", "b.voltage_found"}),
    ("open_circuit_voltage_max: 2.68 V, nominal_voltage: 25.6 V, voltage_found: 26.4 V",
     RESTING | {"b.voltage_found"}),
    ("nominal_voltage: 25.6 V, voltage_found: 264 V", {"b.nominal_voltage", "b.voltage_found"}),
    ("nominal_voltage: 25.6 V, voltage_found: 2.6 V", set()),
])
def test_voltages_of_a_battery_are_held_against_each_other(fields: str, paths: set[str]) -> None:
    assert doubted(battery(fields)) == paths


@pytest.mark.parametrize("fields", [
    "energy: 9 kWh, capacity: 200 Ah", "energy: 9 kWh, nominal_voltage: 25.6 V",
    "short_circuit_current: 9 kA, internal_resistance: 9 mΩ",
    "short_circuit_current: 90 kA, open_circuit_voltage_max: 26.8 V"])
def test_two_facts_of_three_contradict_nothing(fields: str) -> None:
    assert doubted(battery(fields)) == set()


@pytest.mark.parametrize(("length", "conductors", "paths"), [
    ("2 m", ("0.8 m", "1.2 m"), set()),
    ("2.1 m", ("0.8 m", "1.2 m"), set()),
    ("2.2 m", ("0.8 m", "1.2 m"), {"r.length", "w0.length", "w1.length"}),
    ("1.9 m", ("0.8 m", "1.2 m"), set()),
    ("1.8 m", ("0.8 m", "1.2 m"), {"r.length", "w0.length", "w1.length"}),
    ("9 m", ("0.8 m", ""), set()),
    ("0.5 m", ("0.8 m", ""), {"r.length", "w0.length"}),
    ("5 m", (), set()),
    ("5 m", ("",), set()),
    ("{value: 2.2 m, plus_minus: 10 cm}", ("0.8 m", "1.2 m"), set()),
])
def test_a_run_is_as_long_as_its_conductors(length: str, conductors: tuple[str, ...],
                                            paths: set[str]) -> None:
    assert doubted(run(length, *conductors)) == paths


def test_the_reading_and_the_words_are_kept() -> None:
    record = battery("energy: 2.56 kWh, nominal_voltage: 25.6 V, "
                     "capacity: {value: 200 Ah, plus_minus: 1 %, from: nameplate}")
    conflict = record.conflicts["b.capacity"]
    assert conflict.code == "energy"
    assert conflict.readings[:2] == (2560.0, 25.6)
    assert isinstance(conflict.readings[2], Bounds)
    fact = record.things["b"].facts["capacity"]
    assert (fact.written, fact.origin) == ("200 Ah ± 1 %", "nameplate")
    assert "b" in conflict.words


def test_a_fact_in_two_conflicts_names_both() -> None:
    text = changed("{not_determinable: the label gives none}", "90 kA")
    record = read(changed("    capacity: 200 Ah\n    open",
                          "    capacity: 100 Ah\n    energy: 5 kWh\n    open", text))
    assert set(record.conflicts) == {
        "pack-1.short_circuit_current", "pack-1.internal_resistance", "pack-1.energy",
        "pack-1.nominal_voltage", "pack-1.capacity"}
    assert problems(text) == ()
