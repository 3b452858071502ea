"""The unknown value: its causes, what it does in arithmetic and look-ups, its identity."""

from __future__ import annotations

import copy
import pickle
from typing import Any

import pytest

from garboard.values import (
    ANSWER_EXPIRED,
    AWAITS_ANSWER,
    CALCULATION_ERROR,
    CONFLICT,
    NOT_DETERMINABLE,
    NOT_RECORDED,
    OUTSIDE_METHOD,
    PLUGIN_UNAVAILABLE,
    REASONS,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    Unknown,
    merged,
)

A = Unknown.because(NOT_RECORDED, "a.length", "no length")
B = Unknown.because(NOT_DETERMINABLE, "b.size")


def test_the_reasons_are_a_closed_list_from_worst_to_least() -> None:
    assert REASONS == (
        CALCULATION_ERROR, PLUGIN_UNAVAILABLE, CONFLICT, OUTSIDE_METHOD, NOT_DETERMINABLE,
        ANSWER_EXPIRED, AWAITS_ANSWER, NOT_RECORDED, WITHIN_UNCERTAINTY)


@pytest.mark.parametrize("reason", ["", "unknown", "Not recorded"])
def test_another_reason_is_refused(reason: str) -> None:
    with pytest.raises(ValueError, match="reason code"):
        Cause(reason)


def test_an_unknown_without_a_cause_is_refused() -> None:
    with pytest.raises(ValueError, match="cause"):
        Unknown(())


@pytest.mark.parametrize("worse", range(len(REASONS) - 1))
def test_of_two_reasons_the_worse_is_named(worse: int) -> None:
    one, other = Unknown.because(REASONS[worse]), Unknown.because(REASONS[worse + 1])
    assert one.joined(other).reason == REASONS[worse]
    assert other.joined(one).reason == REASONS[worse]


def test_causes_are_in_order_and_without_duplicates() -> None:
    both = A.joined(B).joined(A)
    assert both.causes == (B.causes[0], A.causes[0])
    assert both.paths == ("a.length", "b.size")
    assert Unknown(reversed(both.causes)).same_as(both)


def test_joining_nothing_new_gives_the_same_object() -> None:
    assert A.joined(A) is A
    assert A.joined(3.0) is A


def test_a_failure_stands_alone_among_causes() -> None:
    failed = Unknown.because(CALCULATION_ERROR, "", "x")
    for joined in (A.joined(failed), failed.joined(A), Unknown((*A.causes, *failed.causes))):
        assert joined.causes == failed.causes


@pytest.mark.parametrize("other", [2.0, 0, Bounds(1.0, 2.0), B])
@pytest.mark.parametrize("sign", ["+", "-", "*", "/"])
def test_arithmetic_with_an_unknown_is_unknown(sign: str, other: Any) -> None:
    operations = {"+": lambda a, b: a + b, "-": lambda a, b: a - b,
                  "*": lambda a, b: a * b, "/": lambda a, b: a / b}
    for result in (operations[sign](A, other), operations[sign](other, A)):
        assert isinstance(result, Unknown)
        assert set(A.causes) <= set(result.causes)
        assert set(getattr(other, "causes", ())) <= set(result.causes)


def test_signs_and_look_ups_lead_nowhere_known() -> None:
    assert -A is A and +A is A and abs(A) is A
    assert A["anything"] is A
    with pytest.raises(TypeError):
        iter(A)  # type: ignore[call-overload]
    with pytest.raises(TypeError):
        _ = 1 in A  # type: ignore[operator]


@pytest.mark.parametrize("copied", [lambda x: pickle.loads(pickle.dumps(x)), copy.copy,
                                    copy.deepcopy])
@pytest.mark.parametrize("value", [A, A.joined(B)])
def test_a_copy_is_the_same(copied: Any, value: Unknown) -> None:
    assert copied(value).same_as(value)
    assert hash(copied(value)) == hash(value)


def test_same_as_tells_causes_apart() -> None:
    assert not A.same_as(B)
    assert not A.same_as(1.0)
    assert not A.same_as(Bounds(0.0, 1.0, causes=A.causes))


def test_merged_is_a_union_in_order() -> None:
    assert merged(A.causes, B.causes) == merged(B.causes, A.causes) == (*B.causes, *A.causes)
    assert merged(A.causes, ()) == merged((), A.causes) == A.causes


def test_the_picture_names_reason_and_path() -> None:
    assert repr(A) == "Unknown(not recorded: a.length)"
