"""What holds for every test: repeatable draws, and referees that may be missing only off CI."""

from __future__ import annotations

import os
import shutil

import pytest
from hypothesis import settings

settings.register_profile("garboard", derandomize=True, deadline=None, database=None)
settings.load_profile("garboard")


#: What a marker's tests need from the operating system: programs, and the packages they come in.
REFEREES = {
    "ngspice": (("ngspice",), "ngspice"),
    "browser": (("chromium", "chromedriver"), "chromium chromium-driver"),
}


def missing_for(item: pytest.Item) -> str:
    """What a test needs that is not there, and how to install it; empty when all is there."""
    for marker, (programs, packages) in REFEREES.items():
        absent = [each for each in programs if not shutil.which(each)]
        if absent and item.get_closest_marker(marker):
            return f"{' and '.join(absent)} not installed (apt-get install {packages})"
    return ""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Skip the tests whose referee is missing; never under CI."""
    if os.environ.get("CI") == "true":
        return
    for item in items:
        missing = missing_for(item)
        if missing:
            item.add_marker(pytest.mark.skip(reason=missing))


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Under CI a missing referee is a failure, not a skip."""
    missing = missing_for(item)
    if missing and os.environ.get("CI") == "true":
        pytest.fail(f"{missing}, and under CI=true its tests may not be skipped", pytrace=False)
