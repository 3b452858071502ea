"""Which connections matter to the current between two nodes: those on a path between them."""

from __future__ import annotations

from collections.abc import Sequence
from heapq import heapify, heappop, heappush


def between(ends: Sequence[tuple[int, int]], u: int, v: int) -> list[int]:
    """Numbers of the edges in the same biconnected block as an imagined edge from u to v.

    All other edges hang on at a single node or belong to another part: whatever their values, they
    leave the current between u and v alone. Time linear in the number of edges (lowpoints, without
    recursion). ``u`` and ``v`` differ; edges from a node to itself are left out by the caller.
    """
    at: dict[int, list[int]] = {u: [], v: []}
    for number, (start, end) in enumerate(ends):
        at.setdefault(start, []).append(number)
        at.setdefault(end, []).append(number)
    order = {u: 0, v: 1}
    low = {u: 0, v: 0}
    taken: list[int] = []
    seen: set[int] = set()
    path = [(v, iter(at[v]), 0)]
    while path:
        node, edges, mark = path[-1]
        for number in edges:
            if number in seen:
                continue
            seen.add(number)
            start, end = ends[number]
            other = end if start == node else start
            if other in order:
                taken.append(number)
                low[node] = min(low[node], order[other])
                continue
            order[other] = low[other] = len(order)
            path.append((other, iter(at[other]), len(taken)))
            taken.append(number)
            break
        else:
            path.pop()
            if path:
                parent = path[-1][0]
                if low[node] >= order[parent]:
                    del taken[mark:]
                low[parent] = min(low[parent], low[node])
    return sorted(taken)


def elimination(ends: Sequence[tuple[int, int]], kept: tuple[int, ...],
                widest: int | None = None) -> list[tuple[int, tuple[int, ...]]]:
    """All nodes but the kept ones in the order to eliminate them, each with its neighbours then.

    The next is always one with the fewest neighbours, those that earlier ones left behind counted.
    With ``widest`` it ends where all that are left have more neighbours than that.
    """
    neighbours: dict[int, dict[int, None]] = {}
    for start, end in ends:
        neighbours.setdefault(start, {})[end] = None
        neighbours.setdefault(end, {})[start] = None
    waiting = [(len(around), node) for node, around in neighbours.items() if node not in kept]
    heapify(waiting)
    steps: list[tuple[int, tuple[int, ...]]] = []
    while waiting:
        count, node = heappop(waiting)
        if node not in neighbours or count != len(neighbours[node]):
            continue
        if widest is not None and count > widest:
            break
        around = tuple(neighbours.pop(node))
        steps.append((node, around))
        for each in around:
            del neighbours[each][node]
            neighbours[each].update((other, None) for other in around if other != each)
            if each not in kept:
                heappush(waiting, (len(neighbours[each]), each))
    return steps


def elimination_order(ends: Sequence[tuple[int, int]], kept: tuple[int, ...]) -> tuple[int, ...]:
    """The nodes alone, in that order."""
    return tuple(node for node, _ in elimination(ends, kept))
