"""Whatever a text holds, it is read or refused, and what is read can be placed and traced."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.documents import Document, Limits, read_text
from garboard.documents.scalar_index import scalar_index
from garboard.errors import DocumentRefused

PIECES = [*"ab:-?[]{},#&*!|>'\"%@` \t\n\r01.\\é~<=+", ": ", "- ", "\n  ", "\n    ", "---\n",
          "...\n", "\\u00e9", "\\x41", "|2\n", ">+\n", "<<: ", "*x", "&x ", "!!str ", "\ufeff",
          "\u2028", '{"', '": ', '",', "\r\n", "NaN", "1e999", "9" * 18, "a: 1\n", "k: |\n  x\n",
          "- a\n", "k: 'it''s'\n", 'k: "x\\\n  y"\n', "[1, 2.5, x]", "{a: b}", "? a\n", "# note\n"]


def paths(data: object, path: list[str | int]) -> list[list[str | int]]:
    members = data.items() if isinstance(data, dict) else \
        enumerate(data) if isinstance(data, list) else ()
    return [path] + [found for step, value in members for found in paths(value, [*path, step])]


def check_places(document: Document) -> None:
    for path in paths(document.data, []):
        for key in (False, True):
            place = document.place(path, key=key)
            assert place.line is not None and place.column is not None and place.source is not None
            assert 1 <= place.column <= len(place.source) + 1
        written = document.written(path)
        if written is None:
            continue
        spot = document._root
        for step in path:
            member = spot.member(step)
            assert member is not None
            spot = member.spot
        traced = [scalar_index(document.text, spot, offset) for offset in range(len(written))]
        assert traced == sorted(set(traced))  # the fallback would give one index to all


@settings(max_examples=1500)
@given(st.lists(st.sampled_from(PIECES), max_size=14), st.sampled_from(["x.yaml", "x.json"]))
def test_any_text_is_read_or_refused(pieces: list[str], file: str) -> None:
    try:
        document = read_text("".join(pieces), file, Limits(depth=6))
    except DocumentRefused as refused:
        assert refused.problems
        str(refused)
    else:
        check_places(document)
