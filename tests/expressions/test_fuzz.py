"""Whatever is thrown at the reader, it reads or refuses: no other exception, no hang."""

from __future__ import annotations

from hypothesis import example, given, settings
from hypothesis import strategies as st

from expressions.small_boat import LIMITS, VOCABULARY, read
from garboard.expressions import FUNCTIONS, ExpressionRefused, compile_rules, parse
from garboard.expressions.rule import RuleSource

PIECES = (
    *FUNCTIONS, *LIMITS, *VOCABULARY.subjects, "battery.heated", "battery.age", "battery.voltage",
    "battery.bank.batteries", "battery.own_device", "battery.chemistry", "answer.vent-clear", "b",
    "x",
    "and", "or", "not", "in", "if", "else", "for", "true", "false", "(", ")", "[", "]", ",", ".",
    "+",
    "-", "*", "/", "<", "<=", ">", ">=", "==", "!=", "=", "1", "0.5", "1e3", "14 V", "'LFP'", '"x"',
    "'", "\\", "__class__", "lambda", "**", "&&", "≥", "\n", "\t", "\u00a0", "é", "𝐞", "\x00",
)


def tried(text: str) -> None:
    """Parse, check and compile; problems must lie within the text."""
    try:
        parse(text)
        compile_rules([RuleSource("r", read(text), None, {n: v for n, (_, v) in LIMITS.items()})])
    except ExpressionRefused as refused:
        assert refused.problems and str(refused)
        assert all(0 <= each.offset <= len(text) and each.length >= 1 for each in refused.problems)


@settings(max_examples=400)
@given(st.text(max_size=60))
@example("answer.")
@example("1e")
@example("a" * 5000)
def test_any_text(text: str) -> None:
    tried(text)


@settings(max_examples=600)
@given(st.lists(st.sampled_from(PIECES), max_size=25), st.sampled_from(("", " ")))
def test_any_words(pieces: list[str], between: str) -> None:
    tried(between.join(pieces))


@settings(max_examples=200)
@given(st.lists(st.sampled_from("([-abs(not "), max_size=400).map("".join))
def test_any_nesting(text: str) -> None:
    tried(text)
