"""From the runs of a record to nodes and edges.

Nodes are the terminals (``pack-1.positive``), the buses by their id, and the joints between the
parts of a run (``pack-1-feed/1``). Each conductor, device and switch is an edge of its own id, from
the run's ``from`` towards its ``to``; a run through nothing is a joint; each battery is an edge
from its negative to its positive node.

**The return.** A battery whose negative terminal is in no run has it on the common return: the
caller folds the returns into the resistance of the outgoing conductors. Where no battery's negative
is traced, that return is the node ``(return)``. Where some are, the common return is the bus that
most of them reach on the negative side (the first in the record of several; without a bus, the
negative terminal of the first such battery), and untraced negatives are taken to lie on it. Where
only negatives of loads and sources are traced, it is the bus that most of those reach.

**Where a fault returns to.** A fault is taken to the common return. At the positive terminal of a
load or source whose negative terminal is traced it is taken across its own two terminals. At a node
of the negative side it is taken to the positive side (see ``build``).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, cast

from garboard.network.graph import BATTERY, INJECTOR, JOINT, Edge, Kind
from garboard.network.islands import Islands
from garboard.record import Record, Thing

#: The common return where no negative is traced; no id can read like this.
RETURN: Final = "(return)"


@dataclass(frozen=True, slots=True, eq=False)
class Layout:
    """Nodes and edges of a record, before what hangs together is worked out."""

    nodes: tuple[str, ...]
    branches: tuple[Edge, ...]
    batteries: tuple[Edge, ...]
    injectors: tuple[Edge, ...]
    #: Loads that declare what they feed back into a fault, as injectors too.
    motors: tuple[Edge, ...]
    reference: str
    islands: Islands
    #: Ids of the parts of each run in order, and the two nodes at its ends.
    parts: dict[str, tuple[str, ...]]
    ends: dict[str, tuple[str, str]]
    run_of: dict[str, str]
    #: Runs that end at a node, in the order of the record.
    runs_at: dict[str, tuple[str, ...]]
    traced: frozenset[str]

    def positive(self, identity: str) -> str:
        """The positive terminal of a battery, source or load."""
        return f"{identity}.positive"

    def negative(self, identity: str) -> str:
        """The node its negative lies on: its own terminal if traced, else the common return."""
        terminal = f"{identity}.negative"
        return terminal if terminal in self.traced else self.reference


def lay_out(record: Record, opened: frozenset[str] = frozenset()) -> Layout:
    """The layout of a record; lists that are not recorded count as empty here.

    ``opened``: ids of switches that join nothing.
    """
    runs = listed(record, "run")
    branches: list[Edge] = []
    parts: dict[str, tuple[str, ...]] = {}
    ends: dict[str, tuple[str, str]] = {}
    runs_at: dict[str, list[str]] = {}
    for run in runs:
        own = [branch for branch in _branches(run) if branch.id not in opened]
        branches += own
        parts[run.id] = tuple(branch.id for branch in own if branch.kind != JOINT)
        ends[run.id] = (_end(run, "from"), _end(run, "to"))
        for node in ends[run.id]:
            runs_at.setdefault(node, []).append(run.id)
    batteries = [each.id for each in listed(record, "battery")]
    nodes = dict.fromkeys((
        *(f"{battery}.positive" for battery in batteries),
        *(bus.id for bus in listed(record, "bus")),
        *(node for run in runs for node in ends[run.id]),
        *(node for branch in branches for node in (branch.start, branch.end))))
    islands = Islands((*nodes, RETURN), branches)
    reference = _reference(batteries, [bus.id for bus in listed(record, "bus")], nodes, islands)
    nodes[reference] = None
    layout = Layout(
        nodes=tuple(nodes), branches=tuple(branches), batteries=(), injectors=(), motors=(),
        reference=reference, islands=islands, parts=parts, ends=ends,
        run_of={branch: run for run, found in parts.items() for branch in found},
        runs_at={node: tuple(found) for node, found in runs_at.items()}, traced=frozenset(runs_at))
    sources = [each.id for each in listed(record, "source") if f"{each.id}.positive" in nodes]
    motors = [each.id for each in listed(record, "load") if f"{each.id}.positive" in nodes
              and each.facts.get("fault_contribution") is not None]
    return _with_sources(layout, batteries, sources, motors)


def listed(record: Record, subject: str) -> tuple[Thing, ...]:
    """The things of a subject; none where the list is not recorded."""
    return record.lists.get(subject) or ()


def _end(run: Thing, name: str) -> str:
    return cast(str, run.facts[name].value)


def _branches(run: Thing) -> list[Edge]:
    through = run.groups.get("through", ())
    if not through:
        return [Edge(f"{run.id}/", _end(run, "from"), _end(run, "to"), JOINT)]
    joints = [f"{run.id}/{number}" for number in range(1, len(through))]
    nodes = [_end(run, "from"), *joints, _end(run, "to")]
    return [Edge(part.id, start, end, cast(Kind, part.subject))
            for part, start, end in zip(through, nodes, nodes[1:], strict=False)]


def _reference(batteries: list[str], buses: list[str], nodes: Iterable[str],
               islands: Islands) -> str:
    """The common return: see the head of this file."""
    positive_islands = {islands.of(f"{battery}.positive") for battery in batteries}
    negatives = {node: None for node in nodes if node.endswith(".negative")
                 and islands.of(node) not in positive_islands}
    of_batteries = [node for node in (f"{battery}.negative" for battery in batteries)
                    if node in negatives]
    counted = of_batteries or [node for node in negatives if not any(
        other.endswith(".positive") for other in islands.around(node))]
    reached = Counter(islands.of(node) for node in counted)
    most = max((reached[islands.of(bus)] for bus in buses), default=0)
    return next((bus for bus in buses if most and reached[islands.of(bus)] == most),
                of_batteries[0] if of_batteries else RETURN)


def _with_sources(layout: Layout, batteries: list[str], sources: list[str],
                  motors: list[str]) -> Layout:
    def across(identity: str, kind: Kind) -> Edge:
        return Edge(identity, layout.negative(identity), layout.positive(identity), kind)

    return Layout(
        layout.nodes, layout.branches, tuple(across(each, BATTERY) for each in batteries),
        tuple(across(each, INJECTOR) for each in sources),
        tuple(across(each, INJECTOR) for each in motors), layout.reference, layout.islands,
        layout.parts, layout.ends, layout.run_of, layout.runs_at, layout.traced)
