"""Files made to cost time or memory: 300 kB each, judged within 2 s of processor and 300 MB."""

from __future__ import annotations

import json
import subprocess
import sys
import time
from pathlib import Path

import pytest

SIZE = 300_000


def hostile() -> dict[str, tuple[str, str]]:
    """The texts by name, each with the name of the file it pretends to be."""
    n = SIZE
    yaml = {
        "open brackets": "[" * n,
        "open brackets, a line each": "[\n" * (n // 2),
        "open braces": "{" * n,
        "open braces with keys": "a: " + "{a: " * (n // 4),
        "dashes": "- " * (n // 2),
        "questions": "? " * (n // 2),
        "steps": "".join(" " * level + "a:\n" for level in range(770)),
        "a long text": "a: " + "x" * n,
        "a long text of words": "a: " + "x y " * (n // 4),
        "a long key": "x" * n + ": 1",
        "a long key without a colon": "a: 1\n" + "x" * n + "\nb: 2",
        "colons": "a" + ":" * n,
        "colons and spaces": "a" + ": " * (n // 2),
        "an open quote": 'a: "' + "x\n" * (n // 2),
        "escapes": 'a: "' + "\\x41" * (n // 4) + '"',
        "control escapes": "".join(f'a{i}: "\\0"\n' for i in range(n // 12)),
        "single quotes": "a: '" + "''" * (n // 2) + "'",
        "a list of ones": "[" + "1," * (n // 2) + "]",
        "a list of nothing": "a:\n" + "-\n" * (n // 2),
        "empty lists": "[" + "[]," * (n // 3) + "]",
        "keys": "".join(f"a{i}: 1\n" for i in range(n // 10)),
        "keys in braces": "{" + "".join(f"a{i}: 1," for i in range(n // 10)) + "x",
        "the same key": "a: 1\n" * (n // 5),
        "anchors": "".join(f"a{i}: &a{i} 1\n" for i in range(n // 16)),
        "one anchor": "a: &x 1\n" * (n // 8),
        "aliases": "a: &x [" + "1, " * 900 + "]\nb: [" + "*x, " * (n // 4) + "]",
        "alias bomb": "\n".join([f"a0: &a0 [{'x, ' * 90}]", *(
            f"a{i}: &a{i} [{f'*a{i - 1}, ' * 90}]" for i in range(1, 60))]),
        "unknown aliases": "[" + "*x, " * (n // 4) + "]",
        "tags": "[" + "!!str a, " * (n // 9) + "]",
        "a long tag": "a: !" + "x" * n,
        "merge keys": "a: &a {b: 1}\n" + "".join(f"c{i}: {{<<: *a}}\n" for i in range(n // 18)),
        "documents": "---\n" * (n // 4),
        "directives": "%YAML 1.2\n" * (n // 10),
        "comments": "# x\n" * (n // 4) + "a: 1",
        "tabs": "\t" * n,
        "blanks": " " * n + "a",
        "line breaks": "a: x\n" + "\n" * n + "  y",
        "a folded text": "a: >\n" + "  x\n\n" * (n // 5),
        "digits": "a: " + "9" * n,
        "an exponent": "a: 1e" + "9" * n,
        "commas": "[" + "," * n,
        "flags as keys": "true: 1\n" * (n // 8),
    }
    loose = {
        "deep": '{"a":' * (n // 5),
        "deep lists": "[" * n + "]" * n,
        "deep behind quotes": '["' + "\\" * n + '"' + "[" * n,
        "quotes": '"' * n,
        "brackets in turn": "[]" * (n // 2),
        "digits": "9" * n,
        "the same key": "{" + ",".join(['"a": 1'] * (n // 7)) + "}",
        "NaN": "[" + "NaN," * (n // 4) + "1]",
        "half characters": "[" + '"\\ud800",' * (n // 9) + "1]",
        "nested duplicates": '{"a":1,"a":' * 30 + "[" + "1," * (n // 2) + "1]" + "}" * 30,
        "cut off": json.dumps([{"a": "x"}] * (n // 12))[:-9],
    }
    return {**{f"yaml: {name}": ("x.yaml", text) for name, text in yaml.items()},
            **{f"json: {name}": ("x.json", text) for name, text in loose.items()},
            **{f"yaml that looks like json: {name}": ("x.yaml", "{" + loose[name])
               for name in ("deep", "quotes", "NaN", "cut off")}}


def judge() -> None:
    """Read all of them in this process; print seconds and outcome of each, then the memory."""
    from garboard.documents import read_text
    from garboard.errors import DocumentRefused

    for name, (file, text) in hostile().items():
        start = time.process_time()
        try:
            read_text(text, file)
            outcome = "read"
        except DocumentRefused as refused:
            str(refused)
            outcome = refused.problems[0].code
        print(json.dumps([name, time.process_time() - start, outcome]))
    print(json.dumps(["memory", most_memory(), "kB"]))


def most_memory() -> int:
    """The most this process has held, in kB. Not `ru_maxrss`: that starts from what the process
    that started this one held then."""
    status = Path("/proc/self/status").read_text(encoding="ascii")
    return int(status.split("VmHWM:")[1].split()[0])


@pytest.fixture(scope="module")
def judged() -> dict[str, tuple[float, str]]:
    done = subprocess.run([sys.executable, __file__], capture_output=True, text=True, check=True,
                          timeout=300)
    return {name: (figure, outcome) for name, figure, outcome in
            map(json.loads, done.stdout.splitlines())}


def test_all_are_judged(judged: dict[str, tuple[float, str]]) -> None:
    assert set(judged) == {*hostile(), "memory"}


def test_within_two_seconds(judged: dict[str, tuple[float, str]]) -> None:
    slow = {name: figure for name, (figure, _) in judged.items()
            if name != "memory" and figure > 2}
    assert not slow


def test_within_300_megabytes(judged: dict[str, tuple[float, str]]) -> None:
    assert judged["memory"][0] < 300_000


if __name__ == "__main__":
    judge()
