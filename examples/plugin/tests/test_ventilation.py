"""The figures by hand, and the manifest against the declarations."""

from pathlib import Path

import pytest
from garboard_ventilation.manifest import manifest_text
from garboard_ventilation.ventilation import garboard_manifest, vent_area, vent_balance

from garboard.values import Unknown


@pytest.mark.parametrize(("low", "high", "area", "balance"), [
    (3000.0, 3000.0, 6000.0, 1.0), (1000.0, 4000.0, 5000.0, 0.25), (4000.0, 0.0, 4000.0, 0.0)])
def test_by_hand(low: float, high: float, area: float, balance: float) -> None:
    assert vent_area.function(low, high) == area
    assert vent_balance.function(low, high) == balance


def test_a_place_without_openings_has_no_balance() -> None:
    assert vent_area.function(0.0, 0.0) == 0
    assert isinstance(vent_balance.function(0.0, 0.0), Unknown)


def test_the_manifest_is_up_to_date() -> None:
    assert Path(garboard_manifest()).read_text(encoding="utf-8") == manifest_text()
