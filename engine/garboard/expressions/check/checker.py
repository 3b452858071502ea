"""The walk over a tree that resolves names and works out types, collecting all complaints."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from garboard.expressions.check.calculate import alike, combined, negated
from garboard.expressions.check.call import called, gathered
from garboard.expressions.check.checked import Checked
from garboard.expressions.check.compare import compared
from garboard.expressions.check.names import resolved
from garboard.expressions.check.scope import Scope
from garboard.expressions.limits import DEFAULT_LIMITS, Limits
from garboard.expressions.parse import parse
from garboard.expressions.problem import ExpressionRefused
from garboard.expressions.tree import (
    Arithmetic,
    Call,
    Comparison,
    Conditional,
    Expression,
    Gathering,
    Listing,
    Logic,
    Negative,
    Not,
    Number,
    Parsed,
    Path,
    Text,
    Truth,
)
from garboard.expressions.types import COUNT, PLAIN, TRUTH, UNCLEAR, Type, TypeKind
from garboard.expressions.vocabulary import NameInfo, Vocabulary

_NONE: Final[Mapping[str, NameInfo]] = MappingProxyType({})


def check(parsed: Parsed, vocabulary: Vocabulary, about: str,
          limits: Mapping[str, NameInfo] = _NONE, answers: Mapping[str, NameInfo] = _NONE, *,
          wanted: TypeKind | None = "truth", sizes: Limits = DEFAULT_LIMITS) -> Checked:
    """The expression with names resolved and types known, for a rule about the subject ``about``.

    ``limits`` are the pack's limits by name, ``answers`` its questions by id. The whole must be of
    the kind ``wanted`` (``None``: any value). Raises ``ExpressionRefused`` with all problems, and
    ``KeyError`` for a subject the vocabulary does not have.
    """
    names = vocabulary.subjects[about]
    scope = Scope(vocabulary, about, limits, answers, sizes)
    root = _Checker(scope).value(parsed.root)
    found = _type(root)
    if not scope.problems and wanted is not None and found.kind != wanted:
        scope.complain("expression-not-a-condition" if wanted == "truth" else "expression-type",
                       root, found.described(), Type(wanted).described(),
                       "compare it with something" if found.is_number and wanted == "truth" else "")
    if scope.problems:
        raise ExpressionRefused(parsed.text, scope.problems)
    assert names is not None
    return Checked(parsed.text, about, root, vocabulary.lists.get(about, about),
                   tuple(sorted(scope.limits_used)), tuple(sorted(scope.answers_used)),
                   tuple(sorted(scope.reads)))


def read_expression(text: str, vocabulary: Vocabulary, about: str,
                    limits: Mapping[str, NameInfo] = _NONE,
                    answers: Mapping[str, NameInfo] = _NONE, *,
                    wanted: TypeKind | None = "truth", sizes: Limits = DEFAULT_LIMITS) -> Checked:
    """``parse`` and ``check`` in one."""
    return check(parse(text, sizes), vocabulary, about, limits, answers, wanted=wanted, sizes=sizes)


def _type(node: Expression) -> Type:
    assert node.type is not None
    return node.type


class _Checker:
    def __init__(self, scope: Scope) -> None:
        self.scope = scope

    def value(self, node: Expression) -> Expression:
        """The part, typed; complains when it is no value one could calculate with."""
        typed = self.visit(node)
        found = _type(typed)
        if found.kind == "many":
            self.scope.complain("expression-many", typed, found.described(),
                                "a collection function such as all(...), any(...) or count(...)")
        elif found.kind == "one":
            self.scope.complain("expression-thing", typed, found.described(), "one of its fields",
                                "exists(...) asks whether there is one; things are told apart by "
                                "their id")
        elif found.kind == "opaque":
            self.scope.complain("expression-opaque", typed, found.described(),
                                "a number, a text, a date, or true or false")
        elif isinstance(typed, Listing):
            self.scope.complain("expression-list-outside", typed, "a list",
                                "a list stands to the right of 'in' only")
        else:
            return typed
        return replace(typed, type=UNCLEAR)

    def visit(self, node: Expression) -> Expression:
        """The part, typed."""
        match node:
            case Number():
                return replace(node, type=COUNT if isinstance(node.value, int) else PLAIN)
            case Text():
                return replace(node, type=Type("text", choices=(node.value,)))
            case Truth():
                return replace(node, type=TRUTH)
            case Listing():
                items = tuple(replace(item, type=_type(self.visit(item))) for item in node.items)
                return replace(node, items=items, type=Type("texts"))
            case Path():
                return resolved(node, self.scope)
            case Not():
                return replace(node, operand=self.truth(node.operand, "after 'not'"), type=TRUTH)
            case Logic():
                return replace(node, type=TRUTH, parts=tuple(
                    self.truth(part, f"beside {node.word!r}") for part in node.parts))
            case Negative():
                operand = self.value(node.operand)
                return replace(node, operand=operand,
                               type=negated(_type(operand), operand, self.scope))
            case Arithmetic():
                return self.arithmetic(node)
            case Comparison():
                return compared(replace(node, operands=self.operands(node)), self.scope)
            case Conditional():
                return self.conditional(node)
            case Call():
                return called(node, self.visit, self.value, self.scope)
            case Gathering():
                return gathered(node, self.visit, self.value, self.scope)
            case _:
                raise TypeError(f"{type(node).__name__} is not a node the parser makes")

    def truth(self, node: Expression, where: str) -> Expression:
        typed = self.value(node)
        found = _type(typed)
        if not found.is_unclear and found.kind != "truth":
            self.scope.complain("expression-not-a-condition", typed, found.described(),
                                f"something that is true or false {where}",
                                "compare it with something" if found.kind != "text" else
                                "write the comparison out on both sides of 'and' and 'or'")
        return typed

    def operands(self, node: Comparison) -> tuple[Expression, ...]:
        """The operands of a comparison; to the right of ``in`` a list may stand."""
        return (self.value(node.operands[0]), *(
            self.visit(operand) if operator in ("in", "not in") else self.value(operand)
            for operator, operand in zip(node.operators, node.operands[1:], strict=True)))

    def arithmetic(self, node: Arithmetic) -> Arithmetic:
        operands = tuple(self.value(operand) for operand in node.operands)
        found = _type(operands[0])
        for operator, operand in zip(node.operators, operands[1:], strict=True):
            found = combined(found, operator, _type(operand), operand, self.scope)
        return replace(node, operands=operands, type=found)

    def conditional(self, node: Conditional) -> Conditional:
        condition = self.truth(node.condition, "after 'if'")
        if_true, if_false = self.value(node.if_true), self.value(node.if_false)
        return replace(node, condition=condition, if_true=if_true, if_false=if_false,
                       type=self.either(_type(if_true), _type(if_false), if_false))

    def either(self, one: Type, other: Type, spot: Expression) -> Type:
        """The type of a value that is one of two."""
        if one.is_unclear or other.is_unclear:
            return UNCLEAR
        if one.is_number and other.is_number:
            if not alike(one, other, spot, self.scope):
                return UNCLEAR
            return one if one.kind == "number" else other
        if one.kind != other.kind or one.kind == "texts":
            self.scope.complain("expression-type", spot, f"{one.described()} or else "
                                f"{other.described()}", "two values of the same kind")
            return UNCLEAR
        if one.choices is None or other.choices is None:
            return replace(one, choices=None)
        return replace(one, choices=tuple(dict.fromkeys((*one.choices, *other.choices))))
