"""The page as a person meets it: on a phone and a laptop, by keyboard, filtered, printed."""

from __future__ import annotations

import json
from base64 import b64decode
from collections.abc import Callable
from importlib.resources import files
from io import BytesIO

import pytest
from pypdf import PdfReader
from selenium.webdriver import Chrome, Keys
from selenium.webdriver.common.by import By
from selenium.webdriver.support.select import Select

from garboard.trail import FAILED
from reports.pages import RECORDS, example_trail

pytestmark = pytest.mark.browser
Opened = Callable[..., Chrome]
#: Everything that can have the focus and is shown; what lies in something closed cannot.
FOCUSABLE = """
return [...document.querySelectorAll('a[href], button, input, select, summary, [tabindex="0"]')]
  .filter(each => each.checkVisibility()).length"""
#: The distance of the right edge of what sticks out farthest, outside things that scroll.
STICKING_OUT = "return document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("name", RECORDS)
def test_it_opens_quietly_asks_for_nothing_and_fits(name: str, width: int, opened: Opened) -> None:
    browser = opened(name, width)
    assert browser.get_log("browser") == []
    asked = [message["params"]["request"]["url"]
             for entry in browser.get_log("performance")
             for message in [json.loads(entry["message"])["message"]]
             if message["method"] == "Network.requestWillBeSent"]
    assert asked == [browser.current_url]
    assert browser.execute_script(STICKING_OUT) <= 0


def test_filters_show_what_they_say(opened: Opened) -> None:
    browser, trail = opened("after-as-fitted"), example_trail("after-as-fitted")
    Select(browser.find_element(By.NAME, "outcome")).select_by_visible_text(FAILED)
    Select(browser.find_element(By.NAME, "severity")).select_by_visible_text("danger")
    wanted = sum(each["outcome"] == FAILED and trail.rule_of(each)["severity"] == "danger"
                 for each in trail.findings)
    shown = browser.execute_script(
        "return [...document.querySelectorAll('.finding')].filter(each => each.checkVisibility())"
        ".reduce((sum, each) => sum + Number(each.dataset.count), 0)")
    assert wanted > 0
    assert shown == wanted
    assert browser.find_element(By.ID, "shown").text.startswith(f"{wanted} of")
    browser.find_element(By.CSS_SELECTOR, "#filters [type=reset]").click()
    browser.execute_async_script("setTimeout(arguments[0], 20)")
    assert browser.find_element(By.ID, "shown").text.startswith(f"All {len(trail.findings)}")


def test_a_link_opens_what_it_leads_to(opened: Opened) -> None:
    browser = opened("after-as-fitted")
    browser.execute_script(
        "location.hash = document.querySelector('[id^=working-]').id")
    browser.execute_async_script("setTimeout(arguments[0], 50)")
    assert browser.execute_script(
        "return document.getElementById(location.hash.slice(1)).checkVisibility()")


def test_everything_is_reached_by_keyboard_and_shows_that_it_is(opened: Opened) -> None:
    browser = opened("before")
    wanted = browser.execute_script(FOCUSABLE)
    browser.execute_script(
        "window.reached = new Set(); window.unseen = [];"
        "addEventListener('focusin', event => { reached.add(event.target);"
        "  if (getComputedStyle(event.target).outlineStyle === 'none')"
        "    unseen.push(event.target.outerHTML.slice(0, 99)); })")
    body = browser.find_element(By.TAG_NAME, "body")
    body.send_keys(Keys.TAB * (wanted + 5))
    assert browser.execute_script("return reached.size") == wanted > 20
    assert browser.execute_script("return unseen") == []


#: Cards, workings and things of the record repeat one form; a few of each stand for all.
A_FEW = """
document.querySelectorAll(
  '#findings .place:nth-of-type(n+2), #findings .card:nth-of-type(n+8), .work > :nth-child(n+4), ' +
  '.key tr:nth-child(n+9), #workings .rule:nth-of-type(n+3), #record .thing:nth-of-type(n+4), ' +
  '#deeper ~ ul > :nth-child(n+4)'
).forEach(each => each.remove())"""


@pytest.mark.parametrize("name", ["before", "after-as-fitted"])
def test_nothing_serious_stands_in_the_way_of_anyone(name: str, opened: Opened) -> None:
    browser = opened(name)
    browser.set_script_timeout(120)
    browser.execute_script(A_FEW)
    browser.execute_script((files("selenium_axe_python") / "axe-core" / "axe.min.js").read_text(
        "utf-8"))
    result = browser.execute_async_script(
        "axe.run(document, {resultTypes: ['violations']}).then(arguments[arguments.length - 1])")
    assert [(each["id"], each["nodes"][0]["html"]) for each in result["violations"]
            if each["impact"] in ("serious", "critical")] == []


def test_it_prints_whole(opened: Opened) -> None:
    browser, trail = opened("before"), example_trail("before")
    printed = browser.execute_cdp_cmd("Page.printToPDF", {
        "preferCSSPageSize": True, "printBackground": False, "displayHeaderFooter": False})
    pages = PdfReader(BytesIO(b64decode(printed["data"]))).pages
    assert 15 <= len(pages) <= 30
    outside: list[str] = []
    texts = [page.extract_text(visitor_text=_outside(
        float(page.mediabox.width), float(page.mediabox.height), outside)) for page in pages]
    assert outside == []
    for number, text in enumerate(texts, 1):
        assert f"Page {number} of {len(pages)}" in " ".join(text.split())
        assert "Reed Warbler" in text
    whole = " ".join(" ".join(texts).split())
    for heading in ("List of work", "Findings by place", "Workings", "Sources and methods",
                    "The record as read", "Digests", trail.digest[:40]):
        assert heading in whole


def _outside(width: float, height: float, found: list[str]) -> Callable[..., None]:
    """Collects text that begins outside the page."""

    def visit(text: str, cm: list[float], tm: list[float], *_: object) -> None:
        across = cm[0] * tm[4] + cm[2] * tm[5] + cm[4]
        up = cm[1] * tm[4] + cm[3] * tm[5] + cm[5]
        if text.strip() and not (-1 <= across <= width and -1 <= up <= height):
            found.append(text)

    return visit
