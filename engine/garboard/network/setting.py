"""All the currents in a network while a fault joins two nodes, or a load draws between two."""

from __future__ import annotations

from garboard.network.rest import Question
from garboard.network.situation import Situation
from garboard.network.skeleton import Skeleton


class Setting:
    """The links of the network, listed once for all elements."""

    def __init__(self, skeleton: Skeleton, fault: tuple[int, int] | None,
                 draw: tuple[int, int] | None) -> None:
        self._skeleton, self._draw = skeleton, draw
        self._situation = Situation(skeleton)
        for pair in (fault, draw):
            if pair is not None:
                self._situation.enliven(pair[0])
                self._situation.enliven(pair[1], besides=pair[0])
        if fault is not None:
            self._situation.make_same(*fault)
        self._links = self._situation.links()
        self._piece_of = {element: number for number, link in enumerate(self._links)
                          for element, _ in link.elements}
        self._link_of = {link.bundle: number for number, link in enumerate(self._links)
                         if link.bundle >= 0}
        self._asked: dict[tuple[int, int], Question] = {}

    def in_element(self, element: int) -> tuple[Question, int] | None:
        """See ``in_branch``."""
        key = self._key(element)
        if key is None:
            return None
        if key not in self._asked:
            self._asked[key] = self._question(*key)
        question = self._asked[key]
        return question, next(sign for each, sign in question.elements if each == element)

    def _key(self, element: int) -> tuple[int, int] | None:
        """The number of the link an element is in, and of its chain where that is a bundle's."""
        if element in self._piece_of:
            return self._piece_of[element], -1
        if element not in self._skeleton.chain_of:
            return None
        chain, _ = self._skeleton.chain_of[element]
        return self._link_of.get(self._skeleton.bundle_of.get(chain, -1), -1), chain

    def _question(self, number: int, chain: int) -> Question:
        if number < 0:
            return Question(None, self._skeleton.chains[chain].elements)
        link = self._links[number]
        others = self._links[:number] + self._links[number + 1:]
        elements = link.elements
        if chain >= 0:
            elements = self._skeleton.chains[chain].elements
            skipped = (*link.skipped, chain)
            if len(skipped) < len(self._skeleton.bundles[link.bundle].chains):
                others.append(link._replace(skipped=skipped))
        return Question(self._situation.rest(link.u, link.v, others, self._draw), elements)
