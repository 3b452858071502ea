"""Which batteries are in series, which strings are a bank, from small traced boats."""

from __future__ import annotations

import pytest

from .boats import boat

CASES = {
    "one battery and a load": (
        "pack-1 > f1 w1 > load-a",
        ["pack-1"], {"bank-pack-1": ["pack-1"]}),
    "three packs on a bus": (
        """pack-1 > w1 f1 > bus-main
           pack-2 > w2 f2 > bus-main
           pack-3 > w3 f3 > bus-main
           bus-main > f0 w0 > load-a""",
        ["pack-1", "pack-2", "pack-3"], {"bank-bus-main": ["pack-1", "pack-2", "pack-3"]}),
    "packs joined post to post, no bus": (
        """pack-2 > w2 > pack-1
           pack-1 > f1 w1 > load-a""",
        ["pack-2", "pack-1"], {"bank-pack-2": ["pack-2", "pack-1"]}),
    "two in series by a direct link": (
        """pack-1.positive > w1 > pack-2.negative
           pack-2.positive > f1 w2 > bus-main""",
        ["pack-1 pack-2"], {"bank-bus-main": ["pack-1 pack-2"]}),
    "a link traced backwards": (
        """pack-2.negative > w1 > pack-1.positive
           pack-2.positive > f1 w2 > bus-main""",
        ["pack-1 pack-2"], {"bank-bus-main": ["pack-1 pack-2"]}),
    "four in series": (
        """pack-1.positive > w1 > pack-2.negative
           pack-3.positive > w3 > pack-4.negative
           pack-2.positive > w2 > pack-3.negative
           pack-4.positive > f1 > bus-main""",
        ["pack-1 pack-2 pack-3 pack-4"],
        {"bank-bus-main": ["pack-1 pack-2 pack-3 pack-4"]}),
    "two in series, twice in parallel": (
        """pack-1.positive > w1 > pack-2.negative
           pack-3.positive > w3 > pack-4.negative
           pack-2.positive > f2 > bus-main
           pack-4.positive > f4 > bus-main""",
        ["pack-1 pack-2", "pack-3 pack-4"],
        {"bank-bus-main": ["pack-1 pack-2", "pack-3 pack-4"]}),
    "in series over a bus that also feeds a load": (
        """pack-1.positive > w1 > bus-tap
           bus-tap > w2 > pack-2.negative
           bus-tap > f5 > load-half
           pack-2.positive > f2 > bus-main""",
        ["pack-1 pack-2"], {"bank-bus-main": ["pack-1 pack-2"]}),
    "strings tied in the middle, links traced one by one": (
        """pack-1.positive > w1 > pack-2.negative
           pack-3.positive > w3 > pack-4.negative
           pack-1.positive > w5 > pack-3.positive
           pack-2.positive > f2 > bus-main
           pack-4.positive > f4 > bus-main""",
        ["pack-1 pack-2", "pack-3 pack-4"],
        {"bank-bus-main": ["pack-1 pack-2", "pack-3 pack-4"]}),
    "negative runs to a negative bus": (
        """pack-1 > w1 f1 > bus-main
           pack-2 > w2 f2 > bus-main
           pack-1.negative > w3 > bus-negative
           pack-2.negative > w4 > bus-negative
           bus-main > f0 > load-a""",
        ["pack-1", "pack-2"], {"bank-bus-main": ["pack-1", "pack-2"]}),
    "a start battery joined to the house bank by a relay": (
        """pack-1 > f1 > bus-house
           pack-2 > f2 > bus-house
           bus-house > f3 > load-a
           start-1 > w1 > bus-start
           bus-start > w2 > load-starter
           bus-start > s1 w3 > bus-house""",
        ["pack-1", "pack-2", "start-1"],
        {"bank-bus-house": ["pack-1", "pack-2"], "bank-bus-start": ["start-1"]}),
    "the relay on the posts of both": (
        """pack-1 > f1 > load-a
           start-1 > w2 > load-starter
           start-1 > s1 > pack-1""",
        ["pack-1", "start-1"], {"bank-pack-1": ["pack-1"], "bank-start-1": ["start-1"]}),
    "an isolator in each lead does not part a bank": (
        """pack-1 > s1 f1 > bus-main
           pack-2 > s2 f2 > bus-main
           bus-main > f0 > load-a""",
        ["pack-1", "pack-2"], {"bank-bus-main": ["pack-1", "pack-2"]}),
    "a switch between halves of which one has no load": (
        """pack-1 > f1 > bus-one
           pack-2 > f2 > bus-one
           pack-3 > f3 > bus-two
           bus-two > s1 > bus-one
           bus-one > f0 > load-a""",
        ["pack-1", "pack-2", "pack-3"],
        {"bank-bus-one": ["pack-1", "pack-2", "pack-3"]}),
    "two banks with nothing between": (
        """pack-1 > f1 > bus-one
           pack-2 > f2 > bus-two""",
        ["pack-1", "pack-2"], {"bank-bus-one": ["pack-1"], "bank-bus-two": ["pack-2"]}),
}


@pytest.mark.parametrize("case", CASES)
def test_strings_and_banks(case: str) -> None:
    runs, strings, banks = CASES[case]
    network = boat(runs)
    members = {string.id: " ".join(string.batteries) for string in network.strings}
    assert list(members.values()) == strings
    assert list(members) == [f"string-{each.split()[0]}" for each in strings]
    assert {bank.id: [members[each] for each in bank.members]
            for bank in network.derived["bank"]} == banks


def test_without_batteries_there_are_no_strings() -> None:
    network = boat("bus-a > w1 > load-a")
    assert network.derived == {"string": (), "bank": ()}
