"""What holds for every test: repeatable draws, and a referee that may be missing only off CI."""

from __future__ import annotations

import os
import shutil

import pytest
from hypothesis import settings

settings.register_profile("garboard", derandomize=True, deadline=None, database=None)
settings.load_profile("garboard")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Skip the tests that need ngspice where it is missing; never under CI."""
    if shutil.which("ngspice") or os.environ.get("CI") == "true":
        return
    missing = pytest.mark.skip(reason="ngspice is not installed (apt-get install ngspice)")
    for item in items:
        if item.get_closest_marker("ngspice"):
            item.add_marker(missing)


def pytest_runtest_call(item: pytest.Item) -> None:
    """Under CI a missing referee is a failure, not a skip."""
    if item.get_closest_marker("ngspice") and not shutil.which("ngspice"):
        pytest.fail("ngspice is missing, and under CI=true its tests may not be skipped",
                    pytrace=False)
