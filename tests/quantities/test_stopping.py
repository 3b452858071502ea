"""Stopping sources in time, load dump, duty: on the work boat, with single facts changed."""

from __future__ import annotations

import pytest

from garboard.values import Bounds, Unknown
from quantities.boats import figure, work_boat

ROWS = [
    ("both systems stop the alternator", (), "alternator.stopped_by_all", True),
    ("one of two stops the charger", (), "charger.stopped_by_all", False),
    ("but something does", (), "charger.can_be_stopped", True),
    ("nothing does", (("stops: [alternator, charger]", "stops: [alternator]"),),
     "charger.can_be_stopped", False),
    ("what stops it acts on discharging only",
     (("stops: [alternator, charger], acts_on: charging must stop",
       "stops: [alternator, charger], acts_on: discharging must stop"),),
     "charger.can_be_stopped", False),
    ("then nothing of it is fail-safe either",
     (("stops: [alternator, charger], acts_on: charging must stop",
       "stops: [alternator, charger], acts_on: discharging must stop"),),
     "charger.stop_is_fail_safe", False),
    ("and the other system's output is the only one",
     (("stops: [alternator, charger], acts_on: charging must stop",
       "stops: [alternator, charger], acts_on: discharging must stop"),),
     "alternator.stopped_by_all", False),
    ("what makes it act is not recorded", ((", acts_on: charging must stop", ""),),
     "charger.can_be_stopped", None),
    ("it acts on alarms, nobody noted which",
     (("acts_on: charging must stop", "acts_on: alarm"),), "charger.can_be_stopped", None),
    ("it acts on alarms, and stops another source",
     (("stops: [alternator, charger], acts_on: charging must stop",
       "stops: [alternator], acts_on: alarm"),), "charger.can_be_stopped", False),
    ("one of the outputs is not fail-safe", (), "alternator.stop_is_fail_safe", False),
    ("its only output is fail-safe", (), "charger.stop_is_fail_safe", True),
    ("no output, so none is fail-safe", (("stops: [alternator, charger]", "stops: [alternator]"),),
     "charger.stop_is_fail_safe", False),
    ("0.5 s to act and 0.8 s for the field to decay", (), "alternator.longest_stop_time", 1.3),
    ("field decay not recorded", (("    stop_time: 0.8 s\n", ""),),
     "alternator.longest_stop_time", None),
    ("the lesser of 20 s and 10 s", (), "alternator.least_warning_time", 10.0),
    ("one that does not warn", (("before_disconnect: yes, time: 10 s", "before_disconnect: no"),),
     "alternator.least_warning_time", 0.0),
    ("a suppressor at 60 V", (), "alternator.load_dump_voltage", 60.0),
    # row 85 and its 24 V pair: ISO 16750-2 test A as reprinted
    ("no suppressor, 24 V", (("fitted: yes, clamps_at: 60 V", "fitted: no"),),
     "alternator.load_dump_voltage", (151.0, 202.0)),
    ("no suppressor, 12 V", (("fitted: yes, clamps_at: 60 V", "fitted: no"),
                             ("    place: engine-room\n    nominal_voltage: 24 V",
                              "    place: engine-room\n    nominal_voltage: 12 V")),
     "alternator.load_dump_voltage", (79.0, 101.0)),
    ("whether there is one is not recorded",
     (("    suppressor: {fitted: yes, clamps_at: 60 V}\n", ""),),
     "alternator.load_dump_voltage", None),
    ("36 V has no test", (("fitted: yes, clamps_at: 60 V", "fitted: no"),
                          ("    place: engine-room\n    nominal_voltage: 24 V",
                           "    place: engine-room\n    nominal_voltage: 36 V")),
     "alternator.load_dump_voltage", None),
    ("how long it lasts at 24 V", (), "alternator.load_dump_time", (0.1, 0.35)),
    ("a charger dumps nothing", (), "charger.load_dump_voltage", None),
    ("110 A asked of 80 A", (), "alternator.duty_share", 1.375),
    ("rated at 25 °C in a room of 55 °C", (), "alternator.rated_for_its_place", False),
]


@pytest.mark.parametrize(("what", "changes", "key", "expected"), ROWS,
                         ids=[row[0] for row in ROWS])
def test_stopping(what: str, changes: tuple[tuple[str, str], ...], key: str,
                  expected: object) -> None:
    value = figure(work_boat(*changes), key)
    if expected is None:
        assert isinstance(value, Unknown)
    elif isinstance(expected, tuple):
        assert isinstance(value, Bounds)
        assert (value.lo, value.hi, value.nominal) == (*expected, None)
    else:
        assert value == expected


def test_a_bank_that_accepts_less_asks_less_of_the_alternator() -> None:
    """With 60 A per pack the bank takes 60 / 0.5956 = 100.7 A, less than the alternator's 110 A."""
    small = work_boat(("current_max: 100 A, temperature: 0 .. 45 °C",
                       "current_max: 60 A, temperature: 0 .. 45 °C"))
    accepted = figure(small, "bank-main-bus.charge_current_limit")
    assert accepted == pytest.approx(60 / figure(small, "string-pack-a.share"), rel=1e-11)
    assert figure(small, "alternator.duty_share") == pytest.approx(accepted / 80, rel=1e-11)
