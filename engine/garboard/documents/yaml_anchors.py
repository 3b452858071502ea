"""Anchors (``&name``), the aliases that repeat them (``*name``), and tags, which are refused."""

from __future__ import annotations

import re
from copy import deepcopy
from typing import NamedTuple

from garboard.documents.spot import PLAIN
from garboard.documents.yaml_report import Report
from garboard.documents.yaml_tree import YamlSpot
from garboard.errors import Problem, did_you_mean

_TAG = re.compile(r"![^\s,\[\]{}]*")
_MARKS = re.compile(r"(?:[&!][^\s,\[\]{}]*(?:[ \t\r\n]+(?:#[^\r\n]*)?)*)*")


class Anchored(NamedTuple):
    """A value with an anchor: how many values it holds, and on how many levels."""

    data: object
    spot: YamlSpot
    nodes: int
    height: int


class Anchors:
    """The anchors of a text so far; one whose value is not finished is ``None``."""

    def __init__(self, report: Report) -> None:
        self.report = report
        self.known: dict[str, Anchored | None] = {}
        self.aliased_nodes = 0

    def name(self, name: str | None, start: int, anchored: Anchored | None) -> None:
        """Give a value its name, if it has one; each name is given once."""
        if name is None:
            return
        if name in self.known:
            place = self.report.sheet.place(start, start + len(name) + 1)
            self.report.add(Problem("yaml-anchor-twice", place, f"&{name} a second time",
                                    "each anchor name once"))
        self.known[name] = anchored

    def value(self, name: str, start: int, end: int) -> Anchored:
        """A copy of the value that an alias stands for; nothing, with a problem, if it cannot."""
        report = self.report
        place = report.sheet.place(start, end)
        anchored = self.known.get(name)
        if anchored is None:
            if name in self.known:
                report.add(Problem("yaml-alias-inside-itself", place, f"*{name} inside &{name}",
                                   hint="write the value out instead"))
            else:
                report.add(Problem(
                    "yaml-alias-unknown", place, f"*{name}",
                    f"a value marked &{name} earlier in the file",
                    did_you_mean(name, self.known)
                    or f'if this is a text, put it in quotes: "*{name}"'))
            return Anchored(None, YamlSpot(start, start, PLAIN, ""), 1, 0)
        self.aliased_nodes += anchored.nodes
        if self.aliased_nodes > report.limits.aliased_nodes:
            report.stop(Problem(
                "yaml-alias-expansion", place,
                f"aliases that stand for {self.aliased_nodes:,} values so far",
                report.limits.expected("aliased_nodes", "values"), "write the values out"))
        return anchored._replace(data=deepcopy(anchored.data))

    def refuse_tag(self, start: int) -> None:
        """A tag stands at the value that starts at an index."""
        text = self.report.sheet.text
        # the library lets a value start at its anchor even when a tag stands before that
        tag = _TAG.search(text, start, self.past_marks(start, len(text))) \
            or _TAG.search(text, text.rfind("!", 0, start))
        begin, end = tag.span() if tag else (start, start + 1)
        while begin and text[begin - 1] == "!":
            begin -= 1
        self.report.add(Problem(
            "yaml-tag", self.report.sheet.place(begin, end), text[begin:end],
            "a value without a type mark",
            "delete the mark; put a text that starts with ! in quotes"))

    def past_marks(self, start: int, end: int) -> int:
        """Where a value itself starts, behind its anchor, its tag and comments behind those."""
        match = _MARKS.match(self.report.sheet.text, start, end)
        return match.end() if match else start
