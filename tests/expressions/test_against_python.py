"""On exact values every expression gives what Python gives, and is cut up as Python cuts it.

Arithmetic is Python's own; where two numbers are compared, Python is given both rounded to the 12
significant digits that figures have.
"""

from __future__ import annotations

import ast
import math
import random
import re
import textwrap
from decimal import ROUND_HALF_EVEN, Context, Decimal
from typing import Any

import pytest

from expressions.drawn import AMOUNTS, INFOS, PYTHON, VOCABULARY, Draw, for_python, thing
from garboard.expressions import FAILED, PASSED, RuleSource, compile_rules, parse, read_expression
from garboard.expressions.evaluate import Evaluation, Surroundings
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
    Path,
    Text,
    Truth,
    children,
)
from garboard.values import OUTSIDE_METHOD, Bounds, Unknown, same_value

UNDEFINED = (ZeroDivisionError, OverflowError, ValueError)


def as_figure(value: Any) -> Any:
    """A number with 12 significant digits, by way of decimal arithmetic; the rest as it is."""
    if not isinstance(value, float) or not math.isfinite(value):
        return value
    return float(Context(prec=12, rounding=ROUND_HALF_EVEN).create_decimal(Decimal(value)))


class RoundedComparisons(ast.NodeTransformer):
    """Both sides of every comparison of order, as figures."""

    def visit_Compare(self, node: ast.Compare) -> ast.Compare:
        self.generic_visit(node)
        if isinstance(node.ops[0], (ast.In, ast.NotIn)):
            return node
        sides = [ast.Call(ast.Name("as_figure", ast.Load()), [each], [])
                 for each in (node.left, *node.comparators)]
        return ast.Compare(sides[0], node.ops, sides[1:])


def python_value(text: str, item: dict[str, Any]) -> Any:
    """What Python itself makes of the text; an exception where it is not defined."""
    names = {**PYTHON, "thing": for_python(item), "as_figure": as_figure}
    tree = RoundedComparisons().visit(ast.parse(in_one_line(text), mode="eval"))
    try:
        value = eval(compile(ast.fix_missing_locations(tree), "<drawn>", "eval"), names)
    except UNDEFINED as undefined:
        return undefined
    return OverflowError() if isinstance(value, float) and not math.isfinite(value) else value


def source(text: str) -> RuleSource:
    return RuleSource(text, read_expression(text, VOCABULARY, "thing", INFOS), None, AMOUNTS)


@pytest.mark.parametrize("seed", range(20))
def test_conditions_come_out_as_in_python(seed: int) -> None:
    """Five hundred drawn conditions a seed, in one program, on one thing."""
    draw = Draw(seed)
    texts = [draw.truth(depth=1 + number % 3) for number in range(500)]
    compiled = compile_rules([source(text) for text in texts])
    item = thing(random.Random(seed))
    rows = compiled.run({"thing": [item]})
    assert len(rows) == 500
    decided = 0
    for text, row in zip(texts, rows, strict=True):
        expected = python_value(text, item)
        if isinstance(expected, UNDEFINED):
            # Python leaves out parts that do not matter; what it cannot tell, we do not make up
            assert row[2] in (PASSED, FAILED) or row[3].reason == OUTSIDE_METHOD, text
            continue
        if row[3] is not None:
            # an undefined part that Python did not look at
            assert row[3].reason == OUTSIDE_METHOD, text
            continue
        assert (row[2] == PASSED) is expected, text
        decided += 1
    assert decided > 400


@pytest.mark.parametrize("seed", range(10))
def test_numbers_come_out_as_in_python(seed: int) -> None:
    """Two hundred drawn figures a seed: compiled and evaluated the slow way."""
    draw = Draw(1000 + seed)
    item = thing(random.Random(seed))
    texts = [draw.number(depth=1 + number % 4) for number in range(200)]
    rows = compile_rules([source(f"({text}) >= 0") for text in texts]).run({"thing": [item]})
    defined = 0
    for text, row in zip(texts, rows, strict=True):
        expected = python_value(text, item)
        slow = read_expression(text, VOCABULARY, "thing", INFOS, wanted=None)
        given = Evaluation(Surroundings(item, {}, {}, AMOUNTS)).value(slow.root)
        assert same_value(given, row[4][0]), text
        if isinstance(given, (Unknown, Bounds)):
            # of the least and greatest an undefined part leaves bounds
            assert given.causes[0].reason == OUTSIDE_METHOD, text
        elif not isinstance(expected, UNDEFINED):
            assert given == expected, text
            defined += 1
    assert defined > 120


# the tree ----------------------------------------------------------------------------------------
def ours(node: Expression) -> Any:
    """A tree as nested tuples."""
    match node:
        case Number() | Text() | Truth():
            return node.value
        case Path():
            return "name", ".".join(word.text for word in node.words)
        case Listing():
            return "list", *(item.value for item in node.items)
        case Negative():
            return "-", ours(node.operand)
        case Not():
            return "not", ours(node.operand)
        case Logic():
            return node.word, *map(ours, node.parts)
        case Arithmetic():
            result = ours(node.operands[0])
            for operator, operand in zip(node.operators, node.operands[1:], strict=True):
                result = (operator, result, ours(operand))
            return result
        case Comparison():
            return "compare", node.operators, *map(ours, node.operands)
        case Conditional():
            return "if", *map(ours, children(node))
        case Call():
            return "call", node.function.text, *map(ours, node.arguments)
        case Gathering():
            condition = () if node.condition is None else (ours(node.condition),)
            return ("each", node.function.text, ours(node.element), node.variable.text,
                    ours(node.collection), *condition)
    raise TypeError(node)


SIGNS = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Lt: "<", ast.LtE: "<=",
         ast.Gt: ">", ast.GtE: ">=", ast.Eq: "==", ast.NotEq: "!=", ast.In: "in",
         ast.NotIn: "not in", ast.And: "and", ast.Or: "or"}


def pythons(node: ast.expr) -> Any:
    """Python's own tree in the same form."""
    match node:
        case ast.Constant():
            return node.value
        case ast.Name():
            return "name", node.id
        case ast.Attribute():
            return "name", ast.unparse(node)
        case ast.Tuple() | ast.List():
            return "list", *(element.value for element in node.elts)
        case ast.UnaryOp(op=ast.USub()):
            return "-", pythons(node.operand)
        case ast.UnaryOp():
            return "not", pythons(node.operand)
        case ast.BoolOp():
            return SIGNS[type(node.op)], *map(pythons, node.values)
        case ast.BinOp():
            return SIGNS[type(node.op)], pythons(node.left), pythons(node.right)
        case ast.Compare():
            return ("compare", tuple(SIGNS[type(op)] for op in node.ops), pythons(node.left),
                    *map(pythons, node.comparators))
        case ast.IfExp():
            return "if", pythons(node.test), pythons(node.body), pythons(node.orelse)
        case ast.Call(args=[ast.GeneratorExp() as loop]):
            (each,) = loop.generators
            return ("each", ast.unparse(node.func), pythons(loop.elt), ast.unparse(each.target),
                    pythons(each.iter), *map(pythons, each.ifs))
        case ast.Call():
            return "call", ast.unparse(node.func), *map(pythons, node.args)
    raise TypeError(node)


def in_one_line(text: str) -> str:
    return f"({text}\n)"


@pytest.mark.parametrize("seed", range(4))
def test_trees_are_those_of_python(seed: int) -> None:
    draw = Draw(2000 + seed)
    for number in range(150):
        text = draw.truth(depth=1 + number % 5) if number % 2 else draw.number(1 + number % 5)
        assert ours(parse(text).root) == pythons(ast.parse(in_one_line(text), mode="eval").body)


@pytest.mark.parametrize("text", [
    "a or b and c", "not a and b", "not a == b", "not a in (1, 2)", "a - b - c", "a / b * c",
    "a + b * c", "-a * b", "-a + b", "a - -b", "a--b", "- - a", "a < b == c",
    "a if b else c if d else e",
    "a if b or c else d and e", "not not a", "a and not b or c", "a.b.c.d < 1", "a . b < 1",
    "a not in ('x', 'y')", "max(a, b if c else d)", "all(a if b else c for d in e.f if (g))",
    "(a)", "((a or b))", "a == true", "a<-1", "a*-b", "1 if a else-1",
])
def test_precedence_is_that_of_python(text: str) -> None:
    plain = text.replace("true", "True")
    assert ours(parse(text).root) == pythons(ast.parse(plain, mode="eval").body)


# spots -------------------------------------------------------------------------------------------
def spots(node: Expression) -> list[tuple[int, int]]:
    """Offset and length of every part, from the outside in."""
    mine = [(node.offset, node.length)]
    for part in children(node):
        mine += spots(part)
    return mine


@pytest.mark.parametrize("seed", range(4))
def test_every_part_knows_its_spot(seed: int) -> None:
    """What stands at the spot of a part is the part: read on its own it gives the same tree."""
    draw = Draw(3000 + seed)
    for number in range(50):
        text = draw.truth(depth=1 + number % 5)
        _reads_alone(text, parse(text).root)


def _reads_alone(text: str, node: Expression) -> None:
    assert ours(parse(text[node.offset:node.offset + node.length]).root) == ours(node)
    for part in children(node):
        assert node.offset <= part.offset
        assert part.offset + part.length <= node.offset + node.length
        _reads_alone(text, part)


def test_spots_count_characters_not_bytes() -> None:
    text = 'a == "größe Ω" and b == "µ"\n  and c.d < 1'
    (first, second, third) = children(parse(text).root)
    assert (first.offset, first.length) == (0, 14)
    assert text[second.offset:second.offset + second.length] == 'b == "µ"'
    assert text[third.offset:third.offset + third.length] == "c.d < 1"


def test_spots_hold_in_folded_text() -> None:
    text = textwrap.dedent("""\
        thing.on
          and thing.x
          <= half
    """)
    (_, second) = children(parse(text).root)
    assert re.sub(r"\s+", " ", text[second.offset:second.offset + second.length]) == (
        "thing.x <= half")
