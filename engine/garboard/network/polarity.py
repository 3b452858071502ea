"""What a node belongs to: the positive side, the negative side, a series link, or nothing."""

from __future__ import annotations

from typing import Final, Literal

from garboard.network.layout import Layout

Polarity = Literal["positive", "negative", "link", "none"]

POSITIVE: Final = "positive"
NEGATIVE: Final = "negative"
LINK: Final = "link"
NONE: Final = "none"


def island_polarity(layout: Layout) -> dict[str, Polarity]:
    """The polarity of each island, by its name.

    The island of the common return is negative; one with both a positive and a negative terminal of
    batteries is a link between batteries in series; one with either is of that polarity; without
    any battery the terminals of sources and loads decide, and an island without those has none.
    """
    found: dict[str, Polarity] = {}
    positive = {edge.end for edge in layout.batteries}
    negative = {edge.start for edge in layout.batteries}
    for name, nodes in layout.islands.members.items():
        if layout.reference in nodes:
            found[name] = NEGATIVE
        elif positive.isdisjoint(nodes) and negative.isdisjoint(nodes):
            found[name] = _by_terminals(nodes)
        elif negative.isdisjoint(nodes):
            found[name] = POSITIVE
        else:
            found[name] = NEGATIVE if positive.isdisjoint(nodes) else LINK
    return found


def _by_terminals(nodes: tuple[str, ...]) -> Polarity:
    if any(node.endswith(".positive") for node in nodes):
        return POSITIVE
    return NEGATIVE if any(node.endswith(".negative") for node in nodes) else NONE
