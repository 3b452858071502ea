"""What does not hang together: each code reached by a small boat, and a sound boat has none."""

from __future__ import annotations

import pytest

from garboard.errors.codes.network import CODES

from .boats import boat

SOUND = """
    pack-1 > w1 f1 > bus-main
    pack-2 > w2 f2 > bus-main
    bus-main > f0 w3 > load-a
    source-alternator > w5 f9 > bus-main"""

CASES = {
    "sound": (SOUND, []),
    "a load that no run leads to": (SOUND, [("not-connected", ("load-b",))], ("load-b",)),
    "a battery that no run leads to": (SOUND, [("not-connected", ("pack-3",))], ("pack-3",)),
    "a bus and a source that no run leads to": (
        SOUND, [("not-connected", ("bus-b",)), ("not-connected", ("source-b",))],
        ("source-b", "bus-b")),
    "only a negative is traced": (
        SOUND + """
           pack-1.negative > w7 > bus-negative
           pack-2.negative > w8 > bus-negative
           load-b.negative > w9 > bus-negative""",
        [("positive-not-traced", ("load-b",))]),
    "a run that ends at an empty bus": (
        SOUND + "\nbus-main > f4 w4 > bus-panel", [("floating-end", ("run-5", "bus-panel"))]),
    "runs that no battery feeds": (
        SOUND + "\nbus-b > f4 w4 > load-b\nbus-b > f5 > load-c",
        [("not-fed", ("run-5", "run-6"))]),
    "batteries whose order cannot be told": (
        """pack-1.positive > w1 > bus-middle
           pack-2.positive > w2 > bus-middle
           bus-middle > w3 > pack-3.negative
           bus-middle > w4 > pack-4.negative
           pack-3.positive > f3 > bus-main
           pack-4.positive > f4 > bus-main""",
        [("series-unclear", ("pack-1", "pack-2", "pack-3", "pack-4"))]),
    "a battery the wrong way round": (
        """pack-1 > w1 f1 > bus-main
           pack-2.negative > w2 f2 > bus-main
           bus-main > f0 > load-a""",
        [("positive-not-traced", ("pack-2",)), ("battery-reversed", ("pack-2",))]),
    "negative sides apart": (
        """pack-1 > f1 > bus-main
           pack-2 > f2 > bus-main
           bus-main > f0 > load-a
           pack-1.negative > w1 > bus-n1
           pack-2.negative > w2 > bus-n2
           load-a.negative > w3 > bus-n1""",
        [("floating-end", ("run-5", "bus-n2")), ("negative-sides-apart", ("pack-2",))]),
    "a ring": (
        SOUND + "\nbus-main > w6 > bus-b\nbus-main > w7 > bus-b",
        [("ring", ("w6", "w7"))]),
    "fuses side by side": (
        SOUND + "\nbus-main > f6 w6 > bus-b\nbus-main > f7 w7 > bus-b",
        [("ring", ("f6", "w6", "f7", "w7")), ("devices-side-by-side", ("f6", "f7"))]),
    "two rings apart": (
        SOUND + "\nbus-main > w6 > bus-b\nbus-main > w7 > bus-b\nbus-main > f4 > bus-c\n"
                "bus-c > w8 > bus-d\nbus-c > w9 > bus-d",
        [("ring", ("w6", "w7")), ("ring", ("w8", "w9"))]),
    "a tie between two halves with loads": (
        """pack-1 > f1 > bus-one
           pack-2 > f2 > bus-two
           bus-one > w3 > bus-two
           bus-one > f4 > load-a
           bus-two > f5 > load-b""",
        [("fed-from-both-ends", ("w3",))]),
    "strings of different voltage": (
        SOUND, [("voltages-joined", ("string-pack-1", "string-pack-2"))], (),
        {"pack-1": {"nominal_voltage": "12.8 V"}, "pack-2": {"nominal_voltage": "25.6 V"}}),
    "a bus said to be negative": (
        SOUND, [("polarity-contradicts", ("bus-main",))], (), {"bus-main": {
            "polarity": "negative"}}),
    "a bus said to be positive": (SOUND, [], (), {"bus-main": {"polarity": "positive"}}),
    "a source for another voltage": (
        SOUND, [("voltage-contradicts", ("source-alternator",))], (),
        {"pack-1": {"nominal_voltage": "12.8 V"}, "pack-2": {"nominal_voltage": "12.8 V"},
         "source-alternator": {"nominal_voltage": "24 V"}}),
    "a source for the same voltage": (
        SOUND, [], (),
        {"pack-1": {"nominal_voltage": "12.8 V"}, "pack-2": {"nominal_voltage": "12.8 V"},
         "source-alternator": {"nominal_voltage": "12 V"}}),
    "12 V beside 12.8 V": (
        SOUND, [], (),
        {"pack-1": {"nominal_voltage": "12 V"}, "pack-2": {"nominal_voltage": "12.8 V"}}),
    "two of 12.8 V in series beside one of 25.6 V": (
        """pack-1.positive > w1 > pack-2.negative
           pack-2.positive > f2 > bus-main
           pack-3.positive > f3 > bus-main
           bus-main > f0 > load-a""", [], (),
        {"pack-1": {"nominal_voltage": "12.8 V"}, "pack-2": {"nominal_voltage": "12.8 V"},
         "pack-3": {"nominal_voltage": "25.6 V"}}),
}


@pytest.mark.parametrize("case", CASES)
def test_irregularities(case: str) -> None:
    runs, expected, *more = CASES[case]
    declared = more[0] if more else ()
    facts = more[1] if len(more) > 1 else None
    found = boat(runs, facts, declared).irregularities
    assert [(each.code, each.items) for each in found] == expected
    assert all(each.text for each in found)


def test_every_code_is_reached() -> None:
    reached = {code for _, expected, *_ in CASES.values() for code, _ in expected}
    assert reached == set(CODES)


def test_no_runs_recorded_gives_no_irregularities() -> None:
    assert boat(None, declared=("pack-1", "load-a")).irregularities == ()
