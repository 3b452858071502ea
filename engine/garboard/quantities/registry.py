"""All quantities that are known, by subject and name; filled at start-up, then frozen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType

from garboard.errors import PluginError, did_you_mean
from garboard.quantities.declaration import Quantity
from garboard.quantities.needs import Need, read_need
from garboard.record import SUBJECTS


class Registry:
    """A frozen set of quantities whose needs have been checked against subjects and each other."""

    def __init__(self, quantities: Iterable[Quantity]) -> None:
        by_subject: dict[str, dict[str, Quantity]] = {name: {} for name in SUBJECTS}
        for each in quantities:
            self._admit(by_subject, each)
        self.by_subject: Mapping[str, Mapping[str, Quantity]] = MappingProxyType(by_subject)
        self._known = {subject: {each.name: (each, self._needs_of(each)) for each in found.values()}
                       for subject, found in by_subject.items()}

    def __iter__(self) -> Iterator[Quantity]:
        for subject in sorted(self.by_subject):
            for name in sorted(self.by_subject[subject]):
                yield self.by_subject[subject][name]

    def __len__(self) -> int:
        return sum(map(len, self.by_subject.values()))

    def find(self, subject: str, name: str) -> tuple[Quantity, tuple[Need, ...]] | None:
        """The quantity ``name`` of ``subject`` and what it needs, if there is one."""
        return self._known[subject].get(name)

    def named(self, full_name: str) -> Quantity:
        """The quantity of that full name (``bus.fault_current``), or KeyError."""
        subject, _, name = full_name.partition(".")
        return self.by_subject[subject][name]

    @staticmethod
    def _admit(by_subject: dict[str, dict[str, Quantity]], each: Quantity) -> None:
        subject = SUBJECTS.get(each.subject)
        if subject is None:
            raise PluginError(each.origin, "quantity-subject-unknown", found=each.full_name,
                              expected=f"one of {', '.join(sorted(SUBJECTS))}",
                              hint=did_you_mean(each.subject, SUBJECTS))
        if each.name in by_subject[each.subject]:
            other = by_subject[each.subject][each.name]
            raise PluginError(each.origin, "quantity-clash", found=each.full_name,
                              expected=f"a name not taken by {other.origin}")
        if each.name in subject.fields or each.name in subject.relations:
            raise PluginError(each.origin, "quantity-clash", found=each.full_name,
                              expected="a name that is neither a recorded field nor a relation")
        by_subject[each.subject][each.name] = each

    def _needs_of(self, each: Quantity) -> tuple[Need, ...]:
        return tuple(self._need(each, argument, path) for argument, path in each.needs.items())

    def _need(self, each: Quantity, argument: str, path: str) -> Need:
        try:
            return read_need(each.subject, argument, path, self.by_subject)
        except LookupError as error:
            raise PluginError(each.origin, "quantity-need-unknown",
                              found=f"{each.full_name} needs {path!r}",
                              expected="a path over recorded fields, relations and quantities",
                              hint=str(error.args[0])) from None
