"""Charts of time against current: where lines cross, what is drawn, what is said to be missing."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ElementTree

import pytest

from garboard.reports.html.book import Book
from garboard.reports.html.drawing.time_chart import OpeningPoint, TimeChart, time_chart
from garboard.reports.html.views.things import Things
from garboard.reports.html.views.times import times
from reports.pages import example_trail

CHART = TimeChart((1e6, 4e6), 5.0, (5e3, 1e4), (1e-3, 2e-3), 1e5,
                  (OpeningPoint(270.0, 60.0, True), OpeningPoint(200.0, 3600.0, False)))


def lines(chart: TimeChart, name: str) -> list[tuple[float, ...]]:
    drawn = ElementTree.fromstring(time_chart(chart, "words"))
    return [tuple(map(float, re.findall(r"-?[0-9.]+", each.get("d", ""))))
            for each in drawn.iter("path") if each.get("class") == name]


def test_energies_are_straight_lines_with_the_slope_of_a_square() -> None:
    (low,), (high,) = lines(CHART, "withstands"), lines(CHART, "withstands most")
    for x1, y1, x2, y2 in (low, high):
        decades_of_time = (y2 - y1) / (170 / 8)
        decades_of_current = (x2 - x1) / (236 / 4)
        assert decades_of_time == pytest.approx(2 * decades_of_current, rel=0.02)
    # four times the energy is withstood at twice the current: a fifth of a decade further right
    assert high[0] - low[0] == pytest.approx(math.log10(2) * 236 / 4, abs=0.2)


def test_the_fault_stands_where_its_current_and_times_are() -> None:
    (bar, cap) = lines(CHART, "flows")
    assert bar[0] == pytest.approx(56 + 236 * 3 / 4, abs=0.1)
    assert bar[1] == pytest.approx(8 + 170 * (1 - 1 / 8), abs=0.1)
    assert cap[1] < bar[1]


def test_open_and_carried_points_are_told_apart_by_form() -> None:
    assert len(lines(CHART, "opened")) == len(lines(CHART, "carries")) == 1


def test_ends_without_limit_are_left_out() -> None:
    chart = TimeChart((1e6, math.inf), 5.0, (0.0, math.inf), None, None, ())
    assert lines(chart, "withstands most") == [] == lines(chart, "flows")
    assert len(lines(chart, "withstands")) == 1


@pytest.mark.parametrize("example", ["after-corrected", "after-as-fitted"])
def test_every_conductor_asked_for_is_drawn_or_said_to_be_open(example: str) -> None:
    trail = example_trail(example)
    book = Book(trail, "metric")
    found = times(book, Things(book))
    asked = [each for each in trail.assessment["derivations"].values()
             if each["quantity"] == "conductor.let_through_share"]
    assert len(found["rows"]) + len(found["open"]) == len(asked) > 0
    assert all(each["missing"] for each in found["open"])
    assert bool(found["rows"]) is (example == "after-corrected")
