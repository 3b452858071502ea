"""The table of subjects: complete, described, and in step with the models and with itself."""

from __future__ import annotations

import subprocess
import sys

import pytest

import garboard.record
from garboard.record import SUBJECTS, Field, Subject
from garboard.record.leaves import Measure
from garboard.record.leaves.identity import RESERVED
from garboard.record.models.base import Noun
from garboard.record.shape import shape_of
from garboard.values.units import DIMENSIONS, read_number

ABOUT = {"vessel", "survey", "wiring", "place", "battery", "string", "bank", "management_system",
         "run", "conductor", "device", "switch", "bus", "source", "load", "record"}
PARTS = {"battery.charge.current_by_temperature", "device.breaks", "management_system.outputs"}
FIELDS = [(subject, field) for subject in SUBJECTS.values() for field in subject.fields.values()]


def nouns(noun: type[Noun] = Noun) -> list[type[Noun]]:
    """All models that are a subject."""
    return [each for child in noun.__subclasses__()
            for each in ([child] if hasattr(child, "subject") else nouns(child))]


def measures(subject: str) -> list[Measure]:
    """All measures of a subject, those in extra keys included."""
    slots = [slot for noun in nouns() if noun.subject == subject
             for slot in shape_of(noun).leaves()]
    return [leaf for slot in slots for leaf in (slot.leaf, *slot.leaf.extras.values())
            if isinstance(leaf, Measure)]


def test_the_subjects_are_a_closed_list() -> None:
    assert set(SUBJECTS) == ABOUT | PARTS
    assert {name for name, each in SUBJECTS.items() if each.part_of} == PARTS
    assert {name for name, each in SUBJECTS.items() if each.derived} == {"string", "bank"}


@pytest.mark.parametrize(("subject", "field"), FIELDS, ids=lambda each: each.name)
def test_every_field_is_described(subject: Subject, field: Field) -> None:
    assert subject.fields[field.name] is field
    assert 3 < len(field.meaning) <= 110
    assert field.meaning[0].isupper()
    assert not field.meaning.endswith(".")
    assert (field.dimension is not None) == (field.kind in ("number", "window"))
    assert field.dimension is None or field.dimension in DIMENSIONS
    assert field.choices is None or field.kind == "text"
    assert (field.targets is not None) == (field.kind in ("reference", "references"))


def test_a_real_survey_finds_its_fields() -> None:
    assert len(FIELDS) > 350


@pytest.mark.parametrize("name", [
    "battery.chemistry", "battery.cells_in_series", "battery.open_circuit_voltage_max",
    "battery.internal_resistance", "battery.internal_resistance.method",
    "battery.internal_resistance.charge_state", "battery.short_circuit_current",
    "battery.short_circuit_current.credits_electronics", "battery.charge.temperature.low",
    "battery.discharge.peak_time", "battery.permitted.parallel", "battery.heater.fitted",
    "device.class", "device.kind", "device.holder.rating", "device.polarity_sensitive",
    "device.let_through", "device.curve_standard", "switch.on_lost_signal",
    "switch.withstand_time", "conductor.size", "conductor.resistance_class",
    "conductor.sheathed_length", "conductor.bundled_with", "conductor.crosses",
    "management_system.trips.cell_voltage_high", "management_system.warning.heard_at",
    "management_system.separate_charge_discharge_paths", "management_system.outputs.stops",
    "source.stages.float", "source.temperature_compensation", "source.self_limiting",
    "source.fault_contribution", "load.voltage.min", "load.cut_out", "load.capacitance",
    "load.second_supply", "place.temperature.high", "place.vented_to_open_air",
    "place.detection.gas", "vessel.engines.outboard_only", "wiring.returns",
    "wiring.grounding_conductor.size", "run.from", "run.return", "run.return.size",
    "device.breaks.voltage.kind", "device.breaks.time_constant",
])
def test_names_that_other_work_relies_on_are_there(name: str) -> None:
    subject = max((each for each in SUBJECTS if name.startswith(f"{each}.")), key=len)
    assert name.removeprefix(f"{subject}.") in SUBJECTS[subject].fields


def test_relations_lead_somewhere_and_take_no_field_away() -> None:
    for subject in SUBJECTS.values():
        for name, relation in subject.relations.items():
            assert relation.name == name
            assert relation.target in ABOUT
            field = subject.fields.get(name)
            assert field is None or (field.kind == "reference"
                                     and field.targets == (relation.target,))
            assert name not in subject.groups


def test_a_reference_to_one_subject_is_a_relation_too() -> None:
    missing = {(subject.name, field.name) for subject, field in FIELDS
               if field.kind == "reference" and field.targets is not None
               and len(field.targets) == 1 and field.name not in subject.relations}
    assert missing == {("run", "return.run")}


@pytest.mark.parametrize(("subject", "key"), [
    ("battery", "batteries"), ("source", "charging_sources"), ("string", "batteries"),
    ("bank", "batteries"), ("conductor", "runs"), ("device", "runs"), ("switch", "runs"),
    ("vessel", "vessel"), ("wiring", "wiring"), ("survey", "survey")])
def test_every_subject_says_where_it_is_recorded(subject: str, key: str) -> None:
    assert SUBJECTS[subject].recorded_in == key


def test_groups_lead_to_parts() -> None:
    parts = {part for subject in SUBJECTS.values() for part in subject.groups.values()}
    assert parts == PARTS


def test_what_is_likely_reads_and_is_in_order() -> None:
    measured = [leaf for subject in SUBJECTS for leaf in measures(subject)]
    assert len(measured) > 100
    for leaf in measured:
        ends = leaf.likely_range()
        if ends is not None:
            low, high = (read_number(end, leaf.of) for end in ends)
            assert low < high


def test_words_that_stand_for_something_cannot_be_ids() -> None:
    assert {"record", "vessel", "survey", "wiring", "none"} <= set(RESERVED)


def test_the_public_names_are_sorted_and_there() -> None:
    names = garboard.record.__all__
    constants, classes, functions = (
        [name for name in names if name.isupper()],
        [name for name in names if name[0].isupper() and not name.isupper()],
        [name for name in names if name[0].islower()])
    assert names == [*sorted(constants), *sorted(classes), *sorted(functions)]
    assert len(set(names)) == len(names)
    assert all(hasattr(garboard.record, name) for name in names)


def test_importing_it_leaves_the_heavy_libraries_alone() -> None:
    heavy = "{'numpy', 'jsonschema', 'ruamel.yaml', 'jinja2', 'rich', 'pluggy'}"
    code = f"import sys, garboard.record; print(sorted({heavy} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
