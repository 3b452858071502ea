"""The smallest parts of an expression: values, names, calls and what stands in brackets.

    operand  = number | text | "true" | "false" | path | call | "(" conditional ")" | listing
    path     = name {"." name}
    call     = name "(" conditional {"," conditional} ")"
             | name "(" conditional "for" name "in" path ["if" condition] ")"
    listing  = "(" literal "," {literal ","} ")" | "[" literal {"," literal} "]"
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from garboard.errors import did_you_mean
from garboard.expressions.cursor import Cursor
from garboard.expressions.functions import FUNCTION_NAMES, GATHERING_NAMES
from garboard.expressions.scan import Token
from garboard.expressions.tree import (
    Call,
    Expression,
    Gathering,
    Listing,
    Literal,
    Negative,
    Number,
    Path,
    Text,
    Truth,
    Word,
)

Conditional = Callable[[Cursor], Expression]
_VALUE: Final = "a value, a name or an opening bracket"


def operand(cursor: Cursor, conditional: Conditional) -> Expression:
    """One operand; ``conditional`` reads a whole expression inside brackets."""
    start = cursor.at
    token = cursor.take()
    result: Expression
    if token.kind == "name":
        result = (_call(cursor, token, conditional) if cursor.sees("(") else _path(cursor, token))
    elif token.kind == "number":
        exact = token.text.isdigit()
        result = Number(token.offset, token.length, int(token.text) if exact else float(token.text))
    elif token.kind == "text":
        result = Text(token.offset, token.length, token.text)
    elif token.kind == "word" and token.text in ("true", "false"):
        result = Truth(token.offset, token.length, token.text == "true")
    elif token.kind == "sign" and token.text in "([":
        result = _bracketed(cursor, start, token, conditional)
    else:
        cursor.at = start
        _no_operand(cursor, token)
        raise AssertionError  # pragma: no cover - the line above always raises
    _nothing_hangs_on(cursor, result)
    return result


def _no_operand(cursor: Cursor, token: Token) -> None:
    if token.kind == "end":
        cursor.refuse("expression-incomplete", token, found="the end", expected=_VALUE)
    if token.text == "*":
        cursor.refuse("expression-star", token, expected=_VALUE)
    if token.text == "." and cursor.beyond().kind == "number":
        cursor.refuse("expression-number", token, found=f".{cursor.beyond().text}",
                      expected="a number such as 12 or 0.8",
                      hint=f"write 0.{cursor.beyond().text}")
    if token.text == ")":
        opened = cursor.at and cursor.tokens[cursor.at - 1].text == "("
        cursor.refuse("expression-operand", token, found="nothing in brackets" if opened else ")",
                      expected=_VALUE)
    cursor.refuse("expression-operand", token, expected=_VALUE)


def _nothing_hangs_on(cursor: Cursor, result: Expression) -> None:
    if cursor.sees("["):
        cursor.refuse("expression-subscript", cursor.next, expected="an operator, or the end",
                      hint="all(...), any(...), min(...) and the like look at every one of several")
    if cursor.sees("."):
        cursor.refuse("expression-attribute", cursor.next, expected="a name before the point",
                      hint="only things have fields")
    if cursor.sees("("):
        what = "a path" if isinstance(result, Path) else "a value"
        cursor.refuse("expression-call", cursor.next, found=f"brackets after {what}",
                      expected="an operator, or the end", hint="only functions are called")


def _path(cursor: Cursor, first: Token) -> Path:
    start = cursor.at - 1
    words = [Word(first.text, first.offset, first.length)]
    while cursor.took("."):
        token = cursor.next
        if token.kind != "name":
            cursor.refuse("expression-name-missing", token, found=token.text or "the end",
                          expected="a name after the point")
        cursor.take()
        words.append(Word(token.text, token.offset, token.length))
    return Path(*cursor.since(start), tuple(words))


# calls -------------------------------------------------------------------------------------------
def _call(cursor: Cursor, name: Token, conditional: Conditional) -> Call | Gathering:
    start = cursor.at - 1
    if name.text not in FUNCTION_NAMES:
        cursor.note("expression-function", name, expected=f"one of {', '.join(FUNCTION_NAMES)}",
                    hint=did_you_mean(name.text, FUNCTION_NAMES))
    opening = cursor.take()
    cursor.deeper()
    function = Word(name.text, name.offset, name.length)
    arguments: list[Expression] = []
    while not cursor.sees(")"):
        arguments.append(_argument(cursor, conditional))
        if cursor.sees("for"):
            return _gathering(cursor, start, opening, function, arguments, conditional)
        if not cursor.took(","):
            break
    _close(cursor, opening, ")")
    return Call(*cursor.since(start), function, tuple(arguments))


def _argument(cursor: Cursor, conditional: Conditional) -> Expression:
    after = cursor.beyond()
    if cursor.next.kind == "name" and (after.kind, after.text) == ("sign", "="):
        cursor.refuse("expression-named-argument", cursor.next, expected="the value alone")
    return conditional(cursor)


def _gathering(cursor: Cursor, start: int, opening: Token, function: Word,
               arguments: list[Expression], conditional: Conditional) -> Gathering:
    word = cursor.take()
    if function.text not in GATHERING_NAMES or len(arguments) > 1:
        cursor.refuse("expression-loop", word,
                      expected=f"{', '.join(GATHERING_NAMES)}, with nothing else in the brackets")
    name = cursor.take()
    if name.kind != "name":
        cursor.refuse("expression-loop", name, found=name.text or "the end",
                      expected="a name for each of them, as in 'for b in bank.batteries'")
    if not cursor.took("in"):
        cursor.refuse("expression-loop", cursor.next, found=cursor.next.text or "the end",
                      expected="'in' and the things to look at")
    collection = operand(cursor, conditional)
    condition = conditional(cursor) if cursor.took("if") else None
    if cursor.sees("for", "if"):
        cursor.refuse("expression-loop", cursor.next, expected="a closing bracket",
                      hint="join conditions with 'and'; put one function inside the other")
    _close(cursor, opening, ")")
    return Gathering(*cursor.since(start), function, arguments[0],
                     Word(name.text, name.offset, name.length), collection, condition)


# brackets ----------------------------------------------------------------------------------------
def _bracketed(cursor: Cursor, start: int, opening: Token,
               conditional: Conditional) -> Expression:
    closing = ")" if opening.text == "(" else "]"
    cursor.deeper()
    first = conditional(cursor) if not cursor.sees("]") else cursor.refuse(
        "expression-operand", cursor.next, found="an empty list", expected="values")
    if cursor.sees("for"):
        cursor.refuse("expression-loop", cursor.next,
                      expected=f"a collection function before the bracket: "
                               f"{', '.join(GATHERING_NAMES)}")
    if opening.text == "(" and not cursor.sees(","):
        _close(cursor, opening, closing)
        return first
    items = [_literal(cursor, first)]
    while cursor.took(","):
        if cursor.sees(closing):
            break
        items.append(_literal(cursor, conditional(cursor)))
        if len(items) > cursor.limits.collection:
            cursor.refuse("expression-list-size", opening,
                          found=f"more than {cursor.limits.collection} values",
                          expected=f"at most {cursor.limits.collection} (limit 'collection')")
    _close(cursor, opening, closing)
    return Listing(*cursor.since(start), tuple(items))


def _literal(cursor: Cursor, node: Expression) -> Literal:
    """A literal of a list; a sign before a number is part of it."""
    if isinstance(node, Negative) and isinstance(node.operand, Number):
        return Number(node.offset, node.length, -node.operand.value)
    if isinstance(node, (Number, Text, Truth)):
        return node
    written = cursor.text[node.offset:node.offset + node.length]
    return cursor.refuse("expression-list", Token("name", written, node.offset, node.length),
                         found=written[:40], expected="numbers or texts written out",
                         hint="a list that has a source is a limit")


def _close(cursor: Cursor, opening: Token, closing: str) -> None:
    cursor.back()
    if cursor.took(closing):
        return
    if cursor.next.kind == "end":
        cursor.refuse("expression-bracket", opening, found=f"{opening.text} is never closed",
                      expected=closing)
    if cursor.sees("="):
        cursor.refuse("expression-equals", cursor.next, hint="write '==' to compare")
    cursor.refuse("expression-operator-missing", cursor.next, found=cursor.next.text,
                  expected=f"an operator, a comma or {closing}")
