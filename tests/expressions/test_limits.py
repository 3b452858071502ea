"""Texts made to exhaust a reader are refused by a named limit, at once and in little memory."""

from __future__ import annotations

import subprocess
import sys

import pytest

from expressions.small_boat import program, refusals
from garboard.expressions import ExpressionRefused, Limits, parse

#: what is built, and the code it is refused with
HUGE = {
    "a power tower": ("'9**9**9'", "expression-operator"),
    "a hundred thousand terms": ("' or '.join(['a'] * 100_000)", "expression-length"),
    "brackets a million deep": ("'(' * 1_000_000", "expression-length"),
    "closed brackets a million deep": ("'(' * 1_000_000 + 'a' + ')' * 1_000_000",
                                       "expression-length"),
    "brackets as deep as the length allows": ("'(' * 3_999", "expression-words"),
    "lists as deep as the length allows": ("'[' * 3_999", "expression-words"),
    "signs as deep as the words allow": ("'-' * 799 + 'a'", "expression-depth"),
    "calls as deep as the words allow": ("'abs(' * 260 + 'a' + ')' * 260", "expression-depth"),
    "a million nots": ("'not ' * 1_000_000 + 'a'", "expression-length"),
    "a number of a million digits": ("'9' * 1_000_000", "expression-length"),
    "a number of four thousand digits": ("'9' * 4_000", "expression-number-size"),
    "a text of a million characters": ("repr('x' * 1_000_000)", "expression-length"),
    "a name of a million letters": ("'x' * 1_000_000", "expression-length"),
    "a path of four thousand points": ("'a' + '.a' * 1_999", "expression-words"),
    "wrong letters all along": ("'ä ' * 2_000", "expression-name-letters"),
    "wrong signs all along": ("'$' * 4_000", "expression-operator"),
    "spaces only": ("' ' * 4_000", "expression-empty"),
    "an unclosed text": ("'\"' + ' ' * 3_998", "expression-text-open"),
}

CHILD = """
import re, sys, time
from pathlib import Path
from garboard.expressions import ExpressionRefused, parse
text = {text}
def most_memory():
    return int(re.search(r"VmHWM:\\s*(\\d+)", Path("/proc/self/status").read_text())[1])
before = most_memory()
start = time.process_time()
try:
    parse(text)
except ExpressionRefused as refused:
    str(refused)
    code = refused.problems[0].code
took = time.process_time() - start
grown = most_memory() - before
print(code, took < 1.0, grown < 100_000)
"""


@pytest.mark.parametrize("what", HUGE)
def test_huge_texts_are_refused(what: str) -> None:
    built, code = HUGE[what]
    assert refusals(eval(built))[0][0] == code


def test_huge_texts_take_neither_time_nor_memory() -> None:
    """The worst of them together, in a process of their own: a second and 100 MB at most."""
    text = f"max([{', '.join(built for built, _ in HUGE.values())}], key=len)"
    for built in (text, "'(' * 3_999", "'-' * 799 + 'a'", "'ä ' * 2_000"):
        done = subprocess.run([sys.executable, "-c", CHILD.replace("{text}", built)],
                              capture_output=True, text=True, check=True)
        assert done.stdout.split()[1:] == ["True", "True"]


@pytest.mark.parametrize(("name", "size", "fits", "breaks", "code"), [
    ("length", 10, "a or b", "a or b or c", "expression-length"),
    ("words", 5, "a + b + c", "a + b + c + d", "expression-words"),
    ("depth", 2, "((a))", "(((a)))", "expression-depth"),
    ("number", 3, "a < 1.5", "a < 1.25", "expression-number-size"),
    ("exponent", 3, "a < 1e3", "a < 1e4", "expression-number-size"),
    ("text", 3, "a == 'LFP'", "a == 'LFPO'", "expression-text-size"),
    ("name", 3, "abc", "abcd", "expression-name-length"),
    ("collection", 2, "a in (1, 2)", "a in (1, 2, 3)", "expression-list-size"),
])
def test_every_limit_counts_and_is_named(name: str, size: int, fits: str, breaks: str,
                                         code: str) -> None:
    limits = Limits(**{name: size})
    parse(fits, limits)
    with pytest.raises(ExpressionRefused) as caught:
        parse(breaks, limits)
    (problem,) = caught.value.problems
    assert problem.code == code
    assert f"'{name}'" in problem.expected and str(size) in problem.expected


def test_as_much_as_the_limits_allow_is_read() -> None:
    parse(" or ".join(["a"] * 399))
    parse("(" * 20 + "a" + ")" * 20)
    parse("a in (" + ", ".join(["1"] * 100) + ")")


def _choices(depth: int) -> str:
    return "battery.age" if depth == 0 else (
        f"({_choices(depth - 1)} if battery.heated else {_choices(depth - 1)})")


@pytest.mark.parametrize("text", [
    f"{_choices(5)} == {_choices(5)}",
    "all(all(" + " and ".join(["c.heated or b.heated"] * 70) + " for c in b.place.batteries) "
    "for b in battery.bank.batteries)",
    "(" * 19 + "battery.heated" + " if battery.heated else battery.covered)" * 19,
    " and ".join(f"battery.age + {number} > 0" for number in range(90)),
], ids=["choices on both sides", "a long loop in a loop", "choices in choices", "many terms"])
def test_the_largest_rules_that_are_read_are_compiled_in_bounds(text: str) -> None:
    """What is generated from one rule stays small, however the parts multiply."""
    assert len(program(text).python) < 200_000
