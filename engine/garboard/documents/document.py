"""A document: plain data, the text it came from, and the place of every value in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from garboard.documents.path_text import path_text
from garboard.documents.scalar_index import scalar_index
from garboard.documents.sheet import Sheet
from garboard.documents.spot import COLLECTIONS, FLOW, Member, Spot
from garboard.errors import Place


@dataclass(frozen=True, slots=True, eq=False)
class Document:
    """What was read from a file: ``data`` is plain dicts, lists, texts, numbers, flags and None.

    ``text`` is the decoded text, ``digest`` the SHA-256 of the bytes in hex. The data belongs to
    the reader of the document: treat it as frozen.
    """

    file: str
    data: object = field(repr=False)
    text: str = field(repr=False)
    digest: str
    _sheet: Sheet = field(repr=False)
    _root: Spot = field(repr=False)

    def place(self, path: Sequence[str | int] = (), *, key: bool = False,
              offset: int | None = None) -> Place:
        """Where the value at ``path`` stands.

        A scalar is pointed at itself, a block mapping or list at the key that holds it, an item of
        a list at its first character. With ``key`` the key is meant, not the value. ``offset``
        counts characters inside the value of a text and is carried back through quotes, escapes
        and folded lines. Where the path leads nowhere, the nearest existing part of it is meant;
        a value behind a YAML alias stands where its anchor is.
        """
        names = path_text(path) or None
        member = Member(self._root)
        for step in path:
            found = member.spot.member(step)
            if found is None:
                return self._sheet.place(*_holder(member), path=names)
            member = found
        spot = member.spot
        if key and member.key_start >= 0:
            return self._sheet.place(member.key_start, member.key_end, names)
        if offset is not None and spot.written is not None:
            return self._sheet.place(scalar_index(self.text, spot, offset), path=names)
        if (spot.style in COLLECTIONS and spot.style != FLOW) or spot.start == spot.end:
            return self._sheet.place(*_holder(member), path=names)
        return self._sheet.place(spot.start, spot.end, names)

    def written(self, path: Sequence[str | int]) -> str | None:
        """The text of the scalar at ``path`` before it was read as a number or a flag.

        ``version: 1.10`` has the value 1.1 and is written ``1.10``. ``None`` for anything but a
        scalar.
        """
        spot = self._root
        for step in path:
            found = spot.member(step)
            if found is None:
                return None
            spot = found.spot
        return spot.written


def _holder(member: Member) -> tuple[int, int | None]:
    """The span that stands for a collection: its key, else its first character."""
    if member.key_start >= 0:
        return member.key_start, member.key_end
    return member.spot.start, None
