"""Functions: what they take and give, and loops over things a thing is related to."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from garboard.expressions.check.calculate import alike, negated
from garboard.expressions.check.scope import Scope
from garboard.expressions.functions import FUNCTION_NAMES, FUNCTIONS
from garboard.expressions.tree import Call, Expression, Gathering, Read, Word
from garboard.expressions.types import COUNT, TRUTH, UNCLEAR, Type, number

#: Types a part: any value, or (for the names of relations) without the demand for a value.
Visit = Callable[[Expression], Expression]


def called(node: Call, visit: Visit, value: Visit, scope: Scope) -> Call:
    """A plain call."""
    function = FUNCTIONS.get(node.function.text)
    if function is None:
        return replace(node, type=UNCLEAR)
    if not function.least <= len(node.arguments) or (
            function.most is not None and len(node.arguments) > function.most):
        scope.complain("expression-arguments", node, f"{len(node.arguments)} in the brackets of "
                       f"{function.name}", f"as in {function.example}")
        return replace(node, type=UNCLEAR)
    if function.name in ("exists", "count"):
        thing = visit(node.arguments[0])
        return replace(node, arguments=(thing,), type=_of_things(node, thing, scope))
    arguments = tuple(value(argument) for argument in node.arguments)
    return replace(node, arguments=arguments, type=_of_numbers(node, arguments, scope))


def _type(node: Expression) -> Type:
    assert node.type is not None
    return node.type


def _of_things(node: Call, thing: Expression, scope: Scope) -> Type:
    found = _type(thing)
    if found.is_unclear:
        return UNCLEAR
    if node.function.text == "count":
        if found.kind == "many":
            return COUNT
        scope.complain("expression-many-needed", thing, found.described(),
                       f"several things, as in {FUNCTIONS['count'].example}")
        return UNCLEAR
    if isinstance(thing, Read) and thing.steps and found.kind == "one":
        return TRUTH
    scope.complain("expression-exists", thing, found.described(),
                   f"a thing that may be there or not, as in {FUNCTIONS['exists'].example}",
                   "count(...) > 0 asks whether there is any" if found.kind == "many" else
                   "a field that is not recorded makes a rule not assessed by itself")
    return UNCLEAR


def _of_numbers(node: Call, arguments: tuple[Expression, ...], scope: Scope) -> Type:
    name = node.function.text
    first = _type(arguments[0])
    for argument in arguments:
        found = _type(argument)
        if found.is_unclear:
            return UNCLEAR
        if not found.is_number:
            scope.complain("expression-type", argument, found.described(),
                           f"a number in {name}(...)")
            return UNCLEAR
        if not alike(first, found, argument, scope):
            return UNCLEAR
    if name == "abs":
        return negated(first, arguments[0], scope)
    if name == "sqrt":
        root = first.measure.root()
        if root is None or first.measure.zero_point:
            scope.complain("expression-dimension", arguments[0], first.described(),
                           "a figure whose square root has a unit")
            return UNCLEAR
        return number(root)
    count = all(_type(argument).kind == "count" for argument in arguments)
    return COUNT if count else replace(first, kind="number")


# loops -------------------------------------------------------------------------------------------
def gathered(node: Gathering, visit: Visit, value: Visit, scope: Scope) -> Gathering:
    """A function over several things."""
    collection = visit(node.collection)
    several = _type(collection)
    if several.is_unclear or not _loop_allowed(node, several, collection, scope):
        return replace(node, collection=collection, type=UNCLEAR)
    slot = f"loop {len(scope.variables) + 1}"
    scope.variables[node.variable.text] = (slot, several.target or "")
    condition = None if node.condition is None else value(node.condition)
    element = visit(node.element) if node.function.text == "count" else value(node.element)
    del scope.variables[node.variable.text]
    found = UNCLEAR
    if condition is not None and not _type(condition).is_unclear and _type(condition) != TRUTH:
        scope.complain("expression-not-a-condition", condition, _type(condition).described(),
                       "something that is true or false after 'if'")
    elif not _type(element).is_unclear:
        found = _element_type(node, element, slot, scope)
    variable = Word(slot, node.variable.offset, node.variable.length)
    return replace(node, element=element, collection=collection, condition=condition,
                   variable=variable, type=found)


def _loop_allowed(node: Gathering, several: Type, collection: Expression, scope: Scope) -> bool:
    name = node.variable
    if several.kind != "many":
        scope.complain("expression-many-needed", collection, several.described(),
                       "several things, as in bank.batteries")
        return False
    taken = {*scope.names(), *FUNCTION_NAMES}
    if name.text in taken:
        scope.complain("expression-variable", name, name.text, "a name not used here yet",
                       f"such as {name.text[0]}" if name.text[0] not in taken else "")
        return False
    if len(scope.variables) >= scope.sizes.loops:
        scope.complain("expression-loops", node, f"more than {scope.sizes.loops} loops inside "
                       "one another", f"at most {scope.sizes.loops} (limit 'loops')")
        return False
    return True


def _element_type(node: Gathering, element: Expression, slot: str, scope: Scope) -> Type:
    name = node.function.text
    found = _type(element)
    if name == "count":
        if isinstance(element, Read) and element.root == slot and not element.steps:
            return COUNT
        scope.complain("expression-arguments", element,
                       "something other than the things themselves",
                       f"as in {FUNCTIONS['count'].example}")
        return UNCLEAR
    if name in ("all", "any"):
        if found == TRUTH:
            return TRUTH
        scope.complain("expression-not-a-condition", element, found.described(),
                       f"something that is true or false in {name}(...)")
        return UNCLEAR
    if not found.is_number:
        scope.complain("expression-type", element, found.described(), f"numbers in {name}(...)")
        return UNCLEAR
    return negated(found, element, scope) if name == "sum" else found
