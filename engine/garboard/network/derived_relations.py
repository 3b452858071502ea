"""Relations that follow from the runs: strings, banks, devices, what a run leads to."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from garboard.network.layout import listed
from garboard.network.related import Related, joined, list_path, not_recorded, unless
from garboard.record import Record
from garboard.values import OUTSIDE_METHOD, Unknown

if TYPE_CHECKING:
    from garboard.network.network import Network


class DerivedRelations:
    """Answers by subject and relation."""

    def __init__(self, record: Record, network: Network) -> None:
        self._record, self._network = record, network
        self._answers: dict[tuple[str, str], Callable[[str], Related]] = {
            ("battery", "string"): lambda each: network.string_of[each].id,
            ("battery", "bank"): self._bank_of_battery,
            ("battery", "own_device"): lambda each: self._own(network.string_of[each].id),
            ("battery", "first_device"): self._first_device,
            ("string", "batteries"): self._string_batteries,
            ("string", "bank"): lambda each: self._bank_of_battery(self._string_batteries(each)[0]),
            ("string", "own_device"): self._own,
            ("bank", "strings"): lambda each: tuple(s.id for s in network.bank(each).strings),
            ("bank", "batteries"): lambda each: network.bank(each).batteries,
            ("bank", "sources"): self._sources_of_bank,
            ("bank", "loads"): lambda each: self._on_bank(each, "load"),
            ("bank", "devices"): self._bank_devices,
            ("bank", "buses"): self._bank_buses,
            ("conductor", "protecting_devices"): network.protecting,
            ("conductor", "banks"): self._banks_of_branch,
            ("device", "banks"): self._banks_of_branch,
            ("switch", "banks"): self._banks_of_branch,
            ("bus", "banks"): lambda each: tuple(bank.id for bank in network.banks_at(each)),
            ("bus", "runs"): lambda each: network.layout.runs_at.get(each, ()),
            ("source", "run"): self._run_to, ("load", "run"): self._run_to,
            ("source", "banks"): self._banks_of_source,
            ("source", "bank"): self._bank_of_user, ("load", "bank"): self._bank_of_user,
            ("vessel", "record"): lambda _: "record",
        }


    def answers(self, subject: str, relation: str) -> bool:
        """Whether it is one of these."""
        return (subject, relation) in self._answers

    def find(self, subject: str, relation: str, item: str) -> Related:
        """What the relation of an item leads to."""
        return self._answers[subject, relation](item)

    # derived -------------------------------------------------------------------------------------
    def _untraced(self, battery: str) -> Unknown | None:
        positive = self._network.graph.edges[battery].end
        if positive in self._network.layout.traced:
            return None
        return not_recorded("runs", f"no run leads to {positive}")

    def _string_batteries(self, string: str) -> tuple[str, ...]:
        return next(each.batteries for each in self._network.strings if each.id == string)

    def _bank_of_battery(self, battery: str) -> Related:
        string = self._network.string_of[battery]
        return unless(self._untraced(string.batteries[-1]),
                       lambda: self._network.bank_of[string.id].id)

    def _own(self, string: str) -> Related:
        top = self._string_batteries(string)[-1]
        return unless(self._untraced(top), lambda: self._network.own_devices[string])

    def _first_device(self, battery: str) -> Related:
        devices = self._network.first_devices(battery)
        if isinstance(devices, Unknown):
            return devices
        if len(devices) > 1:
            return Unknown.because(OUTSIDE_METHOD, detail=(
                f"several devices stand first behind {battery}: {', '.join(devices)}"))
        return devices[0] if devices else None

    def _on_bank(self, identity: str, subject: str) -> Related:
        things = self._record.lists.get(subject)
        if things is None:
            return not_recorded(list_path(subject))
        bank = self._network.bank(identity)
        unknown = joined((self._bank_untraced(identity),
                           *(self._terminal(thing.id) for thing in things)))
        return unless(unknown, lambda: tuple(
            thing.id for thing in things if f"{thing.id}.positive" in bank.nodes))

    def _sources_of_bank(self, identity: str) -> Related:
        """The sources that can charge a bank, over a switch that couples it to another too."""
        things = self._record.lists.get("source")
        if things is None:
            return not_recorded(list_path("source"))
        bank = self._network.bank(identity)
        unknown = joined((self._bank_untraced(identity),
                           *(self._terminal(thing.id) for thing in things)))
        return unless(unknown, lambda: tuple(
            thing.id for thing in things
            if bank in self._network.banks_at(f"{thing.id}.positive")))

    def _banks_of_source(self, source: str) -> Related:
        """All banks that a source can charge, switches closed."""
        terminal = self._terminal(source)
        if isinstance(terminal, Unknown):
            return terminal
        return tuple(bank.id for bank in self._network.banks_at(terminal))

    def _bank_untraced(self, identity: str) -> Unknown | None:
        bank = self._network.bank(identity)
        return joined(self._untraced(string.batteries[-1]) for string in bank.strings)

    def _terminal(self, user: str) -> str | Unknown:
        """The positive terminal of a source or load, or unknown when no run leads to it."""
        terminal = f"{user}.positive"
        if terminal in self._network.layout.traced:
            return terminal
        return not_recorded("runs", f"no run leads to {terminal}")

    def _bank_of_user(self, user: str) -> Related:
        terminal = self._terminal(user)
        if isinstance(terminal, Unknown):
            return terminal
        return next((bank.id for bank in self._network.banks if terminal in bank.nodes), None)

    def _run_to(self, user: str) -> Related:
        runs_at = self._network.layout.runs_at
        runs = runs_at.get(f"{user}.positive") or runs_at.get(f"{user}.negative") or ()
        if len(runs) == 1:
            return runs[0]
        if not runs:
            return not_recorded("runs", f"no run leads to {user}")
        return Unknown.because(OUTSIDE_METHOD,
                               detail=f"several runs lead to {user}: {', '.join(runs)}")

    def _bank_devices(self, identity: str) -> Related:
        bank = self._network.bank(identity)
        edges = self._network.graph.of_kind("device")
        links = {node for string in bank.strings for battery in string.batteries[1:]
                 for node in self._network.layout.islands.around(
                     self._network.graph.edges[battery].start)}
        return unless(self._bank_untraced(identity), lambda: tuple(
            edge.id for edge in edges if edge.start in bank.nodes or edge.start in links))

    def _bank_buses(self, identity: str) -> Related:
        bank = self._network.bank(identity)
        return unless(self._bank_untraced(identity), lambda: tuple(
            bus.id for bus in listed(self._record, "bus") if bus.id in bank.nodes))

    def _banks_of_branch(self, branch: str) -> Related:
        return tuple(bank.id for bank in self._network.banks_at(
            self._network.graph.edges[branch].start))
