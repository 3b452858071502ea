"""Source for the parts of an expression, each computed under a name of its own."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from garboard.expressions.generate.body import Body
from garboard.expressions.generate.loops import LOOPS
from garboard.expressions.rule import LimitValue
from garboard.expressions.tree import (
    AnswerName,
    Arithmetic,
    Call,
    Comparison,
    Conditional,
    Day,
    Expression,
    Gathering,
    LimitName,
    Listing,
    Logic,
    Negative,
    Not,
    Number,
    Read,
    Text,
    Truth,
)

#: The class a value of a kind has when it is exact, by its name in the generated source.
_CLASS: Final = {"number": "float", "count": "int", "text": "str", "texts": "tuple", "date": "date"}


class Values:
    """Writes the values of one rule's expressions into a body.

    ``loops`` names the variable of every loop around the spot, ``names`` the value of every part.
    """

    def __init__(self, body: Body, limits: Mapping[str, LimitValue]) -> None:
        self.body, self.limits = body, limits
        self.loops: dict[str, str] = {}
        self.names: dict[int, str] = {}

    def value(self, node: Expression) -> str:
        """The name under which the value of a part is found."""
        name = self._value(node)
        self.names[id(node)] = name
        return name

    def _value(self, node: Expression) -> str:
        match node:
            case Number() | Text() | Day():
                return self.body.constants.name(node.value)
            case Truth():
                return str(node.value)
            case Listing():
                return self.body.constants.name(tuple(item.value for item in node.items))
            case LimitName():
                return self.body.constants.name(self.limits[node.name])
            case AnswerName():
                return self._kept(("answer", node.question),
                                  f"answers[{self.body.constants.name(node.question)}]")
            case Read():
                return self._read(node)
            case Negative():
                operand = self.value(node.operand)
                return self._kept(("-", operand), f"-{operand}")
            case Not():
                return self._negated(self.value(node.operand))
            case Logic():
                return self._logic(node)
            case Arithmetic():
                return self._arithmetic(node)
            case Comparison():
                return self._comparison(node)
            case Conditional():
                return self._conditional(node)
            case Call():
                return self._call(node)
            case Gathering():
                return self._gathered(node)
            case _:
                raise TypeError(f"{type(node).__name__} is not part of a checked expression")

    def _kept(self, key: tuple[str, ...], source: str) -> str:
        return self.body.named(key, source)[0]

    # reading -------------------------------------------------------------------------------------
    def thing(self, root: str, steps: tuple[str, ...]) -> str:
        """The thing that relations lead to; unknown where there is none."""
        thing = self.loops.get(root) or ("item" if root == "item" else
                                         self._kept(("root", root), f"roots[{self._key(root)}]"))
        for step in steps:
            raw, key = self.raw(thing, step), self._key(step)
            thing = self._kept(("thing", raw),
                               f"{raw} if {raw} is not None else none_there({thing}, {key})")
        return thing

    def raw(self, thing: str, name: str) -> str:
        """What a thing holds under a name, as it is."""
        return self._kept(*self._raw(thing, name))

    def _raw(self, thing: str, name: str) -> tuple[tuple[str, ...], str]:
        return ("raw", thing, name), f"{thing}[{self._key(name)}]"

    def _key(self, name: str) -> str:
        return self.body.constants.name(name)

    def _read(self, node: Read) -> str:
        if not node.steps:
            return self.thing(node.root, ())
        thing, field = self.thing(node.root, node.steps[:-1]), node.steps[-1]
        kind = node.type.kind if node.type else "opaque"
        name, new = self.body.named(*self._raw(thing, field))
        if new and kind not in ("one", "many"):
            odd = (f"{name} is not True and {name} is not False" if kind == "truth"
                   else f"{name}.__class__ is not {_CLASS[kind]}")
            with self.body.block(f"if {odd} and {name}.__class__ is not Unknown:"):
                self.body.line(f"{name} = usable({name}, {self._key(kind)}, {thing}, "
                               f"{self._key(field)}, notes)")
        return name

    # logic ---------------------------------------------------------------------------------------
    def _negated(self, truth: str) -> str:
        return self._kept(("not", truth), f"False if {truth} is True else True if {truth} is False "
                                          f"else absent({truth})")

    def both(self, one: str, other: str) -> str:
        """Kleene's and."""
        return self._kept(("and", one, other), f"{other} if {one} is True else {one} & {other}")

    def _logic(self, node: Logic) -> str:
        parts = [self.value(part) for part in node.parts]
        result = parts[0]
        for part in parts[1:]:
            result = self.both(result, part) if node.word == "and" else self._kept(
                ("or", result, part), f"{part} if {result} is False else {result} | {part}")
        return result

    def _conditional(self, node: Conditional) -> str:
        condition, one, other = (self.value(part) for part in
                                 (node.condition, node.if_true, node.if_false))
        return self._kept(
            ("if", condition, one, other),
            f"chosen({condition}, {one}, {other}) if {one}.__class__ is Unknown or "
            f"{other}.__class__ is Unknown else {one} if {condition} is True else {other} "
            f"if {condition} is False else chosen({condition}, {one}, {other})")

    # comparing -----------------------------------------------------------------------------------
    def _comparison(self, node: Comparison) -> str:
        sides = [self.value(operand) for operand in node.operands]
        pairs = [self._pair(left, operator, right) for left, operator, right
                 in zip(node.operands, node.operators, node.operands[1:], strict=False)]
        result = pairs[0]
        for pair in pairs[1:]:
            result = self.both(result, pair)
        if len(pairs) == 1:
            return result
        operators = self.body.constants.name(node.operators)
        return self._kept(("chain", result, *sides),
                          f"{result} if {result}.__class__ is bool else "
                          f"settled({operators}, ({', '.join(sides)}), {result})")

    def _pair(self, one: Expression, operator: str, other: Expression) -> str:
        truth = self._compared(one, operator, other)
        if not isinstance(one, Conditional) and not isinstance(other, Conditional):
            return truth
        # what is not known of a choice may be known of both that can be chosen
        return self._kept(("spread", truth), f"{truth} if {truth}.__class__ is bool else "
                                             f"{self._spread(one, operator, other)}")

    def _compared(self, one: Expression, operator: str, other: Expression) -> str:
        left, right = self.names[id(one)], self.names[id(other)]
        if operator not in ("in", "not in"):
            return self._kept((operator, left, right), f"{left} {operator} {right}")
        kind = one.type.kind if one.type else "text"
        among = self._kept(("in", left, right), f"{left} in {right} if {left}.__class__ is "
                                                f"{_CLASS[kind]} else member_of({left}, {right})")
        return among if operator == "in" else self._negated(among)

    def _spread(self, one: Expression, operator: str, other: Expression) -> str:
        plain = (f"compared({self.names[id(one)]}, {self._key(operator)}, "
                 f"{self.names[id(other)]})")
        if isinstance(one, Conditional):
            choice, ways = one, (self._spread(one.if_true, operator, other),
                                 self._spread(one.if_false, operator, other))
        elif isinstance(other, Conditional):
            choice, ways = other, (self._spread(one, operator, other.if_true),
                                   self._spread(one, operator, other.if_false))
        else:
            return plain
        return (f"(chosen({self.names[id(choice.condition)]}, {', '.join(ways)}) "
                f"if {self.names[id(choice)]}.__class__ in uncertain else {plain})")

    # calculating ---------------------------------------------------------------------------------
    def _arithmetic(self, node: Arithmetic) -> str:
        sides = [self.value(operand) for operand in node.operands]
        result = sides[0]
        new = False
        for operator, side, operand in zip(node.operators, sides[1:], node.operands[1:],
                                           strict=True):
            source = f"{result} {operator} {side}"
            if operator == "/" and not self._is_nonzero(operand):
                source = (f"{source} if {side}.__class__ is float and {side} "
                          f"else quotient({result}, {side})")
            result, new = self.body.named((operator, result, side), source)
        if new:
            # an overflow leaves a number that minus itself is not nought
            with self.body.block(f"if {result}.__class__ is float and {result} - {result}:"):
                self.body.line(f"{result} = finite({result})")
        return result

    def _is_nonzero(self, node: Expression) -> bool:
        value = (self.limits[node.name] if isinstance(node, LimitName) else
                 node.value if isinstance(node, Number) else 0)
        return isinstance(value, (int, float)) and value != 0

    # calling -------------------------------------------------------------------------------------
    def _call(self, node: Call) -> str:
        name = node.function.text
        if name == "exists":
            return self._exists(node.arguments[0])
        if name == "count":
            things = self.collection(node.arguments[0])
            return self._kept(("count", things),
                              f"len({things}) if {things}.__class__ is tuple else {things}")
        sides = [self.value(argument) for argument in node.arguments]
        if name == "abs":
            return self._kept(("abs", *sides), f"abs({sides[0]})")
        if name == "sqrt":
            return self._kept(("sqrt", *sides), f"square_root({sides[0]})")
        helper = {"min": "least", "max": "greatest"}[name]
        general = f"{helper}(({', '.join(sides)}))"
        if len(sides) == 2:
            one, other = sides
            sign = "<=" if name == "min" else ">="
            general = (f"({one} if {one} {sign} {other} else {other}) if {one}.__class__ is float "
                       f"and {other}.__class__ is float else {general}")
        return self._kept((name, *sides), general)

    def _exists(self, node: Expression) -> str:
        if not isinstance(node, Read):
            raise TypeError("exists takes a relation")
        if len(node.steps) == 1:
            raw = self.raw(self.thing(node.root, ()), node.steps[0])
            return self._kept(("exists", raw),
                              f"{raw} is not None if {raw}.__class__ is not Unknown else {raw}")
        start, steps = self.thing(node.root, ()), self.body.constants.name(node.steps)
        return self._kept(("exists", start, steps), f"exists({start}, {steps})")

    def collection(self, node: Expression) -> str:
        """A tuple of things, or an unknown."""
        if not isinstance(node, Read):
            raise TypeError("a collection is a relation")
        thing = self.thing(node.root, node.steps[:-1])
        raw = self.raw(thing, node.steps[-1])
        return self._kept(("several", raw), f"{raw} if {raw}.__class__ is tuple else "
                                            f"several({thing}, {self._key(node.steps[-1])})")

    # loops ---------------------------------------------------------------------------------------
    def _gathered(self, node: Gathering) -> str:
        """A collection function: a loop over the things, where it is known which they are."""
        things = self.collection(node.collection)
        result, variable = self.body.fresh(), self.body.fresh()
        loop = LOOPS[node.function.text](self, node, result)
        self.loops[node.variable.text] = variable
        with self.body.block(f"if {things}.__class__ is tuple:"):
            loop.begin()
            with self.body.block(f"for {variable} in {things}:"):
                loop.each(None if node.condition is None else self.value(node.condition))
            loop.end()
        with self.body.block("else:"):
            self.body.line(f"{result} = {things}")
        del self.loops[node.variable.text]
        return result
