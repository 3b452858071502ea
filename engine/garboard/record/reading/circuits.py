"""Circuits no one could have found aboard: a shorted battery, batteries in a ring.

Only what the runs alone prove is refused here: a way over runs and buses from one terminal of a
battery to its other terminal, or from battery to battery, plus to minus, back to the first. Both
mean that two ends were mixed up in writing.
"""

from __future__ import annotations

from garboard.record.reading.draft import Draft
from garboard.record.thing import Thing


def check_circuits(draft: Draft) -> None:
    """Refuse batteries that the record shorts, alone or in a ring."""
    joined = _Joined()
    for run in draft.lists.get("run", []):
        joined.join(run.facts["from"].value, run.facts["to"].value)
    batteries = draft.lists.get("battery", [])
    ends = {each.id: (joined.net(f"{each.id}.positive"), joined.net(f"{each.id}.negative"))
            for each in batteries}
    for battery in batteries:
        if ends[battery.id][0] == ends[battery.id][1]:
            path = _shorting_run(draft, battery) or (*battery.path, "id")
            draft.notes.refuse(
                "battery-shorted", path, f"{battery.id}.positive joined to {battery.id}.negative",
                "runs that join its terminals to different things", "check both ends of the runs")
    ring = _ring([each for each in batteries if ends[each.id][0] != ends[each.id][1]], ends)
    if ring:
        draft.notes.refuse(
            "series-circular", (*ring[0].path, "id"),
            " to ".join([*(each.id for each in ring), ring[0].id]),
            "a string with two free ends",
            "batteries in a ring, or one of them the wrong way round: check the ends of the runs")


def _shorting_run(draft: Draft, battery: Thing) -> tuple[str | int, ...] | None:
    """The run that by itself joins both terminals of a battery, if there is one."""
    both = {f"{battery.id}.positive", f"{battery.id}.negative"}
    for run in draft.lists.get("run", []):
        if {run.facts["from"].value, run.facts["to"].value} == both:
            return (*run.path, "to")
    return None


class _Joined:
    """Terminals and buses that runs join into one net."""

    def __init__(self) -> None:
        self._parent: dict[str, str] = {}

    def net(self, end: str) -> str:
        """The name of the net an end belongs to."""
        parent = self._parent
        while parent.get(end, end) != end:
            parent[end] = parent.get(parent[end], parent[end])
            end = parent[end]
        return end

    def join(self, one: str, other: str) -> None:
        self._parent[self.net(one)] = self.net(other)


def _ring(batteries: list[Thing], ends: dict[str, tuple[str, str]]) -> list[Thing]:
    """Batteries whose voltages add up around a closed way, or none; first the one listed first."""
    following_at: dict[str, list[Thing]] = {}
    for battery in batteries:
        following_at.setdefault(ends[battery.id][0], []).append(battery)
    done: set[str] = set()
    for start in batteries:
        stack = [(start, iter(following_at.get(ends[start.id][1], ())))]
        way, on_way = [start], {start.id}
        if start.id in done:
            continue
        while stack:
            following = next(stack[-1][1], None)
            if following is None:
                finished = stack.pop()[0]
                done.add(finished.id)
                on_way.discard(finished.id)
                way.pop()
            elif following.id in on_way:
                ring = way[[each.id for each in way].index(following.id):]
                first = min(range(len(ring)), key=lambda at: batteries.index(ring[at]))
                return ring[first:] + ring[:first]
            elif following.id not in done:
                stack.append((following, iter(following_at.get(ends[following.id][1], ()))))
                way.append(following)
                on_way.add(following.id)
    return []
