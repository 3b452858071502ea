"""The trails of the shipped example, and an HTML page taken apart with the standard library."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

from garboard.assembly import open_workshop
from garboard.trail import Trail

EXAMPLES = Path(__file__).parents[2] / "examples" / "river-survey-launch"
RECORDS = ("before", "after-as-fitted", "after-corrected")
#: Elements of HTML that have no end.
VOID = frozenset({"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta",
                  "source", "track", "wbr"})


@cache
def example_trail(name: str) -> Trail:
    """The trail of a record of the shipped example."""
    workshop = open_workshop()
    packs = workshop.load_packs(["small-craft-lithium"])
    return workshop.assess(str(EXAMPLES / f"{name}.yaml"), packs, None).trail


@dataclass
class Node:
    """An element with its attributes, the elements in it, and the text directly in it."""

    tag: str
    attributes: dict[str, str]
    children: list[Node] = field(default_factory=list)
    texts: list[str] = field(default_factory=list)

    def all(self, tag: str | None = None, class_: str | None = None) -> Iterator[Node]:
        """This element and those in it, of a tag and class."""
        if (tag is None or self.tag == tag) and (class_ is None or class_ in self.classes):
            yield self
        for child in self.children:
            yield from child.all(tag, class_)

    @property
    def classes(self) -> list[str]:
        return self.attributes.get("class", "").split()

    @property
    def text(self) -> str:
        """All text in it; of elements one after the other, without their order in the text."""
        return " ".join([*self.texts, *(child.text for child in self.children)])


class Page(HTMLParser):
    """A page as a tree; an end that closes anything but the last element opened is an error."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.root = Node("", {})
        self._open = [self.root]
        self.feed(text)
        self.close()
        assert [node.tag for node in self._open] == [""]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert len({name for name, _ in attrs}) == len(attrs), (tag, attrs)
        node = Node(tag, {name: value or "" for name, value in attrs})
        self._open[-1].children.append(node)
        if tag not in VOID:
            self._open.append(node)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self._open.pop()

    def handle_endtag(self, tag: str) -> None:
        assert self._open.pop().tag == tag

    def handle_data(self, data: str) -> None:
        self._open[-1].texts.append(data)

    def all(self, tag: str | None = None, class_: str | None = None) -> list[Node]:
        """All elements of a tag and class."""
        return list(self.root.all(tag, class_))

    def one(self, identity: str) -> Node:
        """The element of an id."""
        [node] = [each for each in self.root.all() if each.attributes.get("id") == identity]
        return node
