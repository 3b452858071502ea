"""The circuit simulator ngspice as a referee: many networks and states in one process.

Each network is a netlist with a resistor to ground at every node that may be faulted, open until
the control script alters it, and a current source for a load. The script sources one netlist after
the other and prints the currents of every state.
"""

from __future__ import annotations

import re
import subprocess
from dataclasses import dataclass
from pathlib import Path

from network.generate import Made

#: A short and an open connection, in Ω: far below and above everything in the networks.
SHORT, OPEN = 1e-9, 1e12


@dataclass(frozen=True)
class State:
    """One state of a network: a fault, a device made a link, a current drawn; what to read.

    ``opened``: elements taken out. ``pushed``: a current from outside into a node.
    """

    name: str
    reads: tuple[str, ...]
    fault: str | None = None
    link: str | None = None
    draw: tuple[str, float] | None = None
    opened: tuple[str, ...] = ()
    pushed: tuple[str, float] | None = None


def run(networks: list[Made], states: list[list[State]], folder: Path) -> list[dict[str, float]]:
    """Currents in A by ``<state> <edge id>`` for each network (``fault``: that of the fault)."""
    script = ["* all networks", ".control", "set numdgt=9", "set nomoremode"]
    for number, (made, wanted) in enumerate(zip(networks, states, strict=True)):
        (folder / f"net{number}.cir").write_text(_netlist(made), encoding="ascii")
        script += [f"source {folder}/net{number}.cir", f"echo network {number}"]
        for state in wanted:
            script += _script(made, state)
        script.append("destroy all")
        script.append("remcirc")
    script += ["quit", ".endc", ".end"]
    main = folder / "all.cir"
    main.write_text("\n".join(script) + "\n", encoding="ascii")
    done = subprocess.run(["ngspice", "-b", str(main)], capture_output=True, text=True,
                          timeout=300, check=False)
    return _read(done.stdout, len(networks))


def _node(made: Made, node: str) -> str:
    return "0" if node == made.graph.reference else node.replace(".", "_")


def _netlist(made: Made) -> str:
    lines = ["a network"]
    for edge in made.graph.edges.values():
        start, end = _node(made, edge.start), _node(made, edge.end)
        if edge.kind == "battery":
            lines += [f"v{edge.id} x{edge.id} {start} {made.emf[edge.id]!r}",
                      f"r{edge.id} x{edge.id} {end} {made.resistance[edge.id]!r}"]
        else:
            lines.append(f"r{edge.id} {start} {end} {made.resistance[edge.id]!r}")
    for number, node in enumerate(made.points):
        lines += [f"rfault{number} {_node(made, node)} 0 {OPEN!r}",
                  f"iload{number} {_node(made, node)} 0 0"]
    return "\n".join((*lines, ".end", ""))


def _script(made: Made, state: State) -> list[str]:
    lines, after = [f"echo state {state.name}"], []
    if state.fault:
        number = made.points.index(state.fault)
        lines.append(f"alter rfault{number} = {SHORT!r}")
        after.append(f"alter rfault{number} = {OPEN!r}")
    if state.link:
        lines.append(f"alter r{state.link} = {SHORT!r}")
        after.append(f"alter r{state.link} = {made.resistance[state.link]!r}")
    for element in state.opened:
        lines.append(f"alter r{element} = {OPEN!r}")
        after.append(f"alter r{element} = {made.resistance[element]!r}")
    outside = [state.draw] if state.draw else []
    if state.pushed:
        outside.append((state.pushed[0], -state.pushed[1]))
    for node, amperes in outside:
        number = made.points.index(node)
        lines.append(f"alter iload{number} = {amperes!r}")
        after.append(f"alter iload{number} = 0")
    lines.append("op")
    for read in state.reads:
        element = f"rfault{made.points.index(state.fault)}" if read == "fault" else f"r{read}"
        lines.append(f"print @{element}[i]")
    return lines + after


def _read(text: str, count: int) -> list[dict[str, float]]:
    found: list[dict[str, float]] = [{} for _ in range(count)]
    number, state = -1, ""
    for line in text.splitlines():
        if line.startswith("network "):
            number = int(line.split()[1])
        elif line.startswith("state "):
            state = line.split()[1]
        elif match := re.match(r"@r(\w+)\[i\] = (\S+)", line):
            name = "fault" if match[1].startswith("fault") else match[1]
            found[number][f"{state} {name}"] = float(match[2])
    return found
