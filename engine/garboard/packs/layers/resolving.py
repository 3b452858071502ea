"""A pack with all the packs below it, resolved to one."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from garboard.errors import PackRefused, Problem, Refused
from garboard.expressions import Vocabulary
from garboard.packs.base import Base
from garboard.packs.draft import Draft
from garboard.packs.files import is_sealed
from garboard.packs.header import Header
from garboard.packs.layering import ADDED, LayerName, Relaxation
from garboard.packs.layers.changing import Changing
from garboard.packs.layers.merging import Merging, conflict, gathered
from garboard.packs.layers.piece import Piece, Setting
from garboard.packs.layers.shelf import Shelf
from garboard.packs.layers.stack import HEAD, Stack
from garboard.packs.layers.standing import standing_stack
from garboard.packs.layers.weighing import adds
from garboard.packs.pack import Pack
from garboard.packs.reading import draft_files
from garboard.packs.sealing.opening import open_sealed
from garboard.packs.spot import PatchedSpot, Spot

#: How many packs may lie one upon another.
MOST_LAYERS = 20
_Chain = tuple[tuple[Path, Spot], ...]


class Resolver:
    """Resolves packs; each file is read once."""

    def __init__(self, shelf: Shelf, vocabulary: Vocabulary | None = None) -> None:
        self._shelf, self._vocabulary = shelf, vocabulary
        self._drafts: dict[Path, Draft] = {}
        self._stacks: dict[Path, Stack] = {}
        self._sealed: dict[Path, Pack] = {}

    def draft(self, path: Path) -> Draft:
        """The draft of a pack, read once."""
        real = path.resolve()
        if real not in self._drafts:
            self._drafts[real] = draft_files(path)
        return self._drafts[real]

    def sealed(self, path: Path) -> Pack:
        """A pack that is sealed, opened once."""
        real = path.resolve()
        if real not in self._sealed:
            self._sealed[real] = open_sealed(path)
        return self._sealed[real]

    def _called(self, path: Path) -> str | None:
        """What a pack calls itself; none where it cannot be read."""
        try:
            name = (self.sealed(path).name if is_sealed(path)
                    else self.draft(path).head.at("pack").data)
        except Refused:
            return None
        return name if isinstance(name, str) else None

    def _header(self, path: Path) -> Header:
        if is_sealed(path):
            return self.sealed(path).header
        draft = self.draft(path)
        if draft.header is None:
            raise PackRefused(draft.problems)
        return draft.header

    def pack(self, path: Path) -> Pack:
        """The resolved pack, with its seal if it is sealed."""
        return self.sealed(path) if is_sealed(path) else self.stack(path).pack()

    def stack(self, path: Path, chain: _Chain = ()) -> Stack:
        """What the pack comes to; PackRefused with all that is wrong in it and below it."""
        real = path.resolve()
        if real not in self._stacks and is_sealed(path):
            self._stacks[real] = standing_stack(self.sealed(path))
        if real not in self._stacks:
            draft = self.draft(path)
            header = draft.header
            if header is None or draft.refused:
                raise PackRefused(draft.problems)
            self._stacks[real] = (_alone(draft, header) if not header.builds_on
                                  else self._layer(path, draft, header, chain))
        return self._stacks[real]

    def _layer(self, path: Path, draft: Draft, header: Header, chain: _Chain) -> Stack:
        asked = draft.head.at("builds_on")
        found = [self._below(base, asked.at(number), path, chain)
                 for number, base in enumerate(header.builds_on or ())]
        merging = Merging(asked, {
            (change.kind, change.name, of): change.replaces or ("*",)
            for _, change in draft.changes if change is not None for of in change.fields()
            if change.replaces or change.kind == "head"}
            | {("head", "", of): ("*",) for of in ("decision_rule", "acceptance")
               if of in header.model_fields_set})
        stack = merging.merged(found)
        changing = Changing(draft, stack, header.pack, header.version, merging.problems)
        changing.add()
        merging.problems += _head(stack, draft, header)
        changing.change(self._vocabulary)
        if not stack.rules():
            merging.problems.append(Problem("pack-empty", draft.head.place(), found="no rules"))
        if merging.problems:
            raise PackRefused(merging.problems)
        stack.warnings += draft.problems
        return stack

    def _below(self, base: Base, spot: Spot, path: Path, chain: _Chain) -> Stack:
        """The stack of a pack below, as seen from the pack that asks for it."""
        chosen = self._chosen(base, spot, path)
        chain = (*chain, (path.resolve(), spot))
        if chosen.resolve() in [each for each, _ in chain] or len(chain) > MOST_LAYERS:
            raise PackRefused(_circle(chain))
        stack = self.stack(chosen, chain)
        pack = stack.pack()
        name = LayerName(pack.name, pack.version, pack.digest)
        return Stack(stack.pieces, [*stack.below, name], stack.warnings)

    def _chosen(self, base: Base, spot: Spot, path: Path) -> Path:
        others = []
        for each in self._shelf.of_name(base.pack, path, self._called):
            header = self._header(each)
            if base.accepts(header.version):
                return each
            others.append(f"{header.version} in {each}")
        if others:
            raise PackRefused([Problem(
                "base-version", spot.at("pack").place(), found=f"{base.pack} {'; '.join(others)}",
                expected=f"from {base.from_}, before {base.before}")])
        raise PackRefused([Problem(
            "base-missing", spot.at("pack").place(), found=base.pack,
            expected="a pack of that name: shipped, beside this one, or named with --pack")])


def _circle(chain: _Chain) -> Iterator[Problem]:
    for number, (_, spot) in enumerate(chain):
        following = chain[(number + 1) % len(chain)][1]
        yield Problem("base-circular", spot.at("pack").place(), found=str(spot.at("pack").data),
                      hint=f"goes on at {following.at('pack').place()}")


def _alone(draft: Draft, header: Header) -> Stack:
    """A pack that builds on none."""
    setting = {ADDED: Setting(header.pack, header.version, draft.head)}
    stack = Stack({HEAD: Piece("head", "", header, header, draft.head, setting)})
    stack.warnings += draft.problems
    Changing(draft, stack, header.pack, header.version).add()
    return stack


def _head(stack: Stack, draft: Draft, header: Header) -> Iterator[Problem]:
    """Put the head of a layer above that of the packs below; it does not loosen it by itself."""
    below, spot = stack.head, draft.head
    under = stack.header
    narrowed = header.applies_when not in (None, under.applies_when)
    if narrowed and not _narrows(stack, header):
        yield Problem("layer-condition", spot.at("applies_when").place(key=True),
                      found="applies_when", expected="the condition of the packs below, joined to "
                      "more of it by 'and', over rules that can be dispensed with")
    for of in ("dispensable_danger", "decision_rule"):
        if of not in header.model_fields_set or getattr(header, of) == getattr(under, of):
            continue
        if (of, getattr(header, of)) != ("decision_rule", "guarded acceptance"):
            yield Problem("change-unexplained", spot.at(of).place(key=True),
                          found=f"{of}: {getattr(header, of)}", expected="reason and author",
                          hint="state it under 'changes', with reason and author")
    settings = dict(below.settings)
    update: dict[str, Any] = {
        "builds_on": None,
        "applies_when": header.applies_when if narrowed else under.applies_when,
        "dispensable_danger": under.dispensable_danger,
        "decision_rule": (header if "decision_rule" in header.model_fields_set
                          else under).decision_rule}
    if update["decision_rule"] != under.decision_rule:
        settings["decision_rule"] = Setting(header.pack, header.version, spot.at("decision_rule"))
    if narrowed:
        settings["applies_when"] = Setting(header.pack, header.version, spot.at("applies_when"))
    yield from _questions_twice(under, header, spot)
    yield from _acceptance(below, header, spot, settings)
    if header.acceptance is None:
        update["acceptance"] = under.acceptance
    value = gathered(under, header)
    patches = {"applies_when": (spot if narrowed else below.spot).at("applies_when"),
               "acceptance": (below.spot if header.acceptance is None else spot).at("acceptance"),
               "needs": Spot(None, (), [each.as_data() for each in value.needs])}
    stack.pieces[HEAD] = Piece(
        "head", "", value.model_copy(update=update), below.origin,
        PatchedSpot(spot.document, spot.path, spot.data, patches), settings,
        below.relaxations)


def _narrows(stack: Stack, header: Header) -> bool:
    """Whether a layer's condition only adds to what the packs below ask, and hides no law.

    Where it does not hold, each rule says that the pack does not apply: nothing is passed over.
    """
    under = stack.header.applies_when
    return (under is None or adds(under, header.applies_when, "and")) and not any(
        rule.not_dispensable for rule in stack.rules())


def _acceptance(below: Piece, header: Header, spot: Spot, settings: dict[str, Setting],
                ) -> Iterator[Problem]:
    """An acceptance that replaces one below says so, with reason and author."""
    own, under, at = header.acceptance, below.value, spot.at("acceptance")
    assert isinstance(under, Header)
    if own is None:
        return
    if under.acceptance is not None:
        setting = below.settings.get("acceptance", below.settings[ADDED])
        if setting.pack not in own.replaces:
            yield from conflict("acceptance", setting.spot, at)
            return
        missing = [name for name in ("reason", "author") if getattr(own, name) is None]
        if missing:
            yield Problem("change-unexplained", at.place(key=True), found="another acceptance",
                          expected=" and ".join(missing))
            return
        below.relaxations["acceptance"] = Relaxation(
            "acceptance of head", "relaxed", f"{header.pack} {header.version}", own.author or "",
            own.reason or "")
    settings["acceptance"] = Setting(header.pack, header.version, at, own.replaces)


def _questions_twice(under: Header, header: Header, spot: Spot) -> Iterator[Problem]:
    known = {each.id: each for each in under.questions}
    for number, question in enumerate(header.questions):
        if question.id in known:
            yield Problem("question-twice", spot.at("questions", number, "id").place(),
                          found=question.id, hint="a pack below asks under that id")
