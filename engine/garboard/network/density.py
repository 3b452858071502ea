"""Where a mesh is too dense to be worked out: a limit to the work, by the network's structure.

Eliminating a hub joins all hubs around it with one another. In trees, rings and ladders of any
length only a few are ever joined at once, and the work grows with the length alone; in a mesh where
every bus is joined with many others it grows with the cube of their number and more. What lies in
such a core is left unknown. The core is found once for the whole network, so it does not depend on
what is asked first.
"""

from __future__ import annotations

from typing import Final

from garboard.network.blocks import elimination
from garboard.network.rest import Rest
from garboard.network.skeleton import Skeleton
from garboard.network.starmesh import NoAnswer

#: The most hubs that may be joined with one another at once.
WIDEST: Final = 24


class TooDense(NoAnswer):
    """So many hubs are joined with one another that the network is not worked out."""


def check_density(skeleton: Skeleton, rest: Rest | None) -> None:
    """Raise TooDense when a connection of the core of a network matters to a rest."""
    core = core_of(skeleton)
    if core and rest is not None and any(link.u in core and link.v in core for link in rest.links):
        raise TooDense(f"{len(core)} points are joined so densely that more than {WIDEST} of them "
                       "would have to be worked out at once")


def core_of(skeleton: Skeleton) -> frozenset[int]:
    """The hubs that are left when no hub has few enough neighbours; none in a usual network."""
    if "core" not in skeleton.kept:
        ends = [(each.u, each.v) for each in skeleton.bundles]
        taken = {node for node, _ in elimination(ends, (skeleton.reference,), WIDEST)}
        hubs = {node for pair in ends for node in pair} - {skeleton.reference}
        skeleton.kept["core"] = frozenset(hubs - taken)
    core: frozenset[int] = skeleton.kept["core"]
    return core
