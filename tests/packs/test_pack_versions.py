"""Which step of the version a change asks for, and whether the version has risen that far."""

from __future__ import annotations

import pytest

from garboard.packs import Pack, read_pack_text
from garboard.packs.versions import Step, reasons, rise_problem, step_of
from garboard.packs.versions.step import least_version
from packs.layered import BASE
from packs.small_vocabulary import VOCABULARY

RULE = """\
  - id: one-more
    title: One more
    about: device
    must_hold: device.rating >= least
    severity: notice
    citation: {basis: practice}
    why: Because.
    recommendation: Change it.
"""
ACCEPTING = "title: What all build on\nacceptance: {must_have_passed: [near]}\n"

#: Name, what is replaced in the pack, by what, the step it asks for, and of what.
CHANGES: list[tuple[str, str, str, Step, str]] = [
    ("nothing", "title: Rated", "title: Rated", "none", ""),
    ("title of the pack", "What all build on", "What others build on", "patch", "title"),
    ("title of a rule", "title: Rated", "title: Rating", "patch", "title of rule rated"),
    ("another source", "7 in, citation: {basis: house}", "7 in, citation: {basis: practice}",
     "patch", "limit reach"),
    ("the same length in another unit", "7 in", "177.8 mm", "patch", "limit reach"),
    ("a lower upper limit", "7 in", "6 in", "major", "limit reach"),
    ("a higher upper limit", "7 in", "8 in", "minor", "limit reach"),
    ("a higher lower limit", "5 A", "6 A", "major", "limit least"),
    ("a lower lower limit", "5 A", "4 A", "minor", "limit least"),
    ("a list with less", "[T, ANL]", "[T]", "major", "limit classes"),
    ("a list with more", "[T, ANL]", "[T, ANL, MRBF]", "minor", "limit classes"),
    ("a list with others", "[T, ANL]", "[T, MRBF]", "major", "limit classes"),
    ("another kind of limit", "80 %", "80 A", "major", "limit share"),
    ("a graver severity", "severity: warning", "severity: danger", "major",
     "severity of rule rated"),
    ("a lesser severity", "severity: warning", "severity: notice", "minor",
     "severity of rule rated"),
    ("a rule more", "rules:\n", f"rules:\n{RULE}", "major", "rule one-more"),
    ("asks for more", "device.rating >= least",
     "device.rating >= least and device.class in classes", "major", "must_hold of rule rated"),
    ("says something else", "device.rating >= least", "device.rating > least", "major",
     "must_hold of rule rated"),
    ("applies to all", "    applies_when: any(d.on_path for d in run.devices)\n", "", "major",
     "applies_when of rule near"),
    ("applies to fewer", "about: device\n    must_hold: device.rating >= least",
     "about: device\n    applies_when: device.on_path\n    must_hold: device.rating >= least",
     "major", "applies_when of rule rated"),
    ("covers the whole", "    covers: part\n    left_to_a_person: The rest.\n", "", "minor",
     "covers of rule shared"),
    ("applies at another time", "record.has_lithium", "not record.has_lithium", "major",
     "applies_when"),
    ("looser rule of decision", "title: What all build on",
     "title: What all build on\ndecision_rule: simple acceptance", "minor", "decision_rule"),
    ("an acceptance", "title: What all build on\n", ACCEPTING, "minor", "acceptance"),
    ("a question", "title: What all build on\n", "title: What all build on\nquestions:\n"
     "  - {id: seen, ask: Seen?, answer: {type: boolean}}\n", "minor", "question seen"),
]


def pack(text: str) -> Pack:
    return read_pack_text(text)


@pytest.mark.parametrize(("before", "after", "step", "what"), [each[1:] for each in CHANGES],
                         ids=[each[0] for each in CHANGES])
def test_a_change_asks_for_a_step(before: str, after: str, step: Step, what: str) -> None:
    assert before in BASE
    found = reasons(pack(BASE), pack(BASE.replace(before, after, 1)), VOCABULARY)
    assert step_of(found) == step
    assert what in [each.what for each in found if each.step == step] or step == "none"


#: Going back from a change: what loosens one way tightens the other.
@pytest.mark.parametrize(("name", "step"), [
    ("a lower upper limit", "minor"), ("a higher upper limit", "major"),
    ("a list with others", "major"), ("asks for more", "minor"), ("a rule more", "minor"),
    ("applies to all", "major"), ("applies to fewer", "major"),
    ("looser rule of decision", "major"), ("an acceptance", "major"), ("a question", "minor"),
    ("title of a rule", "patch")])
def test_the_way_back(name: str, step: Step) -> None:
    before, after = next((each[1], each[2]) for each in CHANGES if each[0] == name)
    changed = pack(BASE.replace(before, after, 1))
    assert step_of(reasons(changed, pack(BASE), VOCABULARY)) == step


def test_what_an_acceptance_rests_on_is_not_retired_unseen() -> None:
    first = BASE.index("  - id: rated")
    fewer = BASE[:first] + BASE[BASE.index("  - id: near"):]
    assert step_of(reasons(pack(BASE), pack(fewer), VOCABULARY)) == "minor"
    resting = BASE.replace("title: What all build on\n", ACCEPTING.replace("near", "rated"))
    assert step_of(reasons(pack(resting), pack(fewer), VOCABULARY)) == "major"


def test_a_limit_in_a_condition_asks_for_a_major_step() -> None:
    """A looser one leaves open what passed, where a figure straddles it now."""
    using = BASE.replace("any(d.on_path for d in run.devices)", "run.length > reach")
    for other in ("6 in", "8 in"):
        changed = using.replace("7 in", other, 1)
        assert step_of(reasons(pack(using), pack(changed), VOCABULARY)) == "major"


@pytest.mark.parametrize(("old", "step", "least"), [
    ("1.2.3", "none", "1.2.3"), ("1.2.3", "patch", "1.2.4"), ("1.2.3", "minor", "1.3.0"),
    ("1.2.3", "major", "2.0.0"), ("0.2.3", "patch", "0.2.4"), ("0.2.3", "minor", "0.2.4"),
    ("0.2.3", "major", "0.3.0"), ("1.2.3-rc.1", "patch", "1.2.3")])
def test_the_least_version(old: str, step: Step, least: str) -> None:
    assert least_version(old, step) == least


@pytest.mark.parametrize(("version", "step", "enough"), [
    ("1.2.0", "none", True), ("1.2.0", "patch", False), ("1.2.1", "patch", True),
    ("1.2.9", "minor", False), ("1.3.0", "minor", True), ("1.9.9", "major", False),
    ("2.0.0", "major", True), ("2.0.0-rc.1", "major", True), ("1.2.0+x", "patch", False),
    ("1.1.0", "none", False)])
def test_whether_the_version_has_risen_enough(version: str, step: Step, enough: bool) -> None:
    problem = rise_problem(pack(BASE), pack(BASE.replace("1.2.0", version, 1)), step)
    assert (problem is None) is enough
    assert enough or (problem is not None and problem.code == "version-rises-too-little"
                      and problem.place.line == 3)


def test_a_limit_that_works_both_ways_asks_for_a_major_step() -> None:
    both = BASE.replace("must_hold: device.rating >= least",
                        "must_hold: least <= device.rating and device.rating <= 2 * least")
    for other in ("4 A", "6 A"):
        changed = both.replace("5 A", other, 1)
        assert step_of(reasons(pack(both), pack(changed), VOCABULARY)) == "major"
