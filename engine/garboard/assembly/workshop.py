"""Everything put together once: plugins, the registry of quantities, the vocabulary, packs."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any

from garboard.assembly.collector import collector_held
from garboard.assembly.plugins import Plugins, load_plugins
from garboard.assembly.vocabulary import vocabulary_of
from garboard.assessment import (
    Assessment,
    aboard_of,
    asked_of,
    assess,
    assessment_day,
    previous_digest,
    remedy_for,
    replay,
)
from garboard.documents import DEFAULT_LIMITS, Limits, read_document, shipped_folder
from garboard.expressions import Vocabulary
from garboard.packs import (
    CheckedPack,
    Dispensation,
    PackList,
    find_pack,
    load_pack,
    shipped_shelf,
)
from garboard.quantities import Registry
from garboard.record import Record, read_record
from garboard.reports import Aboard, Asked, Remedy
from garboard.trail import Finding, Trail


@dataclass
class Workshop:
    """Reads records, loads packs and assesses one against the others."""

    plugins: Plugins
    pack_files: list[Path] = field(default_factory=list)
    record_limits: Limits = DEFAULT_LIMITS

    @cached_property
    def registry(self) -> Registry:
        return Registry(self.plugins.quantities())

    @cached_property
    def vocabulary(self) -> Vocabulary:
        return vocabulary_of(self.registry)

    def load_packs(self, names: Iterable[str | Path], pinned: PackList | None = None,
                   ) -> tuple[CheckedPack, ...]:
        """The packs of those names, folders or files; PackRefused with every problem of one.

        A pack that builds on others finds them among those, beside itself, or shipped. With a list
        that pins packs each must be as it is pinned; without names they are those of the list.
        """
        names = tuple(names)
        if pinned is not None and not names:
            names = tuple(each.name for each in pinned.pins)
        paths = tuple(find_pack(name, (shipped_folder("rulepacks"),))
                      for name in dict.fromkeys(names))
        shelf = shipped_shelf(named=paths)
        loaded = tuple(load_pack(path, self.vocabulary, shelf) for path in paths)
        if pinned is not None:
            pinned.check([each.pack for each in loaded])
        self.pack_files += [*paths, *(file for each in loaded for file in each.pack.files)]
        return loaded

    def read_record(self, file: str | Path) -> Record:
        """The record in a file; DocumentRefused or RecordRefused with every problem of it."""
        return read_record(read_document(file, self.record_limits))

    def assess(self, file: str | Path, packs: tuple[CheckedPack, ...],
               day: str | None = None,
               dispensations: tuple[Dispensation, ...] = (),
               previous: Trail | None = None) -> Assessment:
        """The assessment of the record in a file, for the given day or that of the survey.

        ``previous`` is the trail of the vessel's previous assessment; CommandRefused when it is of
        another vessel or of a later day.
        """
        with collector_held():
            started = time.perf_counter()
            record = self.read_record(file)
            reading = time.perf_counter() - started
            on = assessment_day(record, day)
            return assess(record, packs, self.registry, on, self.about(),
                          timings={"reading": reading}, dispensations=dispensations,
                          previous=None if previous is None else
                          previous_digest(previous, record, on))

    def replay(self, trail: Trail, record: Record | None = None) -> Assessment:
        """The assessment of a trail made again from it alone; see ``assessment.replay``."""
        with collector_held():
            return replay(trail, self.vocabulary, self.registry, self.about(), record)

    def assess_again(self, trail: Trail, packs: tuple[CheckedPack, ...]) -> Assessment:
        """The record of a trail by other packs, on its day and with its dispensations."""
        with collector_held():
            return replay(trail, self.vocabulary, self.registry, self.about(), packs=packs)

    def aboard(self, trail: Trail) -> Aboard:
        """The figures and circuits of the record in a trail, as this program computes them."""
        with collector_held():
            return aboard_of(read_record(trail.written), self.registry)

    def asked(self, file: str | Path, names: Sequence[str],
              items: Sequence[str] = ()) -> tuple[Asked, ...]:
        """Figures of the record in a file by their names; see ``assessment.asked_of``."""
        with collector_held():
            return asked_of(self.read_record(file), self.registry, names, items)

    def remedy(self, trail: Trail, finding: Finding, progress: Callable[[int], None]) -> Remedy:
        """The smallest permissible change after which a failed finding of a trail passes."""
        with collector_held():
            return remedy_for(trail, finding, self.vocabulary, self.registry, progress)

    def about(self) -> dict[str, Any]:
        """What a trail says of the program that made it, outside the digest."""
        import platform
        from datetime import UTC, datetime

        from garboard import __version__

        return {"garboard": __version__,
                "plugins": [each.as_data() for each in self.plugins.loaded],
                "written_at": datetime.now(UTC).isoformat(timespec="seconds"),
                "python": platform.python_version(), "platform": platform.platform()}


def open_workshop(record_limits: Limits = DEFAULT_LIMITS) -> Workshop:
    """A workshop with the built-in quantities and all installed plugins."""
    return Workshop(load_plugins(), record_limits=record_limits)
