"""What the isolators cut off: small boats walked by hand."""

from __future__ import annotations

import pytest

from garboard.values import NOT_RECORDED, Unknown
from quantities.boats import figure, figures_of

BOAT = """
format: installation-record/1
wiring: {returns: neglected}
buses: [{id: bar}, {id: start-bar}, {id: spare}]
charging_sources: []
batteries: [{id: house}, {id: start}]
loads: [{id: lights, critical: no}, {id: pump, critical: yes}, {id: starter, critical: no}]
runs:
  - {id: r1, from: house.positive, to: bar, through: [switch: {id: s1, HOUSE}]}
  - {id: r2, from: bar, to: lights, through: [fuse: {id: f2}]}
  - {id: r3, from: house.positive, to: pump, through: [fuse: {id: f3}]}
  - {id: r4, from: start.positive, to: start-bar, through: [switch: {id: s4, START}]}
  - {id: r5, from: start-bar, to: starter, through: [fuse: {id: f5}]}
  - {id: r6, from: LINK, to: start.positive, through: [switch: {id: s6, kind: contactor}]}
"""
AT_HAND = "kind: isolator, reachable: yes"
HIDDEN = "kind: isolator, reachable: no"
UNSEEN = "kind: isolator"


@pytest.mark.parametrize(("house", "start", "link", "house_cut", "start_cut"), [
    (AT_HAND, AT_HAND, "house.positive", True, True),
    (AT_HAND, HIDDEN, "house.positive", False, False),  # over the contactor to the starter
    (AT_HAND, HIDDEN, "bar", True, False),  # the start battery feeds the lights past s1
    ("kind: contactor", AT_HAND, "house.positive", False, False),
    ("kind: contactor", AT_HAND, "start-bar", False, False),
    (UNSEEN, AT_HAND, "house.positive", None, None),
    (UNSEEN, HIDDEN, "house.positive", False, False),
    (HIDDEN, UNSEEN, "house.positive", False, False),
    ("kind: isolator, reachable: yes, found: closed", UNSEEN, "spare", True, None),
])
def test_what_can_be_cut_off(house: str, start: str, link: str, house_cut: bool | None,
                             start_cut: bool | None) -> None:
    text = BOAT.replace("HOUSE", house).replace("START", start).replace("LINK", link)
    figures = figures_of(text)
    for battery, wanted in (("house", house_cut), ("start", start_cut)):
        bank = next(bank.id for bank in figures.network.banks if battery in bank.batteries)
        found = figure(figures, f"{bank}.can_be_cut_off")
        if wanted is None:
            assert isinstance(found, Unknown)
            assert {cause.reason for cause in found.causes} == {NOT_RECORDED}
        else:
            assert found is wanted


def test_a_load_that_no_run_leads_to_is_not_taken_to_be_cut_off() -> None:
    text = BOAT.replace("HOUSE", AT_HAND).replace("START", AT_HAND).replace(
        "LINK", "house.positive").replace("loads: [", "loads: [{id: heater, critical: no}, ")
    found = figure(figures_of(text), "bank-bar.can_be_cut_off")
    assert isinstance(found, Unknown)
    assert [cause.path for cause in found.causes] == ["runs"]
