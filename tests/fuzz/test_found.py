"""What was thrown at each way in: shipped texts with changes, drawn in a fixed order.

The coverage-guided script beside this goes further; an input on which it finds something is kept
here.
"""

from __future__ import annotations

import json
import random

import pytest

from fuzz.inputs import WAYS_IN, changed, seeds, whole_packs, whole_records


@pytest.mark.parametrize("way", sorted(WAYS_IN))
def test_right_texts_with_a_piece_cut_out_are_read_or_refused(way: str) -> None:
    draws = random.Random(way)
    begun = "record" if way in ("document", "assessment") else way
    texts = [text for kind, text in seeds() if kind == begun]
    assert texts
    for text in draws.sample(texts, min(len(texts), 40 if way == "expression" else 3)):
        at, length = draws.randrange(len(text)), draws.randrange(1, 30)
        WAYS_IN[way](text[:at] + text[at + length:])


@pytest.mark.parametrize(("way", "several"), [
    ("record", 12), ("pack", 12), ("assessment", 6)])
def test_right_data_with_odd_values_are_read_or_refused(way: str, several: int) -> None:
    draws = random.Random(way)
    whole = whole_packs() if way == "pack" else whole_records()
    for _ in range(several):
        WAYS_IN[way](json.dumps(changed(draws.choice(whole), draws.randrange, 3)))
