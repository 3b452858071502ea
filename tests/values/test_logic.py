"""Three-valued logic: the whole truth table; soundness and exactness against all completions."""

from __future__ import annotations

import itertools
import operator
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.values import (
    CALCULATION_ERROR,
    NOT_RECORDED,
    OUTSIDE_METHOD,
    Bounds,
    Cause,
    Unknown,
    all_of,
    any_of,
    chosen,
    member_of,
    negated,
    same_value,
)

from . import draws

T, F = True, False
U = Unknown.because(NOT_RECORDED, "u")
V = Unknown.because(OUTSIDE_METHOD, detail="v")
UV = U.joined(V)
E = Unknown.because(CALCULATION_ERROR, detail="e")
G = Unknown.because(CALCULATION_ERROR, detail="g")
EG = E.joined(G)

#: left, right, left and right, left or right
TABLE = [
    (T, T, T, T), (T, F, F, T), (F, T, F, T), (F, F, F, F),
    (T, U, U, T), (U, T, U, T), (F, U, F, U), (U, F, F, U),
    (U, U, U, U), (U, V, UV, UV), (V, U, UV, UV),
    (T, E, E, E), (E, T, E, E), (F, E, E, E), (E, F, E, E),
    (U, E, E, E), (E, U, E, E), (E, E, E, E), (E, G, EG, EG),
]


@pytest.mark.parametrize(("left", "right", "both", "either"), TABLE)
def test_and_and_or_follow_the_table(left: Any, right: Any, both: Any, either: Any) -> None:
    assert same_value(left & right, both)
    assert same_value(left | right, either)
    assert same_value(all_of([left, right]), both)
    assert same_value(any_of([left, right]), either)


@pytest.mark.parametrize(("truth", "opposite"), [(T, F), (F, T), (U, U), (UV, UV), (E, E)])
def test_not_follows_the_table(truth: Any, opposite: Any) -> None:
    assert same_value(negated(truth), opposite)


def test_the_table_names_every_pair_of_true_false_unknown_and_error() -> None:
    def kind(value: Any) -> str:
        return str(value) if isinstance(value, bool) else "E" if value.is_error else "U"

    assert {(kind(row[0]), kind(row[1])) for row in TABLE} == set(
        itertools.product(["True", "False", "U", "E"], repeat=2))


def test_exclusive_or_of_unknowns_is_unknown() -> None:
    assert same_value(U ^ V, UV)
    assert same_value(True ^ U, U)


def test_all_and_any_of_nothing() -> None:
    assert all_of([]) is True
    assert any_of([]) is False


@pytest.mark.parametrize("value", [U, E, Bounds(1.0, 2.0)])
def test_the_truth_value_of_what_is_not_decided_is_forbidden(value: Any) -> None:
    with pytest.raises(TypeError):
        bool(value)
    with pytest.raises(TypeError):
        _ = "yes" if value else "no"
    with pytest.raises(TypeError):
        _ = value and True
    with pytest.raises(TypeError):
        _ = not value


@pytest.mark.parametrize("operation", [operator.and_, operator.or_, operator.xor])
@pytest.mark.parametrize("other", [1, 0, None, "yes", 1.0])
def test_logic_takes_only_truths(operation: Any, other: Any) -> None:
    with pytest.raises(TypeError):
        operation(U, other)
    with pytest.raises(TypeError):
        operation(other, U)


SIGNS = sorted(draws.SIGNS)


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("other", [1.0, 1, "text", True, None, Bounds(0.0, 1.0), V, E])
def test_an_equation_or_comparison_with_an_unknown_side_is_unknown(sign: str, other: Any) -> None:
    for verdict in (draws.SIGNS[sign](U, other), draws.SIGNS[sign](other, U)):
        assert isinstance(verdict, Unknown)
        assert verdict.is_error == (other is E)
        assert "u" in verdict.paths or other is E


@pytest.mark.parametrize(("thing", "collection", "verdict"), [
    (1.0, [1.0, 2.0], T), (3.0, [1.0, 2.0], F), (1.0, [], F),
    (U, [1.0], U), (1.0, U, U), (U, V, UV),
    (1.0, [1.0, U], T), (2.0, [1.0, U], U), ("a", ["a", "b"], T), ("c", ["a", U], U),
    (E, [], E), (E, [1.0], E), (1.0, [1.0, E], E), (1.0, E, E), (U, E, E),
    (Bounds(0.0, 1.0), [5.0, 6.0], F),
])
def test_membership(thing: Any, collection: Any, verdict: Any) -> None:
    assert same_value(member_of(thing, collection), verdict)


def test_membership_of_a_bounded_number_that_may_equal_is_unknown() -> None:
    assert isinstance(member_of(Bounds(0.0, 1.0), [1.0]), Unknown)


@pytest.mark.parametrize(("condition", "one", "other", "result"), [
    (T, 1.0, 2.0, 1.0), (F, 1.0, 2.0, 2.0), (T, 1.0, U, 1.0), (F, 1.0, U, U),
    (U, "a", "a", "a"), (U, "a", "b", U), (U, T, F, U), (U, T, T, T), (U, T, V, UV),
    (U, 2.0, 2, 2.0), (E, 1.0, 1.0, E), (T, 1.0, E, E), (F, E, 1.0, E), (U, E, G, EG),
    (E, G, T, EG),
])
def test_a_choice(condition: Any, one: Any, other: Any, result: Any) -> None:
    assert same_value(chosen(condition, one, other), result)


def test_a_choice_between_numbers_on_an_unknown_condition_contains_both() -> None:
    either = chosen(U, Bounds(1.0, 2.0, 1.5, causes=(Cause(NOT_RECORDED, "b"),)), 5.0)
    assert isinstance(either, Bounds)
    assert (either.lo, either.hi, either.nominal) == (1.0, 5.0, None)
    assert {cause.path for cause in either.causes} == {"u", "b"}


def test_a_choice_keeps_the_assumption_of_a_branch() -> None:
    either = chosen(U, Bounds(1.0, 2.0, basis=("assumption",)), 5.0)
    assert isinstance(either, Bounds)
    assert either.assumed


def test_a_choice_needs_a_truth() -> None:
    with pytest.raises(TypeError):
        chosen(1, "a", "b")  # type: ignore[arg-type]


@draws.property_test
@given(st.permutations([T, F, U, V, E, G]), st.integers(0, 6))
def test_causes_do_not_depend_on_order(parts: list[Any], kept: int) -> None:
    some = parts[:kept]
    ordered = sorted(some, key=repr)
    assert same_value(all_of(some), all_of(ordered))
    assert same_value(any_of(some), any_of(ordered))


once = draws.truth_trees(st.one_of(draws.constants, draws.facts_once, draws.comparisons()))
repeated = draws.truth_trees(st.one_of(draws.constants, draws.facts_repeated))


def outcomes(tree: Any) -> set[Any]:
    return {draws.evaluated(tree, facts) for facts in draws.completions(tree)}


@draws.property_test
@given(repeated)
def test_no_verdict_contradicts_a_completion(raw: Any) -> None:
    tree = draws.numbered(raw)
    verdict = draws.evaluated(tree, draws.not_known(tree))
    if not isinstance(verdict, Unknown):
        assert outcomes(tree) == {verdict}


@draws.property_test
@given(once)
def test_where_each_fact_occurs_once_the_verdict_is_exact(raw: Any) -> None:
    tree = draws.numbered(raw)
    verdict = draws.evaluated(tree, draws.not_known(tree))
    possible = outcomes(tree)
    assert isinstance(verdict, Unknown) == (len(possible) == 2)
    if not isinstance(verdict, Unknown):
        assert possible == {verdict}


def deciding(tree: Any) -> set[str]:
    """The facts whose value changes the outcome for some values of the others."""
    found = set()
    options = draws.choices(tree)
    for name in options:
        others = [dict(facts) for facts in draws.completions(tree)
                  if facts[name] == options[name][0]]
        if any(len({draws.evaluated(tree, {**facts, name: value})
                    for value in options[name]}) > 1 for facts in others):
            found.add(name)
    return found


@draws.property_test
@given(draws.truth_trees(st.one_of(draws.constants, draws.facts_once)))
def test_where_each_fact_occurs_once_exactly_the_deciding_facts_are_named(raw: Any) -> None:
    tree = draws.numbered(raw)
    verdict = draws.evaluated(tree, draws.not_known(tree))
    if isinstance(verdict, Unknown):
        assert set(verdict.paths) == deciding(tree)


@draws.property_test
@given(st.one_of(once, repeated))
def test_of_the_deciding_facts_none_is_left_out(raw: Any) -> None:
    tree = draws.numbered(raw)
    verdict = draws.evaluated(tree, draws.not_known(tree))
    if isinstance(verdict, Unknown):
        assert set(verdict.paths) >= deciding(tree)


failing = draws.truth_trees(st.one_of(
    draws.constants, draws.facts_once, draws.comparisons(), st.just(("error", E))))


def has_error(tree: Any) -> bool:
    return tree[0] == "error" or any(has_error(part) for part in tree[1:]
                                     if isinstance(part, tuple) and tree[0] != "compare")


@draws.property_test
@given(failing)
def test_a_calculation_error_is_never_absorbed(raw: Any) -> None:
    tree = draws.numbered(raw)
    verdict = draws.evaluated(tree, draws.not_known(tree))
    assert (isinstance(verdict, Unknown) and verdict.is_error) == has_error(tree)
    if has_error(tree):
        assert same_value(verdict, E)
