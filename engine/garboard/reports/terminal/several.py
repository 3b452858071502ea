"""Several assessments side by side: a line or two for each record, and how many came out how."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from garboard.reports.cautions import CAUTIONS
from garboard.reports.counts import plural, severity_table
from garboard.reports.harmless import harmless_name
from garboard.reports.sheet import Sheet, cells
from garboard.reports.summary import OUTCOME_OF_WORD, fact_shown, pack_name, pack_standing
from garboard.reports.terminal.page import MARKS, STYLES
from garboard.trail import FAILED, NOT_ASSESSED, Trail

_COUNTED: Final = (FAILED, NOT_ASSESSED)
_SEVERE: Final = ("danger", "warning")
_COLUMN: Final = 9
_LEAST_NAME: Final = 16


@dataclass(frozen=True, slots=True)
class RecordLine:
    """What the list says of one record: small, so that a thousand can wait for their list.

    ``counts``: danger, warning and all of what failed, then of what could not be assessed;
    ``accepted``: the word of each pack that says on what it accepts; ``rules``: the packs.
    """

    vessel: str
    record: str
    trail_file: str
    word: str
    counts: tuple[int, ...]
    accepted: tuple[str, ...]
    rules: tuple[str, ...]


def record_line(trail: Trail, record: str, trail_file: str) -> RecordLine:
    """The line of a record that was assessed."""
    table = severity_table(trail)
    counts = []
    for outcome in _COUNTED:
        counts += [table[severity][outcome] if severity in table else 0 for severity in _SEVERE]
        counts.append(sum(row[outcome] for row in table.values()))
    return RecordLine(
        fact_shown(trail, "vessel.name", "metric") or "name not recorded", harmless_name(record),
        harmless_name(trail_file), trail.word, tuple(counts),
        tuple(each["acceptance"]["word"] for each in trail.outcome["packs"]
              if each.get("acceptance")),
        tuple(f"{pack_name(each)} ({pack_standing(each)})" for each in trail.packs))


def several_text(lines: Sequence[RecordLine], refused: Sequence[str], width: int = 100,
                 colour: bool = False) -> str:
    """The list as text of at most ``width`` cells a line (60 to 110), in colour or plain."""
    sheet = Sheet(width, colour)
    sheet.title(f"{plural(len(lines) + len(refused), 'record')} assessed".upper())
    for rules in dict.fromkeys(each for line in lines for each in line.rules):
        sheet.field("Rules", rules)
    sheet.blank()
    _table(sheet, lines)
    sheet.heading("TOGETHER")
    for word, count in Counter(line.word for line in lines).most_common():
        outcome = OUTCOME_OF_WORD[word]
        sheet.bullet(MARKS[outcome], f"{count} of {plural(len(lines), 'record')}: {word}",
                     mark_style=STYLES[outcome])
    accepted = Counter(word for line in lines for word in line.accepted)
    for word, count in sorted(accepted.items()):
        sheet.bullet("•", f"{word} by the terms of a pack: {count}")
    for each in refused:
        sheet.bullet("✗", f"refused, see above: {harmless_name(each)}", style="failed")
    sheet.heading("BEAR IN MIND")
    for each in CAUTIONS:
        sheet.bullet("!", each)
    return str(sheet)


def _table(sheet: Sheet, lines: Sequence[RecordLine]) -> None:
    room = max(_LEAST_NAME, sheet.width - 2 - 6 * _COLUMN - 12)
    head = "".join(f"{each:>{_COLUMN}}" for each in (*_SEVERE, "all") * 2)
    over = f"{'failed':>{3 * _COLUMN}}{'not assessed':>{3 * _COLUMN}}"
    sheet.line(f"{'':{room + 2}}{over}", "faint")
    sheet.line(f"  {'vessel':{room}}{head}", "faint")
    for line in lines:
        outcome = OUTCOME_OF_WORD[line.word]
        name = _shortened(line.vessel, room)
        counts = "".join(f"{count:>{_COLUMN}}" for count in line.counts)
        accepted = f"  {', '.join(line.accepted)}" if line.accepted else ""
        sheet.line(f"{MARKS[outcome]} {name}{counts}{accepted}", STYLES[outcome])
        sheet.paragraph(f"{line.record}; trail: {line.trail_file}", 2, "faint")


def _shortened(name: str, room: int) -> str:
    """A name in exactly so many cells."""
    kept = name
    while cells(kept) > room - 1:
        kept = kept[:-1]
    kept = kept if kept == name else f"{kept[:-1]}…"
    return kept + " " * (room - cells(kept))
