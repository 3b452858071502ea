"""Whatever stands anywhere in a pack, it is read, or refused with a place; nothing else happens."""

from __future__ import annotations

import json
from collections.abc import Iterator
from copy import deepcopy
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.errors import PackRefused
from garboard.packs import check_pack, pack_from_data, read_pack_text
from packs.small_vocabulary import VOCABULARY
from packs.test_pack_resolved import FULL

#: The pack as its author would write it, but as data.
WRITTEN: Any = read_pack_text(FULL).spot().data
RESOLVED: Any = read_pack_text(FULL).as_data()
ODD: tuple[Any, ...] = (
    None, True, -1, 2.5, "", "x", "5 A", "\u0000x", "((((((((((", "x" * 5000, [], {}, [None],
    {"": None}, ["LFP", 3])


def spots(data: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Every data path of a document."""
    pairs = data.items() if isinstance(data, dict) else (
        enumerate(data) if isinstance(data, list) else ())
    for key, each in pairs:
        yield (*path, key)
        yield from spots(each, (*path, key))


def replaced(data: Any, path: tuple[str | int, ...], value: object) -> Any:
    copy = deepcopy(data)
    holder = copy
    for step in path[:-1]:
        holder = holder[step]
    holder[path[-1]] = value
    return copy


@pytest.mark.parametrize("path", list(spots(WRITTEN)), ids=str)
def test_an_odd_value_anywhere_is_read_or_refused_with_its_place(path: tuple[str | int, ...],
                                                                 ) -> None:
    for value in ODD:
        text = json.dumps(replaced(WRITTEN, path, value))
        try:
            check_pack(read_pack_text(text), VOCABULARY)
        except PackRefused as refused:
            assert all(each.place.line for each in refused.problems)


@pytest.mark.parametrize("path", list(spots(RESOLVED)), ids=str)
def test_an_odd_value_in_a_resolved_form_is_read_or_refused(path: tuple[str | int, ...]) -> None:
    for value in ODD:
        data = replaced(RESOLVED, path, value)
        try:
            pack = pack_from_data(data)
        except PackRefused:
            continue
        assert pack.as_data() == data


@settings(max_examples=100)
@given(st.data())
def test_a_text_that_was_tampered_with_is_read_or_refused(data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(FULL)))
    end = data.draw(st.integers(start, min(len(FULL), start + 40)))
    put = data.draw(st.text(st.sampled_from(" :-[]{}\"'|>&*#?,\n\tabcÜ5%@`"), max_size=6))
    try:
        check_pack(read_pack_text(FULL[:start] + put + FULL[end:]), VOCABULARY)
    except PackRefused as refused:
        assert refused.problems
