"""Reading a YAML text into plain data, with the spot of every value beside it.

Allowed: mappings with text keys, lists, all scalar styles, comments, anchors and aliases within a
limit. Refused on purpose: keys given twice, keys that are not text, tags, merge keys, directives,
several documents in one file, aliases to nothing or to themselves, tabs as indentation.
"""

from __future__ import annotations

import re
from copy import deepcopy
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any
from unicodedata import normalize

from garboard.documents.characters import UNPRINTABLE
from garboard.documents.limits import Limits
from garboard.documents.path_text import path_text
from garboard.documents.plain_scalar import plain_value
from garboard.documents.sheet import Sheet
from garboard.documents.spot import BLOCK, FLOW, PLAIN, Member
from garboard.errors import DocumentRefused, Place, Problem, ReadingError, did_you_mean

if TYPE_CHECKING:
    from garboard.documents.yaml_events import Events

@dataclass(slots=True)
class YamlSpot:
    """The span of one value in a YAML text; see ``Spot``."""

    start: int
    end: int
    style: str
    written: str | None = None
    members: dict[str | int, Member] | None = None

    def member(self, step: str | int) -> Member | None:
        return self.members.get(step) if self.members is not None else None


@dataclass(slots=True)
class _Open:
    """A mapping or list that is being read; ``key`` is the key whose value comes next."""

    data: Any
    spot: YamlSpot
    first_node: int
    anchor: str | None = None
    as_key: bool = False
    key: str | None = None
    key_start: int = -1
    key_end: int = -1
    folded_keys: dict[str, int] = field(default_factory=dict)
    tallest: int = 0


@dataclass(slots=True)
class _Anchored:
    data: Any
    spot: YamlSpot
    nodes: int
    height: int


class _StopError(Exception):
    """Reading stops here: a limit is passed or the rest makes no sense."""


def read_yaml(sheet: Sheet, limits: Limits) -> tuple[object, YamlSpot]:
    """The data and the spots of a text; raises DocumentRefused with all problems found."""
    reading = _Reading(sheet, limits)
    reading.run()
    if reading.problems:
        raise DocumentRefused(reading.problems)
    if reading.root is None:
        return None, YamlSpot(0, 0, PLAIN, "")
    return reading.root


class _Reading:
    def __init__(self, sheet: Sheet, limits: Limits) -> None:
        self.sheet, self.limits = sheet, limits
        self.problems: list[Problem] = []
        self.open: list[_Open] = []
        self.anchors: dict[str, _Anchored | None] = {}
        self.nodes = self.aliased = self.documents = 0
        self.root: tuple[object, YamlSpot] | None = None
        self.last_scalar = (0, 0)

    def run(self) -> None:
        from ruamel.yaml.error import YAMLError
        from ruamel.yaml.events import (
            AliasEvent,
            DocumentStartEvent,
            MappingEndEvent,
            MappingStartEvent,
            ScalarEvent,
            SequenceEndEvent,
            SequenceStartEvent,
        )

        from garboard.documents.yaml_events import Events
        from garboard.documents.yaml_problem import code_point_problem, syntax_problem

        handlers = {
            ScalarEvent: self.scalar, MappingStartEvent: self.begin, SequenceStartEvent: self.begin,
            MappingEndEvent: self.finish, SequenceEndEvent: self.finish, AliasEvent: self.alias,
            DocumentStartEvent: self.document,
        }
        events: Events | None = None
        try:
            events = Events(self.sheet.text)
            while (event := events.next_event()) is not None:
                handler = handlers.get(type(event))
                if handler is not None:
                    handler(event)
        except _StopError:
            pass
        except YAMLError as error:
            self.problems.append(syntax_problem(error, self.sheet, self.last_scalar))
        except (ValueError, OverflowError):  # an escape for a character beyond U+10FFFF
            assert events is not None
            self.problems.append(code_point_problem(self.sheet, events.index))

    # events -----------------------------------------------------------------------------------
    def document(self, event: Any) -> None:
        self.documents += 1
        at = event.start_mark.index
        if self.documents > 1:
            self.stop("yaml-several-documents", self.sheet.place(at, at + 3),
                      expected="one document", hint="put each document into a file of its own")

    def begin(self, event: Any) -> None:
        mapping = type(event).__name__ == "MappingStartEvent"
        start = event.start_mark.index
        at = self.sheet.place
        as_key = self.key_is_due()
        if as_key:
            self.problem("key-not-text", at(start), found="a mapping or list as a key",
                         expected="a text as the key")
        self.tagged(event)
        self.count(start)
        if len(self.open) >= self.limits.depth:
            self.stop("document-depth", at(start), found=f"level {len(self.open) + 1}",
                      expected=self.limits.expected("depth", "levels"),
                      hint="a record needs about ten; look for brackets that never close")
        self.anchor(event, None)
        spot = YamlSpot(event.start_mark.index, event.end_mark.index,
                        FLOW if event.flow_style else BLOCK, None, {})
        self.open.append(_Open({} if mapping else [], spot, self.nodes, event.anchor, as_key))

    def finish(self, event: Any) -> None:
        done = self.open.pop()
        done.spot.end = max(done.spot.end, event.end_mark.index)
        height = done.tallest + 1
        if done.anchor is not None:
            self.anchors[done.anchor] = _Anchored(
                done.data, done.spot, self.nodes - done.first_node + 1, height)
        if done.as_key:
            self.take_key(f"\0{done.spot.start}", done.spot.start, done.spot.end)
        else:
            self.store(done.data, done.spot, height)

    def scalar(self, event: Any) -> None:
        start, end = event.start_mark.index, event.end_mark.index
        text: str = event.value
        plain = event.style is None
        self.tagged(event)
        if event.anchor is not None or event.ctag is not None:
            start = self.after_marks(event, start, end)
        if self.key_is_due():
            self.key(text, plain, start, end)
            return
        self.count(start)
        self.last_scalar = (start, end)
        if plain and not text and self.open and self.open[-1].key is not None:
            self.colon(start)
        spot = YamlSpot(start, end, event.style or PLAIN, text)
        value: object = text
        if plain:
            try:
                value = plain_value(text)
            except ReadingError as error:
                self.problems.append(error.problem().at(self.here(self.sheet.place(start, end))))
        elif event.style == '"' and (bad := UNPRINTABLE.search(text)):
            self.unprintable(spot, bad)
        self.anchor(event, _Anchored(value, spot, 1, 0))
        self.store(value, spot, 0)

    def alias(self, event: Any) -> None:
        name, start = event.anchor, event.start_mark.index
        place = self.sheet.place(start, event.end_mark.index)
        if self.key_is_due():
            self.problem("key-not-text", place, found="an alias as a key",
                         expected="a text as the key", hint="write the key out")
            self.take_key(f"\0{start}", start, start + 1)
            return
        self.count(start)
        anchored = self.anchors.get(name)
        if anchored is None:
            if name in self.anchors:
                self.problem("yaml-alias-inside-itself", place, found=f"*{name} inside &{name}",
                             hint="write the value out instead")
            else:
                self.problem("yaml-alias-unknown", place, found=f"*{name}",
                             expected=f"a value marked &{name} earlier in the file",
                             hint=did_you_mean(name, self.anchors)
                             or f"if this is a text, put it in quotes: \"*{name}\"")
            self.store(None, YamlSpot(start, start, PLAIN, ""), 0)
            return
        self.aliased += anchored.nodes
        self.nodes += anchored.nodes
        if self.aliased > self.limits.aliased_nodes:
            self.stop("yaml-alias-expansion", place,
                      found=f"aliases that stand for {self.aliased:,} values so far",
                      expected=self.limits.expected("aliased_nodes", "values"),
                      hint="write the values out")
        if len(self.open) + anchored.height > self.limits.depth:
            self.stop("document-depth", place,
                      found=f"level {len(self.open) + anchored.height} behind the alias",
                      expected=self.limits.expected("depth", "levels"))
        self.store(deepcopy(anchored.data), anchored.spot, anchored.height)

    # keys, values, marks ------------------------------------------------------------------------
    def key_is_due(self) -> bool:
        return bool(self.open) and type(self.open[-1].data) is dict and self.open[-1].key is None

    def key(self, text: str, plain: bool, start: int, end: int) -> None:
        place = self.sheet.place
        if plain and text == "<<":
            self.problem("yaml-merge-key", place(start, end), found="<<",
                         hint="write the fields out")
        elif plain:
            try:
                value = plain_value(text)
            except ReadingError:
                value = 0
            if not isinstance(value, str):
                what = "no key" if not text else f"{text} as a key, which is not a text"
                self.problem("key-not-text", place(start, end), found=what,
                             expected="a text as the key",
                             hint=f'put it in quotes: "{text}"' if text else "")
                text = f"\0{start}"
        elif bad := UNPRINTABLE.search(text):
            self.unprintable(YamlSpot(start, end, '"', text), bad)
        holder = self.open[-1]
        same = text if text.isascii() else normalize("NFC", text)
        first = holder.folded_keys.setdefault(same, start)
        self.take_key(text, start, end)
        if first != start:
            self.problem("duplicate-key", place(start, end),
                         found=f"{text!r}, first given on line {self.sheet.line_of(first)}",
                         expected="each key once", hint="keep one of the two")
            self.take_key(f"\0{start}", start, end)

    def colon(self, start: int) -> None:
        """A key with no value is one only behind a colon: ``{a:1}`` and ``{a}`` are slips."""
        holder = self.open[-1]
        if ":" not in self.sheet.text[holder.key_end:start]:
            self.problem("yaml-missing-colon", self.sheet.place(holder.key_start, holder.key_end),
                         found=self.sheet.text[holder.key_start:holder.key_end],
                         expected="key: value", hint="put a colon and a space behind the key")

    def take_key(self, text: str, start: int, end: int) -> None:
        holder = self.open[-1]
        holder.key, holder.key_start, holder.key_end = text, start, end

    def store(self, value: object, spot: YamlSpot, height: int) -> None:
        if not self.open:
            self.root = (value, spot)
            return
        holder = self.open[-1]
        holder.tallest = max(holder.tallest, height)
        members = holder.spot.members
        assert members is not None
        if holder.key is None:
            members[len(holder.data)] = Member(spot)
            holder.data.append(value)
            return
        holder.data[holder.key] = value
        members[holder.key] = Member(spot, holder.key_start, holder.key_end)
        holder.key = None

    def count(self, index: int) -> None:
        self.nodes += 1
        if self.nodes > self.limits.nodes:
            self.stop("document-nodes", self.sheet.place(index),
                      found=f"value number {self.nodes:,}",
                      expected=self.limits.expected("nodes", "values"),
                      hint="write the file as JSON, which has no such limit, or split it")

    def anchor(self, event: Any, anchored: _Anchored | None) -> None:
        name = event.anchor
        if name is None:
            return
        if name in self.anchors:
            start = event.start_mark.index
            self.problem("yaml-anchor-twice", self.sheet.place(start, start + len(name) + 1),
                         found=f"&{name} a second time", expected="each anchor name once")
        self.anchors[name] = anchored

    def tagged(self, event: Any) -> None:
        if event.ctag is None:
            return
        start = event.start_mark.index
        found = re.compile(r"!\S*").search(self.sheet.text, start)
        assert found is not None
        self.problem("yaml-tag", self.sheet.place(*found.span()), found=found[0],
                     expected="a value without a type mark",
                     hint="delete the mark; put a text that starts with ! in quotes")

    def after_marks(self, event: Any, start: int, end: int) -> int:
        """Where the value itself starts, behind its anchor and tag."""
        marks = re.compile(r"(?:[&!]\S*(?:[ \t\r\n]+|(?:#[^\r\n]*)|\Z))*")
        match = marks.match(self.sheet.text, start, end)
        return match.end() if match else start

    def unprintable(self, spot: YamlSpot, bad: re.Match[str]) -> None:
        from garboard.documents.scalar_index import scalar_index

        index = scalar_index(self.sheet.text, spot, bad.start())
        self.problem("document-character", self.sheet.place(index),
                     found=f"U+{ord(bad[0]):04X}", expected="printable characters")

    # problems -----------------------------------------------------------------------------------
    def problem(self, code: str, place: Place, found: str = "", expected: str = "",
                hint: str = "") -> None:
        self.problems.append(Problem(code, self.here(place), found, expected, hint))
        if len(self.problems) >= self.limits.problems:
            self.stop("document-problems", place, found=f"{len(self.problems)} problems so far",
                      expected=self.limits.expected("problems", "problems"),
                      hint="mend these first")

    def stop(self, code: str, place: Place, found: str = "", expected: str = "",
             hint: str = "") -> None:
        self.problems.append(Problem(code, self.here(place), found, expected, hint))
        raise _StopError

    def here(self, place: Place) -> Place:
        """The place with the data path of what is being read."""
        path: list[str | int] = []
        for holder in self.open:
            if type(holder.data) is list:
                path.append(len(holder.data))
            elif holder.key is not None and not holder.key.startswith("\0"):
                path.append(holder.key)
        return replace(place, path=path_text(path) or None)
