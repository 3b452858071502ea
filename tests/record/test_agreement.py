"""Reader, models and JSON Schema agree on drawn records, and facts read as they were written."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from pydantic import ValidationError

from garboard.documents import read_text
from garboard.errors import RecordRefused
from garboard.record import Record, read_record
from garboard.record.models.record import InstallationRecord
from garboard.record.schema import record_schema
from garboard.values import CONFLICT, Bounds, Unknown, same_value
from record.bad_inputs import FIGURES, KEYS, SPREADS, STRUCTURE, UNLIKELY, WORDS, Case
from record.draws import Facts, mappings, records
from record.launch import LAUNCH, changed, unmarked

_DRAWS = settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow,
                                                          HealthCheck.data_too_large])


@cache
def validator() -> Draft202012Validator:
    return Draft202012Validator(record_schema())


def accepted_by(data: Any) -> tuple[bool, bool, bool]:
    """Whether the reader, the models and the schema accept some data."""
    verdicts = []
    for tried, refusal in ((read_record, RecordRefused),
                           (InstallationRecord.model_validate, ValidationError)):
        try:
            tried(data)
            verdicts.append(True)
        except refusal:
            verdicts.append(False)
    return verdicts[0], verdicts[1], validator().is_valid(data)


def same(one: Any, other: Any) -> bool:
    if isinstance(one, Bounds) and isinstance(other, Bounds):
        return (one.lo, one.hi, one.nominal, one.basis) == (
            other.lo, other.hi, other.nominal, other.basis)
    return same_value(one, other)


@_DRAWS
@given(records())
def test_drawn_records_are_accepted_by_all_and_read_as_written(
        drawn: tuple[dict[str, Any], dict[str, Facts]]) -> None:
    data, facts = drawn
    assert accepted_by(data) == (True, True, True)
    record = read_record(data)
    assert_facts(record, facts)
    assert_same(record, read_record(read_text(json.dumps(data), "drawn.json")))


def assert_facts(record: Record, facts: dict[str, Facts]) -> None:
    """Every thing has the facts it was drawn with, and no others."""
    for thing_id, expected in facts.items():
        thing = record.evidence[thing_id] if thing_id == "e" else record.things[thing_id]
        found = {name: fact.value for name, fact in thing.facts.items()
                 if name not in ("from", "to", "kind") or name in expected}
        assert set(found) == set(expected)
        for name, value in expected.items():
            if f"{thing_id}.{name}" in record.conflicts:
                assert isinstance(found[name], Unknown)
                assert found[name].reason == CONFLICT
            else:
                assert same(found[name], value), name


def assert_same(one: Record, other: Record) -> None:
    """Two records have the same things with the same facts."""
    assert one.things.keys() == other.things.keys()
    for thing, same_thing in zip(one.things.values(), other.things.values(), strict=True):
        assert thing.facts.keys() == same_thing.facts.keys()
        assert all(same(fact.value, same_thing.facts[name].value)
                   for name, fact in thing.facts.items())


@_DRAWS
@given(records(), st.data())
def test_none_of_them_accepts_an_unknown_key(
        drawn: tuple[dict[str, Any], dict[str, Facts]], data: st.DataObject) -> None:
    record = drawn[0]
    data.draw(st.sampled_from(list(mappings(record))))["unheard-of"] = "1 A"
    assert accepted_by(record) == (False, False, False)


def plain(case: Case) -> Any:
    return read_text(unmarked(changed(case[1], case[2]))[0], "record.yaml").data


@pytest.mark.parametrize("case", [*KEYS, *STRUCTURE, *FIGURES, *SPREADS, *WORDS],
                         ids=lambda case: case[0])
def test_the_models_refuse_what_the_reader_refuses_of_a_single_leaf(case: Case) -> None:
    reference = "evidence that" in case[0] and "no list" not in case[0]
    assert accepted_by(plain(case))[:2] == (False, reference)


@pytest.mark.parametrize("case", KEYS, ids=lambda case: case[0])
def test_the_schema_refuses_unknown_and_missing_keys(case: Case) -> None:
    assert not validator().is_valid(plain(case))


@pytest.mark.parametrize("case", UNLIKELY, ids=lambda case: case[0])
def test_what_is_only_unlikely_is_accepted_by_all(case: Case) -> None:
    assert accepted_by(plain(case)) == (True, True, True)


def test_the_launch_is_accepted_by_all() -> None:
    assert accepted_by(read_text(LAUNCH, "record.yaml").data) == (True, True, True)
