"""What may be compared with what: numbers of one dimension, texts among their choices, dates."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from garboard.errors import nearest
from garboard.expressions.check.calculate import alike
from garboard.expressions.check.scope import Scope
from garboard.expressions.tree import (
    Comparison,
    Day,
    Expression,
    LimitName,
    Listing,
    Literal,
    Text,
    Word,
)
from garboard.expressions.types import TRUTH, Type

_EQUATIONS = ("==", "!=")


def compared(node: Comparison, scope: Scope) -> Comparison:
    """A comparison whose operands are typed; each neighbouring pair must go together."""
    if len(node.operators) > 1 and {"in", "not in"} & {*node.operators}:
        scope.complain("expression-chain", node, " ".join(node.operators),
                       "a chain of <, <=, >, >=, == and != only",
                       "split it into two comparisons joined by 'and'")
        return replace(node, type=TRUTH)
    operands = list(node.operands)
    for place, operator in enumerate(node.operators):
        left, right = operands[place:place + 2]
        if operator in ("in", "not in"):
            operands[place + 1] = _membership(left, right, scope)
        else:
            operands[place:place + 2] = _pair(left, operator, right, scope)
    return replace(node, operands=tuple(operands), type=TRUTH)


def _type(node: Expression) -> Type:
    assert node.type is not None
    return node.type


def _pair(left: Expression, operator: str, right: Expression,
          scope: Scope) -> tuple[Expression, Expression]:
    one, other = _type(left), _type(right)
    if one.is_unclear or other.is_unclear:
        return left, right
    if one.is_number and other.is_number:
        alike(one, other, right, scope)
        return left, right
    if one.kind == "date" and isinstance(right, Text):
        return left, _day(right, scope)
    if other.kind == "date" and isinstance(left, Text):
        return _day(left, scope), right
    if one.kind != other.kind:
        scope.complain("expression-type", right,
                       f"{one.described()} {operator} {other.described()}",
                       "two values of the same kind",
                       "use 'in' for a list" if "texts" in (one.kind, other.kind) else "")
    elif one.kind in ("text", "truth") and operator not in _EQUATIONS:
        scope.complain("expression-type", right, f"{operator!r} between {one.described()} and "
                       f"{other.described()}", "'==' or '!='")
    elif one.kind == "texts":
        scope.complain("expression-type", right, "two lists", "'in' and one text")
    elif one.kind == "text":
        _choices(left, right, scope)
    return left, right


def _choices(left: Expression, right: Expression, scope: Scope) -> None:
    """Two texts that can never be the same are a slip."""
    one, other = _type(left).choices, _type(right).choices
    if one is None or other is None or set(one) & set(other):
        return
    literal, known = (left, other) if isinstance(left, Text) else (right, one)
    if isinstance(literal, Text):
        _not_a_choice(literal.value, known, literal, scope)
    else:
        scope.complain("expression-choice", right, "two texts that are never the same",
                       f"one of {', '.join(known)}")


def _not_a_choice(value: str, known: tuple[str, ...], spot: Expression | Word,
                  scope: Scope) -> None:
    by_fold = {choice.casefold(): choice for choice in known}
    guess = by_fold.get(value.casefold()) or nearest(value, known, cutoff=0.6)
    scope.complain("expression-choice", spot, value, f"one of {', '.join(known)}",
                   f"did you mean {guess!r}?" if guess else "")


def _day(text: Text, scope: Scope) -> Text | Day:
    try:
        return Day(text.offset, text.length, date.fromisoformat(text.value), Type("date"))
    except ValueError:
        scope.complain("expression-date", text, text.value,
                       "a date as year-month-day, such as 2026-04-18")
        return text


# lists -------------------------------------------------------------------------------------------
def _membership(left: Expression, right: Expression, scope: Scope) -> Expression:
    one, other = _type(left), _type(right)
    if one.is_unclear or other.is_unclear:
        return right
    if isinstance(right, LimitName) and other.kind == "texts":
        if one.kind != "text":
            scope.complain("expression-type", right, f"{one.described()} in a list of texts",
                           "a text before 'in'")
        elif one.choices is not None:
            for value in other.choices or ():
                if value not in one.choices:
                    _not_a_choice(value, one.choices, right, scope)
        return right
    if not isinstance(right, Listing):
        scope.complain("expression-list-needed", right, other.described(),
                       'a list, such as ("a", "b"), or a limit that is one',
                       "'any(...)' looks through several things" if other.kind == "many" else "")
        return right
    return _listed(left, one, right, scope)


def _listed(left: Expression, one: Type, listing: Listing, scope: Scope) -> Listing:
    items: list[Literal] = []
    for item in listing.items:
        if one.kind == "date" and isinstance(item, Text):
            items.append(_day(item, scope))
            continue
        kind = _type(item)
        if one.is_number and kind.is_number:
            alike(one, kind, item, scope)
        elif one.kind != kind.kind or one.kind == "truth":
            scope.complain("expression-type", item, f"{one.described()} in a list of "
                           f"{kind.described()}", f"values like {one.described()}")
        elif one.choices is not None and isinstance(item, Text) and item.value not in one.choices:
            _not_a_choice(item.value, one.choices, item, scope)
        items.append(item)
    return replace(listing, items=tuple(items), type=Type("texts"))
