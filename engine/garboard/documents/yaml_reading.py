"""Reading a YAML text into plain data, with the spot of every value beside it.

Allowed: mappings with text keys, lists, all scalar styles, comments, anchors and aliases within a
limit. Refused on purpose: keys given twice, keys that are not text, tags, merge keys, directives,
several documents in one file, aliases to nothing or to themselves, tabs as indentation.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from garboard.documents.characters import UNPRINTABLE
from garboard.documents.limits import Limits
from garboard.documents.plain_scalar import plain_value
from garboard.documents.sheet import Sheet
from garboard.documents.spot import BLOCK, FLOW, PLAIN
from garboard.documents.yaml_anchors import Anchored, Anchors
from garboard.documents.yaml_keys import check_colon, read_key
from garboard.documents.yaml_report import Report, StopReading
from garboard.documents.yaml_tree import Holder, Tree, YamlSpot
from garboard.errors import DocumentRefused, Problem, ReadingError

if TYPE_CHECKING:
    from garboard.documents.yaml_events import Events


def read_yaml(sheet: Sheet, limits: Limits) -> tuple[object, YamlSpot]:
    """The data and the spots of a text; raises DocumentRefused with all problems found."""
    reading = _Reading(sheet, limits)
    reading.run()
    if reading.report.problems:
        raise DocumentRefused(reading.report.problems)
    if reading.tree.root is None:
        return None, YamlSpot(0, 0, PLAIN, "")
    return reading.tree.root


class _Reading:
    """Takes the events of the text one by one; nothing here recurses."""

    def __init__(self, sheet: Sheet, limits: Limits) -> None:
        self.sheet, self.limits = sheet, limits
        self.tree = Tree()
        self.report = Report(sheet, limits, self.tree)
        self.anchors = Anchors(self.report)
        self.nodes = self.documents = 0
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
            ScalarEvent: self.scalar, AliasEvent: self.alias,
            MappingStartEvent: self.begin_mapping, MappingEndEvent: self.finish,
            SequenceStartEvent: self.begin_list, SequenceEndEvent: self.finish,
            DocumentStartEvent: self.document,
        }
        events: Events | None = None
        try:
            events = Events(self.sheet.text)
            while (event := events.next_event()) is not None:
                handler = handlers.get(type(event))
                if handler is not None:
                    handler(event)
        except StopReading:
            pass  # the problem that stopped it is in the report
        except YAMLError as error:
            self.report.problems.append(syntax_problem(error, self.sheet, self.last_scalar))
        except (ValueError, OverflowError):  # an escape for a character beyond U+10FFFF
            assert events is not None
            self.report.problems.append(code_point_problem(self.sheet, events.index))

    def document(self, event: Any) -> None:
        self.documents += 1
        if self.documents > 1:
            at = event.start_mark.index
            self.report.stop(Problem(
                "yaml-several-documents", self.sheet.place(at, at + 3), expected="one document",
                hint="put each document into a file of its own"))

    def begin_mapping(self, event: Any) -> None:
        self.begin(event, {})

    def begin_list(self, event: Any) -> None:
        self.begin(event, [])

    def begin(self, event: Any, data: object) -> None:
        start, end = event.start_mark.index, event.end_mark.index
        as_key = self.tree.key_is_due()
        if as_key:
            self.report.add(Problem("key-not-text", self.sheet.place(start),
                                    "a mapping or list as a key", "a text as the key"))
        if event.ctag is not None:
            self.anchors.refuse_tag(start)
        self.count(start)
        self.check_level(start, len(self.tree.open) + 1)
        self.anchors.name(event.anchor, start, None)
        spot = YamlSpot(start, end, FLOW if event.flow_style else BLOCK, None, {})
        self.tree.open.append(Holder(data, spot, self.nodes, event.anchor, as_key))

    def finish(self, event: Any) -> None:
        done = self.tree.open.pop()
        spot = done.spot
        spot.end = max(spot.end, event.end_mark.index)
        height = done.tallest + 1
        if done.anchor is not None:
            self.anchors.known[done.anchor] = Anchored(
                done.data, spot, self.nodes - done.first_node + 1, height)
        if done.as_key:
            self.tree.take_no_key(spot.start, spot.end)
        else:
            self.tree.store(done.data, spot, height)

    def scalar(self, event: Any) -> None:
        start, end = event.start_mark.index, event.end_mark.index
        text: str = event.value
        plain = event.style is None
        if event.ctag is not None:
            self.anchors.refuse_tag(start)
        named_at = start
        if event.anchor is not None or event.ctag is not None:
            start = self.anchors.past_marks(start, end)
        if self.tree.key_is_due():
            read_key(self.tree, self.report, text, plain, start, end)
            self.anchors.name(event.anchor, named_at, Anchored(
                text, YamlSpot(start, end, event.style or PLAIN, text), 1, 0))
            return
        self.count(start)
        self.last_scalar = (start, end)
        if plain and not text and self.tree.open and self.tree.open[-1].key is not None:
            check_colon(self.tree, self.report, start)
        spot = YamlSpot(start, end, event.style or PLAIN, text)
        value: object = text
        if plain:
            try:
                value = plain_value(text)
            except ReadingError as error:
                self.report.add(error.problem().at(self.sheet.place(start, end)))
        elif event.style == '"' and (bad := UNPRINTABLE.search(text)):
            self.report.unprintable(spot, bad)
        self.anchors.name(event.anchor, named_at, Anchored(value, spot, 1, 0))
        self.tree.store(value, spot, 0)

    def alias(self, event: Any) -> None:
        start, end = event.start_mark.index, event.end_mark.index
        if self.tree.key_is_due():
            self.report.add(Problem("key-not-text", self.sheet.place(start, end),
                                    "an alias as a key", "a text as the key",
                                    "write the key out"))
            self.tree.take_no_key(start, end)
            return
        anchored = self.anchors.value(event.anchor, start, end)
        self.count(start, anchored.nodes)
        self.check_level(start, len(self.tree.open) + anchored.height)
        self.tree.store(anchored.data, anchored.spot, anchored.height)

    def count(self, index: int, nodes: int = 1) -> None:
        """Count values against their limit."""
        self.nodes += nodes
        if self.nodes > self.limits.nodes:
            self.report.stop(Problem(
                "document-nodes", self.sheet.place(index), f"value number {self.nodes:,}",
                self.limits.expected("nodes", "values"),
                "write the file as JSON, which has no such limit, or split it"))

    def check_level(self, index: int, level: int) -> None:
        """Hold a level of nesting against its limit."""
        if level > self.limits.depth:
            self.report.stop(Problem(
                "document-depth", self.sheet.place(index), f"level {level}",
                self.limits.expected("depth", "levels"),
                "a record needs about ten; look for brackets that never close"))
