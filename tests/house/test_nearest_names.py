"""The nearest name: one spelt alike, else the only one that shares its words, else none."""

from __future__ import annotations

import pytest

from garboard.errors import nearest

NAMES = ("charging_sources", "batteries", "management_systems", "buses", "loads")


@pytest.mark.parametrize(("name", "expected"), [
    ("sources", "charging_sources"), ("baterries", "batteries"), ("systems", "management_systems"),
    ("house_loads", "loads"), ("Sources", "charging_sources"), ("urces", None),
    ("xyz", None), ("", None), ("charging_systems", "charging_sources"),
])
def test_the_nearest_name(name: str, expected: str | None) -> None:
    assert nearest(name, NAMES) == expected


def test_none_where_two_share_the_word() -> None:
    assert nearest("rating", ("current_rating", "voltage_rating")) is None
