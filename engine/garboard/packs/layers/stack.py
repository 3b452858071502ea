"""What a pack has come to with all the layers below it, before and after its own changes."""

from __future__ import annotations

from dataclasses import dataclass, field

from garboard.errors import Problem
from garboard.packs.header import Header
from garboard.packs.layering import ADDED, Key, Kind, Layering, LayerName, Retired
from garboard.packs.layers.piece import RETIRE, Piece
from garboard.packs.limit import Limit
from garboard.packs.pack import Pack
from garboard.packs.rule import Rule
from garboard.packs.spot import DataPath, Spot

HEAD: tuple[Kind, str] = ("head", "")


@dataclass(slots=True)
class Stack:
    """The pieces of a pack by kind and name, and the packs below it, the lowest first."""

    pieces: dict[tuple[Kind, str], Piece]
    below: list[LayerName] = field(default_factory=list)
    warnings: list[Problem] = field(default_factory=list)

    @property
    def head(self) -> Piece:
        return self.pieces[HEAD]

    @property
    def header(self) -> Header:
        value = self.head.value
        assert isinstance(value, Header)
        return value

    @property
    def limits(self) -> dict[str, Limit]:
        """The limits by name, in order."""
        return {name: piece.value for (_, name), piece in sorted(self.pieces.items())
                if isinstance(piece.value, Limit)}

    def rules(self, *, retired: bool = False) -> list[Rule]:
        """The rules in force, or those that are retired, by id."""
        return [piece.value for _, piece in sorted(self.pieces.items())
                if isinstance(piece.value, Rule) and piece.retired is retired]

    def pack(self) -> Pack:
        """The resolved pack."""
        spots: dict[DataPath, Spot] = {(): self.head.spot}
        for (kind, name), piece in self.pieces.items():
            if kind != "head":
                spots[f"{kind}s", name] = piece.spot
        return Pack(self.header, self.limits, tuple(self.rules()), tuple(self.warnings), spots,
                    self._layering() if self.below else None)

    def _layering(self) -> Layering:
        set_by: dict[Key, str] = {
            (kind, name, of): setting.layer for (kind, name), piece in self.pieces.items()
            for of, setting in piece.settings.items()}
        relaxations = [relaxation for _, piece in sorted(self.pieces.items())
                       for of, relaxation in sorted(piece.relaxations.items())
                       if not piece.retired or of == RETIRE]
        retired = []
        for rule in self.rules(retired=True):
            said = self.pieces["rule", rule.id].relaxations[RETIRE]
            retired.append(Retired(rule, said.by, said.author, said.why))
        return Layering(tuple(self.below), set_by, tuple(relaxations), tuple(retired))


def place_added(piece: Piece) -> Spot:
    """Where a piece was added."""
    return piece.settings[ADDED].spot
