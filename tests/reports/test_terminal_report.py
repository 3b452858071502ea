"""The terminal report: every fact a surveyor needs is in it, in the right place, at any width."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from garboard.reports import terminal_report
from garboard.reports.sheet import cells
from garboard.trail import FAILED, NOT_APPLICABLE, NOT_ASSESSED, PASSED, Trail
from reports.variants import (
    with_a_failed_calculation,
    with_a_pack_that_does_not_apply,
    with_exceptions,
    with_many_failures,
    with_only,
    with_warnings,
)
from trail.launch import launch_trail

_COLOUR = re.compile(r"\x1b\[[0-9;]*m")
TRAILS: dict[str, Callable[[], Trail]] = {
    "the launch": launch_trail,
    "exceptions": with_exceptions,
    "failed calculation": with_a_failed_calculation,
    "two packs": with_a_pack_that_does_not_apply,
    "warnings": with_warnings,
    "passed only": lambda: with_only(PASSED),
    "not assessed only": lambda: with_only(NOT_ASSESSED),
    "nothing applies": lambda: with_only(NOT_APPLICABLE),
    "no findings": with_only,
}


def _flat(text: str) -> str:
    """The report with its line breaks and layout gone."""
    return " ".join(text.split())


def _section(text: str, start: str, end: str) -> str:
    return _flat(text[text.index(start):text.index(end)])


# what must be there ------------------------------------------------------------------------------
FACTS = [
    "Grey Heron", "2026-04-18", "slipway 3", "small-craft-teaching 0.1.0", "guarded acceptance",
    "working copy", "DOES NOT MEET", "5 of 21 findings on rules that apply", "1 danger, 2 warning",
    # the danger in full
    "fuse f0", "A protective device can break the fault current where it stands", "20 kA",
    "28.67 kA", "8.67 kA", "30 %", "46 CFR 111.54-1", "(a)(3)", "2023", "comparison", "read in",
    "may go on conducting", "Fit a device rated for", "IEEE 946", "from memory",
    # other kinds of figures
    "0.35 m", "0.1778 m", "7 in", "97 %", "can be stopped", "-4 °C, from the owner",
    "0 °C", "short by 4 °C", "strip", "NH, T", "seen in a reprint", "house rule",
    # what could not be assessed
    "8 of 21 findings", "no row for 5 AWG", "14.10 kA to 17.05 kA", "nominal 15.45 kA",
    "maker has not answered", "a stated tolerance",
    # what passed, with what must be borne in mind
    "exactly at the limit", "covers a part", "sheath or enclosure", "rests on an assumption",
    "packs share within 20 %", "no switches aboard", "bus-2",
    # counts and the rest
    "9 of 10 rules", "21 of 23 findings", "cannot be switched off", "competent people",
    "instructions of the makers come first", "does not replace", "for teaching",
    "alternating-current side",
]


@pytest.mark.parametrize("fact", FACTS)
def test_the_report_of_the_launch_says(fact: str) -> None:
    assert fact in _flat(terminal_report(launch_trail()))


def test_the_parts_stand_in_order() -> None:
    text = terminal_report(with_exceptions())
    marks = ["Vessel", "EXCEPTIONS", "RESULT", "COUNTS", "BEAR IN MIND", "NOT EXAMINED",
             "LIST OF WORK", "FAILED:", "COULD NOT BE ASSESSED:", "PASSED:", "DOES NOT APPLY:",
             "TO FIND OUT", "DIGESTS"]
    places = [text.index(mark) for mark in marks]
    assert places == sorted(places)
    short = terminal_report(with_exceptions(), whole=False)
    left_out = {"COULD NOT BE ASSESSED:", "PASSED:", "DOES NOT APPLY:"}
    assert [mark for mark in marks if mark not in short] == [
        mark for mark in marks if mark in left_out]


def test_the_short_report_lists_the_work_once_and_names_every_failed_item() -> None:
    trail = launch_trail()
    short = terminal_report(trail, whole=False)
    listed = _section(short, "LIST OF WORK", "FAILED:")
    failed = [each for each in trail.findings if each["outcome"] == FAILED]
    assert len(re.findall(r"^ +[0-9]+ [A-Z]", short[:short.index("FAILED:")], re.MULTILINE)) == len(
        {each["rule"] for each in failed})
    assert all(str(each["item"]) in listed for each in failed)
    assert len(short.splitlines()) < len(terminal_report(trail).splitlines())


def test_the_short_report_gives_every_failure_with_its_figures_and_source() -> None:
    whole, short = (terminal_report(launch_trail(), whole=each) for each in (True, False))
    failures = _section(whole, "FAILED:", "COULD NOT BE ASSESSED:")
    assert failures.removesuffix(" ?").rstrip() in _flat(short)
    for said in ("20 kA", "28.67 kA", "8.67 kA, 30 %", "46 CFR 111.54-1"):
        assert said in _flat(failures)


def test_failures_come_by_severity() -> None:
    text = terminal_report(launch_trail())
    failures = text[text.index("FAILED:"):text.index("COULD NOT BE ASSESSED:")]
    assert re.findall(r"^✗ ([A-Z]+) ", failures, re.MULTILINE) == [
        "DANGER", "WARNING", "WARNING", "CAUTION", "NOTICE"]


@pytest.mark.parametrize(("alike", "named", "said"), [
    (True, 50, "and 950 more (all stand in the trail)"),
    (False, 49, "and 951 more with other figures (all stand in the trail)")])
def test_of_very_many_failures_the_first_are_named_and_the_rest_counted(
        alike: bool, named: int, said: str) -> None:
    text = terminal_report(with_many_failures(1000, alike=alike))
    failures = _section(text, "FAILED:", "COULD NOT BE ASSESSED:")
    assert failures.count("more-") == named
    assert said in failures
    assert "fails for 1001 of 1004 protective devices" in failures


def test_every_failed_finding_is_named() -> None:
    failures = _section(terminal_report(launch_trail()), "FAILED:", "COULD NOT BE ASSESSED:")
    trail = launch_trail()
    for finding in trail.findings:
        if finding["outcome"] == FAILED:
            rule = trail.rule_of(finding)
            assert str(finding["item"]) in failures
            assert all(rule[key] in failures for key in ("title", "why", "recommendation", "id"))


def test_what_to_find_out_is_listed_with_how_much_it_decides() -> None:
    wanted = _section(terminal_report(launch_trail()), "TO FIND OUT", "DIGESTS")
    assert "10 facts" in wanted
    for fact in ("f2: breaks", "w4: size", "pack-1: internal resistance", "bms-1: pack trip (high)",
                 "pack-2: charge temperature (low)", "the list of loads"):
        assert fact in wanted
    assert "with others decides 2 findings (warning)" in wanted
    assert wanted.index("f2: breaks") < wanted.index("bms-1") < wanted.index("the list of loads")


def test_a_conversion_to_us_units() -> None:
    text = _flat(terminal_report(launch_trail(), us_units=True))
    for fact in ("13.78 in", "6.78 in", "24.8 °F", "short by 7.2 °F", "34.45 ft", "28.67 kA"):
        assert fact in text


# variants ----------------------------------------------------------------------------------------
SAID: list[tuple[str, list[str]]] = [
    ("exceptions", ["house-rules 1.0.0", "the packs are fused inside", "d-1", "2026-05-31",
                    "the chief surveyor", "replaced next month", "counted apart",
                    "1 of the 5 that failed"]),
    ("failed calculation", ["fault of the program", "w1.ampacity: KeyError"]),
    ("two packs", ["other-pack 2.0.0: does not apply", "none of its 10 rules was applied",
                   "simple acceptance", "sealed; does not apply", "2 packs"]),
    ("warnings", ["A length that is unlikely", "after.yaml:31", "3 km",
                  "the engine space was locked"]),
    ("passed only", ["MEETS THE PACK'S RULES AS RECORDED", "0 of 8 findings", "8 of the 8 passed"]),
    ("not assessed only", ["COULD NOT BE ASSESSED", "8 of the 8 could not be assessed"]),
    ("nothing applies", ["DOES NOT APPLY", "That is not a result"]),
    ("no findings", ["DOES NOT APPLY", "0 of 0 findings in all"]),
]


@pytest.mark.parametrize(("name", "facts"), SAID)
def test_the_report_of_a_variant_says(name: str, facts: list[str]) -> None:
    text = _flat(terminal_report(TRAILS[name]()))
    assert [fact for fact in facts if fact not in text] == []


@pytest.mark.parametrize("name", TRAILS)
def test_cautions_stand_in_every_report(name: str) -> None:
    text = _flat(terminal_report(TRAILS[name](), width=60))
    for words in ("cannot be switched off", "competent people", "come first", "does not replace",
                  "NOT EXAMINED", "sha256:"):
        assert words in text


@pytest.mark.parametrize("name", TRAILS)
def test_nothing_is_called_safe(name: str) -> None:
    assert re.search(r"\bsafe", terminal_report(TRAILS[name]()), re.IGNORECASE) is None


# the look ----------------------------------------------------------------------------------------
@pytest.mark.parametrize("width", [60, 66, 72, 80, 100, 110])
@pytest.mark.parametrize("name", TRAILS)
def test_no_line_is_wider_than_the_screen(name: str, width: int) -> None:
    text = terminal_report(TRAILS[name](), width)
    assert [line for line in text.splitlines() if cells(line) > width] == []
    assert [line for line in text.splitlines() if line != line.rstrip()] == []


@pytest.mark.parametrize("name", TRAILS)
def test_colour_adds_nothing_but_colour(name: str) -> None:
    plain, coloured = (terminal_report(TRAILS[name](), colour=colour) for colour in (False, True))
    assert "\x1b" not in plain
    assert coloured != plain
    assert _COLOUR.sub("", coloured) == plain


def test_the_same_trail_gives_the_same_text() -> None:
    assert terminal_report(launch_trail()) == terminal_report(launch_trail())
