"""None of the known ways out of an evaluator leads anywhere: each is refused, at its spot."""

from __future__ import annotations

import pytest

from expressions.escapes import ESCAPES
from expressions.small_boat import refusals


@pytest.mark.parametrize(("kind", "text", "code", "offset"), ESCAPES,
                         ids=[f"{kind}: {text[:30]!r}" for kind, text, _, _ in ESCAPES])
def test_escapes_are_refused(kind: str, text: str, code: str, offset: int) -> None:
    about = "bank" if "bank." in text else "battery"
    first = refusals(text, about)[0]
    assert first[:2] == (code, offset)


def test_the_corpus_is_as_large_as_it_should_be() -> None:
    assert len(ESCAPES) >= 80
    assert len({kind for kind, _, _, _ in ESCAPES}) >= 60
