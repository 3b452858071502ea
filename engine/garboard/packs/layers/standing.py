"""The stack of a pack that is resolved already, as a sealed one is, for others to build on."""

from __future__ import annotations

from collections.abc import Iterator

from garboard.packs.layering import ADDED, Kind, Relaxation
from garboard.packs.layers.piece import RETIRE, Piece, Setting, Value
from garboard.packs.layers.stack import HEAD, Stack
from garboard.packs.pack import Pack
from garboard.packs.spot import Spot


def standing_stack(pack: Pack) -> Stack:
    """What a resolved pack has come to, piece by piece, with the layers that set each.

    What a piece was when it was added is not known any more; a relaxation below therefore stays one
    until a layer above sets the field as strict again by a change of its own that says so.
    """
    pieces: dict[tuple[Kind, str], Piece] = {}
    for kind, name, value, spot in _values(pack):
        settings = _settings(pack, kind, name, spot)
        piece = Piece(kind, name, value, None, spot, settings)
        piece.relaxations.update(_relaxations(pack, piece))
        pieces[kind, name] = piece
    below = [] if pack.layering is None else list(pack.layering.layers)
    return Stack(pieces, below, list(pack.warnings))


def _values(pack: Pack) -> Iterator[tuple[Kind, str, Value, Spot]]:
    yield (*HEAD, pack.header, pack.spot())
    for name, limit in pack.limits.items():
        yield "limit", name, limit, pack.spot("limits", name)
    for rule in (*pack.rules, *(each.rule for each in pack.retired)):
        yield "rule", rule.id, rule, pack.spot("rules", rule.id)


def _settings(pack: Pack, kind: Kind, name: str, spot: Spot) -> dict[str, Setting]:
    if pack.layering is None:
        return {ADDED: Setting(pack.name, pack.version, spot)}
    return {of: _setting(layer, spot.at(of) if of else spot)
            for (of_kind, called, of), layer in pack.layering.set_by.items()
            if (of_kind, called) == (kind, name)}


def _setting(layer: str, spot: Spot) -> Setting:
    """What a layer set, from its name and version as one text."""
    pack, _, version = layer.partition(" ")
    return Setting(pack, version, spot)


def _relaxations(pack: Pack, piece: Piece) -> Iterator[tuple[str, Relaxation]]:
    """Those of the piece, by the field they loosened."""
    for each in pack.relaxations:
        if each.what == piece.what:
            yield (RETIRE if each.change == "retired" else "value"), each
        elif each.what.endswith(f" of {piece.what}"):
            yield each.what.removesuffix(f" of {piece.what}").replace(" ", "_"), each
