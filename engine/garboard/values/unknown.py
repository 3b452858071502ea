"""The unknown value: why it is unknown, and which facts would resolve it.

It takes part in logic as Kleene's third truth value (``&``, ``|`` and ``^ True`` are and, or and
not), in comparisons and arithmetic as "could be anything", and in lookups as "leads nowhere known".
Its truth value is forbidden: ``if unknown`` raises.

A calculation error is never absorbed, and it stands alone: what is not known beside a failure is
not named, so the causes do not depend on the order in which parts are joined.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NoReturn

from garboard.values.reasons import CALCULATION_ERROR, Cause, Causes, merged


class Unknown:
    """A value that is not known, with its causes (never empty, worst first)."""

    __slots__ = ("causes",)

    def __init__(self, causes: Iterable[Cause]) -> None:
        ordered = tuple(sorted(set(causes), key=Cause.order))
        if not ordered:
            raise ValueError("an unknown value needs a cause")
        self.causes: Causes = _that_count(ordered)

    @classmethod
    def because(cls, reason: str, path: str = "", detail: str = "") -> Unknown:
        """An unknown with a single cause."""
        return _of((Cause(reason, path, detail),))

    @property
    def reason(self) -> str:
        """The reason code that is named: the worst of all causes."""
        return self.causes[0].reason

    @property
    def paths(self) -> tuple[str, ...]:
        """The data paths of the facts that would resolve it, by code point, without duplicates."""
        return tuple(sorted({cause.path for cause in self.causes if cause.path}))

    @property
    def is_error(self) -> bool:
        """Whether a calculation failed: such an unknown is never absorbed by logic."""
        return self.causes[0].reason == CALCULATION_ERROR

    def joined(self, other: object) -> Unknown:
        """This unknown with the causes of ``other`` added, if it has any."""
        causes: Causes = getattr(other, "causes", ())
        union = merged(self.causes, causes)
        return self if union is self.causes else _of(_that_count(union))

    # logic ------------------------------------------------------------------------------------
    def __bool__(self) -> NoReturn:
        raise TypeError("the truth value of an unknown is not defined")

    def __and__(self, other: object) -> bool | Unknown:
        if other is False:
            return self if self.is_error else False
        if other is True:
            return self
        if isinstance(other, Unknown):
            return self.joined(other)
        return NotImplemented

    def __or__(self, other: object) -> bool | Unknown:
        if other is True:
            return self if self.is_error else True
        if other is False:
            return self
        if isinstance(other, Unknown):
            return self.joined(other)
        return NotImplemented

    __rand__ = __and__
    __ror__ = __or__

    def __xor__(self, other: object) -> Unknown:
        if other is True or other is False:
            return self
        if isinstance(other, Unknown):
            return self.joined(other)
        return NotImplemented

    __rxor__ = __xor__

    # comparison and arithmetic ------------------------------------------------------------------
    def _with(self, other: object) -> Unknown:
        return self.joined(other)

    def __eq__(self, other: object) -> Unknown:  # type: ignore[override]
        return self.joined(other)

    def __ne__(self, other: object) -> Unknown:  # type: ignore[override]
        return self.joined(other)

    __lt__ = __le__ = __gt__ = __ge__ = _with
    __add__ = __radd__ = __sub__ = __rsub__ = _with
    __mul__ = __rmul__ = __truediv__ = __rtruediv__ = _with

    def __neg__(self) -> Unknown:
        return self

    __pos__ = __abs__ = __neg__

    def __getitem__(self, key: object) -> Unknown:
        return self

    __iter__ = None  # an unknown collection has no items one could run through

    # identity -----------------------------------------------------------------------------------
    def same_as(self, other: object) -> bool:
        """Whether ``other`` is an unknown with the same causes (``==`` is a Kleene question)."""
        return isinstance(other, Unknown) and self.causes == other.causes

    def __hash__(self) -> int:
        return hash(self.causes)

    def __reduce__(self) -> tuple[object, ...]:
        return (Unknown, (self.causes,))

    def __repr__(self) -> str:
        return f"Unknown({', '.join(f'{c.reason}: {c.path or c.detail}' for c in self.causes)})"


def _that_count(ordered: Causes) -> Causes:
    """Of causes in order, the failures alone where there is one, else all."""
    if ordered[0].reason != CALCULATION_ERROR:
        return ordered
    return tuple(cause for cause in ordered if cause.reason == CALCULATION_ERROR)


def _of(causes: Causes) -> Unknown:
    unknown = Unknown.__new__(Unknown)
    unknown.causes = causes
    return unknown


Truth = bool | Unknown
