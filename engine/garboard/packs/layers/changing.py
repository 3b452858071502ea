"""A pack's own limits, rules and changes on top of what lies below it."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any

from garboard.errors import Problem, ReadingError, did_you_mean
from garboard.expressions import Vocabulary
from garboard.packs.change import Change
from garboard.packs.draft import Draft
from garboard.packs.layering import ADDED, Key, Kind, Relaxation
from garboard.packs.layers.merging import conflict
from garboard.packs.layers.piece import RETIRE, Piece, Setting, Value, field_of, in_words
from garboard.packs.layers.stack import Stack
from garboard.packs.layers.weighing import Effect, Weighing
from garboard.packs.limit import Limit
from garboard.packs.pieces import cover_problems
from garboard.packs.rule import Rule
from garboard.packs.spot import Spot


@dataclass(frozen=True, slots=True)
class Done:
    """A field that was set anew: by which change, and what it was before."""

    change: Change
    spot: Spot
    of: str
    piece: Piece
    before: Value


@dataclass
class Changing:
    """Puts a draft on top of a stack, and holds every change against what it does."""

    draft: Draft
    stack: Stack
    pack: str
    version: str
    problems: list[Problem] = field(default_factory=list)

    def add(self) -> None:
        """Add the draft's own limits and rules."""
        for name, (spot, limit) in self.draft.limits.items():
            self._added("limit", name, limit, spot)
        for spot, rule in self.draft.rules:
            if rule is not None:
                self._added("rule", rule.id, rule, spot)

    def _added(self, kind: Kind, name: str, value: Value | None, spot: Spot) -> None:
        known = self.stack.pieces.get((kind, name))
        if known is not None:
            self.problems += conflict(known.what, known.settings[ADDED].spot, spot)
        elif value is not None:
            self.stack.pieces[kind, name] = Piece(kind, name, value, value, spot,
                                                  {ADDED: self._setting(spot)})

    def change(self, vocabulary: Vocabulary | None) -> None:
        """Make the draft's changes, then say what each of them does."""
        done: list[Done] = []
        seen: dict[Key, Spot] = {}
        for spot, change in self.draft.changes:
            piece = None if change is None else self._target(change, spot)
            if change is None or piece is None:
                continue
            for of, value in change.fields().items():
                at, key = spot.at(of), (piece.kind, piece.name, of)
                if key in seen:
                    self.problems += conflict(f"{of} of {piece.what}", seen[key], at)
                elif self._free(piece, of, change, at):
                    before = piece.value
                    if self._set(piece, of, value, change, at):
                        done.append(Done(change, spot, of, piece, before))
                seen.setdefault(key, at)
        for piece in {id(each.piece): each.piece for each in done}.values():
            self._shape(piece)
        weighing = Weighing(self.stack, vocabulary)
        for each in done:
            self._weigh(each, weighing)

    def _target(self, change: Change, spot: Spot) -> Piece | None:
        piece = self.stack.pieces.get((change.kind, change.name))
        if piece is None or (piece.settings[ADDED].pack == self.pack and change.kind != "head"):
            known = [name for (kind, name), each in self.stack.pieces.items()
                     if kind == change.kind and each.settings[ADDED].pack != self.pack]
            self.problems.append(Problem(
                "change-target-unknown", spot.at(change.kind).place(), found=change.name,
                expected=f"a {change.kind} of a pack below",
                hint=did_you_mean(change.name, known)))
            return None
        return piece

    def _free(self, piece: Piece, of: str, change: Change, at: Spot) -> bool:
        """Whether no layer below has set it, or this change says that it replaces that."""
        held = [RETIRE] if piece.retired else [of] if of in piece.settings else []
        if of == RETIRE:
            held = [*piece.changed]
        rivals = [piece.settings[each] for each in held
                  if piece.settings[each].pack not in change.replaces]
        for rival in rivals:
            self.problems += conflict(f"{of} of {piece.what}", rival.spot, at)
        return not rivals

    def _set(self, piece: Piece, of: str, value: Any, change: Change, at: Spot) -> bool:
        before = piece.value
        try:
            piece.set(of, value, self._setting(at, change.replaces), at)
        except ReadingError as wrong:
            self.problems.append(wrong.problem().at(at.place(offset=wrong.offset)))
            return False
        if isinstance(before, Limit) and isinstance(piece.value, Limit) and (
                before.kind, before.dimension) != (piece.value.kind, piece.value.dimension):
            self.problems.append(Problem(
                "change-kind", at.place(), found=next(in_words(value), ""),
                expected=f"a {before.dimension or before.kind}".replace("_", " ")))
            return False
        return True

    def _shape(self, piece: Piece) -> None:
        """A changed rule must hang together still."""
        if isinstance(piece.value, Rule):
            self.problems += cover_problems(piece.value, piece.spot)

    def _weigh(self, done: Done, weighing: Weighing) -> None:
        piece, of = done.piece, done.of
        fixed = _is_fixed(piece, of, done, weighing)
        effect = _effect(piece, of, done.before, piece.value, weighing)
        if fixed and (effect in ("relaxed", "retired") or fixed == "always"):
            self.problems.append(Problem(
                "change-not-dispensable", done.spot.at(of).place(key=True),
                found=f"{of} of {piece.what}, {effect}",
                expected="rules marked not dispensable left as they are"))
            return
        inherited = piece.relaxations.pop(of, None)
        before, after = _words(done.before, of), _words(piece.value, of)
        if effect not in ("relaxed", "retired"):
            if inherited is not None and (piece.origin is None or _effect(
                    piece, of, piece.origin, piece.value, weighing) == "relaxed"):
                piece.relaxations[of] = replace(inherited, after=after)
            return
        missing = [name for name in ("reason", "author") if getattr(done.change, name) is None]
        if missing:
            self.problems.append(Problem(
                "change-unexplained", done.spot.at(of).place(key=True),
                found=f"{of} of {piece.what} is {effect}"
                      + (f": from {before} to {after}" if before and after else ""),
                expected=" and ".join(missing)))
            return
        piece.relaxations[of] = Relaxation(
            piece.what if of in (RETIRE, "value") else f"{of.replace('_', ' ')} of {piece.what}",
            "retired" if effect == "retired" else "relaxed", f"{self.pack} {self.version}",
            done.change.author or "", done.change.reason or "", before, after)

    def _setting(self, spot: Spot, replaces: tuple[str, ...] = ()) -> Setting:
        return Setting(self.pack, self.version, spot, replaces)


def _effect(piece: Piece, of: str, before: Value, after: Value, weighing: Weighing) -> Effect:
    if isinstance(before, Limit) and isinstance(after, Limit):
        return "reworded" if of == "citation" else weighing.of_limit(before, after)
    return weighing.effect(of, None if of == RETIRE else field_of(before, of),
                           None if of == RETIRE else field_of(after, of))


def _is_fixed(piece: Piece, of: str, done: Done, weighing: Weighing) -> str:
    """Whether the field may not be relaxed (``relaxed``), or not be touched at all (``always``)."""
    if isinstance(piece.value, Rule) and piece.value.not_dispensable:
        return "always" if of == "citation" else "relaxed"
    if isinstance(done.before, Limit) and isinstance(piece.value, Limit) and of == "value":
        effect = weighing.of_limit(done.before, piece.value, not_dispensable=True)
        return "relaxed" if effect == "relaxed" else ""
    return "relaxed" if of == "decision_rule" and weighing.has_not_dispensable else ""


def _words(value: Value, of: str) -> str | None:
    if of in (RETIRE, "citation"):
        return None
    return next(in_words(field_of(value, of)), None)
