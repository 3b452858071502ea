"""Every benchmark still runs, at its smallest size; what it measures here means nothing."""

from __future__ import annotations

import re
import sys
from types import ModuleType

import pytest

from benchmarks import cold, growth, kept, network, packs, reports, rules, whole

RATIO = re.compile(r"ratio [0-9.]+")
SMALLEST: list[tuple[ModuleType, list[str], re.Pattern[str]]] = [
    (rules, [], RATIO), (kept, ["--rounds", "1"], RATIO), (network, ["--rounds", "1"], RATIO),
    (whole, ["--rounds", "1"], RATIO),
    (reports, ["--rounds", "1", "--runs", "10"], RATIO),
    (packs, ["--rounds", "1"], re.compile(r"^100 rules(.|\n)*compile: \d+ ms, ratio [0-9.]+")),
    (cold, ["--rounds", "1"], re.compile(r"ratio to the libraries [0-9.]+")),
    (growth, ["tree", "--runs", "10,20"], re.compile(r"^tree +20 +[0-9]{3} ", re.MULTILINE)),
]


@pytest.mark.parametrize(("benchmark", "arguments", "said"), SMALLEST,
                         ids=[each[0].__name__.rpartition(".")[2] for each in SMALLEST])
def test_the_benchmark_runs(benchmark: ModuleType, arguments: list[str], said: re.Pattern[str],
                            monkeypatch: pytest.MonkeyPatch,
                            capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(sys, "argv", [benchmark.__name__, *arguments])
    benchmark.main()
    assert said.search(capsys.readouterr().out)
