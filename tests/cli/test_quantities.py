"""The listing of quantities: complete, from the manifests, importing none of the calculations."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable

from cli.ran import Ran
from garboard.quantities import builtin


def test_the_listing_names_every_quantity_with_unit_and_origin(
        garboard: Callable[..., Ran]) -> None:
    ran = garboard("quantities")
    assert ran.code == 0
    rows = [line.split() for line in ran.out.splitlines()]
    assert [row[0] for row in rows] == sorted(
        each.full_name for each in builtin.garboard_quantities())
    assert {row[-1] for row in rows} == {"garboard"}
    assert ["device.prospective_current", "A", "garboard"] in rows


def test_one_quantity_shows_method_source_and_range(garboard: Callable[..., Ran]) -> None:
    ran = garboard("quantities", "conductor.ampacity")
    assert ran.code == 0
    assert "33 CFR 183.425 Table 5 (read)" in ran.out


def test_the_listing_imports_no_calculation() -> None:
    script = ("import sys; from garboard.cli.main import run; run(['quantities']); "
              "print([name for name in sys.modules if name.startswith('garboard.quantities')])")
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True,
                         check=True)
    assert ran.stdout.splitlines()[-1] == "[]"
