"""What in a network does not hang together as it should: findings of its shape, not of its values.

Each has a code (see the catalogue of codes), the ids of the things concerned, and a sentence.
Nothing here is refused: a record tells what is aboard, odd or not.
"""

from __future__ import annotations

from collections.abc import Iterator

from garboard.network.banks import Bank
from garboard.network.irregularity import Irregularity
from garboard.network.layout import RETURN, Layout, listed
from garboard.network.polarity import island_polarity
from garboard.network.rings import Rings, fed_from_both
from garboard.network.strings import Series, String
from garboard.network.ways import Ways
from garboard.record import Record


def find_irregularities(record: Record, layout: Layout, series: Series, banks: tuple[Bank, ...],
                        ways: Ways) -> tuple[Irregularity, ...]:
    """All irregularities, by kind and then in the record's order; none without runs."""
    if record.lists.get("run") is None:
        return ()
    rings = Rings(layout, ways)
    return (*_not_connected(record, layout), *_floating(record, layout), *_not_fed(layout, ways),
            *_series_unclear(series), *_reversed(layout), *_negatives_apart(layout),
            *rings.found(), *rings.side_by_side(),
            *fed_from_both(layout, series.strings, ways, rings.members),
            *_voltages_joined(record, layout, series.strings),
            *_polarity_contradicts(record, layout),
            *_voltage_contradicts(record, series.strings))


def _not_connected(record: Record, layout: Layout) -> Iterator[Irregularity]:
    for subject, word in (("battery", "battery"), ("bus", "bus"), ("source", "charging source"),
                          ("load", "load")):
        for thing in listed(record, subject):
            ends = {thing.id, f"{thing.id}.positive", f"{thing.id}.negative"}
            if ends.isdisjoint(layout.traced):
                yield Irregularity("not-connected", (thing.id,),
                                   f"no run leads to the {word} {thing.id}")
            elif subject != "bus" and f"{thing.id}.positive" not in layout.traced:
                yield Irregularity("positive-not-traced", (thing.id,),
                                   f"no run leads to the positive terminal of {thing.id}")


def _floating(record: Record, layout: Layout) -> Iterator[Irregularity]:
    for bus in listed(record, "bus"):
        runs = layout.runs_at.get(bus.id, ())
        if len(runs) == 1:
            yield Irregularity("floating-end", (runs[0], bus.id),
                               f"the run {runs[0]} ends at {bus.id}, where nothing else is joined")


def _not_fed(layout: Layout, ways: Ways) -> Iterator[Irregularity]:
    """Islands of runs that no battery is joined to."""
    batteries = {node for edge in layout.batteries for node in (edge.start, edge.end)}
    for nodes in layout.islands.members.values():
        if layout.reference in nodes or not batteries.isdisjoint(nodes):
            continue
        runs = dict.fromkeys(run for node in nodes for run in layout.runs_at.get(node, ()))
        negative_only = all(not node.endswith(".positive") for node in nodes)
        if runs and not negative_only:
            yield Irregularity("not-fed", tuple(runs),
                               f"no battery is joined to the runs {', '.join(runs)}")


def _series_unclear(series: Series) -> Iterator[Irregularity]:
    for group in series.cross_linked:
        yield Irregularity("series-unclear", group,
                           f"which of {', '.join(group)} are in series cannot be told")


def _reversed(layout: Layout) -> Iterator[Irregularity]:
    """Batteries whose negative lies with the positives of others, and whose positive goes nowhere
    or to the common return."""
    positive_islands = {edge.id: layout.islands.of(edge.end) for edge in layout.batteries}
    for edge in layout.batteries:
        if edge.start == RETURN or edge.start not in layout.traced:
            continue
        with_positives = any(name == layout.islands.of(edge.start)
                             for other, name in positive_islands.items() if other != edge.id)
        returns = edge.end not in layout.traced or layout.islands.joined(
            edge.end, layout.reference)
        if with_positives and returns:
            yield Irregularity("battery-reversed", (edge.id,),
                               f"{edge.id} has its negative terminal on the positive side")


def _negatives_apart(layout: Layout) -> Iterator[Irregularity]:
    """Negative sides that are not joined to the common return."""
    for nodes in layout.islands.members.values():
        apart = tuple(node.removesuffix(".negative") for node in nodes
                      if node.endswith(".negative"))
        if apart and layout.reference not in nodes and not any(
                node.endswith(".positive") for node in nodes):
            yield Irregularity("negative-sides-apart", apart, (
                f"the negative side of {', '.join(apart)} is not joined to that of the others"))


def _voltages_joined(record: Record, layout: Layout,
                     strings: tuple[String, ...]) -> Iterator[Irregularity]:
    """Strings in parallel whose nominal voltages differ."""
    at: dict[tuple[str, str], list[tuple[String, float]]] = {}
    for string in strings:
        volts = [record.things[battery].value("nominal_voltage") for battery in string.batteries]
        if all(isinstance(each, float) for each in volts):
            key = (layout.islands.of(string.positive), layout.islands.of(string.negative))
            at.setdefault(key, []).append((string, sum(volts)))
    for group in at.values():
        least, greatest = min(v for _, v in group), max(v for _, v in group)
        if not _alike(least, greatest):
            items = tuple(string.id for string, _ in group)
            yield Irregularity("voltages-joined", items, (
                f"{', '.join(items)} are in parallel, with nominal voltages from {least:g} V "
                f"to {greatest:g} V"))


def _polarity_contradicts(record: Record, layout: Layout) -> Iterator[Irregularity]:
    """Buses that are said to be of one side, and traced to the other."""
    traced = island_polarity(layout)
    for bus in listed(record, "bus"):
        said = bus.value("polarity")
        found = traced.get(layout.islands.of(bus.id)) if bus.id in layout.traced else None
        if {said, found} == {"positive", "negative"}:
            yield Irregularity("polarity-contradicts", (bus.id,), (
                f"the bus {bus.id} is recorded as {said}, and the runs at it lead to the {found} "
                "side; rules on buses of one side go by what the runs lead to"))


def _voltage_contradicts(record: Record, strings: tuple[String, ...]) -> Iterator[Irregularity]:
    """A vessel or charging source for a nominal voltage that no string has."""
    sums = [sum(volts) for volts in (
        [record.things[battery].value("nominal_voltage") for battery in string.batteries]
        for string in strings) if all(isinstance(each, float) for each in volts)]
    if not sums or len(sums) < len(strings):
        return
    for subject in ("vessel", "source"):
        for thing in listed(record, subject):
            said = thing.value("nominal_voltage")
            if isinstance(said, float) and not any(_alike(said, each) for each in sums):
                had = ", ".join(f"{each:g} V" for each in sorted(set(sums)))
                yield Irregularity("voltage-contradicts", (thing.id,), (
                    f"{thing.id} is recorded for {said:g} V, the batteries in series come to "
                    f"{had}"))


def _alike(one: float, other: float) -> bool:
    """12 V and 12.8 V are called alike, 12.8 V and 25.6 V are not: within 15 % of the larger."""
    return abs(one - other) <= 0.15 * max(abs(one), abs(other))


