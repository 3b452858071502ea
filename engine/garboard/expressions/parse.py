"""From text to tree: a small grammar with the precedence that Python gives the same signs.

    conditional  = either ["if" either "else" conditional]
    either       = both {"or" both}
    both         = negation {"and" negation}
    negation     = "not" negation | comparison
    comparison   = sum {("<" | "<=" | ">" | ">=" | "==" | "!=" | "in" | "not in") sum}
    sum          = product {("+" | "-") product}
    product      = signed {("*" | "/") signed}
    signed       = "-" signed | operand                         (operand: see ``operand``)
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, Literal

from garboard.expressions.cursor import Cursor
from garboard.expressions.limits import DEFAULT_LIMITS, Limits
from garboard.expressions.operand import operand
from garboard.expressions.problem import ExpressionRefused
from garboard.expressions.tree import (
    Arithmetic,
    Comparison,
    Conditional,
    Expression,
    Listing,
    Logic,
    Negative,
    Not,
    Number,
    Parsed,
    Text,
    Truth,
)

_COMPARISONS: Final = ("<", "<=", ">", ">=", "==", "!=", "=", "in", "not")


def parse(text: str, limits: Limits = DEFAULT_LIMITS) -> Parsed:
    """The tree of an expression; ``ExpressionRefused`` with its problems when it is none."""
    cursor = Cursor(text, limits)
    root = conditional(cursor)
    if cursor.next.kind != "end":
        _unread(cursor)
    if cursor.problems:
        raise ExpressionRefused(text, cursor.problems)
    return Parsed(text, root)


def conditional(cursor: Cursor) -> Expression:
    """An expression of any kind."""
    start = cursor.at
    value = _either(cursor)
    if not cursor.took("if"):
        return value
    condition = _either(cursor)
    if not cursor.took("else"):
        cursor.refuse("expression-else", cursor.next, found="'if' without 'else'",
                      expected="value if condition else other value",
                      hint="when a rule applies is said by its 'applies_when'")
    cursor.deeper()
    other = conditional(cursor)
    cursor.back()
    return Conditional(*cursor.since(start), condition, value, other)


def _either(cursor: Cursor) -> Expression:
    return _logic(cursor, "or", _both)


def _both(cursor: Cursor) -> Expression:
    return _logic(cursor, "and", _negation)


def _logic(cursor: Cursor, word: Literal["and", "or"],
           part: Callable[[Cursor], Expression]) -> Expression:
    start = cursor.at
    parts = [part(cursor)]
    while cursor.took(word):
        parts.append(part(cursor))
    return parts[0] if len(parts) == 1 else Logic(*cursor.since(start), word, tuple(parts))


def _negation(cursor: Cursor) -> Expression:
    start = cursor.at
    if not cursor.took("not"):
        return _comparison(cursor)
    cursor.deeper()
    negated = _negation(cursor)
    cursor.back()
    return Not(*cursor.since(start), negated)


def _comparison(cursor: Cursor) -> Expression:
    start = cursor.at
    operands, operators = [_sum(cursor)], []
    while cursor.sees(*_COMPARISONS):
        if cursor.sees("not") and not (cursor.beyond().kind == "word"
                                       and cursor.beyond().text == "in"):
            break
        operator = cursor.take()
        sign = operator.text
        if sign == "=":
            cursor.note("expression-equals", operator, hint="write '==' to compare")
            sign = "=="
        elif sign == "not":
            cursor.take()
            sign = "not in"
        operators.append(sign)
        if cursor.sees("not"):
            cursor.refuse("expression-operand", cursor.next, expected="a value",
                          hint="put brackets around 'not ...'")
        operands.append(_members(cursor) if sign in ("in", "not in") else _sum(cursor))
    if not operators:
        return operands[0]
    return Comparison(*cursor.since(start), tuple(operators), tuple(operands))


def _members(cursor: Cursor) -> Expression:
    """What stands to the right of ``in``; a single value in brackets is a list of one."""
    start, bracket = cursor.at, cursor.sees("(")
    members = _sum(cursor)
    if bracket and isinstance(members, (Number, Text, Truth)):
        return Listing(*cursor.since(start), (members,))
    return members


def _sum(cursor: Cursor) -> Expression:
    return _arithmetic(cursor, ("+", "-"), _product)


def _product(cursor: Cursor) -> Expression:
    return _arithmetic(cursor, ("*", "/"), _signed)


def _arithmetic(cursor: Cursor, signs: tuple[str, str],
                part: Callable[[Cursor], Expression]) -> Expression:
    start = cursor.at
    operands, operators = [part(cursor)], []
    while cursor.sees(*signs):
        operators.append(cursor.take().text)
        operands.append(part(cursor))
    if not operators:
        return operands[0]
    return Arithmetic(*cursor.since(start), tuple(operators), tuple(operands))


def _signed(cursor: Cursor) -> Expression:
    start = cursor.at
    if not cursor.took("-"):
        return operand(cursor, conditional)
    cursor.deeper()
    negated = _signed(cursor)
    cursor.back()
    return Negative(*cursor.since(start), negated)


def _unread(cursor: Cursor) -> None:
    """Say why the expression does not end where its first part does."""
    token = cursor.next
    if cursor.sees(")", "]"):
        cursor.refuse("expression-bracket", token,
                      expected=f"an opening bracket before this {token.text}")
    if cursor.sees("for"):
        cursor.refuse("expression-loop", token,
                      expected="all(... for x in ...) or another collection function")
    if cursor.sees(","):
        before, after = cursor.tokens[cursor.at - 1], cursor.beyond()
        decimal = before.kind == after.kind == "number"
        cursor.refuse("expression-comma", token, expected="one expression",
                      hint=f"write {before.text}.{after.text}, with a point" if decimal else "")
    cursor.refuse("expression-operator-missing", token,
                  expected="an operator such as 'and' or '<=' before it, or the end")
