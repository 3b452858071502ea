"""What the operands of a rule are, kept once per rule, so that a row carries values only."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

Part = Literal["condition", "requirement"]


@dataclass(frozen=True, slots=True)
class Operand:
    """One operand: the author's words for it and how to show its value.

    ``constant`` marks a literal or limit; ``reads`` are the reads it is made of, from the item or
    another single thing (what lies inside a loop is not among them).
    """

    text: str
    part: Part
    kind: str
    dimension: str | None
    constant: bool
    limit: str | None = None
    reads: tuple[tuple[str, tuple[str, ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class Atom:
    """One comparison, or one truth (no operator), by the numbers of its operands in the row."""

    left: int
    operator: str | None = None
    right: int | None = None


@dataclass(frozen=True, slots=True)
class Joined:
    """How truths are joined: ``word`` is ``and``, ``or``, ``not`` or ``if``.

    A part is the number of an atom, a truth written out, or joined itself; the parts of an ``if``
    are its condition and both values.
    """

    word: Literal["and", "or", "not", "if"]
    parts: tuple[Shape, ...]


Shape = int | bool | Joined


@dataclass(frozen=True, slots=True)
class RuleTrace:
    """The operands of a rule, those of the condition first, and how they make up its truth.

    A row holds fewer values where not all were needed: those of the condition only when it is
    false or not known, none when something failed. ``condition`` and ``requirement`` say how the
    atoms are joined. ``own`` gives for each operand the names it is read under where all are of
    the item itself, else ``None``; ``reach`` for each atom its last operand.
    """

    operands: tuple[Operand, ...]
    atoms: tuple[Atom, ...]
    condition: Shape | None
    requirement: Shape
    own: tuple[tuple[str, ...] | None, ...] = field(init=False, repr=False, compare=False)
    reach: tuple[int, ...] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        own, reach = map(_own_names, self.operands), [max(atom.left, atom.right or 0)
                                                      for atom in self.atoms]
        object.__setattr__(self, "own", tuple(own))
        object.__setattr__(self, "reach", tuple(reach))


def _own_names(operand: Operand) -> tuple[str, ...] | None:
    if all(root == "item" and len(steps) == 1 for root, steps in operand.reads):
        return tuple(dict.fromkeys(steps[0] for _, steps in operand.reads))
    return None


def keys_of(operand: Operand, item: Mapping[str, Any],
            roots: Mapping[str, Any]) -> tuple[str, ...]:
    """The data keys (``f1.rating``) that an operand of an item was read from.

    Where a relation leads nowhere the key of the relation stands for what lies beyond it.
    """
    return tuple(dict.fromkeys(
        key_of(item if root == "item" else roots.get(root), steps)
        for root, steps in operand.reads))


def key_of(thing: Any, steps: tuple[str, ...]) -> str:
    """The data key (``f1.rating``) that relations and a name lead to from a thing."""
    *relations, name = steps
    for relation in relations:
        if not isinstance(thing, Mapping):
            break
        following = thing[relation]
        if not isinstance(following, Mapping):
            return f"{thing['id']}.{relation}"
        thing = following
    return f"{thing['id']}.{name}" if isinstance(thing, Mapping) else ".".join(steps)
