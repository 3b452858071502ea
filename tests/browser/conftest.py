"""A browser without a window, and the pages of the example to open in it."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from selenium import webdriver
from selenium.webdriver.chrome.service import Service

from garboard.reports.html import html_report
from reports.pages import RECORDS, example_trail


@pytest.fixture(scope="session")
def browser() -> Iterator[webdriver.Chrome]:
    """Debian's chromium; what it says and asks for is logged."""
    options = webdriver.ChromeOptions()
    options.binary_location = shutil.which("chromium") or ""
    for each in ("--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"):
        options.add_argument(each)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    driver = webdriver.Chrome(options=options, service=Service(shutil.which("chromedriver")))
    yield driver
    driver.quit()


@pytest.fixture(scope="session")
def pages(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The pages of the example's records, as files."""
    folder = tmp_path_factory.mktemp("pages")
    for name in RECORDS:
        (folder / f"{name}.html").write_text(html_report(example_trail(name)), "utf-8")
    return {name: folder / f"{name}.html" for name in RECORDS}


@pytest.fixture
def opened(browser: webdriver.Chrome, pages: dict[str, Path]) -> Callable[..., webdriver.Chrome]:
    """Opens the page of a record in a window of a width."""

    def open_(name: str, width: int = 1280) -> webdriver.Chrome:
        browser.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {
            "width": width, "height": 900, "deviceScaleFactor": 1, "mobile": False})
        browser.get_log("browser")
        browser.get_log("performance")
        browser.get(pages[name].as_uri())
        return browser

    return open_
