"""A record goes whole from one process to another: records are assessed in several at once."""

from __future__ import annotations

import pickle

import pytest

from garboard.record import Fact, Record, Thing
from garboard.values import Bounds, Unknown
from record.launch import LAUNCH, changed, read

OTHER = changed("internal_resistance: {value: 2.1 mΩ, plus_minus: 10 %, from: measured, "
                "temperature: 18 °C}", "internal_resistance: {not_determinable: no label}")


@pytest.mark.parametrize("text", [LAUNCH, OTHER])
def test_a_record_survives_pickling(text: str) -> None:
    record = read(text)
    again: Record = pickle.loads(pickle.dumps(record))
    assert again.written == record.written
    assert list(again.things) == list(record.things)
    assert [*map(_said, again.things.values())] == [*map(_said, record.things.values())]
    assert again.lists.keys() == record.lists.keys()
    assert again.place("pack-1", "capacity") == record.place("pack-1", "capacity")


def test_further_keys_of_a_fact_survive() -> None:
    fact = read(LAUNCH).things["pack-1"].facts["internal_resistance"]
    assert dict(fact.extras) == {"temperature": 18.0}
    assert pickle.loads(pickle.dumps(fact)).extras == fact.extras
    assert not read(LAUNCH).things["pack-1"].facts["capacity"].extras


def test_the_document_goes_with_it() -> None:
    record = read(LAUNCH)
    again: Record = pickle.loads(pickle.dumps(record))
    assert record.document is not None
    assert again.document is not None
    assert again.document.data == record.document.data


def _said(thing: Thing) -> object:
    return (thing.id, thing.subject, thing.path,
            {name: _fact(fact) for name, fact in thing.facts.items()},
            {name: [_said(part) for part in parts] for name, parts in thing.groups.items()})


def _fact(fact: Fact) -> tuple[object, ...]:
    value = fact.value
    if isinstance(value, Bounds):
        value = (value.lo, value.hi, value.nominal, value.basis, value.causes)
    elif isinstance(value, Unknown):
        value = value.causes
    return (value, fact.written, fact.origin, fact.method, fact.evidence, fact.note, fact.extras)
