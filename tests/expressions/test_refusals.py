"""Every way to be wrong is found, with its code, at its spot, all of them at once."""

from __future__ import annotations

import re

import pytest

from expressions.bad_texts import UNREADABLE, WRONG
from expressions.escapes import ESCAPES
from expressions.small_boat import read, refusals
from garboard.errors import CATALOGUE, Place, render
from garboard.errors.codes.expressions import CODES
from garboard.expressions import ExpressionRefused, parse


@pytest.mark.parametrize(("text", "expected"), UNREADABLE, ids=[repr(t[:40]) for t,
                                                                _ in UNREADABLE])
def test_unreadable(text: str, expected: list[tuple[str, int, int]]) -> None:
    assert refusals(text) == expected


@pytest.mark.parametrize(("about", "text", "expected"), WRONG, ids=[t for _, t, _ in WRONG])
def test_wrong(about: str, text: str, expected: list[tuple[str, int, int]]) -> None:
    parse(text)
    assert refusals(text, about) == expected


def test_every_code_is_reached() -> None:
    reached = {code for _, found in UNREADABLE for code, _, _ in found}
    reached |= {code for _, _, found in WRONG for code, _, _ in found}
    reached |= {code for _, _, code, _ in ESCAPES}
    assert reached == set(CODES)


@pytest.mark.parametrize(("about", "text", "hint"), [
    ("battery", "battery.heatd", "'heated'"),
    ("battery", "batery.heated", "'battery'"),
    ("battery", "battery.chemistry == 'lfp'", "'LFP'"),
    ("battery", "battery.charge.voltage_mx <= highest", "'charge.voltage_max'"),
    ("battery", "battery.charge <= highest", "charge.voltage_max"),
    ("battery", "battery.resistance.from == 'measured'", "origin"),
    ("battery", "heated", "battery.heated"),
    ("battery", "device.rating >= least_current", "battery.own_device"),
    ("bank", "battery.heated", "bank.batteries"),
    ("battery", "battery.bank.batteries.heated", "for x in battery.bank.batteries"),
    ("battery", "battery.age == 5 V", "'limits'"),
    ("battery", "battery.voltage <= 14", "'limits'"),
    ("battery", "battery.charge.current_max * some_time <= battery.capacity", "1 Ah is 3600 A·s"),
    ("battery", "battery.age = 3", "'=='"),
    ("battery", "battery.heated && battery.covered", "'and'"),
    ("battery", "battery.age <= 1,5", "1.5"),
    ("battery", "battery.age <= .5", "0.5"),
    ("battery", "battery.heated == yes", "true"),
    ("battery", "battery.own_device is None", "exists("),
    ("battery", "battery.fitted > 2026-01-01", '"2026-01-01"'),
    ("battery", "answer.vent-claer", "'vent-clear'"),
    ("bank", "sume(s.current_max for s in bank.sources) > least_current", "'sum'"),
])
def test_the_usual_slips_have_a_way_out(about: str, text: str, hint: str) -> None:
    with pytest.raises(ExpressionRefused) as caught:
        read(text, about)
    assert hint in caught.value.problems[0].hint


def test_a_guess_too_far_off_is_not_made() -> None:
    with pytest.raises(ExpressionRefused) as caught:
        read("battery.xyzzy")
    assert caught.value.problems[0].hint == ""


def test_a_problem_takes_its_place_in_a_file() -> None:
    with pytest.raises(ExpressionRefused) as caught:
        read("battery.heated and\n  battery.cuverd")
    (problem,) = caught.value.problems
    placed = problem.problem(Place("pack.yaml", 7, 11, "rules[0].must_hold", length=problem.length))
    assert render(placed).startswith("pack.yaml:7:11: expression-field: ")
    assert (placed.code, placed.place.length) == ("expression-field", 6)
    # on its own it shows the line of the text
    assert re.match(r"<expression>:2:11: expression-field", str(caught.value))
    assert "  battery.cuverd\n              ^^^^^^\n" in str(caught.value)


def test_titles_and_explanations_are_there() -> None:
    assert all(code in CATALOGUE and CATALOGUE[code].title for code in CODES)
