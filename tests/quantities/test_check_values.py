"""Every check value has its test: the index of them points at what is there.

34, the height of water against a bulkhead, is of no quantity: a person looks at bulkheads.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.documents import read_document

HERE = Path(__file__).parent
INDEX: dict[str, str] = {str(key): str(value) for key, value in
                         read_document(HERE / "check_values.yaml").data.items()}  # type: ignore[union-attr]
OF_NO_QUANTITY = {34, 59}


def numbers(key: str) -> range:
    first, _, last = key.partition("-")
    return range(int(first), int(last or first) + 1)


def test_no_number_is_left_out_or_stands_twice() -> None:
    found = [number for key in INDEX for number in numbers(key)]
    assert sorted(found) == sorted(set(range(1, 88)) - OF_NO_QUANTITY)


@pytest.mark.parametrize("key", INDEX)
def test_its_test_is_there(key: str) -> None:
    file, _, mark = INDEX[key].partition("::")
    text = (HERE / file).read_text(encoding="utf-8")
    assert mark in text
    if mark == "test_check_value":
        assert all(f"    ({number}, " in text for number in numbers(key))
