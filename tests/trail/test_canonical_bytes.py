"""Canonical bytes: the vectors of RFC 8785, an independent implementation, and what is refused."""

from __future__ import annotations

import json
import random
import struct
from itertools import islice
from typing import Any
from unicodedata import normalize

import pytest
import rfc8785
from hypothesis import given
from hypothesis import strategies as st

from garboard.errors import ReadingError
from garboard.trail import canonical_bytes
from garboard.trail.numbers import ecmascript

# RFC 8785 Appendix B: a double as its bits, and as it is written.
NUMBERS = """
0000000000000000 0
8000000000000000 0
0000000000000001 5e-324
8000000000000001 -5e-324
7fefffffffffffff 1.7976931348623157e+308
ffefffffffffffff -1.7976931348623157e+308
4340000000000000 9007199254740992
c340000000000000 -9007199254740992
4430000000000000 295147905179352830000
44b52d02c7e14af5 9.999999999999997e+22
44b52d02c7e14af6 1e+23
44b52d02c7e14af7 1.0000000000000001e+23
444b1ae4d6e2ef4e 999999999999999700000
444b1ae4d6e2ef4f 999999999999999900000
444b1ae4d6e2ef50 1e+21
3eb0c6f7a0b5ed8c 9.999999999999997e-7
3eb0c6f7a0b5ed8d 0.000001
41b3de4355555553 333333333.3333332
41b3de4355555554 333333333.33333325
41b3de4355555555 333333333.3333333
41b3de4355555556 333333333.3333334
41b3de4355555557 333333333.33333343
becbf647612f3696 -0.0000033333333333333333
43143ff3c1cb0959 1424953923781206.2
"""
PAIRS = [tuple(line.split()) for line in NUMBERS.split("\n") if line]


def _double(bits: str) -> float:
    number: float = struct.unpack(">d", bytes.fromhex(bits))[0]
    return number


@pytest.mark.parametrize(("bits", "text"), PAIRS)
def test_published_numbers(bits: str, text: str) -> None:
    number = _double(bits)
    assert ecmascript(number) == text
    assert canonical_bytes(number) == text.encode()
    assert canonical_bytes([number, {"a": number}]) == f'[{text},{{"a":{text}}}]'.encode()


# RFC 8785 sections 3.2.2 and 3.2.3. The published second sample has the key U+FB33, which is not in
# NFC; U+FF21 takes its place in the same order.
SAMPLES = [
    ('{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],'
     '"string": "\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/",'
     '"literals": [null, true, false]}',
     '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],'
     '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}'),
    ('{"\\u20ac": "Euro Sign", "\\r": "Carriage Return", "\\uff21": "Fullwidth A", "1": "One",'
     '"\\ud83d\\ude00": "Emoji: Grinning Face", "\\u0080": "Control",'
     '"\\u00f6": "Latin Small Letter O With Diaeresis"}',
     '{"\\r":"Carriage Return","1":"One","\x80":"Control",'
     '"ö":"Latin Small Letter O With Diaeresis","€":"Euro Sign",'
     '"😀":"Emoji: Grinning Face","Ａ":"Fullwidth A"}'),
    ('{"b":2,"a":[true,null,"x"]}', '{"a":[true,null,"x"],"b":2}'),
    ('[56, {"d": true, "10": null, "1": []}]', '[56,{"1":[],"10":null,"d":true}]'),
]


@pytest.mark.parametrize(("given_json", "canonical"), SAMPLES)
def test_published_samples(given_json: str, canonical: str) -> None:
    assert canonical_bytes(json.loads(given_json)) == canonical.encode()


# What the fast path could take for something else.
TRAPS: list[tuple[Any, str]] = [
    (["1.0", "-0", "1e-05", ",1.0,", ":-0,", "1234567890123456789"],
     '["1.0","-0","1e-05",",1.0,",":-0,","1234567890123456789"]'),
    ({"1.0": 1.0, "-0": -0.0, "e-05": 5e-05}, '{"-0":0,"1.0":1,"e-05":0.00005}'),
    (['"', "\\", '\\"', '"1.0,', "\\\\", 1.0], '["\\"","\\\\","\\\\\\"","\\"1.0,","\\\\\\\\",1]'),
    ([-0.0, 0, -10, 10.0, -1.5e-05, 105.0, 20.05], "[0,0,-10,10,-0.000015,105,20.05]"),
    ([[1.0], [[-0.0]], {"a": {"b": 2.0}}, []], '[[1],[[0]],{"a":{"b":2}},[]]'),
    ((1.0, (2, 3)), "[1,[2,3]]"),
    ([1e16, 1e20, 1e21, 1e-06, 1e-07, 1.25e-09, 1e-10, 1e100, 1e-100],
     "[10000000000000000,100000000000000000000,1e+21,0.000001,1e-7,1.25e-9,1e-10,1e+100,1e-100]"),
    ([2**53 - 1, -(2**53 - 1), 0.1234567890123456], "[9007199254740991,-9007199254740991,"
                                                    "0.1234567890123456]"),
    ({"b": [True, False, None]}, '{"b":[true,false,null]}'),
    ("e\u0301", '"é"'),
    ("\n\u0303 and \u0303", '"\\n\u0303 and \u0303"'),
    ({"e\u0301": 1, "z": 2, "f": 3}, '{"f":3,"z":2,"é":1}'),
    ("", '""'), ({}, "{}"), ([], "[]"), (None, "null"), (-0.0, "0"), ("\x7f\x1f", '"\x7f\\u001f"'),
]


@pytest.mark.parametrize(("data", "canonical"), TRAPS)
def test_traps_of_the_fast_path(data: Any, canonical: str) -> None:
    assert canonical_bytes(data).decode() == canonical


REFUSED: list[tuple[Any, str]] = [
    (float("nan"), "canonical-number"),
    ([1.0, float("inf")], "canonical-number"),
    ({"a": -float("inf")}, "canonical-number"),
    (2**53, "canonical-number"),
    ([-(2**53)], "canonical-number"),
    ({"a": [10**30]}, "canonical-number"),
    ("\ud800", "canonical-text"),
    ({"\udfff": 1}, "canonical-text"),
    (["\ud800\ud801"], "canonical-text"),
    ({"é": 1, "e\u0301": 2}, "canonical-key"),
    ({"a": [{"é": 1, "e\u0301": 2}]}, "canonical-key"),
    ({"a": object()}, "canonical-type"),
    ([{1, 2}], "canonical-type"),
    (b"bytes", "canonical-type"),
]


@pytest.mark.parametrize(("data", "code"), REFUSED)
def test_refused(data: Any, code: str) -> None:
    with pytest.raises(ReadingError) as caught:
        canonical_bytes(data)
    assert caught.value.code == code


_CHARACTERS = ('"\\/\b\f\n\r\t\x00\x1f\x7f e1.0,:-[]{}aéö€Ωµ²°\u0303\u0301\u05d3\ufb33\uffe6\u2028'
               "😀𝄞\U0010fffd\u202e")


def _generated(draw: random.Random, depth: int = 0) -> Any:
    kind = draw.randrange(9 if depth < 4 else 7)
    if kind == 0:
        return draw.choice([None, True, False])
    if kind == 1:
        return draw.choice([draw.randrange(-100, 100), draw.randrange(-(2**53) + 1, 2**53)])
    if kind == 2:
        return _finite(draw)
    if kind == 3:
        return draw.choice([1.0, -1.0]) * draw.random() * 10.0 ** draw.randrange(-12, 24)
    if kind == 4:
        return float(draw.randrange(-1000, 1000)) * 10.0 ** draw.randrange(0, 20)
    if kind in (5, 6):
        return "".join(draw.choices(_CHARACTERS, k=draw.randrange(12)))
    size = draw.randrange(5)
    if kind == 7:
        return [_generated(draw, depth + 1) for _ in range(size)]
    return {normalize("NFC", "".join(draw.choices(_CHARACTERS, k=3))): _generated(draw, depth + 1)
            for _ in range(size)}


def _finite(draw: random.Random) -> float:
    while True:
        number = _double(f"{draw.getrandbits(64):016x}")
        if number - number == 0:
            return number


def _composed(data: Any) -> Any:
    if isinstance(data, str):
        return normalize("NFC", data)
    if isinstance(data, list):
        return [_composed(each) for each in data]
    if isinstance(data, dict):
        return {key: _composed(each) for key, each in data.items()}
    return data


def test_ten_thousand_values_against_an_independent_implementation() -> None:
    draw = random.Random(8785)
    different = [data for data in islice(iter(lambda: _generated(draw), ...), 10_000)
                 if canonical_bytes(data) != rfc8785.dumps(_composed(data))]
    assert different == []


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_every_double_comes_back(number: float) -> None:
    text = canonical_bytes([number]).decode()
    assert float(text[1:-1]) == number
    assert text == rfc8785.dumps([number]).decode()


def test_order_of_insertion_does_not_matter() -> None:
    keys = [f"k{number}" for number in range(50)] + ["é", "😀", "\uffe6"]
    forward = {key: number for number, key in enumerate(keys)}
    backward = dict(reversed(forward.items()))
    assert canonical_bytes(forward) == canonical_bytes(backward)
