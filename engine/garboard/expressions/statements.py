"""The comparisons of a row: whether each holds, and which of them its outcome rests on.

Found from the row alone, with the trace of its rule, so it works long after the record is gone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from garboard.expressions.outcome import Row
from garboard.expressions.runtime import absent, compared
from garboard.expressions.trace import Joined, RuleTrace, Shape
from garboard.values import Truth, Unknown, all_of, any_of, chosen


def holding(trace: RuleTrace, row: Row) -> tuple[Truth, ...]:
    """For each atom of the rule whose operands the row keeps: whether it holds."""
    operands = row[4]
    count = len(operands)
    return tuple([_truth(operands, atom.left, atom.operator, atom.right)
                  for atom, last in zip(trace.atoms, trace.reach, strict=True) if last < count])


def deciding(trace: RuleTrace, row: Row) -> tuple[int, ...]:
    """The numbers of the atoms the outcome rests on.

    Of a rule that failed those that are wrong for it; of one that is not assessed those that are
    not known and still matter; of one that passed or does not apply those that make it so.
    """
    return resting(trace, holding(trace, row))


def resting(trace: RuleTrace, truths: Sequence[Truth]) -> tuple[int, ...]:
    """The same from which of the rule's atoms hold; it depends on nothing else."""
    if not truths:
        return ()
    shape = trace.requirement if len(truths) == len(trace.atoms) and _looked_at(trace, truths) \
        else trace.condition
    return () if shape is None else tuple(sorted(set(_resting(shape, truths))))


def matters(whole: Truth, part: Truth) -> bool:
    """Whether a part of an ``and`` or ``or`` is one its truth rests on.

    False rests on what is false, true on what is true; what is not known rests on what is not
    known, and a failure on failures alone.
    """
    if isinstance(whole, Unknown):
        return isinstance(part, Unknown) and part.is_error == whole.is_error
    return part is whole


def _truth(operands: Sequence[object], left: int, operator: str | None,
           right: int | None) -> Truth:
    if operator is None or right is None:
        truth: Truth = operands[left]  # type: ignore[assignment]
        return truth
    return compared(operands[left], operator, operands[right])


def _looked_at(trace: RuleTrace, truths: Sequence[Truth]) -> bool:
    return trace.condition is None or _value(trace.condition, truths) is True


def _value(shape: Shape, truths: Sequence[Truth]) -> Truth:
    if isinstance(shape, bool):
        return shape
    if isinstance(shape, int):
        return truths[shape]
    parts = [_value(part, truths) for part in shape.parts]
    if shape.word == "not":
        return absent(parts[0])
    if shape.word == "if":
        value: Truth = chosen(*parts)  # type: ignore[assignment]
        return value
    return all_of(parts) if shape.word == "and" else any_of(parts)


def _resting(shape: Shape, truths: Sequence[Truth]) -> Iterator[int]:
    if isinstance(shape, bool):
        return
    if isinstance(shape, int):
        yield shape
        return
    for part in _parts(shape, truths):
        yield from _resting(part, truths)


def _parts(joined: Joined, truths: Sequence[Truth]) -> Sequence[Shape]:
    """The parts that matter."""
    if joined.word == "not":
        return joined.parts
    if joined.word == "if":
        condition, if_true, if_false = joined.parts
        whether = _value(condition, truths)
        return (condition, *(() if whether is False else (if_true,)),
                *(() if whether is True else (if_false,)))
    whole = _value(joined, truths)
    those = [part for part in joined.parts if matters(whole, _value(part, truths))]
    return those or joined.parts
