"""Random expressions over facts, shared by the property tests.

An expression is a nested tuple: an operation and its parts. Facts are numbered by their place, so
each occurs once, unless a test asks for a small pool of facts that repeat.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from hypothesis import settings
from hypothesis import strategies as st

from garboard.values import NOT_RECORDED, Bounds, Cause, Unknown, all_of, any_of, chosen, negated

property_test = settings(derandomize=True, deadline=None, max_examples=300)

#: Reads a fact: what its place in the expression stands for.
Facts = Mapping[str, Any]


def truth_trees(leaves: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    """Expressions of and, or, not and choice over some leaves."""
    return st.recursive(leaves, lambda inner: st.one_of(
        st.tuples(st.just("not"), inner),
        st.tuples(st.sampled_from(["and", "or"]), inner, inner),
        st.tuples(st.just("if"), inner, inner, inner)), max_leaves=7)


constants = st.tuples(st.just("constant"), st.booleans())
facts_once = st.just(("fact",))
facts_repeated = st.tuples(st.just("fact"), st.sampled_from("pqr"))


@st.composite
def comparisons(draw: st.DrawFn) -> Any:
    """A comparison of a number known between two whole ends, or of a sum of two, with a number."""
    ends = draw(st.lists(st.tuples(st.integers(-4, 4), st.integers(0, 3)), min_size=1, max_size=2))
    sign = draw(st.sampled_from(["<=", "<", ">=", ">", "==", "!="]))
    return ("compare", sign, tuple(ends), draw(st.integers(-6, 8)))


SIGNS: dict[str, Callable[[Any, Any], Any]] = {
    "<=": lambda a, b: a <= b, "<": lambda a, b: a < b, ">=": lambda a, b: a >= b,
    ">": lambda a, b: a > b, "==": lambda a, b: a == b, "!=": lambda a, b: a != b}


def numbered(tree: Any) -> Any:
    """The tree with a name for each fact: the one it has, or one of its own."""
    counter = itertools.count()

    def walk(node: Any) -> Any:
        if node[0] == "fact":
            return ("fact", node[1] if len(node) > 1 else f"f{next(counter)}")
        if node[0] == "compare":
            parts = tuple((f"n{next(counter)}", low, low + width) for low, width in node[2])
            return ("compare", node[1], parts, node[3])
        if node[0] in ("constant", "error"):
            return node
        return (node[0], *(walk(part) for part in node[1:]))

    return walk(tree)


def choices(tree: Any) -> dict[str, tuple[Any, ...]]:
    """All facts of a tree with every value each could have."""
    if tree[0] == "fact":
        return {tree[1]: (False, True)}
    if tree[0] == "compare":
        return {name: tuple(range(low, high + 1)) for name, low, high in tree[2]}
    found: dict[str, tuple[Any, ...]] = {}
    for part in tree[1:]:
        if isinstance(part, tuple):
            found.update(choices(part))
    return found


def completions(tree: Any) -> Iterator[dict[str, Any]]:
    """Every way the facts of a tree could turn out to be."""
    options = choices(tree)
    for values in itertools.product(*options.values()):
        yield dict(zip(options, values, strict=True))


def not_known(tree: Any) -> dict[str, Any]:
    """The facts of a tree as the engine holds them before they are known."""
    facts: dict[str, Any] = {}
    for name, values in choices(tree).items():
        if values[0] is False:
            facts[name] = Unknown.because(NOT_RECORDED, name)
        else:
            facts[name] = values[0] if len(values) == 1 else Bounds(
                values[0], values[-1], causes=(Cause(NOT_RECORDED, name),))
    return facts


def evaluated(tree: Any, facts: Facts) -> Any:
    """The value of a tree, by the operators and functions under test."""
    kind = tree[0]
    if kind in ("constant", "error"):
        return tree[1]
    if kind == "fact":
        return facts[tree[1]]
    if kind == "compare":
        number = facts[tree[2][0][0]]
        for name, _, _ in tree[2][1:]:
            number = number + facts[name]
        return SIGNS[tree[1]](number, tree[3])
    parts = [evaluated(part, facts) for part in tree[1:]]
    if kind == "not":
        return negated(parts[0])
    if kind == "and":
        return all_of(parts)
    return any_of(parts) if kind == "or" else chosen(parts[0], parts[1], parts[2])
