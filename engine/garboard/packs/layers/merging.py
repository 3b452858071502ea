"""Several packs below brought together: what each line of layers has set, held side by side."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from garboard.errors import Problem
from garboard.packs.header import Header
from garboard.packs.layering import ADDED, Key, LayerName
from garboard.packs.layers.piece import RETIRE, Piece
from garboard.packs.layers.stack import HEAD, Stack
from garboard.packs.spot import Spot


@dataclass
class Merging:
    """Brings stacks together. ``replacing`` are the packs whose setting the asking pack replaces.

    ``asked`` is where the asking pack names the packs below.
    """

    asked: Spot
    replacing: Mapping[Key, tuple[str, ...]]
    problems: list[Problem] = field(default_factory=list)

    def merged(self, stacks: Sequence[Stack]) -> Stack:
        """One stack with everything in the stacks; what does not go together is a problem."""
        whole = Stack({key: piece.copy() for key, piece in stacks[0].pieces.items()},
                      list(stacks[0].below), list(stacks[0].warnings))
        for stack in stacks[1:]:
            for key, piece in stack.pieces.items():
                if key == HEAD:
                    self._heads(whole.head, stack.header)
                elif key in whole.pieces:
                    self._pieces(whole.pieces[key], piece)
                else:
                    whole.pieces[key] = piece.copy()
            whole.warnings += [each for each in stack.warnings if each not in whole.warnings]
            self._below(whole, stack.below)
        return whole

    def _pieces(self, one: Piece, other: Piece) -> None:
        if one.settings[ADDED] != other.settings[ADDED]:
            self.problems += conflict(one.what, one.settings[ADDED].spot,
                                      other.settings[ADDED].spot)
            return
        for of in other.changed:
            mine, theirs = one.settings.get(of), other.settings[of]
            if mine is None:
                rivals = one.changed if of == RETIRE else (RETIRE,) if one.retired else ()
                rivals = tuple(each for each in rivals if each not in other.settings)
                for each in rivals:
                    if not self._replaced(one, each, one.settings[each].pack, theirs.pack):
                        self.problems += conflict(one.what, one.settings[each].spot, theirs.spot)
                one.take(of, other)
            elif mine.pack in theirs.replaces:
                one.take(of, other)
            elif mine != theirs and theirs.pack not in mine.replaces and not self._replaced(
                    one, of, mine.pack, theirs.pack):
                self.problems += conflict(f"{of} of {one.what}", mine.spot, theirs.spot)
        if one.retired and RETIRE not in other.settings:
            for of in other.changed:
                if of not in one.settings:
                    self.problems += conflict(one.what, one.settings[RETIRE].spot,
                                              other.settings[of].spot)

    def _replaced(self, piece: Piece, of: str, *packs: str) -> bool:
        return set(packs) <= set(self.replacing.get((piece.kind, piece.name, of), ()))

    def _heads(self, one: Piece, theirs: Header) -> None:
        """Heads go together when they ask for the same; texts and needs are gathered."""
        mine = one.value
        assert isinstance(mine, Header)
        for of in ("applies_when", "decision_rule", "dispensable_danger", "acceptance"):
            if getattr(mine, of) == getattr(theirs, of):
                continue
            if (one.kind, "", of) not in self.replacing:
                self.problems.append(Problem(
                    "layer-heads-differ", self.asked.place(key=True),
                    found=f"{of} is not the same in {mine.pack} and {theirs.pack}"))
        one.value = gathered(mine, theirs)

    def _below(self, whole: Stack, below: Sequence[LayerName]) -> None:
        known = {each.pack: each for each in whole.below}
        for each in below:
            if each.pack not in known:
                whole.below.append(each)
            elif known[each.pack] != each:
                self.problems.append(Problem(
                    "base-differs", self.asked.place(key=True),
                    found=f"{each.pack} {known[each.pack].version} and {each.version}",
                    expected="the same pack below all of them"))


def gathered(below: Header, above: Header) -> Header:
    """The head above with what the head below says and needs."""
    parts = {}
    for of in ("not_examined", "cautions", "needs", "questions"):
        parts[of] = tuple({str(each): each for each in (*getattr(below, of), *getattr(above, of))}
                          .values())
    return above.model_copy(update=parts)


def conflict(what: str, *spots: Spot) -> Iterator[Problem]:
    """Two layers that set one thing: a problem at each place, naming the other."""
    for here, there in (spots, spots[::-1]):
        yield Problem("layer-conflict", here.place(), found=what, hint=f"also at {there.place()}")
