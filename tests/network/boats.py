"""Small records from short lines, read like any other record.

``boat("pack-1 > w1 f1 > bus-main")``: one line per run, its two ends and what lies between, the
kind by the first letter: w conductor, f fuse, b breaker, s switch. Ends named pack-*, start-* are
batteries, bus-* buses, load-* loads, source-* charging sources; all are declared as they are met.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from garboard.network import Network, build_network
from garboard.record import Record, read_record

_KINDS = {"w": "conductor", "f": "fuse", "b": "breaker", "s": "switch"}
_LISTS = {"pack": "batteries", "start": "batteries", "bus": "buses", "load": "loads",
          "source": "charging_sources"}


def record(runs: str | None, facts: Mapping[str, Mapping[str, Any]] | None = None,
           declared: tuple[str, ...] = (), **lists: Any) -> Record:
    """A record of these runs; ``facts`` by id, ``declared`` are things that no run leads to.

    Without ``runs`` the list is not recorded; likewise each of ``lists`` given as ``None``.
    """
    things: dict[str, dict[str, dict[str, Any]]] = {key: {} for key in _LISTS.values()}

    def declare(identity: str) -> None:
        listed = things[_LISTS[identity.partition("-")[0]]]
        listed.setdefault(identity, {"id": identity, **(facts or {}).get(identity, {})})

    written = []
    for number, line in enumerate(filter(None, map(str.strip, (runs or "").splitlines())), start=1):
        start, between, end = (part.strip() for part in line.split(">"))
        for terminal in (start, end):
            declare(terminal.partition(".")[0])
        through = [{_KINDS[part[0]]: {"id": part, **(facts or {}).get(part, {})}}
                   for part in between.split()]
        written.append({"id": f"run-{number}", "from": start, "to": end, "through": through,
                        **(facts or {}).get(f"run-{number}", {})})
    for identity in declared:
        declare(identity)
    data: dict[str, Any] = {"format": "installation-record/1",
                            **{key: list(found.values()) for key, found in things.items()},
                            "runs": None if runs is None else written, **lists}
    return read_record({key: value for key, value in data.items() if value is not None})


def boat(runs: str | None, facts: Mapping[str, Mapping[str, Any]] | None = None,
         declared: tuple[str, ...] = (), **lists: Any) -> Network:
    """The network of such a record."""
    return build_network(record(runs, facts, declared, **lists))
